package costpage

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chape/calc/calendar"
	"chape/calc/length"
	"chape/project"
	"chape/project/money"
	"chape/project/shelf"
	"chape/project/shop"
	"chape/project/shop/shoptest"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// order is an invented one: 40 min of cutting done, 2 h of sewing and 30 min to come.
func order() project.Project {
	p := project.Defaults()
	p.Title, p.Customer.Name, p.Customer.Due = "Orchard knife", "R. Example", time.Date(2026, 12, 18, 0, 0, 0, 0, time.UTC)
	p.Steps = []steps.Step{
		{Title: "Cut", Expect: 40 * time.Minute, Spent: 50 * time.Minute, Done: rig.Noon.Add(-time.Hour)},
		{Title: "Sew", Expect: 2 * time.Hour},
		{Title: "Line it", Expect: time.Hour, Skipped: true},
		{Title: "Burnish", Expect: 30 * time.Minute},
	}
	return p
}

func newRig(t *testing.T, p project.Project, w, h int, o Options, s shop.Shop) *rig.Rig[*Model] {
	r := rig.New(t, p, w, h, func(now func() time.Time) *Model {
		o.Clock, o.Styles = now, ink.New(ink.Dark, ink.None)
		return New(o)
	})
	r.Plan, r.Snap.Shop = true, s
	return r.Show()
}

func TestGoldens(t *testing.T) {
	newRig(t, order(), 78, 19, Options{}, shoptest.Evenings()).Golden(t, "cost-80x24")
	r := newRig(t, order(), 158, 40, Options{}, shoptest.Evenings())
	r.Keys("m", "enter").Wait(30*24*time.Hour).Keys("a", "enter", "enter").Golden(t, "quoted-160x45")
	s := shoptest.Evenings()
	s.Prices.Hour, s.Snap, s.Week = money.Amount{}, money.Amount{}, calendar.Week{}
	newRig(t, order(), 78, 19, Options{}, s).Golden(t, "missing-80x24")
	newRig(t, order(), 78, 19, Options{}, shoptest.Evenings()).Keys("v").Golden(t, "minutes-80x24")
}

// Quoted, then prices go up, then accepted a month later: the old price, on the page and in
// what is kept. Undo brings everything back, which the root does.
func TestQuoteIsKept(t *testing.T) {
	r := newRig(t, order(), 78, 40, Options{}, shoptest.Evenings())
	old := r.Pane.reckon.Price.Say()
	r.Keys("m", "enter").Shows("quoted "+old+" on 26 Nov", "not accepted yet")
	r.Snap.Shop.Prices.Hour = shoptest.Amount("60")
	r.Wait(30*24*time.Hour).Keys("a", "enter").Shows("after the day it is promised for, 18 Dec").Keys("esc")
	r.Project.Customer.Due = time.Date(2027, 1, 15, 0, 0, 0, 0, time.UTC)
	r.Show().Keys("a", "enter")
	if new := r.Pane.reckon.Price.Say(); new == old {
		t.Fatalf("the price is still %s", old)
	}
	r.Shows("it comes to "+r.Pane.reckon.Price.Say()+" today; quoted "+old+" on 26 Nov, accepted on 26 Dec", "at 36.00 € an hour", "at 60.00 € an hour")
	q := r.Project.Quotes[0]
	if m, err := q.Money(); err != nil || m.Bill.Say() != old || q.Accepted.Format(time.DateOnly) != "2026-12-26" || q.Due.Format(time.DateOnly) != "2027-01-15" || !strings.Contains(q.What, "Orchard knife") {
		t.Errorf("kept %+v, %v", q, err)
	}
	if got := strings.Join(r.Commits, "; "); got != "quote "+old+"; accepted 2026-12-26" {
		t.Errorf("commits %s", got)
	}
}

// A quote that held for 30 days, accepted a month after: it says so, and takes the old price
// all the same. The day until which it holds is the maker's to set.
func TestHolds(t *testing.T) {
	s := shoptest.Evenings()
	s.Holds = 30
	p := order()
	p.Customer.Due = time.Time{}
	r := newRig(t, p, 78, 40, Options{}, s)
	old := r.Pane.reckon.Price.Say()
	r.Keys("m", "enter").Shows("holds until 26 Dec", "not accepted yet")
	r.Snap.Shop.Prices.Hour = shoptest.Amount("60")
	r.Wait(31*24*time.Hour).Show().Shows("which held until 26 Dec", "held until 26 Dec, not accepted")
	r.Keys("a", "enter").Shows("the quote held until 26 Dec", "Enter again takes it at the old price, "+old)
	if !r.Project.Quotes[0].Accepted.IsZero() {
		t.Fatal("accepted before it was asked about")
	}
	r.Keys("enter")
	if q := r.Project.Quotes[0]; q.Accepted.Format(time.DateOnly) != "2026-12-27" || q.Until.Format(time.DateOnly) != "2026-12-26" {
		t.Errorf("kept %+v", q)
	}
	r.Shows("quoted " + old + " on 26 Nov, accepted on 27 Dec")

	r = newRig(t, p, 78, 40, Options{}, s).Keys("m", "enter")
	r.Keys("h").Answer("2026-11-01").Shows("\"2026-11-01\" will not do: give the day it was made, 26 Nov 2026, or a later one").Answer("24 Dec").Shows("holds until 24 Dec")
	r.Keys("h").Type("28 Dec").Keys("enter").Shows("holds until 28 Dec") // in place of what stands
	r.Keys("h").Answer("").Lacks("holds until")
	if got := strings.Join(r.Commits[1:], "; "); got != "the quote holds until 24 Dec; the quote holds until 28 Dec; the quote holds without an end" {
		t.Errorf("commits %s", got)
	}
}

