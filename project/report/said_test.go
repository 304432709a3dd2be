package report

import (
	"math"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/bend"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
	bill "chape/project/money"

	"github.com/shopspring/decimal"
)

// Every figure that not every sheath has, under its own name: places of the drain from point
// and fold, of snap and fixing from the strap's end, of a correction from the point.
func TestExtrasSayWhatTheyAre(t *testing.T) {
	plan := &calc.Plan{Fold: knife.FoldLine{Gap: 2, Slope: 0.01}}
	plan.Input.Sheath.Mouth, plan.Input.Sheath.Leather, plan.Input.Sheath.Neutral = 150, 3, 0.5
	plan.Flat.Drain = &calc.Circle{Centre: curve.Vec{X: -3.2, Y: 9.6}, Diameter: 4.02}
	plan.Strap = &calc.StrapCut{At: 161, Length: 152, ArmBack: 61, ArmBelly: 71.5, Width: 18, Snap: 15, Fixing: 76}
	p := project.Project{Fits: []project.Fit{{Fit: calc.Fit{At: 60.2, By: 1.5}}, {Fit: calc.Fit{At: 90, By: -2}, With: "leather"}}}
	want := `fold below the rule, point: 2.00 mm (the fold lies against the back of what is inside)
fold below the rule, mouth: 3.50 mm ()
drain, across: 4.00 mm (back half alone, 3 mm beyond the point, 9.5 mm from the fold)
strap, long: 152.0 mm (its ends rounded by half its width)
strap, wide: 18.0 mm (round the handle, 161 mm from the point)
arm over the back: 61.0 mm (from fixing to snap)
arm under the belly: 71.5 mm (from fixing to snap)
snap: 15.0 mm (from the end that goes over the back)
fixing: 76.0 mm (from the end that goes over the back)
correction: 1.50 mm (60 mm from the point)
correction: -2.00 mm (90 mm from the point)
`
	if got := lines(Extras(p, plan, length.Millimetres)); got != want {
		t.Errorf("extras:\n%s\nwant\n%s", got, want)
	}
	for gap, said := range map[float64]bool{0: false, 0.049: false, 0.051: true, -0.049: false, -0.06: true} {
		plan.Fold = knife.FoldLine{Gap: gap}
		if got := strings.Contains(lines(Extras(p, plan, length.Millimetres)), "fold below"); got != said {
			t.Errorf("a fold %v below the rule is said: %v", gap, got)
		}
	}
	plan.Fold = knife.FoldLine{Slope: 0.001} // 0.15 at the mouth alone
	if got := lines(Extras(p, plan, length.Millimetres)); !strings.Contains(got, "fold below the rule, mouth: 0.15 mm") {
		t.Errorf("a fold below the rule at the mouth:\n%s", got)
	}
	plan.Fold = knife.FoldLine{Slope: -0.01} // at the mouth alone, above the rule
	if got := lines(Extras(p, plan, length.Millimetres)); !strings.Contains(got, "fold below the rule, mouth: -1.50 mm") {
		t.Errorf("a fold above the rule at the mouth:\n%s", got)
	}
}

// The pouch's room in words: how much it gives at its tightest place, how tight it is before,
// while wet and once dry; and where it is tightest then, if that is elsewhere.
func TestEasedSaysHowTightItIs(t *testing.T) {
	p := bar()
	p.Sheath.Ease = -1
	plan := compute(t, p)
	st := bend.Stretch{Wet: 0.1, Kept: 0.02, Plus: 0.007}
	over := func(share float64) (string, float64) {
		o, at := plan.AfterStretch(share)
		word := " a side tight"
		if o <= 0 {
			word = " a side to spare"
		}
		return length.Length(math.Abs(o)).Format(length.Millimetres, length.Calliper) + word, at
	}
	was, _ := over(0)
	formed, _ := over(0.1)
	dry, _ := over(0.02)
	got := Eased(plan, st, length.Millimetres)
	if want := ": " + was + " as cut, " + formed + " while it is formed"; !strings.Contains(got, want) || !strings.Contains(got, dry+" once dry") {
		t.Errorf("%q, want %q and %q", got, want, dry+" once dry")
	}
	if !strings.Contains(was, "tight") || !strings.Contains(formed, "to spare") {
		t.Fatalf("%s, then %s: this test shows nothing", was, formed)
	}
	if a, b := where(10.9, 10, length.Millimetres), where(11, 10, length.Millimetres); a != "" || b != " (then tightest at 11 mm)" {
		t.Errorf("tightest 0.9 mm on: %q, 1 mm on: %q", a, b)
	}
	if a, b := spare(0.3, length.Millimetres), spare(-0.3, length.Millimetres); a != "0.3 mm a side tight" || b != "0.3 mm a side to spare" {
		t.Errorf("0.3 over: %q, under: %q", a, b)
	}
}

