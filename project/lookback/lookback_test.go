package lookback

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/money"
	"chape/project/shelf"
	"chape/project/shop"
	"chape/project/shop/shoptest"
	"chape/project/steps"
	"chape/project/store"
)

var now = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC)

// evenings is the invented shop, in which only work costs anything here, 30 an hour.
func evenings() shop.Shop {
	sh, none := shoptest.Evenings(), shoptest.Amount("0")
	sh.Prices = money.Prices{Currency: sh.Prices.Currency, Leather: none, Thread: none, Sundries: none, Hour: shoptest.Amount("30")}
	return sh
}

// sheath is one that took so many minutes of 60 expected to cut, and 120 of 90 to sew
// where it is done.
func sheath(title string, cut int, done bool) project.Project {
	p := project.Defaults()
	p.Title, p.Customer.Due = title, time.Date(2026, 11, 30, 0, 0, 0, 0, time.UTC)
	p.Steps = []steps.Step{
		{Title: "Cut", Expect: time.Hour, Spent: time.Duration(cut) * time.Minute, Done: now.Add(-time.Hour)},
		{Title: "Sew", Expect: 90 * time.Minute},
		{Title: "Line", Expect: time.Hour, Spent: time.Hour, Skipped: true},
	}
	if done {
		p.Steps[1].Spent, p.Steps[1].Done = 2*time.Hour, now
	}
	return p
}

func quoted(p project.Project, price string) project.Project {
	p.Quotes = []project.Quote{{Date: now.Truncate(24 * time.Hour), Currency: "€", Lines: "work | " + price + " | work | as agreed\n"}}
	return p
}

