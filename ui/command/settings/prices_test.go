package settings

import (
	"os"
	"strings"
	"testing"

	"chape/project/config/configtest"

	"github.com/shopspring/decimal"

	"chape/project/money"
)

// A price that is set on the cost page goes into its line of the file and nowhere else; it
// holds at once, and is no news.
func TestKeepPrice(t *testing.T) {
	const text = "# mine\nbell = false   # it wakes the dog\n\n[price]\ncurrency = \"€\"\nthread = 0.40 # a metre, from the spool\n"
	configtest.Write(t, text)
	set := Load()
	look, keep := set.reread(), set.keepPrice()
	for _, c := range []struct{ key, typed string }{{"price.thread", "0.45"}, {"price.hour", "36"}, {"price.snap", "0.85"}} {
		a, err := money.Parse(c.typed)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := keep(c.key, a); err != nil {
			t.Fatalf("%s: %v", c.key, err)
		}
	}
	s, err := keep("price.hour", money.Amount{}) // not known any more
	if err != nil || s.Prices.Thread.String() != "0.45" || s.Snap.String() != "0.85" || s.Prices.Hour.Known() {
		t.Errorf("the shop then: %+v, %v", s, err)
	}
	got, err := os.ReadFile(set.Path)
	want := strings.Replace(text, "0.40 #", "0.45 #", 1) + "hour = 0\nsnap = \"0.85\"\n"
	if err != nil || string(got) != want {
		t.Errorf("the file:\n%s\nwant\n%s", got, want)
	}
	if news := look(); news != nil {
		t.Errorf("what was set here is news: %+v", news)
	}
	for _, key := range []string{"price.nothing", "price.thread"} {
		if _, err := keep(key, money.Of(decimal.NewFromInt(2_000_000))); err == nil {
			t.Errorf("%s: two millions are kept", key)
		} else {
			t.Log(err)
		}
	}
}

// Settings that can't be read are named with file, line and what would do as long as they are
// so, and no price is put into them.
func TestBrokenSettingsAreNamed(t *testing.T) {
	configtest.Write(t, "bell = true\n[shop]\nhours = \"mon 18-21\nname = \"Mill\"\n")
	set := Load()
	for _, want := range []string{"your settings can't be read: config.toml, line 3: ", "close it with the quote it began with"} {
		if got := set.Workbench().Shop.Broken; !strings.Contains(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
	if _, err := set.keepPrice()("price.hour", money.Of(decimal.NewFromInt(40))); err == nil || !strings.HasPrefix(err.Error(), "config.toml is left as it is until it is mended") {
		t.Errorf("kept: %v", err)
	}
	configtest.Write(t, "bell = true\n")
	if got := Load().Shop(); got.Broken != "" {
		t.Errorf("mended: %q", got.Broken)
	}
}

// Hours at the bench that are given on the cost page go into their line, and hold at once.
func TestKeepWeek(t *testing.T) {
	configtest.Write(t, "bell = false # it wakes the dog\n[shop]\nname = \"Mill\"\n")
	set := Load()
	s, err := set.Workbench().KeepWeek("mon-fri 18-21")
	if err != nil || s.Week.String() != "mon-fri 18:00-21:00" || s.Name != "Mill" {
		t.Errorf("the shop then: %+v, %v", s, err)
	}
	got, err := os.ReadFile(set.Path)
	if want := "bell = false # it wakes the dog\n[shop]\nname = \"Mill\"\nhours = \"mon-fri 18-21\"\n"; err != nil || string(got) != want {
		t.Errorf("the file:\n%s\nwant\n%s", got, want)
	}
}
