package money

import (
	"strings"
	"testing"
	"time"

	"chape/calc/length"
	"github.com/shopspring/decimal"
)

func dec(s string) decimal.Decimal { return decimal.RequireFromString(s) }
func amt(s string) Amount          { return Of(dec(s)) }

const min = time.Minute

// Half up, by hand: half a cent goes up, a hair below does not; in steps of 0.05 and
// of 1 as well. Binary fractions would get 1.005 and 2.675 wrong.
func TestRoundHalfUp(t *testing.T) {
	for _, c := range []struct{ unit, in, want string }{
		{"0.01", "1.005", "1.01"}, {"0.01", "2.675", "2.68"}, {"0.01", "1.00499999", "1"}, {"0.01", "-0.005", "0"},
		{"0.05", "1.025", "1.05"}, {"0.05", "1.0249", "1"}, {"0.05", "7.37", "7.35"}, {"0.05", "7.375", "7.4"},
		{"1", "99.5", "100"}, {"1", "99.49", "99"}, {"0", "0.125", "0.13"}, {"0.25", "0.375", "0.5"},
	} {
		if got := (Currency{Unit: dec(c.unit)}).Round(dec(c.in)); !got.Equal(dec(c.want)) {
			t.Errorf("%s to %s = %s, want %s", c.in, c.unit, got, c.want)
		}
	}
}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		cur      Currency
		in, want string
	}{
		{Currency{Sign: "€", Unit: dec("0.01")}, "12.5", "12.50 €"},
		{Currency{Sign: "CHF", Unit: dec("0.05")}, "12.52", "12.50 CHF"},
		{Currency{Sign: "¥", Unit: dec("1")}, "1234.5", "1235 ¥"},
		{Currency{}, "3", "3.00"},
	} {
		if got := c.cur.Format(dec(c.in)); got != c.want {
			t.Errorf("Format(%s) = %q, want %q", c.in, got, c.want)
		}
	}
	if got := (Currency{}).Show(Amount{}); got != "price missing" {
		t.Errorf("Show of no amount = %q", got)
	}
}

func TestParse(t *testing.T) {
	for _, s := range []string{"12.50", " 0.035 ", "0", "1000000000", ""} {
		a, err := Parse(s)
		if err != nil || a.Known() != (s != "") {
			t.Errorf("Parse(%q) = %v, %v", s, a, err)
		}
		if b, err := Parse(a.String()); err != nil || !b.Equal(a) {
			t.Errorf("%q comes back as %v, %v", s, b, err)
		}
	}
	for _, s := range []string{"12,50", "-1", "1e5", "€ 5", "nan", "1000000001", "0." + strings.Repeat("3", 40)} {
		if _, err := Parse(s); err == nil || !strings.Contains(err.Error(), "12.50") {
			t.Errorf("Parse(%q): %v", s, err)
		}
	}
	if a := FromNumber(0.1); a.String() != "0.1" || FromNumber(0).Known() {
		t.Errorf("FromNumber(0.1) = %v", a)
	}
}

// shop is an invented price list.
func shop() Prices {
	return Prices{Currency: Currency{"€", dec("0.01")}, Leather: amt("92.50"), Thread: amt("0.035"), Sundries: amt("3.20"), Hour: amt("38")}
}

// sheath takes 0.1234 m² bought, 2.835 m of thread, one snap, two rivets, 5 h 25 min.
func sheath() Use {
	return Use{
		Leather: []Leather{{Cut: 83912, Bought: 123400, From: "placed, yield 68 %"}},
		Thread:  2835,
		Items:   []Item{{"snap", 1, amt("0.85")}, {"rivet", 2, amt("0.125")}, {"buckle", 0, amt("9")}},
		Steps: []Step{
			{"Cut", 50 * min, 65 * min, true}, {"Sew", 3 * time.Hour, 200 * min, true}, {"Form", 40 * min, 10 * min, false}, {"Finish", 55 * min, 0, false}},
	}
}

