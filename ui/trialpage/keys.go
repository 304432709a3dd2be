package trialpage

import (
	"slices"

	"chape/calc/length"
	"chape/project/places"
	"chape/ui/act"
	"chape/ui/part"
)

// The page's own keys that its text names.
const (
	takeKey   = "e"
	removeKey = "x"
	pastKey   = "m"
)

// keys are those while nothing is typed. None is a digit or a sign: those begin a number.
func (m *Model) keys() part.Keys {
	lines := m.list.Keys("line")
	for i, row := range lines {
		if slices.Contains(row.Binding.Keys(), "end") {
			lines[i] = part.Key("End", "last line; first to what keeps a correction that is drawn", part.Quiet(m.end), "end")
			if m.draft.drawn() {
				lines[i] = lines[i].Foot("to keep it")
			}
		}
	}
	letters := part.Key("letters", "on the note: begin it anew; on other lines they are commands", nil, "letters")
	if m.Writing() {
		letters = letters.Foot("type it")
	}
	return append(part.Keys{
		letters,
		part.Key("Enter", "on to the next line; opens the note, keeps the correction", m.enter, "enter").Foot("on"),
		part.Key("Space", "next choice", m.space, " ").Foot("next choice"),
		part.Key("→", "along the fold, on to the next mark or landmark", m.along(1), "right").Foot("along the fold"),
		part.Key("←", "back to the one before", m.along(-1), "left"),
		part.Key("Shift+→, L", "on by a little", m.nudge(1), "shift+right", "L"),
		part.Key("Shift+←, H", "back by a little", m.nudge(-1), "shift+left", "H"),
		part.Key("Esc", "drop what is not kept; back", m.esc, "esc").Foot("back"),
		part.Key(takeKey, "change the line in hand; take a correction up again", m.change, takeKey).Foot("change"),
		part.Key(removeKey, "take a correction out", m.remove, removeKey).Foot("take out"),
		part.Key(pastKey, "offer what your finished sheaths of this leather needed", m.askPast, pastKey).Late("experience"),
		part.Key("z", "closer, at the cursor", part.Quiet(func() { m.zoom = min(m.zoom+1, closest) }), "z").Late("closer"),
		part.Key("Z", "further away", part.Quiet(func() { m.zoom = max(m.zoom-1, 0) }), "Z"),
	}, lines...)
}

// end goes to the last line; where a correction is drawn, first to the line that keeps it.
func (m *Model) end() {
	if m.draft.drawn() && m.list.At < lineKeep {
		m.list.Choose(lineKeep)
		return
	}
	m.list.Choose(lines + len(m.snap.Project.Fits) + len(m.offers))
}

const closest = 6 // steps of zoom, each half as large again

// along moves the cursor to the next place that can be found by eye.
func (m *Model) along(by int) func() []act.Msg {
	return part.Quiet(func() { m.moveTo(places.Next(m.places, m.draft.at.MM(), by)) })
}

// nudge moves it by a millimetre, or a thirty-second of an inch.
func (m *Model) nudge(by float64) func() []act.Msg {
	return part.Quiet(func() {
		step := 1.0
		if m.snap.Unit == length.Inches {
			step = (length.Inch / 32).MM()
		}
		m.moveTo(m.draft.at.MM() + by*step)
	})
}

func (m *Model) esc() []act.Msg {
	if m.draft.drawn() {
		m.draft = m.fresh(m.draft)
		m.propose()
		return []act.Msg{act.Say{Text: "what was not kept is dropped"}}
	}
	return []act.Msg{act.Leave{}}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	ask := part.AskKeys()
	ask.Now = m.entry != nil
	return []act.Section{m.keys().Section("Trial fit", m.entry == nil), ask}
}
