package file

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
)

var oddFiles = flag.Int("odd.files", 200, "how many random files TestOddFiles plans")

// oddFile is a valid file near one of ours: a few numbers moved as another knife would
// move them, sometimes one to where nobody would have it.
func oddFile(r *rand.Rand, from []project.Project) (p project.Project, changes string) {
	fields := slices.DeleteFunc(slices.Clone(project.Fields), func(f project.Field) bool {
		measure := f.Kind == project.Length || f.Kind == project.Leather || f.Key == "belt.loop"
		return !measure || !slices.Contains([]string{"sheath", "belt", "stitches", "strap"}, f.Group)
	})
	p = from[r.IntN(len(from))].Clone()
	for range 1 + r.IntN(6) {
		f := fields[r.IntN(len(fields))]
		var v any = f.Options
		if f.Kind == project.Choice {
			v = f.Options[r.IntN(len(f.Options))]
		} else {
			now, _ := f.Get(p).(length.Length)
			l := now * length.Length(0.85+0.3*r.Float64())
			switch r.IntN(14) {
			case 0:
				l = length.Length(f.Min)
			case 1:
				l = length.Length(f.Min + (f.Max-f.Min)*math.Pow(r.Float64(), 4))
			case 2:
				l = 2.5 * now
			}
			v = length.Length(math.Round(float64(l)*8) / 8)
		}
		before := p.Clone()
		if f.Set(&p, v) == nil {
			changes += fmt.Sprintf("%s = %v; ", f.Key, v)
		} else {
			p = before
		}
	}
	return p, changes
}

// TestOddFiles plans random valid files: every plan is refused, warned, or true as a
// geometry library sees it, which shares no code with ours (OGC Simple Features 1.2.1).
// At least half are neither refused nor warned, so that this says something.
func TestOddFiles(t *testing.T) {
	var from []project.Project
	for _, name := range ours(t) {
		p, _, err := Decode(name, read(t, name))
		if err != nil {
			t.Fatal(err)
		}
		from = append(from, p)
	}
	r := rand.New(rand.NewPCG(11, 25))
	refused, warned, bad := 0, 0, 0
	for n := range *oddFiles {
		p, changes := oddFile(r, from)
		p, _, err := Decode("odd.toml", Encode(p))
		if err != nil {
			t.Fatalf("file %d is no valid one: %v", n, err)
		}
		plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
		switch {
		case err != nil:
			refused++
			continue
		case slices.ContainsFunc(plan.Checks, func(c calc.Check) bool { return c.Level == calc.Warn }):
			warned++
			continue
		}
		if why := untrue(plan); why != "" {
			bad++
			if bad <= 20 {
				t.Errorf("file %d, %s: %s: %s", n, p.Title, changes, why)
			}
		}
	}
	t.Logf("%d files, %d refused, %d warned, %d untrue", *oddFiles, refused, warned, bad)
	if 2*(refused+warned) > *oddFiles {
		t.Errorf("%d refused and %d warned of %d: more than half", refused, warned, *oddFiles)
	}
}

// untrue says what a geometry library finds wrong with a plan; "" where nothing is.
func untrue(p *calc.Plan) string {
	body, err := polygonOf(p.Flat.Outline)
	if err != nil {
		return "the outline is not simple: " + err.Error()
	}
	if front, err := polygonOf(p.Flat.Front); err != nil || front.Area() <= 0 {
		return fmt.Sprintf("the front half is not simple, or nothing: %v", err)
	}
	if welt, err := polygonOf(p.Welt.Outline); err != nil || welt.Area() <= 0 || p.Welt.Area <= 0 {
		return fmt.Sprintf("the welt is not simple, or nothing: %v", err)
	}
	if p.Body.Area <= 0 || body.Area() <= 0 {
		return "an area is not positive"
	}
	drill := p.Stitch.Choice().Diameter
	var holes []calc.Circle
	for _, v := range p.Stitch.Flat {
		holes = append(holes, calc.Circle{Centre: v, Diameter: drill}, calc.Circle{Centre: curve.Vec{X: v.X, Y: -v.Y}, Diameter: drill})
	}
	back := len(holes)
	for _, v := range slices.Concat(p.Loop.Body, p.Loop.Lap) {
		holes = append(holes, calc.Circle{Centre: v, Diameter: drill})
	}
	if d := p.Flat.Drain; d != nil {
		holes = append(holes, *d)
	}
	if n := len(p.Stitch.Positions); n > 0 && p.Stitch.Positions[n-1].Y < drill/2+1-1e-6 {
		return "the last hole is in the fold"
	}
	if why := within(body, holes); why != "" {
		return why
	}
	for i, h := range holes {
		if i >= back && h.Centre.Y < h.Diameter/2 {
			return fmt.Sprintf("hole %d at %v is not on the back half", i, h.Centre)
		}
		for j, o := range holes[:i] {
			if gap := h.Centre.Dist(o.Centre); gap < 1.5*(h.Diameter+o.Diameter)/2-1e-6 {
				return fmt.Sprintf("holes %d and %d are %.2f mm apart", i, j, gap)
			}
		}
	}
	for _, v := range p.Loop.Lap {
		if v.X < p.Loop.Start {
			return fmt.Sprintf("the lap's hole at %v is below the mouth", v)
		}
	}
	for i, r := range p.Loop.Relief {
		if r.Centre.Y < r.Diameter/2 {
			return fmt.Sprintf("relief hole %d cuts the fold", i)
		}
		for _, h := range holes {
			if r.Centre.Dist(h.Centre) < (r.Diameter+h.Diameter)/2 {
				return fmt.Sprintf("relief hole %d meets the hole at %v", i, h.Centre)
			}
		}
		if i > 0 && r.Centre.Dist(p.Loop.Relief[0].Centre) < r.Diameter {
			return "the relief holes meet"
		}
	}
	return ""
}

// within says which holes have no millimetre of leather round them. Those of one
// diameter are asked about together, which the library does fast.
func within(body geom.Geometry, holes []calc.Circle) string {
	byDiameter := map[float64][]geom.Point{}
	for _, h := range holes {
		byDiameter[h.Diameter] = append(byDiameter[h.Diameter], geom.XY{X: h.Centre.X, Y: h.Centre.Y}.AsPoint())
	}
	rim := body.Boundary()
	for diameter, points := range byDiameter {
		all := geom.NewMultiPoint(points).AsGeometry()
		in, err := geom.Contains(body, all)
		away, _ := geom.Distance(all, rim)
		if err != nil || !in || away < diameter/2+1-1e-6 {
			return fmt.Sprintf("a hole of %v mm: on the leather %v (%v), %.2f mm from the rim", diameter, in, err, away)
		}
	}
	return ""
}

// polygonOf is a closed outline as the library has it; the error says why it is none.
func polygonOf(l curve.Line) (geom.Geometry, error) {
	var xy []float64
	for i, v := range l {
		if i > 0 && v.Dist(l[i-1]) < 1e-9 {
			continue
		}
		xy = append(xy, v.X, v.Y)
	}
	if len(xy) >= 4 && math.Hypot(xy[0]-xy[len(xy)-2], xy[1]-xy[len(xy)-1]) < 1e-9 {
		xy = xy[:len(xy)-2]
	}
	xy = append(xy, xy[0], xy[1])
	g := geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
	return g, g.Validate()
}
