package earlierpage

import (
	"strings"
	"testing"

	"chape/project"
	"chape/project/file"
	"chape/project/shelf"
	"chape/project/shop/shoptest"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/test/rig"
)

// onShelf is the page with a shelf of two other knives and a torn file; the field knife's
// blade is 20 mm longer, and so its mouth is 20 mm further on.
func onShelf(t *testing.T, w, h int) *rig.Rig[*Model] {
	t.Helper()
	all := map[string]project.Project{}
	for name, longer := range map[string]float64{"Field knife": 20, "Kitchen petty": 0} {
		p := project.Defaults()
		p.Title = name
		for _, f := range project.Fields {
			if f.Key == "knife.outline.blade" {
				if v, err := f.Parse("130", p); longer > 0 && (err != nil || f.Set(&p, v) != nil) {
					t.Fatal(err)
				}
			}
		}
		all[name] = p
	}
	r := newRig(t, old(), w, h)
	r.Pane.shelf = shelf.Open(store.OS(), shoptest.Shelf(t, all, "torn"))
	return r
}

// The knife that it was made for is chosen from the shelf and kept with the project; the
// half-widths are then set against its plan, and what is taken over lies on this knife.
func TestMadeFor(t *testing.T) {
	r := onShelf(t, 78, 24)
	r.Keys("k").Shows("Which knife was the earlier sheath made for?", "> this knife, Bench knife", "Field knife", "Kitchen petty").Lacks("torn")
	rig.CheckSizes(t, r.Pane, 100, 30)
	rig.CheckKeys(t, r.Pane)
	r.Pane.SetSize(78, 24)
	r.Keys("down", "enter").Shows("the plan of Field knife is")
	if r.Project.MadeFor.Title != "Field knife" || len(r.Commits) != 1 || r.Commits[0] != "the earlier sheath was made for Field knife" {
		t.Fatalf("made for %q, done %q", r.Project.MadeFor.Title, r.Commits)
	}
	back, _, err := file.Decode("p", file.Encode(r.Project))
	if err != nil || back.MadeFor != r.Project.MadeFor {
		t.Errorf("not in the file: %v", err)
	}
	r.Golden(t, "other_78x24")
	// Its blade is 20 mm longer: what was measured at 150 lies 20 mm nearer to this one's point.
	r.Keys("t").Shows("carried over by the landmarks of both", "100 % from 0 to 130")
	r.Keys("enter")
	if len(r.Project.Fits) == 0 {
		t.Fatal("nothing is taken over")
	}
	for _, f := range r.Project.Fits {
		if f.At > 130.5 {
			t.Errorf("%+v lies where it lay on the other knife", f)
		}
	}
	if r.Keys("t"); r.Pane.entry != nil || !strings.HasPrefix(r.Said[len(r.Said)-1], "nothing is left to take over") {
		t.Errorf("once more: said %q", r.Said)
	}
	r.Keys("k", "home", "enter").Shows("the plan is")
	if r.Project.MadeFor != (project.MadeFor{}) {
		t.Errorf("still made for %q", r.Project.MadeFor.Title)
	}
	r.Keys("k", "down", "esc")
	if len(r.Commits) != 3 || r.Pane.pick != nil {
		t.Errorf("Esc chose: %q", r.Commits)
	}
}

// A note of that knife that is damaged is said, and harms nothing.
func TestMadeForTorn(t *testing.T) {
	r := onShelf(t, 78, 24)
	r.Project.MadeFor = project.MadeFor{Title: "Old one", Inputs: "format ="}
	r.Show().Shows("! the knife that it was made for, Old one, can't be planned", "k chooses it again")
	r.Keys("t", "x", "l", "k", "down", "down", "enter").Shows("the plan of Kitchen petty is")
	if len(r.Project.Earlier) != len(old()) || len(r.Project.Fits) != 0 {
		t.Errorf("changed: %+v", r.Project)
	}
	bare := newRig(t, old(), 78, 24).Keys("k")
	if len(bare.Said) != 1 || bare.Pane.pick != nil {
		t.Errorf("without a shelf: said %q", bare.Said)
	}
}

// A list of the shelf that comes late, when the page was left or a number is being typed, or
// to the page of another project, opens nothing.
func TestListComesLate(t *testing.T) {
	late := listedMsg{entries: []shelf.Entry{{Title: "Field knife"}}}
	for what, do := range map[string]func(*rig.Rig[*Model]){
		"left": func(r *rig.Rig[*Model]) {
			r.Pane.asked = true
			r.Send(act.InHand{}).Send(late).Send(act.InHand{Is: true})
		},
		"typing":          func(r *rig.Rig[*Model]) { r.Pane.asked = true; r.Keys("1").Send(late).Keys("esc") },
		"another project": func(r *rig.Rig[*Model]) { r.Send(late) },
	} {
		r := onShelf(t, 78, 24)
		if do(r); r.Pane.pick != nil || len(r.Said) > 0 {
			t.Errorf("%s: the list opens, said %q:\n%s", what, r.Said, r.Screen())
		}
	}
}
