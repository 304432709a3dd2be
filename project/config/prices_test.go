package config

import (
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project/money"
)

// Settings written before there were quotes: what a sheath costs stays, but for
// what rounding each line to the unit does. 929.0304 cm² (1 ft², 16 CFR 500.19) at 10, an
// hour at 40; thread and sundries were not given and are said to be missing.
func TestPricesOfOldSettings(t *testing.T) {
	c, err := load(t, "[price]\ncurrency = \"€\"\nleather_ft2 = 10\nhour = 40\n")
	if err != nil {
		t.Fatal(err)
	}
	b := money.Cost(money.Use{Leather: []money.Leather{{Bought: 92903.04}}, Thread: 3000, Steps: []money.Step{{Title: "Cut", Expected: 90 * 60e9}}}, c.Prices())
	if got := b.Say(); got != "at least 70.00 €" {
		t.Errorf("cost %s, want at least 70.00 €: %v", got, b.Lines)
	}
	if c.Shop().Snap.Known() || c.Shop().Rivet.Known() || c.Shop().Holds != 30 || c.Shop().Week.Any() {
		t.Error("what was not given is known")
	}
}

func TestNewPriceSettings(t *testing.T) {
	c, err := load(t, `[price]
currency = "CHF"
unit = "0.05"
leather_m2 = 92.5
thread = 0.035
snap = "0.85"
rivet = "0.15"
overhead = 0.12
margin = 0.2
minimum = "80"
holds = 45
[shop]
hours = "mon-fri 18-21"
name = "A. Maker"
address = ["Mill Lane 3", "Anytown"]
`)
	if err != nil {
		t.Fatal(err)
	}
	p := c.Prices()
	if p.Thread.String() != "0.035" || p.LeatherBy != money.SquareMetre || p.LeatherBy == length.SquareFoot || p.Leather.String() != "92.5" ||
		p.Overhead.String() != "0.12" || p.Margin.String() != "0.2" || p.OwnMinimum.String() != "80" || c.Shop().Holds != 45 || p.Sundries.Known() {
		t.Errorf("Prices = %+v", p)
	}
	if got := p.Currency.Show(c.Shop().Snap) + ", " + p.Currency.Show(c.Shop().Rivet); got != "0.85 CHF, 0.15 CHF" {
		t.Errorf("hardware at %s", got)
	}
	if s := c.Shop(); s.Name != "A. Maker" || len(s.Address) != 2 || s.Address[1] != "Anytown" || s.Offcut != calc.DefaultOffcut {
		t.Errorf("the shop is %+v", s)
	}
	if got := c.Shop().Week.String(); got != "mon-fri 18:00-21:00" {
		t.Errorf("Week = %q", got)
	}
}

func TestPricesRefused(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"[price]\nsnap = \"0,85\"", "price.snap"},
		{"[price]\nunit = \"0\"", "smallest amount"},
		{"[price]\nminimum = \"-3\"", "price.minimum"},
		{"[price]\nmargin = 1.0", "price.margin"},
		{"[shop]\nhours = \"mon 21-18\"", "18:00-21:00"},
	} {
		if _, err := load(t, c.in); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.in, err, c.want)
		}
	}
}

// A decimal comma in the file is answered by the same number with a point; what else stands
// behind a value is not taken for one.
func TestDecimalComma(t *testing.T) {
	for text, want := range map[string]string{
		"[price]\nthread = 0,45\n":             `:2: found ",45": write a point: 0.45`,
		"[price]\nthread = 0,45   # a metre\n": `write a point: 0.45`,
		"[price]\r\nthread=-12,5\r\n":          `write a point: -12.5`,
		"[price]\nthread = 1,234.50\n":         "one key = value on each line",
		"[price]\nthread = 1, 2\n":             "one key = value on each line",
		"bell = true, false\n":                 "one key = value on each line",
	} {
		if _, err := Decode("config.toml", []byte(text)); err == nil || !strings.HasSuffix(err.Error(), want) {
			t.Errorf("%q: %v, want …%s", text, err, want)
		}
	}
}
