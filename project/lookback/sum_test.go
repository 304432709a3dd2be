package lookback

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"chape/calc/length"
	"chape/project"
	"chape/project/money"
	"chape/project/shop/shoptest"
	"chape/project/steps"
)

const minute = time.Minute

// billed is a finished sheath that cost so much, quoted at a price; "" for what is not known.
func billed(cost, quote, sign string) Sheath {
	s := Sheath{Title: "x", Finished: true, Steps: []money.Step{{Title: "Sew", Spent: minute, Done: true}}}
	line := money.Line{Kind: money.WorkLine, Name: "work"}
	if cost != "" {
		line.Amount = shoptest.Amount(cost)
	}
	s.Cost = money.Bill{Currency: money.Currency{Sign: sign}, Lines: []money.Line{line}}
	if quote != "" {
		s.Quote = &money.Quote{Bill: money.Bill{Currency: money.Currency{Sign: "€"}, Lines: []money.Line{{Name: "work", Amount: shoptest.Amount(quote)}}}}
	}
	return s
}

// What a quote leaves is known of a finished sheath alone, with a quote in today's currency,
// no price missing and a plan that says what it took.
func TestLeft(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Sheath)
		left   string
		ok     bool
	}{
		"as it is":         {func(*Sheath) {}, "15.5", true},
		"not finished":     {func(s *Sheath) { s.Finished = false }, "0", false},
		"no quote":         {func(s *Sheath) { s.Quote = nil }, "0", false},
		"another currency": {func(s *Sheath) { s.Cost.Currency.Sign = "CHF" }, "0", false},
		"a price missing":  {func(s *Sheath) { s.Cost.Lines = append(s.Cost.Lines, money.Line{Name: "thread"}) }, "15.5", false},
		"took more":        {func(s *Sheath) { s.Cost.Lines[0].Amount = shoptest.Amount("120") }, "-20", true},
		"no plan":          {func(s *Sheath) { s.Err, s.Cost = "no plan: torn", money.Bill{Currency: s.Cost.Currency} }, "0", false},
	} {
		s := billed("84.50", "100", "€")
		c.change(&s)
		if left, ok := s.Left(); left.String() != c.left || ok != c.ok {
			t.Errorf("%s: leaves %s, %v, want %s, %v", name, left, ok, c.left, c.ok)
		}
	}
	// A shop without a currency's sign: what can't be planned has cost nothing that is known.
	torn := billed("", "100", "€")
	torn.Quote.Bill.Currency, torn.Cost, torn.Err = money.Currency{}, money.Bill{}, "no plan: torn"
	if left, ok := torn.Left(); ok {
		t.Errorf("without a plan it leaves %s", left)
	}
	if sum := Sum([]Sheath{torn}); sum.Quoted != 0 || !sum.Asked.IsZero() {
		t.Errorf("and counts as quoted: %+v", sum)
	}
}

// By hand: asked 100 + 80.50 = 180.50, took 84.50 + 90.25 = 174.75; the others have a price
// missing, no quote, another currency, or are in hand: they count for neither.
func TestSumOfMoney(t *testing.T) {
	inHand := billed("10", "70", "€")
	inHand.Finished = false
	s := Sum([]Sheath{billed("84.50", "100", "€"), billed("90.25", "80.50", "€"), billed("", "60", "€"), billed("50", "", "€"), billed("50", "60", "CHF"), inHand})
	if s.Quoted != 2 || s.Asked.StringFixed(2) != "180.50" || s.Took.StringFixed(2) != "174.75" || s.Finished != 5 || s.Sheaths != 6 {
		t.Errorf("%d of %d quoted (%d finished): asked %s, took %s", s.Quoted, s.Sheaths, s.Finished, s.Asked, s.Took)
	}
	if s := Sum(nil); s.Sheaths != 0 || s.Yield() != 0 || len(s.Steps) != 0 || !s.Asked.IsZero() {
		t.Errorf("of none %+v", s)
	}
}

