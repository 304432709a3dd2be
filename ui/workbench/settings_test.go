package workbench

import (
	"testing"

	"chape/calc"
	"chape/ui/act"
)

// Settings read again hold for the open project at once; where none are new nothing is
// said, and what can't be used is.
func TestSettingsReadAgain(t *testing.T) {
	s := loose(t, 160, 45)
	var news *Settings
	looks := 0
	s.m.o.Reread = func() *Settings { looks++; return news }
	s.send(tickMsg{})
	if looks != 1 {
		t.Fatalf("%d looks at a tick", looks)
	}
	limits := calc.DefaultLimits()
	limits.Drum = 7
	news = &Settings{Put: func(o *Options) { o.Shop.Prices.Currency.Sign = "acorns" }, Limits: limits, Say: act.Say{Text: "read again"}}
	s.send(tickMsg{})
	s.shows("read again")
	if got := s.m.session.Snapshot().Plan.Input.Limits.Drum; got != 7 || s.m.snapshot().Shop.Prices.Currency.Sign != "acorns" {
		t.Errorf("drum %v, prices in %q", got, s.m.snapshot().Shop.Prices.Currency.Sign)
	}
	news = &Settings{Say: act.Say{Text: "broken", Warn: true}}
	s.send(tickMsg{})
	s.shows("! broken")
	if got := s.m.session.Snapshot().Plan.Input.Limits.Drum; got != 7 || looks != 3 {
		t.Errorf("drum %v after broken settings, %d looks", got, looks)
	}
}
