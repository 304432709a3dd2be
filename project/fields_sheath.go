package project

import (
	"math"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project/value"
)

// Ranges and defaults are common practice, no source, and wide: they keep
// slips and nonsense out, not unusual work.

func dateAt(s Spec) column[Project] {
	s.Kind = Date
	return value.At(s, time.Time{}, func(p *Project) *time.Time { return &p.Customer.Due }).UnlessEmpty()
}

func sheathLength(key, name, hint string, fine length.Fineness, lo, hi float64, def length.Length, p func(*calc.Sheath) *length.Length) column[Project] {
	return value.LengthAt(Spec{Key: "sheath." + key, Group: "sheath", Name: name, Hint: hint, Fine: fine, Min: lo, Max: hi}, def,
		func(q *Project) *length.Length { return p(&q.Sheath) })
}

// asLeather takes the thickness of leather, too, as it is sold: a range of ounces is kept
// as it was typed.
func asLeather(c column[Project], as func(*Project) *string) column[Project] {
	c.Kind = Leather
	get, set := c.Get, c.Set
	c.Get = func(p *Project) any {
		if text := *as(p); text != "" {
			return length.Sold{Thick: get(p).(length.Length), As: text}
		}
		return get(p)
	}
	c.Set = func(p *Project, v any) {
		sold, ok := v.(length.Sold)
		if !ok {
			sold.Thick = v.(length.Length)
		}
		set(p, sold.Thick)
		*as(p) = sold.As
	}
	return c
}

func above(c column[Project]) column[Project] {
	c.Above = true
	return c
}

func needed(c column[Project]) column[Project] {
	c.Needed = true
	return c
}

var sheath = []column[Project]{
	needed(above(sheathLength("mouth", "mouth", "point to mouth along the fold: to half the handle, or short of a guard", length.Ruler, 0, longestKnife, 0,
		func(s *calc.Sheath) *length.Length { return &s.Mouth }))),
	asLeather(sheathLength("leather", "leather", "thickness of the body; 8 oz or 8-9 oz will do as well", length.Calliper, 0.2, 15, 3.2,
		func(s *calc.Sheath) *length.Length { return &s.Leather }), func(p *Project) *string { return &p.Sold.Body }),
	asLeather(sheathLength("welt", "welt", "thickness of all its plies together, glued", length.Calliper, 0.2, 40, 3.2,
		func(s *calc.Sheath) *length.Length { return &s.Welt }), func(p *Project) *string { return &p.Sold.Welt }),
	value.At(Spec{Key: "sheath.plies", Group: "sheath", Name: "welt plies", Kind: Count, Min: 1, Max: 10,
		Hint: "how many strips make the welt"}, 1, func(p *Project) *int { return &p.Sheath.Plies }),
	sheathLength("clearance", "edge to welt", "room between the edge and the welt's inner edge", length.Ruler, 0, 50, 3,
		func(s *calc.Sheath) *length.Length { return &s.Clearance }),
	sheathLength("handle_clearance", "handle to welt", "bolster, guard and handle to the welt: the closer, the better it holds", length.Ruler, 0, 50, 1,
		func(s *calc.Sheath) *length.Length { return &s.HandleClearance }),
	sheathLength("point_room", "room at the point", "room before the point: a pouch stretches and the point works its way in", length.Ruler, 0, 50, 3,
		func(s *calc.Sheath) *length.Length { return &s.PointRoom }),
	above(sheathLength("gap", "edge to stitches", "the edge to the stitch line", length.Ruler, 0, 100, 7.5,
		func(s *calc.Sheath) *length.Length { return &s.Gap })),
	sheathLength("margin", "stitches to edge", "the stitch line to the finished edge", length.Ruler, 0, 50, 5,
		func(s *calc.Sheath) *length.Length { return &s.Margin }),
	sheathLength("sanding", "for sanding", "cut oversize by this, sanded flush later", length.Ruler, 0, 20, 1.5,
		func(s *calc.Sheath) *length.Length { return &s.Sanding }),
	sheathLength("blend", "smallest hollow", "the drum that fits the tightest hollow of the cut line: its diameter", length.Ruler, 0, widestBlend, 60,
		func(s *calc.Sheath) *length.Length { return &s.Blend }).ShownAs(drum, setDrum),
	sheathLength("ease", "ease", "added to each half where the knife goes in too tight", length.Calliper, -10, 30, 0,
		func(s *calc.Sheath) *length.Length { return &s.Ease }),
	value.At(Spec{Key: "sheath.neutral", Group: "sheath", Name: "bend allowance", Kind: Share, Max: 1,
		Hint: "where the leather neither stretches nor gathers: 0 inside, 0.5 the middle, 1 outside"}, 0.5,
		func(p *Project) *float64 { return &p.Sheath.Neutral }),
	sheathLength("mouth_round", "mouth corners", "radius of the outer corners at the mouth", length.Ruler, 0, 200, 0,
		func(s *calc.Sheath) *length.Length { return &s.MouthRound }),
	sheathLength("mouth_rise", "mouth rise", "how much higher the mouth is at the fold than at the seam", length.Ruler, 0, 200, 0,
		func(s *calc.Sheath) *length.Length { return &s.MouthRise }),
	sheathLength("drain", "drain hole", "diameter of a hole below the point, in the back half; 0 for none", length.Calliper, 0, 20, 0,
		func(s *calc.Sheath) *length.Length { return &s.Drain }),
}

