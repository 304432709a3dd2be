package file

import (
	"strings"
	"testing"
	"time"

	exact "github.com/shopspring/decimal"

	"chape/project"
	"chape/project/money"
)

func euros(s string) money.Amount { return money.Of(exact.RequireFromString(s)) }

// An invented order: 0.2 m² at 90.00 is 18.00, five hours at 38.00 are 190.00, a fifth of the
// price is margin: 208.00 × 0.2/0.8 = 52.00, so 260.00.
func order(leather, hour string) money.Bill {
	return money.Price(
		money.Use{Leather: []money.Leather{{Bought: 2e5}}, Steps: []money.Step{{Title: "Sew", Expected: 5 * time.Hour}}},
		money.Prices{Currency: money.Currency{Sign: "€"}, Leather: euros(leather), Sundries: euros("0"), Hour: euros(hour), Margin: exact.RequireFromString("0.2")})
}

// Quoted in October, accepted a month later when prices have gone up, the file closed in
// between: the old price stands.
func TestQuoteThroughTheFile(t *testing.T) {
	p := project.Defaults()
	q, err := money.Freeze(order("90", "38"), time.Date(2026, 10, 25, 21, 30, 0, 0, time.FixedZone("", 7200)))
	if err != nil {
		t.Fatal(err)
	}
	p.Quotes = []project.Quote{money.Keep(q, "A pouch sheath\n\"with\" a strap", time.Date(2026, 12, 18, 0, 0, 0, 0, time.UTC))}
	first := Encode(p)

	p, _, err = Decode("order.toml", first)
	if err != nil {
		t.Fatalf("%v in\n%s", err, first)
	}
	p.Quotes[0].Accepted = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)
	p, _, err = Decode("order.toml", Encode(p))
	if err != nil {
		t.Fatal(err)
	}
	old, err := p.Quotes[p.Standing()].Money()
	if err != nil || old.Bill.Say() != "260.00 €" || old.Bill.Lines[0].From != "0.2 m² at 90.00 €" {
		t.Errorf("accepted at %s, leather %+v, %v", old.Bill.Say(), old.Bill.Lines[0], err)
	}
	if got := order("120", "45").Say(); got != "311.25 €" { // 24 + 225 = 249, and a fifth of the price: 62.25
		t.Errorf("the new list says %s", got)
	}
	if got := p.Quotes[0]; !got.Date.Equal(time.Date(2026, 10, 25, 0, 0, 0, 0, time.UTC)) || got.What != "A pouch sheath\n\"with\" a strap" {
		t.Errorf("kept as %+v", got)
	}
	if again := Encode(p); strings.Count(string(again), "[[quote]]") != 1 || !strings.Contains(string(again), "accepted = 2026-11-25\n") {
		t.Errorf("written as\n%s", again)
	}
}

func TestQuotesRefused(t *testing.T) {
	const good = "date = 2026-10-25\nlines = \"work | 80 | work | 2 h\"\n"
	head := string(Encode(project.Defaults())) + "\n[[quote]]\n"
	if _, _, err := Decode("q.toml", []byte(head+good)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ rows, want string }{
		{"lines = \"work | 80 | work | 2 h\"\n", "quote.date of quote 1: found nothing: give it: the day it was made"},
		{"date = 2026-10-25\n", "quote.lines of quote 1: found nothing: give it"},
		{good + "accepted = 2026-10-24\n", "quote.accepted of quote 1: found 2026-10-24: give the day it was made, 25 Oct 2026, or a later one"},
		{good + "unit = \"0\"\n", `quote.unit of quote 1: found "0": give the smallest amount there is, as in "0.01"`},
		{good + "unit = \"a cent\"\n", "quote.unit"},
		{good + "total = 80\n", "quote.total of quote 1: found a key this program does not know"},
		{"date = 2026-10-25\nlines = \"work | ? | work | 2 h\"\n", "found 1 lines that come to at least 0.00: give an amount for each line"},
		{"date = 2026-10-25\nlines = \"work | 1e9 | work | 2 h\"\n", "quote.lines of quote 1: found what is no bill: row 1"},
		{"date = 2026-10-25\nlines = \"agreed | -5 | a | b\"\n", "come to -5.00"},
		{"date = 2026-10-25\nlines = 80\n", "quote.lines"},
	} {
		_, _, err := Decode("q.toml", []byte(head+c.rows))
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v\nwant %s", c.rows, err, c.want)
		}
	}
}

// What counts is what was accepted; without that, what was said last.
func TestStanding(t *testing.T) {
	on := func(day int) time.Time { return time.Date(2026, 11, day, 0, 0, 0, 0, time.UTC) }
	var p project.Project
	if p.Standing() != -1 {
		t.Error("a quote where there is none")
	}
	p.Quotes = []project.Quote{{Date: on(1)}, {Date: on(2)}, {Date: on(3)}}
	if p.Standing() != 2 {
		t.Errorf("of none accepted %d", p.Standing())
	}
	p.Quotes[0].Accepted, p.Quotes[1].Accepted = on(9), on(7)
	if p.Standing() != 0 {
		t.Errorf("of two accepted %d", p.Standing())
	}
}
