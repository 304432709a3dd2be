package draw

import (
	"math"
	"strings"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

// MeasureOf is how a field of a project is marked on a drawing of its plan; row is that
// of a mark or a correction, from 0. ok is false for what can't be seen there: a choice, or a measure of none.
func MeasureOf(p *calc.Plan, key string, row int) (m Measure, ok bool) {
	f := finder{p: p, in: p.Input, row: row}
	for _, s := range p.Input.Knife.Stations { // as they lie against the fold
		off := length.Length(p.Fold.At(s.At.MM()))
		s.Top, s.Bottom = s.Top-off, s.Bottom-off
		f.marks = append(f.marks, s)
	}
	if len(f.marks) < 2 {
		return m, false
	}
	table, name, _ := strings.Cut(key, ".")
	switch table {
	case "knife":
		m = f.ofKnife(strings.TrimPrefix(strings.TrimPrefix(name, "outline."), "station."), strings.HasPrefix(name, "station."))
	case "sheath":
		m = f.ofSheath(name)
	case "belt":
		m = f.ofBelt(name)
	case "stitch":
		m = f.ofStitches(name)
	case "strap", "fit":
		m = f.along(key)
	}
	return m, m.Hollow > 0 || m.A != m.B
}

// finder finds the ends of measures.
type finder struct {
	p     *calc.Plan
	in    calc.Input
	marks []knife.Station
	row   int
}

func side(ax, au, bx, bu float64) Measure {
	return Measure{View: Side, A: curve.Vec{X: ax, Y: au}, B: curve.Vec{X: bx, Y: bu}}
}

func pattern(ax, ay, bx, by float64) Measure {
	return Measure{View: Pattern, A: curve.Vec{X: ax, Y: ay}, B: curve.Vec{X: bx, Y: by}}
}

func across(at, au, av, bu, bv float64) Measure {
	return Measure{View: Across, At: at, A: curve.Vec{X: au, Y: av}, B: curve.Vec{X: bu, Y: bv}}
}

// under is where a length along the knife is drawn: clear of its edge.
func (f finder) under() float64 {
	deepest := 0.0
	for _, s := range f.marks {
		deepest = math.Max(deepest, s.Bottom.MM())
	}
	return deepest + 3
}

// blade is the last mark of the blade and the deepest one; front the first that is none,
// handle where the handle begins.
func (f finder) parts() (end, deepest, front, handle knife.Station) {
	first := true
	for i, s := range f.marks {
		if s.Kind == knife.Blade {
			end = s
			if s.Depth() > deepest.Depth() {
				deepest = s
			}
			continue
		}
		if first {
			front, handle, first = s, s, false
		} else if s.At == f.marks[i-1].At {
			handle = s
		}
	}
	return end, deepest, front, handle
}

func upright(s knife.Station) Measure {
	return side(s.At.MM(), s.Top.MM(), s.At.MM(), s.Bottom.MM())
}

func thick(s knife.Station) Measure {
	middle := (s.Top + s.Depth()/2).MM()
	return across(s.At.MM(), middle, s.Thick.MM()/2, middle, -s.Thick.MM()/2)
}

func grind(s knife.Station) Measure {
	return across(s.At.MM(), s.Bottom.MM()-s.Bevel*s.Depth().MM(), 0, s.Bottom.MM(), 0)
}

func (f finder) ofKnife(name string, ofMark bool) Measure {
	end, deepest, front, handle := f.parts()
	last, u := f.marks[len(f.marks)-1], f.under()
	if ofMark {
		return f.ofMark(name)
	}
	switch name {
	case "blade":
		return side(0, u, end.At.MM(), u)
	case "depth":
		return upright(deepest)
	case "spine":
		top := end.Top.MM() + 0.5
		return across(end.At.MM(), top, end.Thick.MM()/2, top, -end.Thick.MM()/2)
	case "grind":
		return grind(deepest)
	case "front_length":
		return side(front.At.MM(), u, handle.At.MM(), u)
	case "front_depth":
		return upright(front)
	case "front_thick":
		return thick(front)
	case "front_back":
		return side(front.At.MM(), front.Top.MM(), front.At.MM(), end.Top.MM())
	case "front_edge":
		return side(front.At.MM(), end.Bottom.MM(), front.At.MM(), front.Bottom.MM())
	case "handle":
		return side(handle.At.MM(), u, last.At.MM(), u)
	case "handle_depth":
		return upright(handle)
	case "handle_thick":
		return thick(handle)
	case "swell":
		fat := handle
		for _, s := range f.marks {
			if s.Kind != knife.Blade && s.At >= handle.At && s.Depth() > fat.Depth() {
				fat = s
			}
		}
		return side(fat.At.MM(), handle.Bottom.MM(), fat.At.MM(), fat.Bottom.MM())
	case "butt":
		return upright(last)
	}
	return Measure{}
}

func (f finder) ofMark(name string) Measure {
	s := f.marks[max(0, min(f.row, len(f.marks)-1))]
	switch name {
	case "at":
		return side(0, f.under(), s.At.MM(), f.under())
	case "top":
		return side(s.At.MM(), -f.p.Fold.At(s.At.MM()), s.At.MM(), s.Top.MM())
	case "bottom":
		return upright(s)
	case "thick":
		return thick(s)
	case "bevel":
		return grind(s)
	}
	return Measure{}
}

func (f finder) ofSheath(name string) Measure {
	s, mouth := f.in.Sheath, f.in.Sheath.Mouth.MM()
	_, deepest, _, handle := f.parts()
	a := f.p.Across(math.Min(deepest.At.MM(), mouth))
	rim := a.Edge - s.Margin.MM()/2
	edge := deepest.Bottom.MM()
	switch name {
	case "mouth":
		return side(0, f.under(), mouth, f.under())
	case "leather":
		return across(a.At, rim, a.HalfWelt, rim, a.HalfWelt+a.Leather)
	case "welt":
		return across(a.At, rim, a.HalfWelt, rim, -a.HalfWelt)
	case "clearance":
		return across(a.At, edge, 0, edge+s.Clearance.MM(), 0)
	case "handle_clearance":
		h := math.Min(handle.At.MM(), mouth)
		w := f.p.Across(h).Welt
		return across(h, w-s.HandleClearance.MM(), 0, w, 0)
	case "gap":
		return across(a.At, edge, 0, edge+s.Gap.MM(), 0)
	case "margin":
		return across(a.At, a.Stitch, 0, a.Edge, 0)
	case "sanding":
		return across(a.At, a.Edge, 0, a.Edge+s.Sanding.MM(), 0)
	case "neutral":
		return across(a.At, 0, 0, -s.Neutral*a.Leather, 0)
	}
	return f.atTheEnds(name)
}

func (f finder) atTheEnds(name string) Measure {
	s, mouth := f.in.Sheath, f.in.Sheath.Mouth.MM()
	switch name {
	case "point_room":
		u := f.marks[0].Bottom.MM()
		return side(-s.PointRoom.MM(), u, 0, u)
	case "blend":
		return f.hollow()
	case "mouth_round":
		return pattern(mouth-s.MouthRound.MM(), f.p.Body.MouthCut, mouth, f.p.Body.MouthCut)
	case "mouth_rise":
		return pattern(mouth, 0, mouth+s.MouthRise.MM(), 0)
	case "ease":
		return pattern(mouth, f.p.Body.MouthStitch, mouth, f.p.Body.MouthStitch-s.Ease.MM())
	case "drain":
		if d := f.p.Flat.Drain; d != nil {
			return pattern(d.Centre.X-d.Diameter/2, d.Centre.Y, d.Centre.X+d.Diameter/2, d.Centre.Y)
		}
	}
	return Measure{}
}

// hollow is the circle that lies in the tightest hollow of the cut line.
func (f finder) hollow() Measure {
	const step = 4.0 // mm
	cut, best := f.p.Flat.Cut, Measure{View: Pattern}
	tightest := 1e-4 // 1/mm: flatter than that is no hollow to be seen
	for x := step; x < f.in.Sheath.Mouth.MM()-step; x++ {
		y0, y1, y2 := cut.Height(x-step), cut.Height(x), cut.Height(x+step)
		slope, bend := (y2-y0)/(2*step), (y0+y2-2*y1)/(step*step)
		if k := bend / math.Pow(1+slope*slope, 1.5); k > tightest {
			n := math.Hypot(1, slope)
			best.Hollow, tightest = 1/k, k
			best.A = curve.Vec{X: x - slope/n/k, Y: y1 + 1/n/k}
		}
	}
	return best
}

func (f finder) ofBelt(name string) Measure {
	l, b := f.p.Loop, f.in.Belt
	if f.p.Body.TabLength <= 0 {
		return Measure{}
	}
	tab, end := b.Tab.MM(), l.Start+f.p.Body.TabLength
	middle, mouth := l.Offset+tab/2, f.in.Sheath.Mouth.MM()
	switch name {
	case "tab":
		x := (l.Start + end) / 2
		return pattern(x, l.Offset, x, l.Offset+tab)
	case "row":
		return pattern(mouth-b.Row.MM(), middle, mouth, middle)
	case "lap":
		return pattern(end-b.Lap.MM(), middle, end, middle)
	case "offset":
		return pattern(mouth, 0, mouth, l.Offset)
	}
	return Measure{}
}

func (f finder) ofStitches(name string) Measure {
	at, line := f.p.Stitch.Positions, f.p.Plane.Stitch
	if len(at) < 2 || len(line) < 2 {
		return Measure{}
	}
	n := len(at) - 1
	ends := func(a, b curve.Vec) Measure { return Measure{View: Side, A: a, B: b} }
	switch name {
	case "pitch":
		return ends(at[n/2], at[n/2+1])
	case "first":
		return ends(line[len(line)-1], at[0])
	case "last":
		return ends(at[n], line[0])
	}
	return Measure{}
}

// along is a place measured from the point, of the strap or of a correction.
func (f finder) along(key string) Measure {
	u := f.under()
	switch {
	case key == "strap.at" && f.p.Strap != nil:
		return side(0, u, f.p.Strap.At, u)
	case len(f.in.Fits) == 0:
		return Measure{}
	}
	fit := f.in.Fits[max(0, min(f.row, len(f.in.Fits)-1))]
	y := f.p.Flat.Cut.Height(fit.At.MM()) / 2
	switch key {
	case "fit.at":
		return pattern(0, y, fit.At.MM(), y)
	case "fit.reach":
		return pattern(fit.At.MM()-fit.Reach.MM(), y, fit.At.MM()+fit.Reach.MM(), y)
	}
	return Measure{}
}
