package sheet

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"chape/calc/curve"
)

// tilings are pieces of random size on sheets of random size.
func tilings(n int) (out []Tiling, of []Drawing) {
	r := rand.New(rand.NewPCG(6, 6))
	for range n {
		d := strip(20+900*r.Float64(), 20+900*r.Float64())
		out = append(out, CutUp(&d, 130+150*r.Float64(), 96+250*r.Float64(), "B"))
		of = append(of, d)
	}
	return out, of
}

// All sheets are of one size and neighbours share 10 mm, no more and no less; they are counted
// row by row, and their names say where they lie.
func TestNeighboursShareTenMillimetres(t *testing.T) {
	all, _ := tilings(60)
	for _, g := range all {
		for i, s := range g.Sheets {
			if s.Number != i+1 || s.Name() != fmt.Sprintf("row %d, column %d", s.Row, s.Col) {
				t.Fatalf("sheet %d is number %d, %s", i, s.Number, s.Name())
			}
			if i > 0 && (s.Row < g.Sheets[i-1].Row || s.Row == g.Sheets[i-1].Row && s.Col <= g.Sheets[i-1].Col) {
				t.Fatalf("%s comes after %s", s.Name(), g.Sheets[i-1].Name())
			}
			if math.Abs(s.Area.Width()-g.Sheets[0].Area.Width()) > 1e-9 || math.Abs(s.Area.Height()-g.Sheets[0].Area.Height()) > 1e-9 {
				t.Fatalf("%s is of another size", s.Name())
			}
			for _, o := range g.Sheets {
				if o.Row == s.Row && o.Col == s.Col+1 && math.Abs(s.Area.Hi.X-o.Area.Lo.X-10) > 1e-9 ||
					o.Col == s.Col && o.Row == s.Row+1 && math.Abs(s.Area.Hi.Y-o.Area.Lo.Y-10) > 1e-9 {
					t.Fatalf("%s and %s share %v, %v", s.Name(), o.Name(), s.Area.Hi.X-o.Area.Lo.X, s.Area.Hi.Y-o.Area.Lo.Y)
				}
			}
		}
	}
}

// Every two neighbours have a joint, in the middle of what they share, over its whole length,
// with two marks on it far from each other; both marks are whole on both sheets, and no two
// joints of a piece have one name.
func TestJoints(t *testing.T) {
	all, _ := tilings(60)
	for _, g := range all {
		pairs, names := 0, map[string]bool{}
		for _, s := range g.Sheets {
			for _, o := range g.Sheets {
				if o.Row == s.Row && o.Col == s.Col+1 || o.Col == s.Col && o.Row == s.Row+1 {
					pairs++
				}
			}
		}
		if len(g.Joints) != pairs {
			t.Fatalf("%d joints between %d neighbours", len(g.Joints), pairs)
		}
		for _, j := range g.Joints {
			if names[j.Name] || !strings.HasPrefix(j.Name, "B") || len(j.Name) < 2 {
				t.Fatalf("joint %q", j.Name)
			}
			names[j.Name] = true
			shared := Box{curve.Vec{X: max(j.a.Area.Lo.X, j.b.Area.Lo.X), Y: max(j.a.Area.Lo.Y, j.b.Area.Lo.Y)},
				curve.Vec{X: min(j.a.Area.Hi.X, j.b.Area.Hi.X), Y: min(j.a.Area.Hi.Y, j.b.Area.Hi.Y)}}
			long := max(shared.Width(), shared.Height())
			if mid := j.On[0].Add(j.On[1]).Mul(0.5); mid.Dist(shared.mid()) > 1e-9 || math.Abs(j.On[0].Dist(j.On[1])-long) > 1e-9 {
				t.Fatalf("joint %s runs from %v to %v in %v", j.Name, j.On[0], j.On[1], shared)
			}
			for _, m := range j.Marks {
				if !shared.holds(Box{m, m}.Grow(markArm)) || toSegment(m, j.On[0], j.On[1]) > 1e-9 {
					t.Fatalf("a mark of joint %s at %v is not whole in %v", j.Name, m, shared)
				}
			}
			if apart := j.Marks[0].Dist(j.Marks[1]); math.Abs(apart-0.6*long) > 1e-9 || math.Abs(j.Marks[0].Dist(j.On[0])-j.Marks[1].Dist(j.On[1])) > 1e-9 {
				t.Fatalf("the marks of joint %s stand %.1f mm apart of %.1f", j.Name, apart, long)
			}
		}
	}
}