// Leather and thread are of finished sheaths alone, the yield is of their sums: (600 + 200) of
// (1000 + 500) are 0.5333, not the mean of 0.6 and 0.4.
func TestSumOfStuff(t *testing.T) {
	a, b, open := Sheath{Finished: true, Leather: 600, Bought: 1000, Thread: 3000}, Sheath{Finished: true, Leather: 200, Bought: 500, Thread: 1500}, Sheath{Leather: 9, Bought: 9, Thread: 9}
	s := Sum([]Sheath{a, open, b})
	if s.Leather != 800 || s.Bought != 1500 || s.Thread != 4500 || s.Yield() != 800.0/1500 || s.Sheaths != 3 {
		t.Errorf("%+v, yield %v", s, s.Yield())
	}
	for _, s := range []Sheath{{}, {Leather: 5}, {Leather: 5, Bought: -1}} {
		if s.Yield() != 0 {
			t.Errorf("yield %v of %+v", s.Yield(), s)
		}
	}
}

// By hand: cutting took 40, 60 and 50 min, together 150, the middle one 50, expected 45 each
// of those three; sewing 70 and 80, together 150 as well, between them 75. What was never
// counted is no step; of two that took as long the name decides.
func TestSumOfSteps(t *testing.T) {
	of := func(cut, sew int) Sheath {
		return Sheath{Steps: []money.Step{
			{Title: "Sew", Expected: 90 * minute, Spent: time.Duration(sew) * minute}, {Title: "Cut", Expected: 45 * minute, Spent: time.Duration(cut) * minute}, {Title: "Wax", Expected: 5 * minute}}}
	}
	all := []Sheath{of(40, 70), of(60, 0), of(50, 80), of(0, 0)}
	want := []StepSum{{"Cut", 3, 150 * minute, 50 * minute, 135 * minute}, {"Sew", 2, 150 * minute, 75 * minute, 180 * minute}}
	if got := Sum(all).Steps; !slices.Equal(got, want) {
		t.Errorf("steps %+v\nwant  %+v", got, want)
	}
	for range 20 { // whatever the order of the sheaths
		rand.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		if got := Sum(all).Steps; !slices.Equal(got, want) {
			t.Fatalf("shuffled %+v", got)
		}
	}
}

// Of one project: what was skipped is no step, what is done is not left, the quote that counts
// is the accepted one.
func TestOf(t *testing.T) {
	p := sheath("one", 70, false)
	p.Customer.Name = "J. Smith of nowhere"
	p.Quotes = []project.Quote{
		{Date: now, Until: now.AddDate(0, 0, 30), Currency: "€", Accepted: now.AddDate(0, 0, 3), Lines: "work | 90.00 | work | x"},
		{Date: now, Currency: "€", Lines: "work | 120.00 | work | x"},
	}
	s := Of(p, evenings())
	if s.Title != "one" || s.Customer != p.Customer.Name || s.Due != p.Customer.Due || s.Finished || len(s.Steps) != 2 || len(s.Open.Jobs) != 1 || s.Err != "" {
		t.Errorf("%+v", s)
	}
	if s.Hours != (money.Sum{Expected: 150 * minute, Spent: 70 * minute, Left: 90 * minute}) || !s.Steps[0].Done || s.Steps[1].Done {
		t.Errorf("hours %+v, steps %+v", s.Hours, s.Steps)
	}
	if s.Quote == nil || s.Quote.Total().String() != "90" || !s.Until.Equal(p.Quotes[0].Until) {
		t.Errorf("quote %+v until %v", s.Quote, s.Until)
	}
	// The cost is by the minutes spent, 70 at 30 an hour; the price by those expected, 150.
	if s.Cost.Say() != "35.00 €" || s.Price.Say() != "75.00 €" {
		t.Errorf("cost %s, price %s", s.Cost.Say(), s.Price.Say())
	}
	p.Quotes[0].Lines = "torn"
	if s := Of(p, evenings()); s.Quote != nil || !s.Until.IsZero() {
		t.Errorf("a quote that is none: %+v", s.Quote)
	}
	p.Sheath.Ease = -60 // no plan
	if s := Of(p, evenings()); s.Err == "" || s.Leather != 0 || s.Thread != length.Length(0) || s.Hours.Spent != 70*minute || len(s.Cost.Lines) != 0 {
		t.Errorf("without a plan %+v", s)
	}
	if s := Of(project.Defaults(), evenings()); s.Finished || len(s.Steps) != 0 || s.Quote != nil {
		t.Errorf("a bare one %+v", s)
	}
	done := project.Defaults()
	done.Steps = []steps.Step{{Title: "Cut", Skipped: true}}
	if s := Of(done, evenings()); !s.Finished || len(s.Steps) != 0 {
		t.Errorf("all left out: %+v", s)
	}
}