// By hand: 70 + 120 and 50 + 120 min of two finished ones, 40 of one in hand: 6 h 40 min;
// expected 3 × 150 min, 7 h 30; left 90 − 0. At 30 an hour the two took 95 and 85; quoted
// 100 and 80: 5 left, 5 too little.
func TestSumsByHand(t *testing.T) {
	sh := evenings()
	all := []Sheath{
		Of(quoted(sheath("one", 70, true), "100"), sh), Of(quoted(sheath("two", 50, true), "80"), sh), Of(sheath("three", 40, false), sh),
	}
	s := Sum(all)
	if s.Sheaths != 3 || s.Finished != 2 || s.Hours != (money.Sum{Expected: 450 * time.Minute, Spent: 400 * time.Minute, Left: 90 * time.Minute}) {
		t.Errorf("sums %+v", s)
	}
	if s.Quoted != 2 || s.Asked.String() != "180" || s.Took.String() != "180" {
		t.Errorf("%d quoted: asked %s, took %s", s.Quoted, s.Asked, s.Took)
	}
	if left, ok := all[0].Left(); !ok || left.String() != "5" {
		t.Errorf("one leaves %s, %v", left, ok)
	}
	if left, _ := all[1].Left(); left.String() != "-5" {
		t.Errorf("two leaves %s", left)
	}
	if want := (StepSum{"Sew", 2, 4 * time.Hour, 2 * time.Hour, 3 * time.Hour}); len(s.Steps) != 2 || s.Steps[0] != want || s.Steps[1].Median != 50*time.Minute {
		t.Errorf("steps %+v", s.Steps)
	}
	plan, err := calc.Compute(sheath("one", 70, true).Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	c := plan.Cost(calc.Rates{Offcut: 0.25})
	if float64(s.Leather) != 2*c.LeatherArea || float64(s.Bought) != 2*c.ToBuy || s.Thread.MM() != 2*c.ThreadUsed || s.Yield() != c.LeatherArea/c.ToBuy {
		t.Errorf("leather %v of %v, thread %v; one takes %+v", s.Leather, s.Bought, s.Thread, c)
	}
}

func TestTables(t *testing.T) {
	sh := evenings()
	all := []Sheath{Of(quoted(sheath("one", 70, true), "100"), sh), Of(sheath("three", 40, false), sh), {Title: "torn", Err: "no format"}}
	got := Sheaths(all, sh, length.Millimetres)
	if row := strings.Join(got.Rows[0][:6], "|"); row != "x one|3 h 10 min|2 h 30 min|100.00 €|95.00 €|5.00 €" {
		t.Errorf("row %s", row)
	}
	if row := strings.Join(got.Rows[1][:6], "|"); row != "  three|40 min|2 h 30 min||20.00 €|" {
		t.Errorf("row %s", row)
	}
	if row := strings.Join(got.Rows[2], "|"); row != "! torn||||||||" {
		t.Errorf("row %s", row)
	}
	if row := strings.Join(got.Total[:6], "|"); row != "2, finished 1|3 h 50 min|5 h 0 min|100.00 €|95.00 €|5.00 €" {
		t.Errorf("total %s", row)
	}
	if row := StepRows(all).Rows[0]; strings.Join(row, "|") != "Sew|2 h 0 min|1|2 h 0 min|1 h 30 min" {
		t.Errorf("steps %q", row)
	}
	for _, row := range append(got.Rows, got.Total) {
		if len(row) != len(got.Head) {
			t.Errorf("%q has %d columns of %d", row, len(row), len(got.Head))
		}
	}
	if a := Sheaths(all, sh, length.Inches).Rows[0]; !strings.HasSuffix(a[6], " in²") || !strings.HasSuffix(a[8], " ft") {
		t.Errorf("in inches %q", a)
	}
}

// The JSON of a shelf with one in hand, one finished and one broken. On Thursday from 18:00,
// 90 min of sewing end 19:30, 4 days before the 30th.
func TestJSON(t *testing.T) {
	sh := evenings()
	earlier := sheath("four", 40, false) // of 90 min, for the 29th: it has the bench till 19:30
	earlier.Customer.Due = time.Date(2026, 11, 29, 0, 0, 0, 0, time.UTC)
	dir := shoptest.Shelf(t, map[string]project.Project{"d": earlier, "a": quoted(sheath("one", 70, true), "100"), "b": sheath("three", 40, false)}, "c")
	look, err := Over(shelf.Open(store.OS(), dir), sh)
	if err != nil {
		t.Fatal(err)
	}
	all := append(look.Next(2), look.Next(look.Left())...)
	data, err := JSON(all, sh, now)
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Sheaths []map[string]any
		Totals  map[string]any
	}
	if err := json.Unmarshal(data, &got); err != nil || len(got.Sheaths) != 4 {
		t.Fatalf("%v in %s", err, data)
	}
	one, three, torn := got.Sheaths[0], got.Sheaths[1], got.Sheaths[2]
	if one["left"] != "5.00" || one["finished"] != true || one["ready"] != nil || one["quote"].(map[string]any)["amount"] != "100.00" || one["error"] != nil {
		t.Errorf("one %v", one)
	}
	if ready := three["ready"].(map[string]any); ready["at"] != "2026-11-26T19:30:00Z" || ready["spare"] != 4.0 || three["quote"] != nil || three["left"] != nil {
		t.Errorf("three %v", three)
	}
	if q := three["ready"].(map[string]any)["queue"].(map[string]any); q["after"] != 1.0 || q["at"] != "2026-11-26T21:00:00Z" || q["spare"] != 4.0 {
		t.Errorf("after the one promised earlier: %v", q)
	}
	if q := got.Sheaths[3]["ready"].(map[string]any)["queue"].(map[string]any); q["after"] != 0.0 || q["at"] != "2026-11-26T19:30:00Z" || q["spare"] != 3.0 {
		t.Errorf("the one promised first: %v", q)
	}
	if torn["leather"] != nil || torn["cost"] != nil || !strings.Contains(torn["error"].(string), "c.toml") {
		t.Errorf("torn %v", torn)
	}
	if got.Totals["asked"] != "100.00" || got.Totals["took"] != "95.00" || got.Totals["sheaths"] != 3.0 {
		t.Errorf("totals %v", got.Totals)
	}
}
