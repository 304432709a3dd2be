package knife

import (
	"math"
	"slices"

	"chape/calc/length"
)

// Shares that make an outline a believable knife. They are our own choice for
// a first drawing; the maker's own readings replace them.
const (
	tipThick   = 0.6 // mm across at the point
	guardBack  = 0.2 // of a guard's depth beyond the blade's that stands proud of the back
	fattest    = 0.5 // place of the swell along the handle
	taperAt    = 0.55
	slabCorner = 2.0 // mm, radius
)

// curveMarks and handleMarks are the places of the marks, as shares of the
// stretch over which the edge curves up to the point, and of the handle. They
// stand closer where the outline turns.
var (
	curveMarks  = []float64{0, 0.08, 0.18, 0.32, 0.5, 0.75, 1}
	handleMarks = []float64{0, 0.15, 0.3, fattest, 0.7, 0.85, 1}
)

// Stations fills the marks of a knife from the outline. The rule lies along
// the blade's back and touches what is proudest of it: the gap at the back is
// 0 but where the back falls to the point, or where a guard holds the rule
// off. Readings are rounded to what a calliper shows, 0.05 mm. The error is
// that of Validate.
func (o Outline) Stations() ([]Station, error) {
	if err := o.Validate(); err != nil {
		return nil, err
	}
	s := o.blade()
	if o.Front != NoFront {
		s = append(s, o.front()...)
	}
	return append(s, o.handle()...), nil
}

// Makes is the figure of the outline that the depth or thickness of the mark at an index
// follows from: its key in the project file, and its name.
func (o Outline) Makes(mark int, measure string) (key, name string) {
	deep, blade, front := measure == "depth", len(o.bladeMarks()), 0
	if o.Front != NoFront {
		front = len(o.front())
	}
	switch {
	case mark < blade && deep:
		return "depth", "blade depth"
	case mark < blade:
		return "spine", "spine thickness"
	case mark < blade+front && deep:
		return "front_depth", "front depth"
	case mark < blade+front:
		return "front_thick", "front thickness"
	case o.Butt != 0 && o.Butt < o.HandleDepth && mark-blade-front > slices.Index(handleMarks, fattest):
		return "butt", "butt depth"
	case deep:
		return "handle_depth", "handle depth"
	}
	return "handle_thick", "handle thickness"
}

// proud is how far a guard stands over the blade's back.
func (o Outline) proud() length.Length {
	switch {
	case o.Front != Guard:
		return 0
	case o.BackGiven:
		return o.FrontBack
	case o.EdgeGiven:
		return reading(guardBack / (1 - guardBack) * o.FrontEdge)
	}
	return reading(guardBack * max(0, o.FrontDepth-o.Depth))
}

// frontDepth is the depth of the bolster or guard, back to belly.
func (o Outline) frontDepth() length.Length {
	if o.Front == Guard && o.EdgeGiven {
		return o.Depth + o.proud() + o.FrontEdge
	}
	return o.FrontDepth
}

func (o Outline) blade() []Station {
	var marks []Station
	for _, at := range o.bladeMarks() {
		back, edge := o.profile(at)
		s := Station{
			At:     length.Length(at),
			Top:    reading(back + o.proud()),
			Bottom: reading(edge + o.proud()),
			Thick:  o.taper(at),
			Bevel:  1,
		}
		s.Bottom = max(s.Bottom, s.Top)
		if d := s.Depth(); o.Grind > 0 && d > o.Grind {
			s.Bevel = float64(o.Grind / d)
		}
		marks = append(marks, s)
	}
	return marks
}

// bladeMarks gives the places of the blade's marks: along the curve of the
// edge, half way along what is left of the blade, and at its end.
func (o Outline) bladeMarks() []float64 {
	curve, blade := o.curve(), float64(o.Blade)
	var places []float64
	for _, t := range curveMarks {
		places = append(places, half(t*curve))
	}
	const near = 5 // mm: no mark closer than this to the blade's end
	if blade-curve < near {
		places = places[:len(places)-1]
	} else if blade-curve > 2*near {
		places = append(places, half((curve+blade)/2))
	}
	return append(places, blade)
}

