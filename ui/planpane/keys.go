package planpane

import (
	"chape/ui/act"
	"chape/ui/part"
)

// keys are all of the pane's. No character that a measuring tool types is among them.
func (m *Model) keys() part.Keys {
	const top, end = -1 << 30, 1 << 30
	return part.Keys{
		part.Key("→", "next page: drawing, half-widths, holes, section, checks", m.turn(1), "right").Foot("next page"),
		part.Key("←", "page before", m.turn(-1), "left"),
		part.Key("↑", "mark before; in a table or list a row up", m.line(-1), "up"),
		part.Key("↓", "next mark; in a table or list a row down", m.line(1), "down"),
		part.Key("]", "next mark, towards the handle", m.to(1), "]"),
		part.Key("[", "mark before, towards the point", m.to(-1), "["),
		part.Key("PgUp", "text up", m.rollPage(-1), "pgup"),
		part.Key("PgDn", "text down", m.rollPage(1), "pgdown"),
		part.Key("Home", "top of the text", m.roll(top), "home"),
		part.Key("End", "end of the text", m.roll(end), "end"),
		part.Key("c", "the checks, those that are fine as well", part.Quiet(m.openChecks), "c"),
		part.Key("z", "closer, at the chosen mark", m.see(m.closer), "z").Foot("closer"),
		part.Key("Z", "further away", m.see(m.further), "Z"),
		part.Key("f", "the whole drawing again", m.see(m.all), "f").Late("all of it"),
		part.Key("v", "draw the whole, the half, the closed sheath", m.see(m.nextShape), "v").Late("whole, half"),
		part.Key("Shift+←, H", "look further left", m.see(m.pan(-0.25, 0)), "shift+left", "H"),
		part.Key("Shift+→, L", "look further right", m.see(m.pan(0.25, 0)), "shift+right", "L"),
		part.Key("Shift+↑, K", "look further up", m.see(m.pan(0, -0.25)), "shift+up", "K"),
		part.Key("Shift+↓, J", "look further down", m.see(m.pan(0, 0.25)), "shift+down", "J"),
	}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section { return []act.Section{m.keys().Section("Plan", true)} }