// A quote worked by hand, line by line:
// leather 0.1234 × 92.50 = 11.4145 → 11.41; thread 2.835 × 0.035 = 0.099225 → 0.10;
// snap 0.85; rivets 2 × 0.125 = 0.25; sundries 3.20; work 325/60 × 38 = 205.8333 →
// 205.83. Cost 221.64. Overhead 12 % = 26.5968 → 26.60; 248.24. Margin 20 % of the
// price: 248.24 × 0.2/0.8 = 62.06. Price 310.30.
func TestQuoteByHand(t *testing.T) {
	p := shop()
	cost := Cost(sheath(), p)
	wantLines(t, cost, "11.41", "0.1", "0.85", "0.25", "3.2", "205.83")
	if got := cost.Say(); got != "221.64 €" {
		t.Errorf("cost %s, want 221.64 €", got)
	}
	p.Overhead, p.Margin = dec("0.12"), dec("0.2")
	price := Price(sheath(), p)
	wantLines(t, price, "11.41", "0.1", "0.85", "0.25", "3.2", "205.83", "26.6", "62.06")
	if got := price.Say(); got != "310.30 €" {
		t.Errorf("price %s, want 310.30 €", got)
	}
	for i, want := range []string{
		"0.1234 m² at 92.50 €, placed, yield 68 %", "2.835 m at 0.035 €", "1 at 0.85 €", "2 at 0.125 €", "a sheath",
		"5 h 25 min expected in 4 steps at 38.00 € an hour", "12 % of the cost expected", "20 % of the price"} {
		if got := price.Lines[i].From; got != want {
			t.Errorf("line %d from %q, want %q", i, got, want)
		}
	}
}

func wantLines(t *testing.T, b Bill, want ...string) {
	t.Helper()
	if len(b.Lines) != len(want) {
		t.Fatalf("%d lines, want %d: %v", len(b.Lines), len(want), b.Lines)
	}
	sum := decimal.Zero
	for i, l := range b.Lines {
		sum = sum.Add(l.Amount.Decimal())
		if !l.Amount.Equal(amt(want[i])) {
			t.Errorf("%s: %v, want %s", l.Name, l.Amount, want[i])
		}
	}
	if got, _ := b.Total(); !got.Equal(sum) {
		t.Errorf("total %s is not the sum of its lines, %s", got, sum)
	}
}

// By the square foot, a second leather with its own price, steps of 0.05: 185806.08 mm²
// is 2 ft² exactly (1 ft² = 929.0304 cm², 16 CFR 500.19): 2 × 9.26 = 18.52 → 18.50; strap
// 0.01 m² × 41.3 = 0.413 → 0.40; spent 275 min × 48/60 = 220.
func TestSquareFeetAndSpent(t *testing.T) {
	p := Prices{Currency: Currency{"CHF", dec("0.05")}, Leather: amt("9.26"), LeatherBy: length.SquareFoot, Sundries: amt("2"), Hour: amt("48")}
	u := Use{Leather: []Leather{{Name: "body", Bought: 185806.08}, {Name: "strap", Bought: 1e4, Price: amt("41.3")}}, Steps: sheath().Steps, Spent: true}
	b := Cost(u, p)
	wantLines(t, b, "18.5", "0.4", "2", "220")
	if got := b.Lines[0].From; got != "2 ft² at 9.26 CHF" {
		t.Errorf("leather from %q", got)
	}
	if got := b.Lines[3].From; !strings.HasPrefix(got, "4 h 35 min spent") {
		t.Errorf("work from %q", got)
	}
}

