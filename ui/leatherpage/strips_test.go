package leatherpage

import (
	"math"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/bend"
	"chape/calc/length"
)

// The half turns of US Navy training manual 14119, as in calc/bend: legs 40 and 35, R 1,
// T 0.5, arc 3.925 as printed: k 0.499. Here ten times as large, as leather can be.
func TestBendOfPublishedFold(t *testing.T) {
	b := newBench(t, 78, 24, offcut())
	b.Keys("enter", "end", "up", "up", "enter").Shows("tangent")
	for _, v := range []string{"114.25", "40", "35", "20", "5"} {
		b.Type(v).Keys("enter")
	}
	b.Keys("enter")
	n := b.kept().Pieces[0].Neutral
	if n.Of != 1 || math.Abs(n.K-0.4987) > 2e-3 || math.Abs(n.Plus-bend.Reading*math.Sqrt(3)/(math.Pi*5)) > 1e-9 {
		t.Fatalf("kept %+v, said %v", n, b.Said)
	}
	b.Keys("end", "enter")
	if p := b.Project; p.Hide.Name != "offcut by the window" || math.Abs(p.Sheath.Neutral-n.K) > 5e-4 {
		t.Errorf("the sheath has %+v, neutral %v", p.Hide, p.Sheath.Neutral)
	}
	b.Keys("up", "up", "enter")
	for _, v := range []string{"114.25", "20", "20", "20", "5"} {
		b.Type(v).Keys("enter")
	}
	b.Keys("enter")
	if got := b.Said[len(b.Said)-1]; !strings.Contains(got, "outside the leather") {
		t.Errorf("a fold that can't be: %q", got)
	}
}

// A strip that is half measured, or measured wrong, tells nothing yet.
func TestBendOfHalfAFold(t *testing.T) {
	b := newBench(t, 78, 24, offcut())
	b.Keys("enter", "end", "up", "up", "enter")
	for _, v := range []string{"150", "65"} {
		b.Type(v).Keys("enter")
		b.Lacks("neutral fibre")
	}
	b.Keys("end", "enter")
	if got := b.Said[len(b.Said)-1]; !strings.Contains(got, "give other leg") || b.kept().Pieces[0].Bent() {
		t.Errorf("a leg is missing: said %q, kept %+v", got, b.kept().Pieces[0].Neutral)
	}
	b.Keys("up", "up", "up").Type("64.9").Keys("enter").Type("9.6").Keys("enter").Shows("neutral fibre at 0.50")
}

// How much the pouch gives at the tightest place, against the plan itself.
func TestStretch(t *testing.T) {
	b := newBench(t, 158, 40, offcut())
	b.Keys("enter", "end", "up", "enter").Shows("Soak it")
	b.Keys("down", "1", "1", "2", "enter", "1", "0", "7", "enter", "enter")
	st := b.kept().Pieces[0].Stretch
	if math.Abs(st.Wet-0.12) > 1e-9 || math.Abs(st.Kept-0.07) > 1e-9 {
		t.Fatalf("kept %+v, said %v", st, b.Said)
	}
	plan, err := calc.Compute(b.Project.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	_, at := plan.AfterStretch(0)
	wet := length.Length(plan.Across(at).Room*0.12).Format(length.Millimetres, length.Calliper)
	b.Shows("the pouch gives " + wet)
}
