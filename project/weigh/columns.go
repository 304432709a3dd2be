package weigh

import (
	"time"

	"chape/project/value"
)

// Columns are the keys of a weighing in a file.
var Columns = []value.Column[Weighing]{
	value.At(value.Spec{Key: "weigh.when", Group: "drying", Name: "when", Kind: value.Moment, Needed: true}, time.Time{},
		func(w *Weighing) *time.Time { return &w.When }),
	value.At(value.Spec{Key: "weigh.grams", Group: "drying", Name: "grams", Kind: value.Number, In: "g", Max: 20000, Above: true, Needed: true,
		Hint: "the sheath alone, on the kitchen scale"}, 0.0, func(w *Weighing) *float64 { return &w.Grams }),
	value.At(value.Spec{Key: "weigh.state", Group: "drying", Name: "state", Kind: value.Choice, Options: []string{"drying", "before"},
		Hint: "before: just before wetting"}, "drying", func(w *Weighing) *string { return &w.State }),
}
