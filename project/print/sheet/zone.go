package sheet

import (
	"math"
	"slices"

	"chape/calc/curve"
	"chape/project/print/letters"
)

// Zone is a part of a drawing that has words in the middle of it, once on
// each sheet that it reaches.
type Zone struct {
	Area  Box
	Words []string // one below the other, the first large
}

// Put sets the words of each zone where the sheet has room for them.
func (d *Drawing) Put(zones []Zone, sheet Box) {
	var taken []Box
	for _, t := range d.Texts {
		taken = append(taken, t.Box().Grow(0.5))
	}
	for _, z := range zones {
		in := Box{curve.Vec{X: math.Max(z.Area.Lo.X, sheet.Lo.X), Y: math.Max(z.Area.Lo.Y, sheet.Lo.Y)},
			curve.Vec{X: math.Min(z.Area.Hi.X, sheet.Hi.X), Y: math.Min(z.Area.Hi.Y, sheet.Hi.Y)}}
		if in.Width() <= 0 || in.Height() <= 0 {
			continue
		}
		block := z.placed(in, func(t Text) bool { return free(t.Box(), in, taken) && !t.Crossed(d.Paths) })
		for _, t := range block {
			d.Text(t)
			taken = append(taken, t.Box())
		}
	}
}

// placed is the words where all of them fit: as near to the middle as may be; none
// where there is no such place.
func (z Zone) placed(in Box, fits func(Text) bool) []Text {
	for _, along := range []float64{0.5, 0.35, 0.65, 0.2, 0.8} {
		for _, down := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
			block := z.block(in.Lo.Add(curve.Vec{X: along * in.Width(), Y: down * in.Height()}))
			if !slices.ContainsFunc(block, func(t Text) bool { return !fits(t) }) {
				return block
			}
		}
	}
	return nil
}

func (z Zone) block(at curve.Vec) []Text {
	var out []Text
	for i, s := range z.Words {
		t := Text{Layer: WordLayer, At: at, Says: letters.Printable(s), Size: WordSize, Anchor: Middle}
		if i == 0 {
			t.Size, t.Bold = 4, true
		}
		out = append(out, t)
		at.Y += 3.6
	}
	return out
}
