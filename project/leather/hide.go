package leather

import (
	"fmt"
	"math"
	"strings"

	"chape/calc"
	"chape/calc/bend"
	"chape/calc/length"
	"chape/project"
)

// thicknessOff is what a gauge does not show, mm.
const thicknessOff = 0.05

// Allowance is the hide's bend as a project takes it: to a thousandth.
func (l Leather) Allowance() float64 { return math.Round(l.Neutral.K*1000) / 1000 }

// thickAs tells whether a project's body is as thick, as far as a gauge tells.
func (l Leather) thickAs(p project.Project) bool {
	return math.Abs((p.Sheath.Leather - l.Thickness).MM()) <= thicknessOff
}

// Onto has a project cut from this leather: it takes its name, price and thickness and,
// where it was measured, its bend. Validate it then.
func (l Leather) Onto(p *project.Project) {
	p.Hide.Name, p.Hide.Price = l.Name, l.Price
	if l.Bent() {
		p.Sheath.Neutral = l.Allowance()
	}
	if !l.thickAs(*p) {
		p.Sheath.Leather, p.Sold.Body = l.Thickness, ""
	}
}

// HeldBy says whether a project is cut from this leather, and what of it it does not have;
// "": it is not.
func (l Leather) HeldBy(p project.Project) string {
	switch {
	case p.Hide.Name != l.Name:
		return ""
	case l.Bent() && math.Abs(p.Sheath.Neutral-l.Allowance()) > 1e-9:
		return "it is, but for the bend"
	case !l.thickAs(p):
		return "it is, but for the thickness"
	case p.Hide.Price != l.Price:
		return "it is, but for the price"
	}
	return "it is"
}

// Bend says the hide's bend: "0.47 ± 0.04 of its thickness, of 4 strips".
func (l Leather) Bend() string {
	n := l.Neutral
	strips := "1 strip"
	if n.Of > 1 {
		strips = fmt.Sprintf("%d strips", n.Of)
	}
	return fmt.Sprintf("%.2f ± %.2f of its thickness, of %s", n.K, n.Plus, strips)
}

// Shares says a hide's stretch: "12.0 % wet, 7.0 % stays, ± 0.7".
func Shares(s bend.Stretch) string {
	return fmt.Sprintf("%.1f %% wet, %.1f %% stays, ± %.1f", 100*s.Wet, 100*s.Kept, 100*s.Plus)
}

// PartsOf says which parts a plan has cut: "body, welt × 2, strap".
func PartsOf(plan *calc.Plan) string {
	s := "body"
	if len(plan.Welt.Outline) > 0 {
		s += ", welt" + times(max(1, plan.Welt.Plies))
	}
	if plan.Strap != nil {
		s += ", strap"
	}
	return s
}

// Added says which part was added, and how many of it: "loop × 2".
func Added(a project.Part) string { return a.Name + times(a.Count) }

// SizeOf says the size of an added part: "60.0 mm × 30.0 mm, 2 mm thick".
func SizeOf(a project.Part, u length.Unit) string {
	size := a.Length.Format(u, length.Ruler) + " × " + a.Width.Format(u, length.Ruler)
	if a.Halves != "" {
		size = fmt.Sprintf("%d half-widths", strings.Count(strings.TrimRight(a.Halves, "; "), ";")+1)
	}
	if a.Thickness > 0 {
		size += ", " + a.Thickness.Format(u, length.Calliper) + " thick"
	}
	return size
}
