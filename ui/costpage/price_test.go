package costpage

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"chape/calc/length"
	"chape/project/money"
	"chape/project/shop"
	"chape/project/shop/shoptest"
	"chape/ui/act"
)

// settings are where prices are kept.
type settings struct {
	shop shop.Shop
	kept []string
	fail error
}

func (s *settings) keep(key string, a money.Amount) (shop.Shop, error) {
	if s.fail != nil {
		return shop.Shop{}, s.fail
	}
	s.kept = append(s.kept, key+" = "+a.String())
	switch key {
	case "price.thread":
		s.shop.Prices.Thread = a
	case "price.leather_m2", "price.leather_ft2":
		s.shop.Prices.Leather = a
	case "price.hour":
		s.shop.Prices.Hour = a
	}
	return s.shop, nil
}

// A price that is missing is given on its line, with a comma or a point, and one that is
// there is changed; what was there before is said.
func TestPriceOnItsLine(t *testing.T) {
	s := &settings{}
	r := newRig(t, order(), 78, 40, Options{Keep: s.keep}, shop.Shop{})
	price := func() (got shop.Shop) {
		t.Helper()
		for _, m := range r.Sent {
			if p, ok := m.(act.Priced); ok {
				got = p.Shop
			}
		}
		return got
	}
	r.Shows("> leather", "Enter on a line gives its price")
	r.Keys("enter").Shows("Your price for leather, a square metre").Answer("90").Run()
	r.Snap.Shop = price()
	r.Show().Shows("> thread", "at 90.00")
	r.Keys("enter").Answer("abc").Shows(`"abc" is no price: type one, as in 12.50`).Answer("0,45").Run()
	r.Snap.Shop = price()
	r.Show().Shows("at 0.45")
	r.Keys("up", "up", "down", "enter").Answer("0.5").Run()
	if want := "price.leather_m2 = 90; price.thread = 0.45; price.thread = 0.5"; strings.Join(s.kept, "; ") != want {
		t.Errorf("kept %q", s.kept)
	}
	if want := "thread, a metre: 0.5, before it was 0.45; kept in your settings"; r.Said[len(r.Said)-1] != want {
		t.Errorf("said %q", r.Said)
	}
	n := len(s.kept)
	r.Snap.Shop = price()
	r.Show().Keys("up", "up", "up", "enter", "enter", "enter", "esc").Run() // as it stands, and not at all
	if len(s.kept) != n {
		t.Errorf("kept again: %q", s.kept[n:])
	}
	r.Keys("enter").Answer("0").Shows("0 counts as not known").Keys("esc")
	s.fail = errors.New("no room")
	r.Keys("enter").Answer("91").Run()
	if got := r.Said[len(r.Said)-1]; got != "the price is not kept: no room" {
		t.Errorf("said %q", got)
	}
}

// Shares are asked for in percent, and refused there where no settings take them.
func TestSharesInPercent(t *testing.T) {
	for _, c := range []struct {
		kind                      money.Kind
		tooMuch, refusal, in, out string
	}{
		{money.OverheadLine, "501", "501 % is too much to reckon with: give at most 500", "15 %", "price.overhead = 0.15"},
		{money.MarginLine, "100", "100 % is too much to reckon with: give at most 90", "90", "price.margin = 0.9"},
	} {
		s := &settings{}
		r := newRig(t, order(), 78, 40, Options{Keep: s.keep}, shoptest.Evenings())
		at := slices.IndexFunc(r.Pane.reckon.Price.Lines, func(l money.Line) bool { return l.Kind == c.kind })
		if at < 0 {
			t.Fatalf("%v has no line", c.kind)
		}
		for range at {
			r.Keys("down")
		}
		r.Keys("enter").Answer(c.tooMuch).Shows(c.refusal).Answer(c.in).Run()
		if len(s.kept) != 1 || s.kept[0] != c.out {
			t.Errorf("kept %q", s.kept)
		}
	}
}

// What no setting is behind says where it stands, and inches ask by the square foot.
func TestPriceElsewhere(t *testing.T) {
	p := order()
	p.Units = length.Inches
	newRig(t, p, 78, 40, Options{Keep: (&settings{}).keep}, shop.Shop{}).Keys("enter").Shows("leather, a square foot")
	s := shoptest.Evenings()
	r := newRig(t, order(), 78, 40, Options{Keep: (&settings{}).keep}, s)
	for i, l := range r.Pane.reckon.Price.Lines {
		if _, why := r.Pane.priceOf(i); why != "" {
			t.Errorf("%s: %s", l.Name, why)
		}
	}
	r = newRig(t, order(), 78, 40, Options{}, s).Keys("enter")
	if len(r.Said) != 1 || !strings.Contains(r.Said[0], "nowhere to keep") {
		t.Errorf("said %q", r.Said)
	}
}

// A calliper's reading sets no price, wherever the cursor is.
func TestReadingSetsNoPrice(t *testing.T) {
	s := &settings{}
	r := newRig(t, order(), 78, 19, Options{Keep: s.keep}, shop.Shop{})
	r.Tool("24.53", 1, "enter").Run()
	r.Keys("enter").Tool("24.53", 1, "enter").Run()
	if len(s.kept) > 0 {
		t.Errorf("kept %q", s.kept)
	}
}

// The line in hand is in sight at every size, all the way down and up; the quotes can be reached.
func TestLineInSight(t *testing.T) {
	for _, size := range [][2]int{{38, 9}, {78, 10}, {78, 19}, {158, 40}} {
		r := newRig(t, order(), size[0], size[1], Options{}, shop.Shop{})
		n := len(r.Pane.reckon.Price.Lines)
		for range n - 1 {
			r.Keys("down").Shows("> ")
		}
		if r.Pane.line != n-1 {
			t.Errorf("%v: at line %d of %d", size, r.Pane.line, n)
		}
		for range 40 {
			r.Keys("down")
		}
		r.Shows("makes one of")
		for range 60 {
			r.Keys("up")
		}
		if r.Shows("> leather"); r.Pane.line != 0 || r.Pane.top != 0 {
			t.Errorf("%v: line %d, top %d", size, r.Pane.line, r.Pane.top)
		}
	}
}