// In a project in inches no square metres and metres are shown.
func TestInFeet(t *testing.T) {
	p := order()
	p.Units = length.Inches
	newRig(t, p, 158, 40, Options{}, shoptest.Evenings()).Shows("0.416 ft² at 90.00 € a square metre (8.361 € a", "9.4 ft at 0.05 € a metre").Lacks(" m² ")
}

// A price set by hand stands; nonsense is refused with what would do.
func TestPriceByHand(t *testing.T) {
	r := newRig(t, order(), 78, 40, Options{}, shoptest.Evenings())
	r.Keys("m").Answer("a lot").Shows("type one, as in 12.50").Keys("esc").Keys("m").Answer("").Shows("no price: type one").Keys("esc")
	if len(r.Project.Quotes) != 0 {
		t.Fatalf("quoted %+v", r.Project.Quotes)
	}
	r.Keys("m").Answer("180,5").Shows("quoted 180.50 €", "as agreed")
	r.Keys("a").Answer("2026-11-01").Shows("\"2026-11-01\" will not do: give the day it was made, 26 Nov 2026, or a later one").Answer("").Shows("not accepted yet")

	s := shoptest.Evenings()
	s.Prices.Hour = money.Amount{}
	r = newRig(t, order(), 78, 40, Options{}, s)
	r.Shows("at least", "* missing", "[price]").Keys("m").Shows("Prices are missing").Answer("200").Shows("quoted 200.00 €")
}

// Without any price there is nothing that it comes to.
func TestNoPriceAtAll(t *testing.T) {
	newRig(t, order(), 78, 19, Options{}, shop.Shop{}).Lacks("at least 0.00 today").Shows("no price is known yet", "[price]")
}

// While the settings can't be read the page says so, and no more than that of prices and hours.
func TestBrokenSettings(t *testing.T) {
	r := newRig(t, order(), 78, 24, Options{}, shop.Shop{Broken: "your settings can't be read: config.toml, line 3: found text"})
	r.Shows("no price is known, and no day", "config.toml, line 3").Lacks("no price is known yet").Lacks("give the hours")
}

func TestChooseAndTakeOut(t *testing.T) {
	r := newRig(t, order(), 78, 40, Options{}, shoptest.Evenings())
	r.Keys("a", "x", "P")
	if len(r.Said) != 3 || !strings.Contains(r.Said[0], "no quote yet") {
		t.Errorf("said %q", r.Said)
	}
	r.Keys("m").Answer("180").Keys("m").Answer("190").Keys("[", "P")
	if got := r.Last(); got != (act.PrintOrder{Quote: 0}) {
		t.Errorf("P answers %#v", got)
	}
	r.Keys("x", "enter").Lacks("180.00 €").Shows("quoted 190.00 €")
	r.Keys("x", "q").Shows("quoted 190.00 €")
}

// What finished sheaths took is offered, and taken over only when it is asked for: 50 and
// 60 min of burnishing are 55.
func TestLearn(t *testing.T) {
	all := map[string]project.Project{}
	for name, took := range map[string]time.Duration{"one": 50 * time.Minute, "two": time.Hour, "unfinished": 0} {
		p := order()
		for i := range p.Steps {
			p.Steps[i].Done, p.Steps[i].Spent = rig.Noon, took
		}
		if took == 0 {
			p.Steps[1].Done = time.Time{}
		}
		all[name] = p
	}
	dir := shoptest.Shelf(t, all, "broken")
	r := newRig(t, order(), 158, 30, Options{Shelf: shelf.Open(store.OS(), dir)}, shoptest.Evenings())
	r.Shows("for 2 steps finished sheaths took other minutes", "55 min of 2")
	if r.Project.Steps[3].Expect != 30*time.Minute {
		t.Fatal("learned silently")
	}
	r.Keys("l", "x").Keys("l", "enter")
	if s := r.Project.Steps; s[3].Expect != 55*time.Minute || s[1].Expect != 55*time.Minute || s[0].Expect != 40*time.Minute || len(r.Commits) != 1 {
		t.Errorf("learned %+v", s)
	}
	r.Lacks("took other minutes").Keys("l")
	if !strings.Contains(r.Said[len(r.Said)-1], "nothing to learn") {
		t.Errorf("said %q", r.Said)
	}
}

