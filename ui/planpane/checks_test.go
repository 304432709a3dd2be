package planpane

import (
	"strings"
	"testing"

	"chape/calc"
	"chape/project"
	"chape/ui/test/rig"
)

// The list has every check of the plan in full, those to see to first; c opens it, and so
// does a press on the line that counts those that are fine.
func TestCheckList(t *testing.T) {
	m := shown(t, 78, 64, func(p *project.Project) { p.Sheath.Blend = 400 })
	flat := func() string { return strings.Join(strings.Fields(plain(m)), " ") }
	y := -1
	for i, l := range strings.Split(plain(m), "\n") {
		if strings.Contains(l, "checks fine, c lists them") {
			y = i
		}
	}
	if y < 0 {
		t.Fatalf("what is fine is not counted:\n%s", plain(m))
	}
	pressed, _ := m.Update(rig.Click(3, y))
	if m = pressed.(*Model); m.Page() != Checks {
		t.Fatalf("a press on it shows %v", m.Page())
	}
	got, last := flat(), -1
	for _, level := range []calc.Level{calc.Warn, calc.Note, calc.OK} {
		for _, c := range m.snap.Plan.Checks {
			if c.Level != level {
				continue
			}
			at := strings.Index(got, strings.Join(strings.Fields(c.Text(m.snap.Unit)), " "))
			if at < last || at < 0 {
				t.Errorf("%q stands at %d, after what is at %d:\n%s", c.Text(m.snap.Unit), at, last, plain(m))
			}
			last = at
		}
	}
	m = press(shown(t, 78, 22, nil), "c")
	if m.Page() != Checks {
		t.Errorf("c shows %v", m.Page())
	}
	before := plain(m)
	if m = press(m, "down"); m.Page() != Checks || plain(m) == before && strings.Contains(before, "PgDn") {
		t.Error("a long list does not scroll")
	}
}