// curve is how far back from the point the edge curves up to it, mm.
func (o Outline) curve() float64 { return math.Min(2*float64(o.Depth), float64(o.Blade)) }

// half rounds to half a millimetre of the rule, where pencil marks stand.
func half(mm float64) float64 { return math.Round(mm*2) / 2 }

// profile gives the places of back and edge at x, from the line of the back.
func (o Outline) profile(x float64) (back, edge length.Length) {
	d := float64(o.Depth)
	point := 0.0     // how deep the point lies, as a share of the depth
	var drop float64 // share of that left at x
	switch z := 1 - math.Min(1, x/o.curve()); o.Point {
	case Drop:
		point, drop = 0.3, z*z
	case Clip:
		point = 0.4
		drop = 0.6*z + 0.4*(1-(1-z)*(1-z))
	case Spear:
		point, drop = 0.5, 1-bow(1-z)
	case Sheepsfoot:
		z = 1 - math.Min(1, x/(0.6*o.curve()))
		point, drop = 0.92, 1-bow(1-z)
	}
	return length.Length(point * d * drop),
		length.Length(d * (point + (1-point)*bow(math.Min(1, x/o.curve()))))
}

// bow rises from (0, 0) to (1, 1) where it is level, as a belly does: fuller
// than a parabola, with less of a nose than an ellipse.
func bow(z float64) float64 { return math.Pow(1-(1-z)*(1-z), 0.8) }

// taper is the thickness of the spine at x: it thins steadily towards the
// point, and quickly at its end.
func (o Outline) taper(x float64) length.Length {
	t := x / float64(o.Blade)
	thick := float64(o.Spine) * (taperAt + (1-taperAt)*t)
	tip := math.Min(tipThick, taperAt*float64(o.Spine))
	near := math.Min(1, t/0.16)
	return reading(length.Length(tip + (thick-tip)*near))
}

// front gives the two faces of the bolster or guard. A bolster is in line with
// the blade's back; what it is deeper stands on the edge side.
func (o Outline) front() []Station {
	s := Station{At: o.Blade, Bottom: reading(o.frontDepth()), Thick: reading(o.FrontThick), Kind: o.Section, Bevel: 1}
	if o.Front == Guard {
		s.Kind = Slab
	}
	s.Round = corner(s)
	end := s
	end.At += o.FrontLength
	return []Station{s, end}
}

func (o Outline) handle() []Station {
	start := o.Blade
	if o.Front != NoFront {
		start += o.FrontLength
	}
	butt := o.Butt
	if butt == 0 {
		butt = o.HandleDepth
	}
	var marks []Station
	for _, t := range handleMarks {
		depth := swelling(t, o.HandleDepth, o.Swell, butt)
		thick := swelling(t, o.HandleThick, o.Swell, o.HandleThick)
		at := start + length.Length(t)*o.Handle
		if t > 0 && t < 1 {
			at = length.Length(half(float64(at)))
		}
		s := Station{At: at, Top: o.proud(), Bottom: reading(o.proud() + depth), Thick: reading(thick), Kind: o.Section, Bevel: 1}
		s.Round = corner(s)
		marks = append(marks, s)
	}
	return marks
}

// swelling runs in two fair curves from the handle's front over its fattest
// place to the butt.
func swelling(t float64, front, swell, butt length.Length) length.Length {
	fair := func(z float64) length.Length { return length.Length((1 - math.Cos(math.Pi*z)) / 2) }
	fat := front + swell
	if t <= fattest {
		return front + (fat-front)*fair(t/fattest)
	}
	return fat + (butt-fat)*fair((t-fattest)/(1-fattest))
}

// corner is the radius of a slab's outer corners.
func corner(s Station) length.Length {
	if s.Kind != Slab {
		return 0
	}
	return reading(min(slabCorner, s.Thick/4, s.Depth()/4))
}

// reading rounds to what a calliper shows.
func reading(l length.Length) length.Length {
	return length.Length(math.Round(float64(l)*20) / 20)
}
