package money

import (
	"strings"
	"testing"
	"time"
	"unicode"

	"chape/calc/length"
)

func on(m time.Month, d int) time.Time { return time.Date(2026, m, d, 0, 0, 0, 0, time.UTC) }

// A quote as a file keeps it is the quote: its day where the maker was, its unit, its amounts
// shown as they were.
func TestKeptRoundTrip(t *testing.T) {
	for _, unit := range []string{"", "0.01", "0.05", "0.10", "0.1", "1", "5"} {
		p := shop()
		if p.Currency.Unit = dec("0"); unit != "" {
			p.Currency.Unit = dec(unit)
		}
		p.Overhead, p.Margin = dec("0"), dec("0")
		b := Price(sheath(), p)
		evening := time.Date(2026, 11, 25, 23, 30, 0, 0, time.FixedZone("", -9*3600)) // in UTC it is the 26th
		q, err := Freeze(b, evening)
		if err != nil {
			t.Fatal(err)
		}
		q.Accepted = evening.AddDate(0, 1, 0)
		k := Keep(q, "A sheath", on(12, 18))
		if k.Date != on(11, 25) || k.Accepted != on(12, 25) || k.Due != on(12, 18) || k.What != "A sheath" || k.Currency != "€" || !k.Until.IsZero() {
			t.Errorf("kept %+v", k)
		}
		m, err := k.Money()
		if err != nil || m.Bill.Text() != b.Text() || m.Bill.Say() != b.Say() || len(m.Bill.Lines) != len(b.Lines) {
			t.Errorf("in units of %q it comes back as %s, %v, and was %s", unit, m.Bill.Say(), err, b.Say())
		}
		k.Check(func(key, found, remedy string) {
			t.Errorf("in units of %q: %s: found %s: %s", unit, key, found, remedy)
		})
		if unit == "0.10" && b.Say() != "221.70 €" { // 11.4, 0.1, 0.9 (0.85), 0.3 (0.25), 3.2, 205.8: in steps of 0.10 with two decimals
			t.Errorf("said %s", b.Say())
		}
	}
}

// A quote made before it was accepted, and one never accepted, with no price list behind them.
func TestAgainstWhatItTook(t *testing.T) {
	q := Quote{Bill: Bill{Lines: []Line{{WorkLine, "work", "", amt("100")}}}}
	for cost, want := range map[string]string{"84.50": "15.5", "100": "0", "100.01": "-0.01"} {
		if got := q.Against(Bill{Lines: []Line{{WorkLine, "work", "", amt(cost)}}}); !got.Equal(dec(want)) {
			t.Errorf("it took %s: leaves %s, want %s", cost, got, want)
		}
	}
	if k := Keep(q, "", time.Time{}); !k.Accepted.IsZero() || k.Unit != "" || k.Lines != "work | 100.00 | work | \n" {
		t.Errorf("kept %+v", k)
	}
}

// What of a quote will not do, its key and what would do; a line each, whatever stands there.
func TestCheck(t *testing.T) {
	good := Kept{Date: on(10, 25), Lines: "work | 80.00 | work | 2 h\nagreed | -5 | as agreed | by hand\n"}
	for _, c := range []struct {
		what   string
		change func(*Kept)
		want   string
	}{
		{"as it is", func(*Kept) {}, ""},
		{"all on one day", func(k *Kept) { k.Accepted, k.Until, k.Due = k.Date, k.Date, k.Date }, ""},
		{"promised for a day before", func(k *Kept) { k.Due = on(10, 1) }, ""}, // short, not wrong
		{"accepted too soon", func(k *Kept) { k.Accepted = on(10, 24) }, "quote.accepted: 2026-10-24: give the day it was made, 25 Oct 2026, or a later one"},
		{"over before it began", func(k *Kept) { k.Until = on(10, 24) }, "quote.until: 2026-10-24: give the day"},
		{"a unit of nothing", func(k *Kept) { k.Unit = "0.00" }, `quote.unit: "0.00": give the smallest amount there is, as in "0.01"`},
		{"a unit in words", func(k *Kept) { k.Unit = "a\ncent" }, `quote.unit: "a\ncent": give`},
		{"a unit below 0", func(k *Kept) { k.Unit = "-0.01" }, "quote.unit"},
		{"no lines", func(k *Kept) { k.Lines = " \n" }, "quote.lines: 0 lines that come to 0.00: give an amount for each line"},
		{"one not known", func(k *Kept) { k.Lines += "thread | ? | thread | x\n" }, "quote.lines: 3 lines that come to at least 75.00"},
		{"below 0", func(k *Kept) { k.Lines = strings.Replace(k.Lines, "-5", "-80.01", 1) }, "quote.lines: 2 lines that come to -0.01"},
		{"nothing at all", func(k *Kept) { k.Lines = strings.Replace(k.Lines, "-5", "-80", 1) }, ""},
		{"no bill", func(k *Kept) { k.Lines += "\x1b[2J" }, `quote.lines: what is no bill: row 3, "\x1b[2J": write kind | amount | name | what it came from`},
	} {
		k := good
		c.change(&k)
		said := ""
		k.Check(func(key, found, remedy string) { said += key + ": " + found + ": " + remedy })
		if (said == "") != (c.want == "") || !strings.Contains(said, c.want) || strings.ContainsFunc(said, unicode.IsControl) {
			t.Errorf("%s: %q, want %q", c.what, said, c.want)
		}
	}
}