// The cost so far is the sum of its lines; those that are nothing are not named, and where a
// price is missing it is at least that much.
func TestCostRow(t *testing.T) {
	euro := bill.Currency{Sign: "€"}
	b := bill.Bill{Currency: euro, Lines: []bill.Line{{Name: "leather", Amount: bill.Of(decimal.RequireFromString("3.47"))},
		{Name: "thread", Amount: bill.Of(decimal.Zero)}, {Name: "work", Amount: bill.Of(decimal.RequireFromString("114"))}}}
	row := CostRow(b)
	if row.Said() != "117.47 €" || row.Name != "cost so far" || row.Note != "leather 3.47, work 114.00" || row.Key != Money {
		t.Errorf("%+v", row)
	}
	b.Lines = append(b.Lines, bill.Line{Name: "snap"})
	if row = CostRow(b); row.Note != "at least, leather 3.47, work 114.00" {
		t.Errorf("with a price missing: %q", row.Note)
	}
}

// The words beside figures: plies one by one, leather as it is sold, the line as it was
// measured, the way of sewing.
func TestNotesOfTheFigures(t *testing.T) {
	p, plan := told()
	p.Sold.Body, p.Sold.Welt = "7/8 oz", "4/5 oz"
	p.Stitch.Measured, p.Stitch.Method = 158.4, calc.Hook
	plan.Welt.Plies = 1
	rows := Figures(p, plan, length.Millimetres, 0)
	for key, want := range map[Key]string{Body: "thickness, the thicker end of 7/8 oz", Welt: "one ply, 10 cm², the thicker end of 4/5 oz",
		ClosedLine: "as computed; laid out on 158.5 mm as measured", SeamThread: "7.8 times the seam, waste and tails on top; one thread, hook from both sides"} {
		if got := rows.Pick(key)[0].Words(); got != want {
			t.Errorf("row %d: %q, want %q", key, got, want)
		}
	}
}

// Worn says hand and edge in all four ways, and a left-handed sheath is no right-handed one.
func TestWorn(t *testing.T) {
	for want, c := range map[string]project.Customer{
		"right hand, edge to the rear": {Hand: calc.RightHand, Edge: calc.EdgeRear}, "right hand, edge to the front": {Hand: calc.RightHand, Edge: calc.EdgeFront},
		"left hand, edge to the rear": {Hand: calc.LeftHand, Edge: calc.EdgeRear}, "left hand, edge to the front": {Hand: calc.LeftHand, Edge: calc.EdgeFront},
	} {
		if got := Worn(project.Project{Customer: c}); got != want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// Hang is how loose paper hangs: nothing of stock as thick as the leather, and no leather, no
// figure.
func TestHangOfOtherStock(t *testing.T) {
	plan := compute(t, bar())
	if got := Hang(plan, 3); math.Abs(got) > 1e-12 {
		t.Errorf("stock as thick as the leather hangs %v loose", got)
	}
	if a, b := Hang(plan, 0.1), Hang(plan, 1); a <= b || b <= 0 {
		t.Errorf("0.1 mm hangs %v loose, 1 mm %v", a, b)
	}
	if got := Hang(&calc.Plan{}, 0.1); got != 0 {
		t.Errorf("without leather %v", got)
	}
}