// widestBlend is the largest radius that hollows are rounded by, mm.
const widestBlend = 1000

// drum is the diameter of the tightest hollow of the cut line, which the
// sanding drum must go into: twice the blend less what lies outside the line.
func drum(p *Project) any {
	return value.Tidy(2 * (p.Sheath.Blend - p.Sheath.Margin - p.Sheath.Sanding))
}

func setDrum(p *Project, v any, u length.Unit) error {
	outside, d := p.Sheath.Margin+p.Sheath.Sanding, v.(length.Length)
	if most := 2 * (widestBlend - outside); d <= 0 || d > most {
		return Problem{Key: "sheath.blend", Index: -1, Found: value.Measure(d, u), Remedy: "give more than 0 and at most " + value.Bound(most, u, math.Floor)}
	}
	p.Sheath.Blend = value.Tidy(d/2 + outside)
	return nil
}

func beltLength(key, name, hint string, fine length.Fineness, lo, hi float64, def length.Length, p func(*calc.Belt) *length.Length) column[Project] {
	return value.LengthAt(Spec{Key: "belt." + key, Group: "belt", Name: name, Hint: hint, Fine: fine, Min: lo, Max: hi}, def,
		func(q *Project) *length.Length { return p(&q.Belt) })
}

var belt = []column[Project]{
	value.ChoiceAt(Spec{Key: "belt.loop", Group: "belt", Name: "loop", Hint: "folded: a tab carried on from the back half"},
		func(p *Project) *calc.LoopKind { return &p.Belt.Loop }, calc.FoldedLoop, calc.NoLoop),
	beltLength("width", "belt width", "of the belt", length.Ruler, 5, 150, 38,
		func(b *calc.Belt) *length.Length { return &b.Width }),
	beltLength("thickness", "belt thickness", "of the belt", length.Calliper, 0.5, 20, 4,
		func(b *calc.Belt) *length.Length { return &b.Thickness }),
	beltLength("ease", "play on the belt", "inside height of the loop less the belt's width", length.Ruler, 0, 50, 4,
		func(b *calc.Belt) *length.Length { return &b.Ease }),
	beltLength("tab", "tab width", "of the tab that becomes the loop", length.Ruler, 5, 300, 30,
		func(b *calc.Belt) *length.Length { return &b.Tab }),
	beltLength("row", "loop stitches", "how far below the mouth the loop is sewn down", length.Ruler, 0, 200, 12,
		func(b *calc.Belt) *length.Length { return &b.Row }),
	beltLength("lap", "lap", "leather past the loop's stitches", length.Ruler, 0, 200, 20,
		func(b *calc.Belt) *length.Length { return &b.Lap }),
	value.Optional(Spec{Key: "belt.offset", Group: "belt", Name: "fold to tab", Hint: "the fold to the tab's near edge", Max: 500, Auto: "centred"},
		func(p *Project) *length.Length { return &p.Belt.Offset }, func(p *Project) *bool { return &p.Belt.Centred }, false),
}

func strapLength(key, name, hint string, fine length.Fineness, lo, hi float64, def length.Length, p func(*calc.Strap) *length.Length) column[Project] {
	return value.LengthAt(Spec{Key: "strap." + key, Group: "strap", Name: name, Hint: hint, Fine: fine, Min: lo, Max: hi}, def,
		func(q *Project) *length.Length { return p(&q.Strap) })
}

