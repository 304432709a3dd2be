package entry

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
	"chape/project/example"
	"chape/ui/test/rig"
)

// believable is a knife such as makers have, in inches as a rule and a calliper show them:
// from an outline of any proportion that is sold, its marks a 64th off here and there.
func believable(rng *rand.Rand) project.Project {
	in := func(lo, hi float64) length.Length {
		return length.Length(math.Round((lo+(hi-lo)*rng.Float64())*64)/64) * length.Inch
	}
	p := project.New("Test", length.Inches, project.Defaults())
	o := &p.Outline
	o.Point = knife.Point(rng.IntN(int(knife.Clip) + 1))
	o.Blade, o.Depth, o.Spine = in(2, 12), in(0.5, 3.5), in(0.0625, 0.375)
	o.Front = knife.Front(rng.IntN(int(knife.Guard) + 1))
	o.FrontLength, o.FrontDepth, o.FrontThick = in(0.125, 1), in(0.5, 2.75), in(0.25, 1)
	o.Handle, o.HandleDepth, o.HandleThick, o.Swell = in(3, 5.5), in(0.75, 1.625), in(0.5, 1.125), in(0, 0.25)
	p.Source = project.FromStations
	marks, err := o.Stations()
	if err != nil {
		return believable(rng)
	}
	for i := range marks {
		s := &marks[i]
		to64 := func(l length.Length) length.Length {
			off := float64(rng.IntN(3) - 1)
			return length.Length(max(0, math.Round(l.In()*64)+off)/64) * length.Inch
		}
		depth := to64(s.Depth())
		s.Top, s.Thick = to64(s.Top), to64(s.Thick)
		s.Bottom = s.Top + depth
	}
	p.Knife.Stations = marks
	return p
}

// asks tells whether a figure of a mark, typed again, is asked about.
func asks(p project.Project, mark int, key string, is length.Length) bool {
	i := slices.IndexFunc(project.MarkFields(mark), func(f project.Field) bool { return f.Key == key })
	return New(project.MarkFields(mark)[i], p, is.Exact(length.Inches), rig.Noon).wholeInches() != 0
}

var measured = []string{"knife.station.bottom", "knife.station.top", "knife.station.thick"}

// No figure of a knife that is right is asked about, of however many; an inch too much on a
// depth mostly is.
func TestNoQuestionAtKnivesThatAreRight(t *testing.T) {
	rng := rand.New(rand.NewPCG(20, 26))
	knives := []project.Project{example.Load(rig.Noon)}
	for range 40 {
		knives = append(knives, believable(rng))
	}
	slips, found := 0, 0
	for n, p := range knives {
		p.Units, p.Source = length.Inches, project.FromStations
		for i, s := range p.Knife.Stations {
			for _, key := range measured {
				f := fieldOf(project.MarkFields(i), key)
				has, _ := f.Get(p).(length.Length)
				if has > 0 && asks(p, i, key, has) {
					t.Errorf("knife %d, mark %d of %+v: %s of %s is asked about", n, i+1, p.Knife.Stations, f.Name, has.Exact(length.Inches))
				}
			}
			if i > 0 && s.At > p.Knife.Stations[i-1].At && s.Depth() < 1.25*length.Inch {
				slips++
				if asks(p, i, "knife.station.bottom", s.Depth()+length.Inch) {
					found++
				}
			}
		}
	}
	t.Logf("%d of %d slips are asked about", found, slips)
	if found*2 < slips {
		t.Errorf("%d of %d slips are asked about", found, slips)
	}
}

// The depth of a new knife's blade is asked about where an inch less is what a blade of that
// length has; at no blade from a slim fillet knife's proportions to a deep skinner's is it
// (0.10 to 0.42 of its length: common practice, no source).
func TestAnInchTooDeepForItsLength(t *testing.T) {
	if d := project.Defaults().Outline; math.Abs(float64(d.Depth/d.Blade)-usualDepth) > 0.005 {
		t.Errorf("a new project's blade is %.3f of its length deep, here it is %v", float64(d.Depth/d.Blade), usualDepth)
	}
	base := project.New("Test", length.Inches, project.Defaults())
	far := func(blade, depth length.Length, given bool) bool {
		p := base.Clone()
		if given {
			f := fieldOf(project.Fields, lengthKey)
			if v, err := f.Parse(blade.Exact(length.Inches), p); err != nil || f.Set(&p, v) != nil {
				t.Fatalf("a blade %v in long: %v", blade.In(), err)
			}
		}
		return New(fieldOf(project.Fields, depthKey), p, depth.Exact(length.Inches), rig.Noon).wholeInches() != 0
	}
	in := length.Inch
	if !far(3.875*in, 1.875*in, true) || far(3.875*in, 0.875*in, true) || far(3.875*in, 1.875*in, false) || far(3*in, 1*in, true) {
		t.Error("1 7/8 for 7/8 on a blade 3 7/8 long")
	}
	rng := rand.New(rand.NewPCG(7, 8))
	slips, found := map[bool]int{}, map[bool]int{}
	for range 3001 {
		blade := length.Length(math.Round((2+10*rng.Float64())*64)/64) * in
		depth := length.Length(math.Floor(float64(blade.In()*(0.10+0.32*rng.Float64())*64))/64) * in
		if far(blade, depth, true) {
			t.Fatalf("a blade %v in long and %v in deep is asked about", blade.In(), depth.In())
		}
		if depth > in/2 && depth < in {
			short := blade <= 4*in
			if slips[short]++; far(blade, depth+in, true) {
				found[short]++
			}
		}
	}
	t.Logf("found: %d of %d slips on blades of up to 4 in, %d of %d on longer ones", found[true], slips[true], found[false], slips[false])
	if found[true]*10 < slips[true]*8 {
		t.Errorf("%d of %d slips on short blades are found", found[true], slips[true])
	}
}

