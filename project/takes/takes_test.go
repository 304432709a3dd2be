package takes

import (
	"math"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/money"
	"chape/project/plantest"
	"chape/project/steps"
)

var compute = plantest.Of

// beyond is what the plan says of the leather to buy.
func beyond(p project.Project, plan *calc.Plan, offcut float64) string {
	_, words := ToBuy(p, plan, LossOf(p, plan, offcut), length.Millimetres)
	return words
}

// The middling knife: areas and thread are the plan's, a quarter more leather is bought.
func TestTakes(t *testing.T) {
	p := project.Defaults()
	p.Steps = []steps.Step{
		{Title: "Cut", Expect: 30 * time.Minute, Spent: 40 * time.Minute, Done: time.Unix(1, 0)},
		{Title: "Line it", Expect: time.Hour, Skipped: true}, {Title: "Sew", Expect: 2 * time.Hour}}
	plan := compute(t, p)
	u := Use(p, plan, Offcut(0.25))
	area := plan.Body.AreaWithTab + plan.Welt.Area*float64(max(1, plan.Welt.Plies))
	var boxes float64 // the tab makes the smallest box long
	for _, part := range plan.Parts() {
		w, h := part.Outline.SmallestBox()
		boxes += w * h
	}
	if l := u.Leather[0]; math.Abs(float64(l.Cut)-area) > 1e-6 || math.Abs(float64(l.Bought)-boxes) > 1e-6 || l.From != "the parts side by side" {
		t.Errorf("leather %+v, want %v cut, %v bought", l, area, boxes)
	}
	if l := Use(p, plan, Offcut(1.5)).Leather[0]; math.Abs(float64(l.Bought)-2.5*area) > 1e-6 || l.From != "150 % for offcuts" {
		t.Errorf("leather with many offcuts %+v", l)
	}
	if got, want := u.Thread.MM(), plan.Thread.Length+plan.Loop.Thread; math.Abs(got-want) > 1e-9 {
		t.Errorf("thread %v, want %v", got, want)
	}
	if got, want := money.Hours(u.Steps), (money.Sum{Expected: 150 * time.Minute, Spent: 40 * time.Minute, Left: 2 * time.Hour}); got != want {
		t.Errorf("minutes %v, want %v", got, want)
	}
}

// What the project's own placing loses goes before a share for offcuts: half of what is cut
// lost is a yield of 67 %.
func TestPlacedInTheProject(t *testing.T) {
	p := project.Defaults()
	plan := compute(t, p)
	if l := LossOf(p, plan, 0.25); l != Offcut(0.25) {
		t.Errorf("before placing %+v", l)
	}
	p.Hide = project.Hide{Name: "shoulder", Lost: 0.5, Placed: true}
	l := Use(p, plan, LossOf(p, plan, 0.25)).Leather[0]
	if math.Abs(float64(l.Bought)-1.5*float64(l.Cut)) > 1e-6 || l.From != "placed, yield 67 %" {
		t.Errorf("leather %+v", l)
	}
	if c, words := ToBuy(p, plan, LossOf(p, plan, 0.25), length.Millimetres); length.Area(c.ToBuy) != l.Bought || words != "as placed, yield 67 %" {
		t.Errorf("to buy %v mm², %s; the cost says %v", c.ToBuy, words, l.Bought)
	}
}

// The price of the leather that the sheath is cut from goes before that of the settings, and
// is said: 1 ft² is 929.0304 cm².
func TestThePriceOfTheLeatherItself(t *testing.T) {
	p := project.Defaults()
	p.Hide = project.Hide{Name: "shoulder", Price: money.ByArea{Ft2: "9.50"}}
	plan := compute(t, p)
	u := Use(p, plan, Offcut(1.5))
	l := u.Leather[0]
	if l.Price.String() != "9.5" || l.By != length.SquareFoot || l.From != "150 % for offcuts, the price of shoulder" {
		t.Errorf("leather %+v", l)
	}
	other, _ := money.Parse("100")
	line := money.Cost(u, money.Prices{Leather: other}).Lines[0]
	want := math.Round(float64(l.Bought)/92903.04*9.5*100) / 100
	if got, _ := line.Amount.Decimal().Float64(); math.Abs(got-want) > 0.006 || !strings.Contains(line.From, "at 9.50, 150 % for offcuts, the price of shoulder") {
		t.Errorf("line %+v, want %.2f", line, want)
	}
}

