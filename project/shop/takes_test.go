package shop

import (
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project/money"
	"chape/project/steps"
)

// The maker's lines, without empty ones; none where nobody is named.
func TestMaker(t *testing.T) {
	for _, c := range []struct {
		s    Shop
		want []string
	}{
		{Shop{}, nil}, {Shop{Name: " "}, nil}, {Shop{Name: "A. Maker", Address: []string{"Lane 1", "", "Town"}}, []string{"A. Maker", "Lane 1", "Town"}}, {Shop{Address: []string{"Lane 1"}}, []string{"Lane 1"}},
	} {
		if got := c.s.Maker(); !slices.Equal(got, c.want) {
			t.Errorf("%+v: %q, want %q", c.s, got, c.want)
		}
	}
	s := Shop{Name: "A. Maker", Address: make([]string, 0, 4)}
	_ = append(s.Maker(), "x")
	if len(s.Maker()) != 1 {
		t.Error("what is put behind the lines stays")
	}
}

// The three sums of one sheath: the price is the cost with what is put on it, both by the
// minutes expected; what it took is by those spent. Reckoning changes nothing of the project.
func TestReckonAgrees(t *testing.T) {
	p, plan := strapped(t)
	kept := p.Clone()
	s := evenings(t)
	r := s.Reckon(p, plan)
	if !reflect.DeepEqual(p, kept) {
		t.Error("the project is changed")
	}
	n := len(r.Cost.Lines)
	if !slices.EqualFunc(r.Price.Lines[:n], r.Cost.Lines, func(a, b money.Line) bool { return a.Kind == b.Kind && a.From == b.From && a.Amount.Equal(b.Amount) }) {
		t.Errorf("the price begins with other lines than the cost:\n%+v\n%+v", r.Price.Lines, r.Cost.Lines)
	}
	for i, l := range r.Taken.Lines {
		if same := l.Amount.Equal(r.Cost.Lines[i].Amount); same == (l.Kind == money.WorkLine) {
			t.Errorf("%s cost %s, and took %s", l.Name, r.Cost.Lines[i].Amount, l.Amount)
		}
	}
	if r.Use.Spent || r.Use.Steps[0].Spent != 50*time.Minute {
		t.Errorf("it takes %+v", r.Use)
	}
	p.Strap.Kind = calc.NoStrap
	without, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range s.Reckon(p, without).Taken.Lines {
		if l.Kind == money.WorkLine && l.Amount.String() != "30" { // 50 min at 36 an hour
			t.Errorf("without a strap the work took %s", l.Amount)
		}
	}
	// A shop that knows no price says what it takes, and no sum.
	bare := (Shop{Offcut: 0.25}).Reckon(p, plan)
	for _, b := range []money.Bill{bare.Price, bare.Cost, bare.Taken} {
		if sum, atLeast := b.Total(); !sum.IsZero() || !atLeast || len(b.Lines) != n {
			t.Errorf("without prices %+v", b)
		}
	}
}

// The more is lost between the parts, the more is bought, and never less than they take side by
// side; the share of a placing counts before the shop's own.
func TestTakesWithLoss(t *testing.T) {
	p, plan := strapped(t)
	s := evenings(t)
	before := length.Area(0)
	for _, offcut := range []float64{0, 0.25, 1, 2} {
		s.Offcut = offcut
		l := s.Takes(p, plan).Leather[0]
		want := float64(l.Cut) * (1 + offcut)
		if l.Bought < before || float64(l.Bought) < want*0.999 || offcut >= 1 && float64(l.Bought) > want*1.001 { // never less than side by side
			t.Errorf("with %v lost, of %v cut %v are bought, want %v", offcut, l.Cut, l.Bought, want)
		}
		before = l.Bought
	}
	s.Offcut = 0.25
	p.Hide.Lost, p.Hide.Placed = 0.5, true
	u := s.Takes(p, plan)
	if l := u.Leather[0]; float64(l.Bought) < float64(l.Cut)*1.499 || float64(l.Bought) > float64(l.Cut)*1.501 || !strings.Contains(l.From, "placed, yield 67 %") {
		t.Errorf("placed it takes %+v", l)
	}
	if u.Items[0] != (money.Item{Name: "snap", Count: 1, Each: s.Snap}) || u.Items[1] != (money.Item{Name: "rivet", Count: 1, Each: s.Rivet}) || len(u.Items) != 2 {
		t.Errorf("hardware %+v", u.Items)
	}
}

// What is learned is the median of what was counted, to the minute; steps are known by their
// titles, and only those that are open learn.
func TestLessonsByHand(t *testing.T) {
	done := time.Unix(1, 0)
	took := func(minutes ...int) (out []steps.Step) {
		for _, m := range minutes {
			out = append(out, steps.Step{Title: "Cut", Spent: time.Duration(m) * time.Minute, Done: done})
		}
		return out
	}
	open := []steps.Step{{Title: "Cut", Expect: 40 * time.Minute}}
	for _, c := range []struct {
		finished []steps.Step
		want     []Lesson
	}{
		{took(), nil}, {took(0), nil}, {took(40), nil}, {took(30, 50), nil}, // what is expected already
		{took(41), []Lesson{{0, 41 * time.Minute, 1}}}, {took(70, 10, 50), []Lesson{{0, 50 * time.Minute, 3}}}, {took(60, 61, 0), []Lesson{{0, 61 * time.Minute, 2}}},
		{[]steps.Step{{Title: "cut", Spent: time.Hour, Done: done}, {Title: "Cut", Spent: time.Hour}, {Title: "Cut", Spent: time.Hour, Done: done, Skipped: true}}, nil},
	} {
		if got := Lessons(open, [][]steps.Step{c.finished}); !slices.Equal(got, c.want) {
			t.Errorf("of %v: %+v, want %+v", c.finished, got, c.want)
		}
	}
	if got := Lessons([]steps.Step{{Title: "Cut", Skipped: true}, {Title: "Cut", Done: done}}, [][]steps.Step{took(90)}); got != nil {
		t.Errorf("what is done or left out learns %+v", got)
	}
}

// A customer reads inches where the maker works in them, and which hand and edge it is for.
func TestWhatInInches(t *testing.T) {
	p, _ := strapped(t)
	p.Units, p.Customer.Hand, p.Customer.Edge, p.Belt.Width = length.Inches, calc.LeftHand, calc.EdgeFront, 38.1
	want := "A sheath of 1/8 in leather, formed to this knife: Orchard.\nDrawn with the left hand, edge to the front.\nWith a loop for a belt 1 1/2 in wide.\nWith a strap and a snap over the handle."
	if got := What(p); got != want {
		t.Errorf("What = %q\nwant %q", got, want)
	}
}
