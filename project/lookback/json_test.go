package lookback

import (
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"chape/calc/calendar"
	"chape/calc/length"
	"chape/project"
	"chape/project/money"
	"chape/project/shelf"
	"chape/project/shop"
	"chape/project/shop/shoptest"
	"chape/project/steps"
	"chape/project/store"
)

// decoded is the JSON of sheaths as another program reads it.
func decoded(t *testing.T, all []Sheath, sh shop.Shop, at time.Time) map[string]any {
	t.Helper()
	data, err := JSON(all, sh, at)
	var out map[string]any
	if err != nil || json.Unmarshal(data, &out) != nil || !strings.HasSuffix(string(data), "}\n") {
		t.Fatalf("%s, %v", data, err)
	}
	return out
}

func keys(m any) []string {
	var out []string
	for k := range m.(map[string]any) {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// The keys that other programs rely on, of the whole, of a sheath and of the sums. An empty
// shelf has lists of nothing, not null.
func TestKeys(t *testing.T) {
	got := decoded(t, []Sheath{Of(sheath("three", 40, false), evenings())}, evenings(), now)
	one := got["sheaths"].([]any)[0]
	for what, c := range map[string]struct {
		m    any
		want string
	}{
		"the whole":    {got, "currency sheaths totals"},
		"a sheath":     {one, "cost customer due error file finished leather left minutes price put_away quote ready steps thread title"},
		"its leather":  {one.(map[string]any)["leather"], "bought cut yield"},
		"when ready":   {one.(map[string]any)["ready"], "at bare queue spare unset"},
		"a step of it": {one.(map[string]any)["steps"].([]any)[0], "done expected spent title"},
		"the sums":     {got["totals"], "asked finished leather minutes quoted sheaths steps thread took"},
		"a step's sum": {got["totals"].(map[string]any)["steps"].([]any)[0], "expected median sheaths spent title"},
	} {
		if k := strings.Join(keys(c.m), " "); k != c.want {
			t.Errorf("%s has %s\nwant %s", what, k, c.want)
		}
	}
	empty := decoded(t, nil, shop.Shop{}, now)
	if list, ok := empty["sheaths"].([]any); !ok || len(list) != 0 || empty["totals"].(map[string]any)["asked"] != "0.00" {
		t.Errorf("an empty shelf: %v", empty)
	}
	if list, ok := empty["totals"].(map[string]any)["steps"].([]any); !ok || len(list) != 0 {
		t.Errorf("its steps: %v", empty["totals"])
	}
}

// Figures by hand: 1.5 min are 2 and 29 s none; lengths and areas to the sixth decimal; money with
// the currency's decimals, half up; what is missing makes it "at least".
func TestFigures(t *testing.T) {
	s := billed("84.505", "100", "€")
	s.Leather, s.Bought, s.Thread = 1000.1234567, 3000.3703701, 2835.1+0.2
	s.Steps = []money.Step{{Title: "Sew", Expected: 90 * time.Second, Spent: 29 * time.Second, Done: true}}
	s.Hours = money.Hours(s.Steps)
	s.Price = money.Bill{Lines: []money.Line{{Name: "thread"}, {Name: "work", Amount: shoptest.Amount("7")}}}
	s.Until = time.Date(2026, 12, 26, 0, 0, 0, 0, time.UTC)
	s.Quote.Date = time.Date(2026, 11, 26, 0, 0, 0, 0, time.UTC)
	got := decoded(t, []Sheath{s}, evenings(), now)["sheaths"].([]any)[0].(map[string]any)
	for key, want := range map[string]any{
		"leather": map[string]any{"cut": 1000.123457, "bought": 3000.37037, "yield": 0.333333}, "thread": 2835.3,
		"cost": map[string]any{"amount": "84.51", "at_least": false}, "price": map[string]any{"amount": "7.00", "at_least": true},
		"quote": map[string]any{"date": "2026-11-26", "until": "2026-12-26", "accepted": nil, "currency": "€", "amount": "100.00"},
		"steps": []any{map[string]any{"title": "Sew", "expected": 2.0, "spent": 0.0, "done": true}}, "minutes": map[string]any{"expected": 2.0, "spent": 0.0, "left": 0.0},
		"due": nil, "ready": nil, "error": nil, "customer": "",
	} {
		if !reflect.DeepEqual(got[key], want) {
			t.Errorf("%s: %v, want %v", key, got[key], want)
		}
	}
}

// Over the night in which summer time begins, Sun 28 Mar 2027 at 2:00 (Directive 2000/84/EC): on
// Saturday from 9:00 an hour of forming ends at 10:00; 24 h of drying end on Sunday at 11:00 by
// then; nobody is there until Monday 18:00; half an hour of wax ends at 18:30. Promised for the
// 31st: 2 days to spare. In hours that run day and night it dries until Sun 11:00, not 10:00.
func TestReadyOverTheChangeOfTheClock(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	p := project.Defaults()
	p.Customer.Due = time.Date(2027, 3, 31, 0, 0, 0, 0, time.UTC)
	p.Steps = []steps.Step{{Title: "Form", Short: "FORM", Expect: time.Hour}, {Title: "Dry", Hold: 24 * time.Hour, From: "FORM"}, {Title: "Wax", Expect: 30 * minute}}
	sh := evenings()
	at := time.Date(2027, 3, 27, 9, 0, 0, 0, berlin)
	ready := func() map[string]any {
		return decoded(t, []Sheath{Of(p, sh)}, sh, at)["sheaths"].([]any)[0].(map[string]any)["ready"].(map[string]any)
	}
	if r := ready(); r["at"] != "2027-03-29T18:30:00+02:00" || r["spare"] != 2.0 || r["bare"] != 0.0 || r["unset"] != 0.0 {
		t.Errorf("ready %v", r)
	}
	if sh.Week, err = calendar.ParseWeek("mon-sun 0-24"); err != nil {
		t.Fatal(err)
	}
	if r := ready(); r["at"] != "2027-03-28T11:30:00+02:00" || r["spare"] != 3.0 {
		t.Errorf("by day and night %v", r)
	}
	p.Customer.Due = time.Time{}
	p.Steps = append(p.Steps, steps.Step{Title: "Dye", Sheet: true}, steps.Step{Title: "Buff"}, steps.Step{Title: "Pack"})
	if r := ready(); r["spare"] != nil || r["unset"] != 1.0 || r["bare"] != 2.0 {
		t.Errorf("for no day, with two steps without minutes and a wait not set: %v", r)
	}
	if sh.Week = (calendar.Week{}); decoded(t, []Sheath{Of(p, sh)}, sh, at)["sheaths"].([]any)[0].(map[string]any)["ready"] != nil {
		t.Error("ready in a shop without hours")
	}
}

// What is put away has no place at the bench, and takes none from others.
func TestPutAwayWaitsForNobody(t *testing.T) {
	away, here := Of(sheath("away", 40, false), evenings()), Of(sheath("here", 40, false), evenings())
	away.PutAway, away.Due = true, here.Due.AddDate(0, 0, -1)
	list := decoded(t, []Sheath{away, here}, evenings(), now)["sheaths"].([]any)
	if r := list[0].(map[string]any)["ready"].(map[string]any); r["queue"] != nil || r["at"] == nil {
		t.Errorf("put away: %v", r)
	}
	if q := list[1].(map[string]any)["ready"].(map[string]any)["queue"].(map[string]any); q["after"] != 0.0 {
		t.Errorf("here: %v", q)
	}
}

// A look reads the names at first, then sheath by sheath in their order, those put away by
// their folder; no file is touched, a torn one least.
func TestLook(t *testing.T) {
	dir := shoptest.Shelf(t, map[string]project.Project{"b": sheath("bee", 40, false), "a": sheath("ant", 40, true), shelf.Away + "/c": sheath("cicada", 40, true)}, "d")
	before := contents(t, dir)
	look, err := Over(shelf.Open(store.OS(), dir), evenings())
	if err != nil || look.Left() != 4 {
		t.Fatalf("%d left, %v", look.Left(), err)
	}
	var said []string
	for look.Left() > 0 {
		n := look.Left()
		got := look.Next(1)
		if len(got) != 1 || look.Left() != n-1 {
			t.Fatalf("%d read, %d left of %d", len(got), look.Left(), n)
		}
		s := got[0]
		mark := ""
		if s.PutAway {
			mark = ", put away"
		}
		if s.Err != "" {
			mark += ", torn"
		}
		said = append(said, filepath.ToSlash(s.File)+": "+s.Title+mark)
	}
	if got := strings.Join(said, "; "); got != "a.toml: ant; b.toml: bee; d.toml: d, torn; put away/c.toml: cicada, put away" {
		t.Errorf("read %s", got)
	}
	if more := look.Next(3); len(more) != 0 {
		t.Errorf("past the end %v", more)
	}
	if !reflect.DeepEqual(contents(t, dir), before) {
		t.Error("a look changes files")
	}
	if look, err := Over(shelf.Open(store.OS(), filepath.Join(dir, "none there")), evenings()); err != nil || look.Left() != 0 {
		t.Errorf("over no shelf: %v", err)
	}
	if w := Sheaths(nil, evenings(), length.Millimetres); len(w.Rows) != 0 || w.Total[0] != "0, finished 0" {
		t.Errorf("of no sheaths %+v", w)
	}
}

// contents is every file below a folder.
func contents(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			data, err := os.ReadFile(path)
			out[path] = string(data)
			return err
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}
