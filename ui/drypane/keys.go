package drypane

import (
	"chape/ui/act"
	"chape/ui/part"
)

// Keys that the page names in its text.
const (
	beforeKey = "w"
	timeKey   = "t"
	removeKey = "x"
	warmKey   = "r"
	dampKey   = "h"
	againKey  = "a"
)

// keys are those of the page while nothing is being typed. None is a digit or a sign:
// those begin a weighing. With the key of the help behind them, those of the foot fit
// into 80 columns; the room's keys stand beside the room.
func (m *Model) keys() part.Keys {
	keys := part.Keys{
		part.Key("digits", "weigh it now", nil, "digits").Foot("weigh it now"),
		part.Key("Esc", "back to the steps", leave, "esc").Foot("back"),
	}
	keys = append(keys, m.list.Keys("weighing")...)
	return append(keys, part.Keys{
		part.Key(beforeKey, "weigh it just before wetting", m.askBefore, beforeKey).Foot("before wetting"),
		part.Key("g", "correct the grams", m.ofRow(m.askGrams), "g").Foot("grams"),
		part.Key(timeKey, "correct the time", m.ofRow(m.askTime), timeKey).Foot("time"),
		part.Key("s", "weighed just before wetting, or while drying", m.ofRow(m.turnState), "s"),
		part.Key(removeKey, "take the weighing out", m.ofRow(m.askRemove), removeKey),
		part.Key(warmKey, "the room's temperature", m.askTemperature, warmKey),
		part.Key(dampKey, "the room's humidity", m.askHumidity, dampKey),
		part.Key(againKey, "start a hold till it is to be weighed again", m.startAgain, againKey),
		part.Key("v", "curve or table, where one fits", part.Quiet(m.turn), "v"),
	}...)
}

func leave() []act.Msg { return []act.Msg{act.Leave{}} }

// ofRow does nothing where there is no weighing.
func (m *Model) ofRow(do func() []act.Msg) func() []act.Msg {
	return func() []act.Msg {
		if len(m.rows) == 0 {
			return nil
		}
		return do()
	}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	ask := part.AskKeys()
	if m.entry != nil && m.entry.Plain {
		ask = part.ConfirmKeys()
	}
	ask.Now = m.entry != nil
	return []act.Section{m.keys().Section("Weighings", m.entry == nil), ask}
}