// A price is by one of two areas; 1 ft² is 929.0304 cm²: 16 CFR 500.19.
func TestByArea(t *testing.T) {
	for _, c := range []struct {
		p    ByArea
		want string
		by   length.Area
		err  string
	}{
		{ByArea{}, "", length.SquareFoot, ""}, {ByArea{M2: "92.50"}, "92.5", SquareMetre, ""}, {ByArea{Ft2: "9.26"}, "9.26", length.SquareFoot, ""}, {ByArea{M2: "0"}, "0", SquareMetre, ""},
		{ByArea{M2: "1", Ft2: "2"}, "1", SquareMetre, "give one of the two"}, {ByArea{M2: "dear"}, "", SquareMetre, "as in 92.50, with a point, without currency"},
		{ByArea{Ft2: "9,26"}, "", length.SquareFoot, "with a point"}, {ByArea{Ft2: "-1"}, "", length.SquareFoot, "as in 92.50"},
	} {
		a, by, err := c.p.Amount()
		if a.String() != c.want || by != c.by || (err == nil) != (c.err == "") || err != nil && !strings.Contains(err.Error(), c.err) {
			t.Errorf("%+v: %s by %v, %v", c.p, a, by, err)
		}
	}
	if length.SquareFoot != 92903.04 {
		t.Errorf("a square foot is %v mm²", length.SquareFoot)
	}
}

// What is read as an amount and what is not, at the ends: nothing below 0, no more than a
// billion, no more than 20 signs.
func TestParseAtItsEnds(t *testing.T) {
	for text, want := range map[string]string{"0": "0", "-0": "0", "+5": "5", ".5": "0.5", "1000000000": "1000000000", "1000000000.000000000": "1000000000", "0.000000000000000001": "0.000000000000000001"} {
		if a, err := Parse(text); err != nil || !a.Equal(amt(want)) {
			t.Errorf("%q is %s, %v", text, a, err)
		}
	}
	for _, text := range []string{"-0.01", "1000000000.01", "0.0000000000000000001", "1E2", "1e2", "0x10", "1_000", "1 000", "٣", "5 €", "Infinity", "\x00"} {
		a, err := Parse(text)
		if err == nil || a.Known() || strings.ContainsFunc(err.Error(), unicode.IsControl) {
			t.Errorf("%q is %s, %v", text, a, err)
		}
	}
	for f, want := range map[float64]string{0.1: "0.1", 92.5: "92.5", 0.035: "0.035", 1e-7: "0.0000001", 0: ""} {
		if got := FromNumber(f).String(); got != want {
			t.Errorf("the number %v is %q, want %q", f, got, want)
		}
	}
}

// What is the same amount, however it was written; none is not 0.
func TestEqual(t *testing.T) {
	if !amt("12.5").Equal(amt("12.50")) || amt("0").Equal(Amount{}) || !(Amount{}).Equal(Amount{}) || amt("1").Equal(amt("1.001")) {
		t.Error("equal amounts differ, or others do not")
	}
	if (Amount{}).Decimal().IsZero() != true || amt("7").Decimal().String() != "7" {
		t.Error("the decimal of an amount is another")
	}
}
