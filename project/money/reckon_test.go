package money

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"chape/calc/length"
	"github.com/shopspring/decimal"
)

// rat is an amount as a fraction, reckoned with by another library.
func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic(s)
	}
	return r
}

// halfUp rounds a fraction to so many units, halves up: floor of x/unit + 1/2.
func halfUp(x, unit *big.Rat) *big.Rat {
	q := new(big.Rat).Quo(x, unit)
	q.Add(q, big.NewRat(1, 2))
	n := new(big.Int).Div(q.Num(), q.Denom()) // towards the lower, for the denominator is above 0
	return new(big.Rat).Mul(new(big.Rat).SetInt(n), unit)
}

var units = []string{"0.01", "0.05", "0.1", "0.25", "1", "5", "0.001"}

// Rounding is half up to any unit, above 0 and below, as fractions reckon it.
func TestRoundAgainstFractions(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 5))
	for range 3000 {
		unit := units[r.IntN(len(units))]
		x := fmt.Sprintf("%d.%04d", r.IntN(4000)-2000, r.IntN(10000)/5*5)
		got, want := (Currency{Unit: dec(unit)}).Round(dec(x)), halfUp(rat(x), rat(unit))
		if got.Rat().Cmp(want) != 0 {
			t.Fatalf("%s to %s is %s, want %s", x, unit, got, want.FloatString(4))
		}
	}
}

// priced is a random price list of a random currency, and what its prices are as fractions.
func priced(r *rand.Rand) Prices {
	cents := func(most int) Amount { return amt(fmt.Sprintf("%d.%03d", r.IntN(most), r.IntN(1000))) }
	return Prices{Currency: Currency{"€", dec(units[r.IntN(len(units))])}, Leather: cents(200), Thread: cents(2), Sundries: cents(9), Hour: cents(90),
		Overhead: dec(fmt.Sprintf("0.%02d", r.IntN(60))), Margin: dec(fmt.Sprintf("0.%02d", r.IntN(70))), OwnMinimum: cents(400)}
}

// Over random sheaths and price lists every line is what fractions make of it, rounded; the
// overhead is of the rounded cost, the margin of the price; the sum is that of the lines, and
// never below the own minimum.
func TestPriceAgainstFractions(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 6))
	for range 400 {
		p := priced(r)
		unit := p.Currency.unit().Rat()
		mm2, mm, minutes, snaps := r.IntN(400000)*100, r.IntN(9000), r.IntN(900), 1+r.IntN(4)
		u := Use{Leather: []Leather{{Bought: length.Area(mm2)}}, Thread: length.Length(mm + 1), Items: []Item{{"snap", snaps, amt("0.855")}},
			Steps: []Step{{Expected: time.Duration(minutes) * min}}}
		mul := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
		want := []*big.Rat{
			halfUp(mul(big.NewRat(int64(mm2), 1000000), p.Leather.value.Rat()), unit), halfUp(mul(big.NewRat(int64(mm+1), 1000), p.Thread.value.Rat()), unit),
			halfUp(mul(big.NewRat(int64(snaps), 1), rat("0.855")), unit), halfUp(p.Sundries.value.Rat(), unit), halfUp(mul(big.NewRat(int64(minutes), 60), p.Hour.value.Rat()), unit),
		}
		sum := new(big.Rat)
		for _, w := range want {
			sum.Add(sum, w)
		}
		more := func(by *big.Rat) {
			want = append(want, halfUp(by, unit))
			sum.Add(sum, want[len(want)-1])
		}
		if p.Overhead.IsPositive() {
			more(mul(sum, p.Overhead.Rat()))
		}
		if m := p.Margin.Rat(); m.Sign() > 0 {
			more(mul(sum, new(big.Rat).Quo(m, new(big.Rat).Sub(big.NewRat(1, 1), m))))
		}
		if least := halfUp(p.OwnMinimum.value.Rat(), unit); sum.Cmp(least) < 0 {
			more(new(big.Rat).Sub(least, sum))
		}
		b := Price(u, p)
		total, atLeast := b.Total()
		if len(b.Lines) != len(want) || atLeast || total.Rat().Cmp(sum) != 0 {
			t.Fatalf("%d lines of %d, %s, want %s\n%+v", len(b.Lines), len(want), total, sum.FloatString(4), b.Lines)
		}
		for i, l := range b.Lines {
			if l.Amount.value.Rat().Cmp(want[i]) != 0 {
				t.Fatalf("%s %s: %s, want %s", l.Name, l.From, l.Amount, want[i].FloatString(4))
			}
		}
	}
}

