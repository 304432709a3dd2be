package print

import (
	"math"
	"slices"

	"chape/calc"
	"chape/calc/curve"
)

// zone is a part of a drawing that has words in the middle of it, once on
// each sheet that it reaches.
type zone struct {
	area  box
	words []string // one below the other, the first large
}

// put sets the words of each zone where the sheet has room for them.
func (d *drawing) put(zones []zone, sheet box) {
	var taken []box
	for _, t := range d.texts {
		taken = append(taken, t.box().grow(0.5))
	}
	for _, z := range zones {
		in := box{curve.Vec{X: math.Max(z.area.lo.X, sheet.lo.X), Y: math.Max(z.area.lo.Y, sheet.lo.Y)},
			curve.Vec{X: math.Min(z.area.hi.X, sheet.hi.X), Y: math.Min(z.area.hi.Y, sheet.hi.Y)}}
		if in.width() <= 0 || in.height() <= 0 {
			continue
		}
		block := z.placed(in, func(t text) bool { return free(t.box(), in, taken) && !t.crossed(d.paths) })
		for _, t := range block {
			d.text(t)
			taken = append(taken, t.box())
		}
	}
}

// placed is the words where all of them fit: as near to the middle as may be; none
// where there is no such place.
func (z zone) placed(in box, fits func(text) bool) []text {
	for _, along := range []float64{0.5, 0.35, 0.65, 0.2, 0.8} {
		for _, down := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
			block := z.block(in.lo.Add(curve.Vec{X: along * in.width(), Y: down * in.height()}))
			if !slices.ContainsFunc(block, func(t text) bool { return !fits(t) }) {
				return block
			}
		}
	}
	return nil
}

func (z zone) block(at curve.Vec) []text {
	var out []text
	for i, s := range z.words {
		t := text{layer: wordLayer, at: at, s: printable(s), size: wordSize, anchor: middle}
		if i == 0 {
			t.size, t.bold = 4, true
		}
		out = append(out, t)
		at.Y += 3.6
	}
	return out
}

// halves are the zones of the pattern: inside the glue lines.
func (j *job) halves() []zone {
	f := j.facing(j.o.Up)
	wide := j.plan.Flat.Glue[len(j.plan.Flat.Glue)-1].Y
	mouth := j.plan.Input.Sheath.Mouth.MM()
	side := j.o.Up.String()
	zones := []zone{{zoneBox(f.at(curve.Vec{X: 0, Y: 3}), f.at(curve.Vec{X: mouth, Y: wide})), []string{"back half", side}}}
	if !j.o.Half {
		zones = append(zones, zone{zoneBox(f.at(curve.Vec{X: 0, Y: -3}), f.at(curve.Vec{X: mouth, Y: -wide})), []string{"front half", side}})
	}
	return zones
}

// closed is the zone of the setting-out sheet.
func (j *job) closed() []zone {
	front := facing{-j.facing(calc.GrainUp).back}
	knife := j.plan.Plane.Knife
	return []zone{{zoneBox(front.at(curve.Vec{X: 0, Y: 3}), front.at(curve.Vec{X: j.plan.Input.Sheath.Mouth.MM(), Y: knife[len(knife)-1].Y})),
		[]string{"front", "sheath closed", "mouth up"}}}
}

func zoneBox(a, b curve.Vec) box {
	lo, hi := curve.Line{a, b}.Bounds()
	return box{lo, hi}
}
