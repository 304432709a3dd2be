package shop

import (
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"

	"chape/calc"
	"chape/calc/calendar"
	"chape/calc/length"
	"chape/project"
	"chape/project/money"
	"chape/project/steps"
)

func amt(s string) money.Amount { return money.Of(decimal.RequireFromString(s)) }

// evenings is an invented shop.
func evenings(t testing.TB) Shop {
	t.Helper()
	w, err := calendar.ParseWeek("mon-fri 18-21, sat 9-13")
	if err != nil {
		t.Fatal(err)
	}
	return Shop{
		Prices: money.Prices{Currency: money.Currency{Sign: "€"}, Leather: amt("90"), Thread: amt("0.05"), Sundries: amt("3"), Hour: amt("36"), Margin: decimal.RequireFromString("0.2")},
		Snap:   amt("0.85"), Rivet: amt("0.15"), Offcut: 0.25, Week: w,
	}
}

func strapped(t *testing.T) (project.Project, *calc.Plan) {
	t.Helper()
	p := project.Defaults()
	p.Title = "Orchard"
	p.Strap.Kind = calc.SnapStrap
	p.Steps = []steps.Step{
		{Title: "Cut", Expect: 40 * time.Minute, Spent: 50 * time.Minute, Done: time.Unix(1, 0)},
		{Title: "Sew", Expect: 2 * time.Hour},
	}
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	return p, plan
}

// A strap brings its leather, a snap and a rivet; the sum is that of the lines as they are
// shown: worked out from what they say.
func TestReckon(t *testing.T) {
	p, plan := strapped(t)
	s := evenings(t)
	r := s.Reckon(p, plan)
	names := ""
	for _, l := range r.Price.Lines {
		names += l.Name + " " + l.Amount.String() + "; "
	}
	for _, want := range []string{"snap 0.85; rivet 0.15; ", "work 96; "} { // 160 min at 36 an hour
		if !strings.Contains(names, want) {
			t.Errorf("no %q in %s", want, names)
		}
	}
	cost, _ := r.Cost.Total()
	price, _ := r.Price.Total()
	if want := r.Cost.Currency.Round(cost.Mul(decimal.RequireFromString("1.25"))); !price.Equal(want) {
		t.Errorf("price %s, want %s: a fifth of it is margin", price, want)
	}
	taken, _ := r.Taken.Total()
	if want := cost.Sub(decimal.RequireFromString("66")); !taken.Equal(want) { // 50 min are 30
		t.Errorf("taken %s, want %s", taken, want)
	}
	p.Strap.Kind = calc.NoStrap
	bare, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	without := s.Takes(p, bare)
	if len(without.Items) != 0 || without.Leather[0].Cut >= r.Use.Leather[0].Cut {
		t.Errorf("without a strap %+v, with one %+v", without, r.Use)
	}
}

// Worked by hand from Thu 26 Nov 2026, 19:00, evenings of three hours: 2 h of sewing are done
// at 21:00, 3 h at Fri 19:00.
func TestReadyInWords(t *testing.T) {
	now := time.Date(2026, 11, 26, 19, 0, 0, 0, time.UTC)
	on := func(m time.Month, d int) time.Time { return time.Date(2026, m, d, 0, 0, 0, 0, time.UTC) }
	sewing := func(d time.Duration, more ...steps.Step) steps.Open {
		return steps.StillOpen(append([]steps.Step{{Title: "Sew", Expect: d}}, more...))
	}
	s := evenings(t)
	for _, c := range []struct {
		open  steps.Open
		due   time.Time
		text  string
		short bool
	}{
		{sewing(2 * time.Hour), on(12, 18), "at the earliest Thu 26 Nov 21:00; promised 18 Dec: 22 days to spare", false},
		{sewing(3 * time.Hour), on(11, 28), "at the earliest Fri 27 Nov 19:00; promised 28 Nov: 1 day to spare", false},
		{sewing(3 * time.Hour), on(11, 27), "at the earliest Fri 27 Nov 19:00; promised 27 Nov: no day to spare", false},
		{sewing(3 * time.Hour), on(11, 25), "at the earliest Fri 27 Nov 19:00; promised 25 Nov: 2 days short", true},
		{sewing(3 * time.Hour), time.Time{}, "at the earliest Fri 27 Nov 19:00", false},
		{sewing(2*time.Hour, steps.Step{Title: "Dry", Hold: 60 * 24 * time.Hour}), time.Time{}, "at the earliest Tue 26 Jan 2027 18:00", false}, // Mon 21:00, when the bench is left
		{steps.StillOpen(nil), on(12, 18), "", false},
	} {
		if got := s.Ready(c.open, c.due, now); got.Text != c.text || got.Short != c.short || got.Lacks != "" {
			t.Errorf("%+v, want %q", got, c.text)
		}
	}
	got := s.Ready(sewing(time.Hour, steps.Step{Title: "Dye", Sheet: true}, steps.Step{Title: "Buff"}), time.Time{}, now)
	if got.Lacks != "not counted, so later: 1 wait by data sheet not set, 1 step without minutes" {
		t.Errorf("lacks %q", got.Lacks)
	}
	if got := (Shop{}).Ready(sewing(time.Hour), on(12, 18), now); !strings.Contains(got.Text, "[shop] hours") || got.Short {
		t.Errorf("without hours %+v", got)
	}
}

// Two sheaths took 50 and 60 min to cut: 55. Sewing was never counted, and what is done or
// skipped learns nothing more.
func TestLessons(t *testing.T) {
	done := time.Unix(1, 0)
	took := func(cut, sew time.Duration) []steps.Step {
		return []steps.Step{{Title: "Cut", Spent: cut, Done: done}, {Title: "Sew", Spent: sew, Done: done}, {Title: "Line", Spent: time.Hour, Skipped: true}}
	}
	list := []steps.Step{{Title: "Cut", Expect: 40 * time.Minute}, {Title: "Sew", Expect: 2 * time.Hour}, {Title: "Line"}, {Title: "Cut", Done: done}}
	got := Lessons(list, [][]steps.Step{took(50*time.Minute, 0), took(time.Hour, 0)})
	if len(got) != 1 || got[0] != (Lesson{0, 55 * time.Minute, 2}) {
		t.Errorf("Lessons = %+v", got)
	}
	if !Finished(took(1, 1)) || Finished(list) || Finished(nil) {
		t.Error("Finished takes one for another")
	}
}

// What a customer is told holds none of the shop's figures.
func TestWhat(t *testing.T) {
	p, _ := strapped(t)
	want := "A sheath of 3.2 mm leather, formed to this knife: Orchard.\nDrawn with the right hand, edge to the rear.\nWith a loop for a belt 38 mm wide.\nWith a strap and a snap over the handle."
	if got := What(p); got != want {
		t.Errorf("What = %q\nwant %q", got, want)
	}
	p.Title, p.Sold.Body, p.Units, p.Strap.Kind, p.Belt.Loop = "", "8-9 oz", length.Inches, calc.NoStrap, calc.NoLoop
	if got := What(p); got != "A sheath of 8-9 oz leather, formed to the knife.\nDrawn with the right hand, edge to the rear." {
		t.Errorf("What = %q", got)
	}
}