// A sheath that is promised earlier has the bench first: its 3 h fill Thursday evening, and
// the 2 h 30 min of this one end on Friday at 20:30. One for a later day, one that is put
// away and this one itself do not count.
func TestAfterOthers(t *testing.T) {
	all := map[string]project.Project{}
	for name, due := range map[string]int{"earlier": 10, "later": 20, "put away/gone": 10, "itself": 18} {
		p := order()
		p.Steps = []steps.Step{{Title: "Sew", Expect: 3 * time.Hour}}
		p.Customer.Due = time.Date(2026, 12, due, 0, 0, 0, 0, time.UTC)
		all[name] = p
	}
	dir := shoptest.Shelf(t, all)
	r := newRig(t, order(), 78, 24, Options{Shelf: shelf.Open(store.OS(), dir)}, shoptest.Evenings())
	r.Snap.Path = store.FullPath(filepath.Join(dir, "itself.toml"))
	r.Show().Send(act.InHand{Is: true}).Shows("at the earliest Fri 27 Nov 20:30, after 1 promised earlier; promised 18 Dec: 21 days to spare")
}

func TestEverySize(t *testing.T) {
	r := newRig(t, order(), 78, 19, Options{}, shoptest.Evenings())
	rig.CheckKeys(t, r.Pane)
	rig.CheckSizes(t, r.Pane, 160, 45)
	r.Keys("m", "enter", "v", "m")
	rig.CheckSizes(t, r.Pane, 160, 45)
}

// Every day on the page is read alike; what was accepted is a day that has been.
func TestAcceptedAsDaysAreTyped(t *testing.T) {
	for text, want := range map[string]string{"26.11.": "2026-11-26", "26 Nov": "2026-11-26", "26.11.2026": "2026-11-26", "Nov 26": "2026-11-26"} {
		r := newRig(t, order(), 78, 40, Options{}, shoptest.Evenings())
		r.Keys("m", "enter", "a").Answer(text)
		if got := r.Project.Quotes[0].Accepted.Format(time.DateOnly); got != want || r.Commits[1] != "accepted "+want {
			t.Errorf("%q: accepted %s, %q", text, got, r.Commits)
		}
	}
	r := newRig(t, order(), 78, 40, Options{}, shoptest.Evenings())
	r.Keys("m", "enter", "a").Answer("20 Nov").Shows("\"20 Nov\" will not do: give the day it was made, 26 Nov 2026, or a later one").Lacks("quote.accepted")
}

// A quote of nothing, or one far from what was reckoned, is asked about once; one that was
// only rounded is not.
func TestQuoteFarFromWhatWasReckoned(t *testing.T) {
	for text, asks := range map[string]string{"0": "for nothing, where 165.84 € is reckoned", "16584.00": "is the point in its place?",
		"1658": "is the point in its place?", "17": "is the point missing, or a digit?", "150": "", "300": ""} {
		r := newRig(t, order(), 78, 40, Options{}, shoptest.Evenings())
		r.Keys("m").Answer(text)
		if asks == "" {
			if len(r.Project.Quotes) != 1 {
				t.Errorf("%q is not kept", text)
			}
			continue
		}
		if r.Shows(asks); len(r.Project.Quotes) != 0 {
			t.Errorf("%q is kept unasked", text)
		}
		if r.Keys("enter"); len(r.Project.Quotes) != 1 {
			t.Errorf("%q is not kept when it is meant", text)
		}
	}
}

// On a small screen a new quote comes into sight with its sign, and a key for a quote acts on
// none that is out of sight; the sign is not that of the price's line.
func TestChosenQuoteIsInSight(t *testing.T) {
	r := newRig(t, order(), 78, 18, Options{}, shoptest.Evenings())
	r.Keys("m", "enter").Shows("=> 26 Nov")
	r.Wait(24*time.Hour).Keys("m", "enter").Shows("=> 27 Nov")
	r.Keys("pgup", "pgup").Lacks("=> 2")
	r.Keys("h").Shows("=> 27 Nov", "It holds until").Keys("esc")
	r.Keys("pgup", "pgup", "[").Shows("=> 26 Nov")
	r.Keys("pgup", "pgup", "v", "]").Shows("=> 27 Nov")
}

// What became of a quote is never cut off.
func TestQuoteIsSaidWhole(t *testing.T) {
	s := shoptest.Evenings()
	s.Holds = 30
	r := newRig(t, order(), 158, 40, Options{}, s)
	r.Keys("m", "enter").Shows("promised 18 Dec, holds until 26 Dec, not", "accepted yet: a")
}
