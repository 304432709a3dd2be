package calc

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/length"
	"github.com/peterstace/simplefeatures/geom"
)

// polygon is a closed line as the geometry library holds it, which no plan uses.
func polygon(l curve.Line) geom.Geometry {
	var xy []float64
	for _, p := range append(append(curve.Line{}, l...), l[0]) {
		xy = append(xy, p.X, p.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}

// Areas by Green are those of the geometry library: the body with its tab and relief
// holes, both halves, the welt, the strap; outlines are simple, by the library as well.
func TestAreasAgainstLibrary(t *testing.T) {
	planned(t, 6, 10, func(in Input, p *Plan) {
		for _, part := range p.Parts() {
			area := polygon(part.Outline).Area()
			if err := polygon(part.Outline).Validate(); err != nil {
				t.Errorf("the outline of the %s: %v", part.Name, err)
			}
			want := map[string]float64{"body": p.Body.AreaWithTab, "welt": p.Welt.Area, "strap": p.Strap.Area()}[part.Name]
			tol := 1e-6 * want
			if part.Name == "body" && in.Belt.Loop == FoldedLoop {
				// Relief holes are cut into the corners; where the mouth climbs, the tab, whose
				// length counts from its middle, takes a sliver more on one side than the other.
				tol = math.Pi/4*9*1.5 + 0.35*in.Sheath.MouthRise.MM()*3 + 4
			} else if part.Name == "welt" {
				tol = 1e-4 * want
			}
			within(t, "area of the "+part.Name, area, want, tol)
		}
		within(t, "half", polygon(p.Flat.Front).Area(), p.Body.Area/2, 1e-6*p.Body.Area)
	})
}

// The welt lies where it is glued: its strip in the plane reaches from the inner edge to
// the outer, holds every hole of the seam, and keeps off what the edge needs by the
// clearance, by the library's distance.
func TestWeltAgainstLibrary(t *testing.T) {
	planned(t, 7, 8, func(in Input, p *Plan) {
		welt := polygon(p.Welt.Outline)
		for i, h := range p.Stitch.Positions {
			at := geom.XY{X: h.X, Y: h.Y}.AsPoint().AsGeometry()
			if !geom.Intersects(welt, at) {
				t.Errorf("hole %d at %v is not in the welt", i+1, h)
			}
			if d, _ := geom.Distance(welt.Boundary(), at); i > 0 && i < len(p.Stitch.Positions)-1 && d < math.Min(in.Sheath.outside().MM(), (in.Sheath.Gap-in.Sheath.Clearance).MM())-0.05 && h.Y > in.Sheath.outside().MM() {
				t.Errorf("hole %d at %v comes within %v of the welt's edge", i+1, h, d)
			}
		}
		e := p.at.edge
		ring := append(curve.Line{{X: e.X[0]}}, e.Line()...)
		ring = append(ring, curve.Vec{X: e.X[len(e.X)-1]})
		if d, _ := geom.Distance(polygon(ring), welt); d < in.Sheath.Clearance.MM()-0.02 {
			t.Errorf("the welt comes within %v of what the edge needs, clearance %v", d, in.Sheath.Clearance)
		}
		over, err := geom.Intersection(polygon(ring), welt)
		if err != nil || in.Sheath.Clearance > 0.1 && over.Area() > 1e-6 {
			t.Errorf("the welt covers %v mm² of what the edge needs (%v)", over.Area(), err)
		}
	})
}

// The thread guard is the least distance from what the edge needs to a hole's rim, by the
// library, and names a hole that comes as near.
func TestThreadGuardAgainstLibrary(t *testing.T) {
	planned(t, 10, 6, func(in Input, p *Plan) {
		e := p.at.edge
		ring := append(curve.Line{{X: e.X[0], Y: -50}}, e.Line()...)
		region := polygon(append(ring, curve.Vec{X: e.X[len(e.X)-1], Y: -50}))
		least := math.Inf(1)
		dist := make([]float64, len(p.Stitch.Positions))
		for i, h := range p.Stitch.Positions {
			dist[i], _ = geom.Distance(region, geom.XY{X: h.X, Y: h.Y}.AsPoint().AsGeometry())
			least = math.Min(least, dist[i])
		}
		const strays = 0.02 // what lines drawn with straight pieces do round a tight corner
		c := checkNamed(t, p, "thread guard")
		named := math.Inf(1)
		for i, h := range p.Stitch.Positions {
			if h.X == c.At {
				named = math.Min(named, dist[i])
			}
		}
		within(t, "thread guard", c.Value, least-p.Stitch.Choice().Diameter/2, strays)
		within(t, "distance of the hole that it names", named, least, strays)
	})
}

// Every hole of the seam, the loop and the drain lies in the leather as far as the plan
// measures it, by the library's distance; on the front half too.
func TestHolesAgainstLibrary(t *testing.T) {
	planned(t, 8, 3, func(in Input, p *Plan) {
		body := polygon(p.Flat.Outline)
		rim := newRim(p.Flat.Outline)
		for _, h := range p.holes() {
			at := geom.XY{X: h.Centre.X, Y: h.Centre.Y}.AsPoint().AsGeometry()
			d, _ := geom.Distance(body.Boundary(), at)
			if !geom.Intersects(body, at) {
				d = -d
			}
			for _, enough := range []float64{2, 9} {
				want := math.Max(-enough, math.Min(enough, d))
				if got := rim.depth(h.Centre, enough); math.Abs(got-want) > 1e-6 {
					t.Fatalf("%s at %v lies %v inside, by the library %v", h.what, h.Centre, got, want)
				}
			}
		}
	})
}

// The strap's strip has its width and its length, and half circles for ends, by the
// library; one shorter than it is wide is still an outline.
func TestStrapStripAgainstLibrary(t *testing.T) {
	for _, c := range []struct{ long, wide, want float64 }{{120, 18, 102*18 + math.Pi*81}, {20, 18, 2*18 + math.Pi*81}, {18, 18, math.Pi * 81}} {
		l := roundedStrip(c.long, c.wide)
		box := polygon(l).Envelope()
		within(t, "length of the strip", box.Width(), c.long, 1e-9)
		within(t, "width of the strip", box.Height(), c.wide, 1e-9)
		within(t, "area of the strip", polygon(l).Area(), c.want, 0.001*c.want)
	}
	// Of one 10 long the arcs of 9 cut each other off: two segments 5 high, by hand
	// 2·81·(φ − sin φ·cos φ) with cos φ = 4/9.
	phi := math.Acos(4.0 / 9)
	short := polygon(roundedStrip(10, 18))
	within(t, "length of a short strip", short.Envelope().Width(), 10, 1e-9)
	within(t, "area of a short strip", short.Area(), 162*(phi-math.Sin(phi)*4/9), 0.2)
}

// The drain by hand on a bar of 30: q = 3 + 1.5, so its centre at −q + 1 + d/2 for 2 mm
// is −2.5; half way to the glue line there; and it stands off fold and glue line by the
// library's distance.
func TestDrainAgainstLibrary(t *testing.T) {
	in := bar()
	in.Sheath.PointRoom, in.Sheath.Drain = 3, 2
	p := mustPlan(t, in)
	d := p.Flat.Drain
	within(t, "drain", d.Centre.X, -2.5, 1e-9)
	glue := geom.NewLineString(geom.NewSequence(flat(p.Flat.Glue), geom.DimXY)).AsGeometry()
	off, _ := geom.Distance(glue, geom.XY{X: d.Centre.X, Y: d.Centre.Y}.AsPoint().AsGeometry())
	if off-1 < drainRim || d.Centre.Y-1 < drainRim {
		t.Errorf("the drain keeps %v to the glue line and %v to the fold", off-1, d.Centre.Y-1)
	}
	for _, room := range []length.Length{2.4999, 2.5} { // q = d + 2 and a hair less
		in.Sheath.PointRoom = room
		if _, err := Compute(in); (err == nil) != (room == 2.5) {
			t.Errorf("a drain of 2 with a point room of %v: %v", room, err)
		}
	}
}

func flat(l curve.Line) (xy []float64) {
	for _, p := range l {
		xy = append(xy, p.X, p.Y)
	}
	return xy
}

// The inside of a cut across the sheath holds the knife's section whole, for every kind,
// by the library.
func TestAcrossHoldsTheSection(t *testing.T) {
	in := orchard()
	p := mustPlan(t, in)
	for _, x := range []float64{5, 40, 70, 104.9, 110, 117, 130, 150} {
		a := p.Across(x)
		room := append(append(curve.Line{}, a.Inside...), curve.Vec{X: a.Edge})
		for _, k := range a.Knife {
			if len(k) < 3 {
				continue
			}
			ring := append(append(curve.Line{{X: k[0].X}}, k...), curve.Vec{X: k[len(k)-1].X})
			out, err := geom.Difference(polygon(ring), polygon(room))
			if err != nil || out.Area() > 1e-6 {
				t.Errorf("at %v the section stands %v mm² out of the leather (%v)", x, out.Area(), err)
			}
		}
		if !a.Sheathed || a.Welt > a.Stitch || a.Stitch > a.Edge {
			t.Errorf("at %v: welt %v, stitch line %v, edge %v", x, a.Welt, a.Stitch, a.Edge)
		}
	}
	if a := p.Across(200); a.Sheathed || len(a.Knife) != 1 {
		t.Errorf("past the mouth: %+v", a)
	}
	spine, edge := p.Outline(1)
	if spine[0].X != 0 || edge[len(edge)-1].X != 225 || len(spine) != len(edge) {
		t.Errorf("the knife from the side runs from %v to %v", spine[0], edge[len(edge)-1])
	}
}
