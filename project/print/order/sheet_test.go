package order

import (
	"fmt"

	"strings"
	"testing"
	"time"

	"chape/project/print/letters"
	"chape/project/print/printtest"
	"chape/project/print/sheet"
)

// What a customer gets to read is the price and nothing that it came about from: no line of
// the bill, no amount of one, no share, rate or hour, in the file's words or in what it says
// of itself.
func TestNothingOfTheShopsOwnFigures(t *testing.T) {
	p := quoted()
	lines := strings.Split(strings.TrimSpace(p.Quotes[0].Lines), "\n")
	for _, accepted := range []time.Time{{}, p.Quotes[0].Date} {
		p.Quotes[0].Accepted = accepted
		f, err := File(p, 0, "orchard", Options{Maker: []string{"A. Maker"}})
		if err != nil {
			t.Fatal(err)
		}
		pages := printtest.Read(t, f.Data)
		if len(pages) != 1 {
			t.Fatalf("%d pages", len(pages))
		}
		said := pages[0].Words()
		if !strings.Contains(said, "Price 161.53 €") {
			t.Errorf("no price in %q", said)
		}
		for _, l := range lines {
			for i, part := range strings.Split(l, " | ") {
				if i == 0 || part == "leather" { // kinds are not printed; the sheet speaks of leather
					continue
				}
				for _, word := range strings.Fields(part) {
					if len(word) > 2 && strings.ContainsAny(word, "0123456789%") && strings.Contains(said, word) || strings.Contains(said, part) {
						t.Errorf("%q of %q is on the sheet", word, l)
					}
				}
			}
		}
	}
}

// The sheet is read at arm's length by somebody who knows nothing of the trade: letters of 4 mm,
// lines of 150 mm at most, inside what may be printed on, whatever its words and paper.
func TestSheetIsReadable(t *testing.T) {
	for _, c := range []struct {
		paper string
		c     sheet.Correction
	}{{"a4", sheet.Correction{}}, {"letter", sheet.Correction{}}, {"a3", sheet.Correction{}}, {"148x210", sheet.Correction{X: 98, Y: 102}}} {
		paper, err := sheet.ParsePaper(c.paper)
		if err != nil {
			t.Fatal(err)
		}
		p := quoted()
		p.Title, p.Customer.Name = strings.Repeat("A long title ", 30), strings.Repeat("W", 90)
		p.Quotes[0].What = strings.Repeat("with many words ", 20) + "\n" + strings.Repeat("W", 120)
		maker := []string{strings.Repeat("A. Maker ", 20), "Mill Lane 3", "刀"}
		got, err := pages(p, p.Quotes[0], Options{Paper: paper, Correction: c.c, Maker: maker})
		if err != nil {
			t.Fatal(err)
		}
		w, h := paper.Area(c.c)
		for n, page := range got {
			for i, text := range page.Drawing.Texts {
				b := text.Box()
				if b.Lo.X < -0.01 || b.Hi.X > w+0.01 || b.Hi.Y > h-sheet.PageNumber+0.01 {
					t.Errorf("%s, page %d: %q stands at %v of %.0f × %.0f", c.paper, n+1, text.Says, b, w, h)
				}
				if i >= 2 && (text.Size < 4 || letters.Width(text.Says, text.Bold)*text.Size > 150.01) {
					t.Errorf("%s: %q is %v mm high, %.0f long", c.paper, text.Says, text.Size, b.Width())
				}
				for _, o := range page.Drawing.Texts[:i] {
					if q := o.Box(); b.Lo.X < q.Hi.X-0.1 && q.Lo.X < b.Hi.X-0.1 && b.Lo.Y < q.Hi.Y-1.5 && q.Lo.Y < b.Hi.Y-1.5 {
						t.Errorf("%s: %q prints over %q", c.paper, text.Says, o.Says)
					}
				}
			}
		}
	}
}

// A day is said so that nobody takes the month for the day, in quote, promise and acceptance.
func TestDays(t *testing.T) {
	for want, d := range map[string]time.Time{"1 February 2026": time.Date(2026, 2, 1, 0, 0, 0, 0, time.UTC), "26 November 2026": time.Date(2026, 11, 26, 23, 59, 0, 0, time.FixedZone("", -3600))} {
		if got := day(d); got != want {
			t.Errorf("%v is %q, want %q", d, got, want)
		}
	}
	p := quoted()
	p.Quotes[0].Due = time.Time{}
	if got := says(t, p, Options{}); strings.Contains(got, "promised") {
		t.Errorf("without a day it is promised: %s", got)
	}
}

// A price in whole units, of a currency without a sign, and one of a bill with a line whose
// price is missing are said as the bill says them; a bill that can't be read is refused.
func TestPrices(t *testing.T) {
	for _, c := range []struct{ lines, currency, unit, want string }{
		{"work | 114 | work | x\n", "", "1", "Price 114 |"}, {"work | 99.95 | work | x\n", "Fr.", "0.05", "Price 99.95 Fr. |"},
	} {
		p := quoted()
		p.Quotes[0].Lines, p.Quotes[0].Currency, p.Quotes[0].Unit = c.lines, c.currency, c.unit
		if got := says(t, p, Options{}); !strings.Contains(got, c.want) {
			t.Errorf("%+v: %s", c, got)
		}
	}
	p := quoted()
	p.Quotes[0].Lines = "work | many | work | x\n"
	if f, err := File(p, 0, "x", Options{}); err == nil || f.Data != nil || strings.Contains(err.Error(), "\n") {
		t.Errorf("of a bill that can't be read: %d bytes, %v", len(f.Data), err)
	}
}

// Quotes are counted from 1 in the files' names; one that is not there is refused, below the
// first as well as past the last.
func TestWhichQuote(t *testing.T) {
	p := quoted()
	p.Quotes = append(p.Quotes, p.Quotes[0])
	p.Quotes[1].Accepted = p.Quotes[1].Date
	for i, want := range []string{"orchard quote 1.pdf", "orchard order 2.pdf"} {
		if f, err := File(p, i, "orchard", Options{}); err != nil || f.Name != want {
			t.Errorf("quote %d: %q, %v, want %q", i, f.Name, err, want)
		}
	}
	for _, i := range []int{-1, 2} {
		if _, err := File(p, i, "orchard", Options{}); err == nil || !strings.Contains(err.Error(), fmt.Sprintf("%q has no quote", p.Title)) {
			t.Errorf("quote %d: %v", i, err)
		}
	}
	if _, err := File(p, 0, "orchard", Options{Paper: sheet.Paper{Name: "x", Width: 10, Height: 10}}); err == nil || !strings.Contains(err.Error(), "too small") {
		t.Errorf("on a stamp: %v", err)
	}
	if _, err := File(p, 0, "orchard", Options{Correction: sheet.Correction{X: 50}}); err == nil || !strings.Contains(err.Error(), "measure again") {
		t.Errorf("by a printer that gives 50 mm for 100: %v", err)
	}
}