// Both sheets of a joint show its line and its two named marks at the same places, whole, and
// no sheet shows those of another's.
func TestSheetsShowTheirJoints(t *testing.T) {
	all, of := tilings(20)
	for n, g := range all {
		shown := map[string][]curve.Vec{}
		for _, s := range g.Sheets {
			on := g.OnSheet(&of[n], s)
			lines := 0
			for _, p := range on.Paths {
				if p.Layer == RegisterLayer && len(p.Stroke.Dashes) > 0 {
					lines++
				}
			}
			want := 0
			for _, j := range g.Joints {
				if j.of(s) {
					want++
				}
			}
			if lines < want || len(on.Circles) != 2*want {
				t.Fatalf("%s of %d joints shows %d lines and %d marks", s.Name(), want, lines, len(on.Circles))
			}
			for _, w := range on.Texts {
				if !s.Area.holds(w.Box()) {
					t.Fatalf("%s: %q stands at %v of %v", s.Name(), w.Says, w.Box(), s.Area)
				}
				i := slices.IndexFunc(on.Circles, func(c Circle) bool { return w.Box().Grow(markRadius + 1).has(c.At) })
				if i < 0 {
					t.Fatalf("%s: %q stands by no mark", s.Name(), w.Says)
				}
				shown[w.Says] = append(shown[w.Says], on.Circles[i].At)
			}
		}
		if len(shown) != 2*len(g.Joints) {
			t.Fatalf("%d names for the marks of %d joints", len(shown), len(g.Joints))
		}
		for name, at := range shown {
			if len(at) != 2 || at[0].Dist(at[1]) > 1e-9 {
				t.Fatalf("mark %s stands at %v", name, at)
			}
		}
	}
}

// A drawing that fits stands in the middle of its one sheet, with room for words round it; a
// larger one begins at the left and ends below.
func TestWhereDrawingsStand(t *testing.T) {
	d := strip(80, 100)
	g := CutUp(&d, 180, 240, "B")
	if len(g.Sheets) != 1 || len(g.Joints) != 0 || g.Sheets[0].Area.mid().Dist(d.Bounds().mid()) > 1e-9 {
		t.Errorf("one that fits: %+v", g)
	}
	d = strip(168, 228) // and 6 mm for words all round
	if g = CutUp(&d, 180, 240, "B"); len(g.Sheets) != 1 {
		t.Errorf("one that just fits takes %d sheets", len(g.Sheets))
	}
	d = strip(168.1, 228)
	if g = CutUp(&d, 180, 240, "B"); g.Cols != 2 || g.Rows != 1 {
		t.Errorf("one a little wider takes %d rows and %d columns", g.Rows, g.Cols)
	}
	d = strip(300, 400)
	if g = CutUp(&d, 180, 240, "B"); g.Whole.Lo.X > -6+1e-9 || g.Whole.Hi.Y < 406-1e-9 || g.Rows != 2 || g.Cols != 2 {
		t.Errorf("one of 2 × 2 sheets lies in %v", g.Whole)
	}
}

// A sheet with nothing on it is left out; one that lies wholly inside the cut line has
// leather on it, and stays.
func TestEmptySheetsAreLeftOut(t *testing.T) {
	var d Drawing // an L: its inner corner is bare
	d.Path(Path{Layer: CutLayer, Stroke: Wide, Closed: true, Pts: curve.Line{{}, {X: 60}, {X: 60, Y: 500}, {X: 500, Y: 500}, {X: 500, Y: 560}, {Y: 560}}})
	g := CutUp(&d, 150, 150, "B")
	if len(g.Sheets) >= g.Rows*g.Cols {
		t.Errorf("%d sheets of %d rows and %d columns", len(g.Sheets), g.Rows, g.Cols)
	}
	for _, s := range g.Sheets {
		if s.Row < g.Rows-1 && s.Col > 1 {
			t.Errorf("%s has nothing on it", s.Name())
		}
	}
	whole := strip(500, 500)
	if g = CutUp(&whole, 150, 150, "B"); len(g.Sheets) != g.Rows*g.Cols || g.Rows < 4 {
		t.Errorf("of a whole piece %d sheets of %d × %d", len(g.Sheets), g.Rows, g.Cols)
	}
}

// Joints count A to Z, then AA, AB, as the columns of a ledger do (common practice, no source).
func TestJointNames(t *testing.T) {
	for i, want := range map[int]string{0: "A", 1: "B", 25: "Z", 26: "AA", 27: "AB", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		if got := jointName(i); got != want {
			t.Errorf("joint %d is %s, want %s", i, got, want)
		}
	}
}
