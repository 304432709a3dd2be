package order

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"chape/project"
	"chape/project/print/pdf"
	"chape/project/print/sheet"
)

// quoted is an invented order.
func quoted() project.Project {
	p := project.Defaults()
	p.Title, p.Customer.Name = "Orchard knife", "R. Example"
	p.Quotes = []project.Quote{{
		Date: time.Date(2026, 11, 26, 0, 0, 0, 0, time.UTC), Due: time.Date(2026, 12, 18, 0, 0, 0, 0, time.UTC),
		What: "A sheath of 3.2 mm leather.\nDrawn with the left hand, edge to the rear.", Currency: "€",
		Lines: "leather | 3.47 | leather | 0.0386 m² at 90.00 €\nwork | 114 | work | 3 h at 38.00 € an hour\noverhead | 11.75 | overhead | 10 % of the cost\nmargin | 32.31 | margin | 20 % of the price\n",
	}}
	return p
}

func says(t *testing.T, p project.Project, o Options) string {
	t.Helper()
	pages, err := pages(p, p.Quotes[0], o)
	if err != nil {
		t.Fatal(err)
	}
	if len(pages) != 1 {
		t.Errorf("%d pages", len(pages))
	}
	var words []string
	for _, text := range pages[0].Drawing.Texts {
		words = append(words, text.Says)
	}
	return strings.Join(words, " | ")
}

// The price is the sum of the lines, 3.47 + 114 + 11.75 + 32.31 = 161.53; none of the lines
// is on the sheet.
func TestQuoteAndOrder(t *testing.T) {
	p, maker := quoted(), Options{Maker: []string{"A. Maker", "Mill Lane 3"}}
	got := says(t, p, maker)
	for _, want := range []string{"Quote | 26 November 2026", "A. Maker | Mill Lane 3", "Orchard knife | for R. Example", "left hand", "Price 161.53 €", "promised for 18 December 2026", "Accepted by ____"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
	for _, inner := range []string{"work", "114", "overhead", "margin", "20 %", "0.0386"} {
		if strings.Contains(got, inner) {
			t.Errorf("the shop's own %q in %s", inner, got)
		}
	}
	if strings.Contains(got, "holds until") {
		t.Errorf("an end that was not set in %s", got)
	}
	p.Quotes[0].Until = time.Date(2026, 12, 26, 0, 0, 0, 0, time.UTC)
	if got := says(t, p, maker); !strings.Contains(got, "This offer holds until 26 December 2026.") {
		t.Errorf("not until when it holds in %s", got)
	}
	p.Quotes[0].Accepted = time.Date(2026, 12, 1, 0, 0, 0, 0, time.UTC)
	got = says(t, p, Options{})
	if strings.Contains(got, "holds until") {
		t.Errorf("an order holds until a day in %s", got)
	}
	for _, want := range []string{"Order | 1 December 2026", "From ____", "quoted on 26 November 2026", "Accepted on 1 December 2026"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
}

func TestFile(t *testing.T) {
	p := quoted()
	f, err := File(p, 0, "orchard", Options{})
	if err != nil || f.Name != "orchard quote 1.pdf" || !bytes.HasPrefix(f.Data, []byte("%PDF-")) {
		t.Fatalf("%q, %v", f.Name, err)
	}
	again, _ := File(p, 0, "orchard", Options{})
	if !bytes.Equal(f.Data, again.Data) || bytes.Contains(f.Data, []byte(pdf.DateOr(time.Time{}).Format("D:20060102"))) {
		t.Error("not the same bytes, or not the quote's date")
	}
	paper, err := sheet.ParsePaper("letter")
	if err != nil {
		t.Fatal(err)
	}
	p.Quotes[0].Accepted = p.Quotes[0].Date
	if f, err = File(p, 0, "orchard", Options{Paper: paper}); err != nil || f.Name != "orchard order 1.pdf" {
		t.Errorf("%q, %v", f.Name, err)
	}
	if _, err := File(p, 1, "orchard", Options{}); err == nil || !strings.Contains(err.Error(), "no quote to print") {
		t.Errorf("of a quote that is not there: %v", err)
	}
}
