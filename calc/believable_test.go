package calc

import (
	"math"
	"math/rand/v2"

	"chape/calc/knife"
	"chape/calc/length"
)

// believable makes a knife as people forge them: gentle slopes, steps of 1 to
// 8 mm, its places in sixteenths so that the twin's samples meet them.
func believable(rng *rand.Rand) Input {
	mm := func(lo, hi float64) length.Length {
		return length.Length(math.Round((lo+(hi-lo)*rng.Float64())*16) / 16)
	}
	mark := func(at, top, depth, thick length.Length, k knife.Kind, bevel float64, round length.Length) knife.Station {
		return knife.Station{At: at, Top: top, Bottom: top + depth, Thick: thick, Kind: k, Bevel: bevel, Round: round}
	}
	in := bar()
	blade, depth, thick := mm(70, 150), mm(20, 40), mm(2.5, 5)
	bevel := 0.5 + 0.5*rng.Float64()
	front := mm(6, 14)
	st := []knife.Station{
		mark(0, mm(2, 9), 0, mm(0.5, 1), knife.Blade, bevel, 0),
		mark(front, mm(2, 4), depth*length.Length(math.Round(8*(0.3+0.2*rng.Float64()))/8), thick/2, knife.Blade, bevel, 0),
		mark(2*front+4, mm(0, 2), depth-2, thick-1, knife.Blade, bevel, 0),
		mark(blade, mm(0, 1), depth, thick, knife.Blade, bevel, 0),
	}
	at := blade
	step := mm(1, 8)
	wide := thick + mm(6, 12)
	if rng.IntN(3) > 0 { // a bolster or guard
		top := mm(0, 1)
		st = append(st, mark(at, top, depth+step, wide, knife.Slab, 1, mm(0, 3)))
		at += mm(4, 14)
		st = append(st, mark(at, top, depth+step, wide, knife.Slab, 1, 0))
		depth += step - mm(1, min(8, step.MM()+2))
	}
	kind := knife.Kinds[1+rng.IntN(2)]
	round := mm(1, 5)
	half, end := mm(25, 45), mm(40, 60)
	st = append(st, mark(at, mm(0, 1), depth, wide-1, kind, 1, round),
		mark(at+half, mm(0, 2), depth+mm(0, 4), wide+mm(1, 6), kind, 1, round),
		mark(at+half+end, mm(0, 2), depth, wide, kind, 1, round))
	in.Knife.Stations = st
	sh := &in.Sheath
	sh.Mouth = at + mm(10, half.MM())
	if rng.IntN(3) == 0 { // a guard that stands proud of the back, the mouth on either side of it
		proud := mm(1, 5)
		for i := range st {
			if st[i].Kind != knife.Slab || st[i].At != blade {
				st[i].Top += proud
				st[i].Bottom += proud
			}
		}
		sh.Mouth = []length.Length{blade, blade - 1, sh.Mouth}[rng.IntN(3)]
	}
	in.Knife.Back = knife.Back(rng.IntN(2))
	in.Strap = Strap{Kind: StrapKind(rng.IntN(2)), Width: mm(12, 25), Thickness: mm(1.5, 3), Overlap: mm(20, 40)}
	in.Belt.Loop, in.Belt.Lap, in.Belt.Width = LoopKind(rng.IntN(2)), mm(4, 30), mm(30, 50)
	sh.Leather, sh.Welt = mm(2, 4), mm(2, 7)
	sh.Clearance = mm(1, 4)
	sh.Gap = sh.Clearance + mm(2, 6)
	sh.HandleClearance, sh.PointRoom = mm(0, min(2, sh.Clearance.MM())), mm(0, 5)
	sh.Margin, sh.Sanding = mm(4, 7), mm(0, 2)
	sh.Blend = sh.Margin + sh.Sanding + mm(5, 60)
	if q := sh.PointRoom + sh.Clearance; rng.IntN(2) == 0 && q > 4 {
		sh.Drain = q - 2
	}
	sh.Ease, sh.MouthRise, sh.Neutral = mm(-0.5, 2), mm(0, 25), 0.3+0.3*rng.Float64()
	in.Stitch.Pitch, in.Stitch.First, in.Stitch.Last = mm(3, 6), mm(3, 8), mm(3, 8)
	if rng.IntN(2) == 0 {
		in.Fits = []Fit{{At: mm(20, at.MM()), By: mm(-1, 3), Reach: mm(15, 40), Paper: rng.IntN(2) == 0}}
	}
	if rng.IntN(3) == 0 {
		in.Stitch.Measured = mm(170, 260)
	}
	return in
}