// The margin is a share of the price, not of the cost: at 20 % of 100.00 the cost is 80.00. None
// and all of it are no margin; a minimum that is not known asks nothing.
func TestMarginAndMinimum(t *testing.T) {
	base := Prices{Currency: Currency{Sign: "€"}, Sundries: amt("80"), Hour: amt("0")}
	for _, c := range []struct{ margin, overhead, minimum, want string }{
		{"0.2", "0", "", "100.00 €"}, {"0.5", "0", "", "160.00 €"}, {"0", "0", "", "80.00 €"}, {"1", "0", "", "80.00 €"}, {"-0.5", "0", "", "80.00 €"},
		{"0.2", "0.25", "", "125.00 €"}, {"0", "0.333", "", "106.64 €"}, {"0", "0", "80", "80.00 €"}, {"0", "0", "80.004", "80.00 €"}, {"0", "0", "80.005", "80.01 €"},
		{"0.2", "0", "99.99", "100.00 €"}, {"0.2", "0", "150", "150.00 €"},
	} {
		p := base
		p.Margin, p.Overhead = dec(c.margin), dec(c.overhead)
		if c.minimum != "" {
			p.OwnMinimum = amt(c.minimum)
		}
		b := Price(Use{}, p)
		for _, l := range b.Lines[2:] { // what comes to nothing is no line
			if l.Amount.Decimal().IsZero() {
				t.Errorf("margin %s, overhead %s, minimum %q: a line of nothing, %+v", c.margin, c.overhead, c.minimum, l)
			}
		}
		if got := b.Say(); got != c.want {
			t.Errorf("margin %s, overhead %s, minimum %q: %s, want %s", c.margin, c.overhead, c.minimum, got, c.want)
		}
	}
}

// Any bill goes through its text and is the same: its lines, its sum, in any unit.
func TestBillRoundTrip(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 7))
	for range 300 {
		b := Bill{Currency: Currency{"€", dec(units[r.IntN(len(units))])}}
		for range 1 + r.IntN(9) {
			l := Line{Kind: Kind(r.IntN(int(MinimumLine) + 1)), Name: "snap, brass", From: "2 at 0.85 €"}
			if r.IntN(5) > 0 {
				l.Amount = amt(fmt.Sprintf("%d.%02d", r.IntN(500), r.IntN(100)))
			}
			b.add(l)
		}
		if r.IntN(3) == 0 {
			b = b.Agree(decimal.NewFromInt(int64(r.IntN(900))))
		}
		back, err := ParseBill(b.Text(), b.Currency)
		if err != nil || back.Text() != b.Text() || back.Say() != b.Say() || len(back.Lines) != len(b.Lines) {
			t.Fatalf("%v\n%s\nfrom\n%s", err, back.Text(), b.Text())
		}
		for i, l := range b.Lines {
			if k := back.Lines[i]; k.Kind != l.Kind || !k.Amount.Equal(l.Amount) || k.Name != l.Name || k.From != l.From {
				t.Fatalf("line %d: %+v, want %+v", i, k, l)
			}
		}
	}
}

// Minutes as people say them, to the whole minute: 59.5 are an hour.
func TestMinutes(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0 min", 29 * time.Second: "0 min", 30 * time.Second: "1 min", 59 * min: "59 min", 59*min + 29*time.Second: "59 min", 59*min + 30*time.Second: "1 h 0 min",
		320 * min: "5 h 20 min", 1500 * min: "25 h 0 min",
	} {
		if got := Minutes(d); got != want {
			t.Errorf("%v is %q, want %q", d, got, want)
		}
	}
	// 90 s are 2 min, 89 s are 1: at 60 an hour 2.00 and 1.00.
	for d, want := range map[time.Duration]string{90 * time.Second: "2.00", 89 * time.Second: "1.00"} {
		if got := Cost(Use{Steps: []Step{{Expected: d}}}, Prices{Sundries: amt("0"), Hour: amt("60")}).Say(); got != want {
			t.Errorf("%v of work are %s, want %s", d, got, want)
		}
	}
	if !(Use{Steps: []Step{{Spent: 1}}}).Spends() || (Use{Steps: []Step{{Expected: min}}}).Spends() || (Use{}).Spends() {
		t.Error("minutes are spent where none are, or none where some are")
	}
}

// What nothing is taken of has no line; what is taken for nothing has one.
func TestLinesOfNothing(t *testing.T) {
	p := Prices{Currency: Currency{Sign: "€"}, Leather: amt("0"), Thread: amt("0"), Sundries: amt("0"), Hour: amt("0")}
	b := Cost(Use{}, p)
	if len(b.Lines) != 2 || b.Lines[0].Kind != SundriesLine || b.Lines[1].Kind != WorkLine || b.Say() != "0.00 €" {
		t.Errorf("of nothing %+v", b.Lines)
	}
	b = Cost(Use{Leather: []Leather{{Name: "body", Bought: 1}}, Thread: 1, Items: []Item{{"snap", -1, amt("1")}, {"rivet", 1, Amount{}}}}, p)
	var names []string
	for _, l := range b.Lines {
		names = append(names, l.Name+" "+p.Currency.Show(l.Amount))
	}
	if got := strings.Join(names, "; "); got != "body 0.00 €; thread 0.00 €; rivet price missing; cement, dye, wax 0.00 €; work 0.00 €" {
		t.Errorf("lines %s", got)
	}
	if k := b.Known(); len(k.Lines) != 4 || len(b.Lines) != 5 || b.Lines[2].Name != "rivet" || b.Lines[4].Name != "work" || k.Say() != "0.00 €" || b.Say() != "at least 0.00 €" {
		t.Errorf("of those known %+v, of all %s", k.Lines, b.Say())
	}
}