// By hand: 2 loops of 60 by 30 mm and a patch of 50 by 20 are 3600 + 1000 = 4600 mm² of the
// body's leather, with a quarter for offcuts 5750; a flap of half-widths 10 and 20 on 40 mm is
// 40 · (10 + 20) = 1200 mm² of 2 mm leather, 1500 with the quarter. The shop's leather at
// 200 a square metre, the body's own at 100: 0.0058 m² (four decimals) are 0.58, 0.0015 are 0.30.
func TestAddedPartsCost(t *testing.T) {
	p := project.Defaults()
	plan := compute(t, p)
	without := Use(p, plan, Offcut(0.25)).Leather[0]
	p.Hide.Price = money.ByArea{M2: "100"}
	p.Added = []project.Part{
		{Name: "loop", Count: 2, Length: 60, Width: 30},
		{Name: "flap", Count: 1, Halves: "0 10; 40 20", Thickness: 2},
		{Name: "patch", Count: 1, Length: 50, Width: 20, Thickness: p.Sheath.Leather},
	}
	u := Use(p, plan, Offcut(0.25))
	if len(u.Leather) != 3 || u.Leather[0].Cut != without.Cut || u.Leather[0].Bought != without.Bought {
		t.Fatalf("leather %+v, without the parts %+v", u.Leather, without)
	}
	shop, _ := money.Parse("200")
	lines := money.Cost(u, money.Prices{Leather: shop}).Lines
	for i, want := range []struct {
		cut, bought length.Area
		name, from  string
		amount      string
	}{
		{4600, 5750, "3.2 mm added parts", "0.0058 m² at 100.00, 25 % for offcuts, the price of this very leather", "0.58"},
		{1200, 1500, "2 mm added parts", "0.0015 m² at 200.00, 25 % for offcuts", "0.3"},
	} {
		l, line := u.Leather[i+1], lines[i+1]
		if math.Abs(float64(l.Cut-want.cut)) > 1e-6 || math.Abs(float64(l.Bought-want.bought)) > 1e-6 {
			t.Errorf("%s: %v cut, %v bought; want %v, %v", line.Name, l.Cut, l.Bought, want.cut, want.bought)
		}
		if line.Name != want.name || line.From != want.from || line.Amount.String() != want.amount {
			t.Errorf("line %+v, want %+v", line, want)
		}
	}
	if _, words := ToBuy(p, plan, Offcut(0.25), length.Millimetres); !strings.HasSuffix(words, "; the added parts take 73 cm² more") { // 5750 + 1500 mm²
		t.Errorf("to buy: %s", words)
	}
	if got, want := Cut(p, plan), math.Round(float64(without.Cut)+5800); got != want {
		t.Errorf("cut in all %v, want %v", got, want)
	}
	p.Hide.Lost, p.Hide.Placed = 0.5, true
	if l := Use(p, plan, LossOf(p, plan, 0.25)).Leather[2]; math.Abs(float64(l.Bought)-1800) > 1e-6 || l.From != "placed, yield 67 %" {
		t.Errorf("placed: %+v", l)
	}
}

// What leather is bought beyond what is cut is said as it came about: a share for offcuts, or
// as it was placed; a loss of a quarter of what is cut is a yield of 80 %.
func TestWhereTheLossComesFrom(t *testing.T) {
	if got := Offcut(0.25); got.From != "25 % for offcuts" || got.Share != 0.25 {
		t.Errorf("%+v", got)
	}
	p := project.Defaults()
	plan := compute(t, p)
	if got := LossOf(p, plan, 9); got != Offcut(9) || beyond(p, plan, 9) != "with 900 % for offcuts" {
		t.Errorf("before placing %+v, %q", got, beyond(p, plan, 9))
	}
	p.Hide = project.Hide{Placed: true, Lost: 0.25}
	if got := LossOf(p, plan, 0.9); got.From != "placed, yield 80 %" || got.Share != 0.25 || beyond(p, plan, 0.9) != "as placed, yield 80 %" {
		t.Errorf("%+v, %q", got, beyond(p, plan, 0.9))
	}
	// The pattern it was placed for counts: a margin half a millimetre wider is another, and back again the first.
	p.Hide.Cut = Cut(p, plan)
	wider := p.Clone()
	wider.Sheath.Margin += 0.5
	if got := LossOf(wider, compute(t, wider), 9); got.Share != 9 || beyond(wider, compute(t, wider), 9) != "with 900 % for offcuts: the placing is of an earlier pattern" {
		t.Errorf("of another pattern %+v", got)
	}
	// Where the parts side by side take more than the share, both places that say it say so.
	small := compute(t, wider)
	where := "the parts side by side: the placing is of an earlier pattern"
	if got := Use(wider, small, LossOf(wider, small, 0)).Leather[0].From; got != where {
		t.Errorf("with no share the cost says %q", got)
	}
	if got := beyond(wider, small, 0); got != "with "+where {
		t.Errorf("the plan says %q", got)
	}
	more := p.Clone()
	more.Added = append(more.Added, project.Part{Name: "loop", Count: 1, Length: 80, Width: 25})
	if got := Cut(more, plan) - Cut(p, plan); got != 2000 || !Stale(more, plan) || Stale(p, plan) {
		t.Errorf("a part of 80 × 25 more takes %v mm² more, stale %v", got, Stale(more, plan))
	}
}