// Shown in feet, reckoned as it is priced: 185806.08 mm² are 2 ft² exactly (16 CFR 500.19)
// and 0.1858 m², at 90 are 16.722 → 16.72; 3048 mm are 10 ft exactly and 3.048 m, at 0.05
// are 0.1524 → 0.15. Where leather is priced by the square foot it is shown so anyway.
func TestShownInFeet(t *testing.T) {
	p := Prices{Currency: Currency{Sign: "€"}, Leather: amt("90"), Thread: amt("0.05"), Sundries: amt("0"), Hour: amt("0")}
	u := Use{Leather: []Leather{{Bought: 185806.08, From: "25 % for offcuts"}}, Thread: 3048, Unit: length.Inches}
	b := Cost(u, p)
	wantLines(t, b, "16.72", "0.15", "0", "0")
	if got := b.Lines[0].From; got != "2.00 ft² at 90.00 € a square metre (8.361 € a ft²), 25 % for offcuts" {
		t.Errorf("leather from %q", got)
	}
	if got := b.Lines[1].From; got != "10.0 ft at 0.05 € a metre (0.015 € a ft)" {
		t.Errorf("thread from %q", got)
	}
	u.Leather[0].Bought = 31096.7 // 48.2 in² are 0.3347 ft²; 0.0311 m² at 90 are 2.799, not 0.335 × 8.361 = 2.801
	if l := Cost(u, p).Lines[0]; l.From != "0.335 ft² at 90.00 € a square metre (8.361 € a ft²), 25 % for offcuts" || !l.Amount.Decimal().Equal(dec("2.8")) {
		t.Errorf("a small piece: %s from %q", l.Amount.Decimal(), l.From)
	}
	u.Leather[0].Bought = 185806.08
	p.Leather, p.LeatherBy, p.Thread = amt("9"), length.SquareFoot, Amount{}
	b = Cost(u, p)
	if a, b := b.Lines[0].From, b.Lines[1].From; a != "2 ft² at 9.00 €, 25 % for offcuts" || b != "10.0 ft" {
		t.Errorf("leather from %q, thread from %q", a, b)
	}
}

// Made on 25 Nov, 30 days: it holds up to 25 Dec (5 days left of November, then 25), that
// day's evening included.
func TestHolds(t *testing.T) {
	q := Kept{Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)}
	if q.Hold(30); q.Until.Format(time.DateOnly) != "2026-12-25" {
		t.Errorf("holds until %v", q.Until)
	}
	zone := time.FixedZone("", 2*3600)
	if q.Over(time.Date(2026, 12, 25, 23, 59, 0, 0, zone)) || !q.Over(time.Date(2026, 12, 26, 0, 1, 0, 0, zone)) {
		t.Error("it does not hold to the end of its last day")
	}
	if q.Hold(0); !q.Until.IsZero() || q.Over(q.Date.AddDate(9, 0, 0)) {
		t.Error("no end is set, yet it ends")
	}
}

// The own minimum: 3.20 and 12 min at 38 are 10.80; 14.20 are missing to 25.
func TestOwnMinimum(t *testing.T) {
	p := shop()
	p.OwnMinimum = amt("25")
	u := Use{Steps: []Step{{Title: "Cut", Expected: 12 * min}}}
	b := Price(u, p)
	wantLines(t, b, "3.2", "7.6", "14.2")
	if b.Lines[2].Kind != MinimumLine || b.Say() != "25.00 €" {
		t.Errorf("%v comes to %s", b.Lines[2], b.Say())
	}
	p.OwnMinimum = amt("10.80")
	wantLines(t, Price(u, p), "3.2", "7.6")
}

func TestMissingPrices(t *testing.T) {
	p := shop()
	p.Leather, p.Hour = Amount{}, Amount{}
	b := Cost(sheath(), p)
	if got := b.Say(); got != "at least 4.40 €" {
		t.Errorf("Say = %q, want at least 4.40 €", got)
	}
	if l := b.Lines[0]; l.Amount.Known() || l.From != "0.1234 m², placed, yield 68 %" || p.Currency.Show(l.Amount) != "price missing" {
		t.Errorf("leather without a price: %+v", l)
	}
	if _, err := Freeze(b, time.Time{}); err == nil || !strings.Contains(err.Error(), "leather has no price") {
		t.Errorf("Freeze: %v", err)
	}
}

