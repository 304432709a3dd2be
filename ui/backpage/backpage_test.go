package backpage

import (
	"path/filepath"
	"testing"
	"time"

	"chape/project"
	"chape/project/shelf"
	"chape/project/shop"
	"chape/project/shop/shoptest"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// full is a shelf of three invented sheaths, one of them finished, and a torn file.
func full(t *testing.T) string {
	t.Helper()
	all := map[string]project.Project{}
	for i, name := range []string{"Field knife", "Kitchen petty", "Orchard knife"} {
		p := project.Defaults()
		p.Title = name
		p.Steps = []steps.Step{
			{Title: "Cut", Expect: time.Hour, Spent: time.Duration(40+10*i) * time.Minute, Done: rig.Noon},
			{Title: "Sew", Expect: 90 * time.Minute},
		}
		if i == 0 {
			p.Steps[1].Spent, p.Steps[1].Done = 2*time.Hour, rig.Noon
			p.Quotes = []project.Quote{{Date: time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC), Currency: "€", Lines: "work | 120 | work | 2 h 30 min\n"}}
		}
		all[name] = p
	}
	return shoptest.Shelf(t, all, "torn")
}

func newRig(t *testing.T, dir string, w, h int) *rig.Rig[*Model] {
	r := rig.New(t, project.Defaults(), w, h, func(func() time.Time) *Model {
		return New(Options{Shelf: shelf.Open(store.OS(), dir), Styles: ink.New(ink.Dark, ink.None)})
	})
	r.Snap.Shop = shoptest.Evenings()
	return r.Show().Keys("g")
}

func TestGoldens(t *testing.T) {
	dir := full(t)
	newRig(t, dir, 78, 19).Golden(t, "back-80x24")
	newRig(t, dir, 158, 40).Golden(t, "back-160x45")
	newRig(t, dir, 78, 19).Keys("v").Golden(t, "steps-80x24")
}

func TestMovesAndLeaves(t *testing.T) {
	r := newRig(t, full(t), 78, 19)
	r.Lacks("! expected", "torn.toml").Keys("end").Shows("torn.toml").Keys("esc")
	if _, ok := r.Last().(act.Leave); !ok {
		t.Errorf("Esc answers %#v", r.Last())
	}
	newRig(t, filepath.Join(t.TempDir(), "none"), 78, 19).Shows("no projects on the shelf yet")
}

// Columns that have no room are named, and an arrow leads to them.
func TestAllColumnsAreReached(t *testing.T) {
	r := newRig(t, full(t), 78, 19).Shows("→ leather bought, yield, thread", "spent expected")
	r.Keys("right", "right", "right", "right", "right", "right", "right", "right").Shows("← the columns before", "leather bought yield thread", "Field knife", "3, finished 1").Lacks("→")
	r.Keys("left").Shows("cost so far")
	r.Keys("v").Lacks("→", "←").Keys("right").Shows("spent sheaths")
	newRig(t, full(t), 158, 40).Lacks("→").Keys("right").Shows("spent expected")
}

// A look that was broken off brings nothing any more.
func TestBrokenOff(t *testing.T) {
	r := newRig(t, full(t), 78, 19)
	r.Hold = true
	r.Keys("g").Send(act.InHand{Is: false})
	if r.Run(); len(r.Pane.all) != 0 {
		t.Errorf("%d sheaths came after all", len(r.Pane.all))
	}
}

func TestEverySize(t *testing.T) {
	r := newRig(t, full(t), 78, 19)
	rig.CheckKeys(t, r.Pane)
	rig.CheckSizes(t, r.Pane, 160, 45)
	r.Keys("v")
	rig.CheckSizes(t, r.Pane, 160, 45)
}

// While the settings can't be read, the page of money says so over its table.
func TestBrokenSettingsAreSaid(t *testing.T) {
	r := newRig(t, full(t), 78, 19)
	r.Snap.Shop = shop.Shop{Broken: "your settings can't be read: config.toml, line 3"}
	r.Show().Keys("g").Shows("! your settings can't be read: config.toml, line 3", "Field knife")
}
