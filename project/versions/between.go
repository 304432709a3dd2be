package versions

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"chape/calc"
	"chape/calc/compare"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/places"
	"chape/project/report"
)

// Pair is two patterns laid over each other.
type Pair struct {
	Was, Is         Version
	WasPlan, IsPlan *calc.Plan
}

// Between works both patterns out. The error says which can't be.
func Between(was, is Version, limits calc.Limits) (Pair, error) {
	p := Pair{Was: was, Is: is}
	var err error
	if p.WasPlan, err = was.Plan(limits); err == nil {
		p.IsPlan, err = is.Plan(limits)
	}
	return p, err
}

// graph is a line of the pattern as a curve over the fold.
func graph(l curve.Line) curve.Graph {
	var g curve.Graph
	for _, v := range l {
		if n := len(g.X); n > 0 && v.X <= g.X[n-1] {
			g.Y[n-1] = v.Y // the run up to the line
			continue
		}
		g.X, g.Y = append(g.X, v.X), append(g.Y, v.Y)
	}
	return g
}

// StitchLine is a pattern's stitch line as a curve over the fold.
func StitchLine(p *calc.Plan) curve.Graph { return graph(p.Flat.Stitch) }

// at are the places of the table: every 10 mm or half an inch, marks and landmarks.
func (p Pair) at(u length.Unit) []float64 {
	step := 10.0
	if u == length.Inches {
		step = length.Inch.MM() / 2
	}
	end := max(p.WasPlan.Input.Sheath.Mouth.MM(), p.IsPlan.Input.Sheath.Mouth.MM())
	var xs []float64
	for k := -3.0; k*step < end; k++ {
		xs = append(xs, k*step+0)
	}
	for _, q := range places.Of(p.Is.Project()) {
		if q.Name != "" {
			xs = append(xs, q.At)
		}
	}
	xs = append(xs, end)
	slices.Sort(xs)
	return slices.CompactFunc(xs, func(a, b float64) bool { return math.Abs(a-b) < 0.25 })
}

// HalfWidths is the table of how the half-widths differ, above 0 where the later is wider.
func (p Pair) HalfWidths(u length.Unit) report.Table {
	t := report.Table{
		Name:    "half-widths, " + u.String(),
		Note:    "along the fold; then, now; + " + p.wider(),
		Columns: []string{"at", "stitch line", "now", "change", "cut line", "now", "change", ""},
	}
	all := places.Of(p.Is.Project())
	xs := p.at(u)
	stitch := byPlace(compare.At(graph(p.IsPlan.Flat.Stitch), graph(p.WasPlan.Flat.Stitch), xs))
	cut := byPlace(compare.At(graph(p.IsPlan.Flat.Cut), graph(p.WasPlan.Flat.Cut), xs))
	for _, x := range xs {
		row := []string{length.Length(x).Figure(u, length.Ruler)}
		s, sewn := stitch[x]
		c, there := cut[x]
		if !sewn && !there {
			continue
		}
		row = append(row, cells(s, sewn, u)...)
		row = append(row, cells(c, there, u)...)
		t.Rows = append(t.Rows, append(row, nameAt(all, x)))
	}
	return t
}

// nameAt is what the place is called where a line of the table stands, "" for most.
func nameAt(all []places.Place, x float64) string {
	name := ""
	for _, q := range all {
		if math.Abs(q.At-x) < 0.25 {
			name = q.Name
		}
	}
	return name
}

func byPlace(ds []compare.Difference) map[float64]compare.Difference {
	m := map[float64]compare.Difference{}
	for _, d := range ds {
		m[d.At] = d
	}
	return m
}

// cells are a difference's three figures; in compare's words the later pattern is what
// was measured. All three are as fine, so that one can be taken from the other by eye.
func cells(d compare.Difference, there bool, u length.Unit) []string {
	if !there {
		return []string{"", "", ""}
	}
	fig := func(mm float64) string { return length.Length(mm).Figure(u, length.Calliper) }
	return []string{fig(d.Plan), fig(d.Measured), Signed(d.By, u, length.Calliper)}
}

// Signed is a figure with its sign; 0 has none.
func Signed(mm float64, u length.Unit, f length.Fineness) string {
	zero := length.Length(0).Figure(u, f)
	switch text := length.Length(math.Abs(mm)).Figure(u, f); {
	case text == zero:
		return zero
	case mm < 0:
		return "-" + text
	default:
		return "+" + text
	}
}

// Figures is the table of the figures that differ.
func (p Pair) Figures(u length.Unit) report.Table {
	t := report.Table{Name: "figures that differ", Columns: []string{"figure", "then", "now", ""}}
	was := report.Figures(p.Was.Project(), p.WasPlan, u, calc.DefaultOffcut)
	is := report.Figures(p.Is.Project(), p.IsPlan, u, calc.DefaultOffcut)
	for _, a := range was {
		b := is.Pick(a.Key)
		switch {
		case len(b) == 0:
			t.Rows = append(t.Rows, []string{a.Name, a.Value, "none", a.Unit})
		case b[0].Value != a.Value:
			t.Rows = append(t.Rows, []string{a.Name, a.Value, b[0].Value, a.Unit})
		}
	}
	for _, b := range is {
		if len(was.Pick(b.Key)) == 0 {
			t.Rows = append(t.Rows, []string{b.Name, "none", b.Value, b.Unit})
		}
	}
	if n, m := len(p.Was.Project().Fits), len(p.Is.Project().Fits); n != m {
		t.Rows = append(t.Rows, []string{"corrections", strconv.Itoa(n), strconv.Itoa(m), ""})
	}
	return t
}

// wider says what a difference above 0 means.
func (p Pair) wider() string {
	if p.Is.Standing {
		return "where it is wider now"
	}
	return fmt.Sprintf("where pattern %d is wider", p.Is.Number)
}

// Difference is how much the stitch line is further from the fold than it was, over the
// fold, mm: where both have it.
func (p Pair) Difference() curve.Graph {
	return compare.Curves(graph(p.IsPlan.Flat.Stitch), graph(p.WasPlan.Flat.Stitch))
}

// Most says in one line where the later pattern is wider and narrower at most, at the
// stitch line.
func (p Pair) Most(u length.Unit) string {
	ds := compare.At(graph(p.IsPlan.Flat.Stitch), graph(p.WasPlan.Flat.Stitch), everyMM(p))
	wider, narrower, isWider, isNarrower := compare.Most(ds)
	all := places.Of(p.Is.Project())
	say := func(d compare.Difference, how string) string {
		return length.Length(math.Abs(d.By)).Format(u, length.Calliper) + " " + how + " a side at " + places.Figure(d.At, u) + ", " + places.At(all, d.At)
	}
	const least = 0.05 // mm: what a calliper shows
	isWider, isNarrower = isWider && wider.By >= least, isNarrower && narrower.By <= -least
	switch {
	case isWider && isNarrower:
		return say(wider, "wider") + "; " + say(narrower, "narrower")
	case isWider:
		return say(wider, "wider")
	case isNarrower:
		return say(narrower, "narrower")
	}
	return "the stitch lines are alike"
}

// everyMM is every millimetre from the point to the mouth.
func everyMM(p Pair) []float64 {
	var xs []float64
	for x := 0.0; x <= p.IsPlan.Input.Sheath.Mouth.MM(); x++ {
		xs = append(xs, x)
	}
	return xs
}