// A quote accepted a month later holds the old price.
func TestQuoteIsACopy(t *testing.T) {
	p := shop()
	b := Price(sheath(), p)
	q, err := Freeze(b, time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	b.Lines[0].Amount = amt("99")
	p.Leather, p.Hour = amt("120"), amt("45")
	q.Accepted = q.Date.AddDate(0, 1, 0)
	if !q.Total().Equal(dec("221.64")) {
		t.Errorf("the quote came to %s", q.Total())
	}
	u := sheath()
	u.Spent = true
	if got := q.Against(Cost(u, shop())); !got.Equal(dec("31.66")) { // 275 min instead of 325
		t.Errorf("leaves %s, want 31.66", got)
	}
	back, err := ParseBill(q.Bill.Text(), q.Bill.Currency)
	if err != nil || back.Text() != q.Bill.Text() || back.Say() != q.Bill.Say() {
		t.Errorf("comes back as %v, %v", back, err)
	}
}

// A price agreed on is a line of its own: 221.64 was reckoned, 210 agreed, 11.64 less; then 250,
// 28.36 more.
func TestAgreed(t *testing.T) {
	b := Cost(sheath(), shop())
	for _, c := range []struct{ price, by, row string }{
		{"210", "-11.64", "agreed | -11.64 | as agreed | the price was set by hand\n"},
		{"250", "28.36", "agreed | 28.36 | as agreed | the price was set by hand\n"},
		{"221.64", "", ""},
	} {
		b = b.Agree(dec(c.price))
		last := b.Lines[len(b.Lines)-1]
		if got, _ := b.Total(); !got.Equal(dec(c.price)) || c.by != "" && !last.Amount.Equal(amt(c.by)) || (last.Kind == AgreedLine) != (c.by != "") {
			t.Errorf("agreed on %s: %s with %+v", c.price, got, last)
		}
		back, err := ParseBill(b.Text(), b.Currency)
		if err != nil || back.Text() != b.Text() || !strings.HasSuffix(back.Text(), c.row) {
			t.Errorf("agreed on %s comes back as %q, %v", c.price, back.Text(), err)
		}
	}
	for _, row := range []string{"work | -1 | work | x", "agreed | -- 1 | a | b", "agreed | - | a | b"} {
		if _, err := ParseBill(row, Currency{}); err == nil {
			t.Errorf("%q is taken", row)
		}
	}
}

func TestParseBill(t *testing.T) {
	b := Bill{Lines: []Line{{ItemLine, "snap | brass\n", "2  of them", amt("1.5")}, {WorkLine, "work", "", Amount{}}}}
	const text = "item | 1.50 | snap / brass | 2 of them\nwork | ? | work | \n"
	if got := b.Text(); got != text {
		t.Errorf("Text = %q", got)
	}
	back, err := ParseBill(text, Currency{})
	if err != nil || back.Text() != text {
		t.Errorf("comes back as %q, %v", back.Text(), err)
	}
	for _, c := range []struct{ in, want string }{
		{"item | 1.50 | snap", "write kind"}, {"gold | 1 | a | b", "none of leather"}, {"\nitem | x | a | b", "row 2"}, {"item |  | a | b", "missing"},
	} {
		if _, err := ParseBill(c.in, Currency{}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("ParseBill(%q): %v, want %q", c.in, err, c.want)
		}
	}
}

// By hand: expected 5 h 25; spent 4 h 35; left 30 of forming and 55 of finishing.
func TestHours(t *testing.T) {
	if got, want := Hours(sheath().Steps), (Sum{325 * min, 275 * min, 85 * min}); got != want {
		t.Errorf("Hours = %v, want %v", got, want)
	}
	for _, c := range []struct {
		spent []time.Duration
		want  time.Duration
		of    int
	}{{nil, 40 * min, 0}, {[]time.Duration{0, 0}, 40 * min, 0}, {[]time.Duration{70 * min, 0, 50 * min, 55 * min}, 55 * min, 3},
		{[]time.Duration{70 * min, 51 * min}, 61 * min, 2}} {
		if got, of := Learn(40*min, c.spent); got != c.want || of != c.of {
			t.Errorf("Learn(%v) = %v of %d, want %v of %d", c.spent, got, of, c.want, c.of)
		}
	}
}