func fieldOf(fields []project.Field, key string) project.Field {
	return fields[slices.IndexFunc(fields, func(f project.Field) bool { return f.Key == key })]
}

const eighth = length.Inch / 8

// inchKnife is a knife 7/8 deep, by marks an inch apart and by its outline.
func inchKnife() project.Project {
	p := project.New("Test", length.Inches, project.Defaults())
	p.Source, p.Untouched = project.FromStations, ""
	p.Knife.Stations = nil
	for i, depth := range []length.Length{0, 5, 7, 7, 7} {
		p.Knife.Stations = append(p.Knife.Stations, knife.Station{At: length.Length(i) * length.Inch, Bottom: depth * eighth, Thick: eighth, Kind: knife.Blade, Bevel: 1})
	}
	p.Outline.Depth, p.Outline.Blade = 7*eighth, 4.5*length.Inch
	return p
}

// The slip in its words, on fields and marks of a knife 7/8 in deep.
func TestAWholeInchTooMuch(t *testing.T) {
	p := inchKnife()
	for _, c := range []struct {
		key   string
		mark  int
		text  string
		slip  string // "": nothing is asked
		inMM  bool
		fresh bool // the figure that stands is the new project's
	}{
		{key: "knife.outline.depth", mark: -1, text: "1 7/8", slip: "is the 1 too much?"},
		{key: "knife.outline.depth", mark: -1, text: "1.875", slip: "is the 1 too much?"},
		{key: "knife.outline.depth", mark: -1, text: "1-7/8 in", slip: "is the 1 too much?"},
		{key: "knife.outline.depth", mark: -1, text: "2 7/8", slip: "is the 2 too much?"},
		{key: "knife.outline.depth", mark: -1, text: "1 7/8", fresh: true},
		{key: "knife.outline.depth", mark: -1, text: "1 1/2"},
		{key: "knife.outline.depth", mark: -1, text: "3/4"},
		{key: "knife.outline.depth", mark: -1, text: "1 7/8", inMM: true},
		{key: "knife.outline.blade", mark: -1, text: "5 1/2"}, // a blade an inch longer is no wonder
		{key: "sheath.gap", mark: -1, text: "1 5/16", slip: "is the 1 too much?"},
		{key: "sheath.mouth", mark: -1, text: "5 1/2"},
		{key: "knife.station.bottom", mark: 3, text: "1 7/8", slip: "is the 1 too much?"},
		{key: "knife.station.bottom", mark: 4, text: "1 7/8", slip: "is the 1 too much?"},
		{key: "knife.station.bottom", mark: 3, text: "1 15/16", slip: "is the 1 too much?"},
		{key: "knife.station.bottom", mark: 3, text: "2", slip: "is it 1?"},
		{key: "knife.station.bottom", mark: 3, text: "2 13/16", slip: "is the 2 too much?"},
		{key: "knife.station.bottom", mark: 3, text: "1 1/8"},
		{key: "knife.station.bottom", mark: 3, text: "3/4"},
		{key: "knife.station.bottom", mark: 1, text: "1 5/8"}, // beside the point
		{key: "knife.station.top", mark: 3, text: "1 1/16", slip: "is the 1 too much?"},
		{key: "knife.station.at", mark: 3, text: "3 3/4"},
	} {
		q := p.Clone()
		if c.inMM {
			q.Units = length.Millimetres
		}
		if c.fresh {
			q.Untouched = "depth"
		}
		fields := project.MarkFields(max(0, c.mark))
		if c.mark < 0 {
			fields, q.Source = project.Fields, project.FromOutline
		}
		e := New(fieldOf(fields, c.key), q, c.text, rig.Noon)
		if got := e.wholeInches() != 0; got != (c.slip != "") || got && e.slip() != c.slip || got && !e.Far() {
			t.Errorf("%s of %d, %q: asked %v, %q, want %q", c.key, c.mark+1, c.text, got, e.slip(), c.slip)
		}
	}
	deep := p.Clone()
	for i := range deep.Knife.Stations[1:] {
		deep.Knife.Stations[i+1].Bottom = 15 * eighth
	}
	if e := New(fieldOf(project.MarkFields(3), "knife.station.bottom"), deep, "7/8", rig.Noon); !e.Far() || e.slip() != "is it 1 7/8?" {
		t.Errorf("7/8 between 1 7/8: %q", e.slip())
	}
}