var strap = []column[Project]{
	value.ChoiceAt(Spec{Key: "strap.kind", Group: "strap", Name: "strap", Hint: "snap: a strip round the handle, fixed on the back, closed in front"},
		func(p *Project) *calc.StrapKind { return &p.Strap.Kind }, calc.NoStrap, calc.SnapStrap),
	value.Optional(Spec{Key: "strap.at", Group: "strap", Name: "strap at", Hint: "where it goes round the handle, from the point along the fold; else 12 mm past mouth and handle's front", Max: longestKnife,
		Auto: "past front"},
		func(p *Project) *length.Length { return &p.Strap.At }, func(p *Project) *bool { return &p.Strap.Placed }, true),
	strapLength("width", "strap width", "of the strip; its ends are rounded by half of it", length.Ruler, 5, 80, 18,
		func(s *calc.Strap) *length.Length { return &s.Width }),
	asLeather(strapLength("thickness", "strap thickness", "thickness of its leather; 6 oz will do as well", length.Calliper, 0.2, 10, 2.4,
		func(s *calc.Strap) *length.Length { return &s.Thickness }), func(p *Project) *string { return &p.Sold.Strap }),
	strapLength("overlap", "strap overlap", "where its ends lie over each other, the snap in the middle", length.Ruler, 5, 150, 30,
		func(s *calc.Strap) *length.Length { return &s.Overlap }),
}

func stitchLength(key, name, hint string, fine length.Fineness, lo, hi float64, def length.Length, p func(*calc.Stitch) *length.Length) column[Project] {
	return value.LengthAt(Spec{Key: "stitch." + key, Group: "stitches", Name: name, Hint: hint, Fine: fine, Min: lo, Max: hi}, def,
		func(q *Project) *length.Length { return p(&q.Stitch) })
}

var stitches = []column[Project]{
	stitchLength("pitch", "stitch length", "wanted distance from hole to hole", length.Calliper, 1, 50, 4,
		func(s *calc.Stitch) *length.Length { return &s.Pitch }),
	above(stitchLength("thread", "thread", "diameter of one strand", length.Calliper, 0, 5, 0.8,
		func(s *calc.Stitch) *length.Length { return &s.Thread })),
	above(value.Optional(Spec{Key: "stitch.needle", Group: "stitches", Name: "needle or hook", Fine: length.Calliper, Max: 10, Auto: "1.5 threads",
		Hint: "diameter of the shank that must pass the hole"},
		func(p *Project) *length.Length { return &p.Stitch.Needle }, func(p *Project) *bool { return &p.Stitch.NeedleSet }, true)),
	stitchLength("first", "mouth to first hole", "along the stitch line", length.Calliper, 0, 200, 4,
		func(s *calc.Stitch) *length.Length { return &s.First }),
	stitchLength("last", "last hole to fold", "along the stitch line, at the point end", length.Calliper, 0, 200, 4,
		func(s *calc.Stitch) *length.Length { return &s.Last }),
	value.At(Spec{Key: "stitch.back", Group: "stitches", Name: "back stitches", Kind: Count, Max: 20,
		Hint: "stitches sewn twice at each end"}, 2, func(p *Project) *int { return &p.Stitch.Back }),
	stitchLength("tail", "tail", "free thread at each end", length.Ruler, 0, 2000, 150,
		func(s *calc.Stitch) *length.Length { return &s.Tail }),
	value.At(Spec{Key: "stitch.waste", Group: "stitches", Name: "thread to spare", Kind: Share, Max: 2,
		Hint: "share added to the thread in the seam: 0.05 or 5 %"}, 0.05, func(p *Project) *float64 { return &p.Stitch.Waste }),
	stitchLength("measured", "line as measured", "on the closed, sanded sheath; 0: as computed", length.Ruler, 0, 5000, 0,
		func(s *calc.Stitch) *length.Length { return &s.Measured }),
	value.ChoiceAt(Spec{Key: "stitch.method", Group: "stitches", Name: "sewn with", Hint: "hook: one thread, worked from both sides"},
		func(p *Project) *calc.Method { return &p.Stitch.Method }, calc.Hook, calc.TwoNeedles),
}
