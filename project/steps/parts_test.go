package steps

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"
)

// Every combination of parts.
func allParts() (all []Parts) {
	for i := range 16 {
		all = append(all, Parts{Loop: i&1 > 0, Strap: i&2 > 0, Front: i&4 > 0, Welt: i&8 > 0})
	}
	return all
}

// Steps of a part that the sheath has not are not in its list, and no other speaks of it.
func TestListsSpeakOnlyOfWhatIsThere(t *testing.T) {
	for _, has := range allParts() {
		for name, list := range map[string][]Step{"form, then sew": FormThenSew(has), "sew, then form": SewThenForm(has)} {
			for _, s := range list {
				for word, there := range map[string]bool{"loop": has.Loop, "tab": has.Loop, " lap": has.Loop, "elief": has.Loop,
					"strap": has.Strap, "snap": has.Strap, "welt": has.Welt, "handle;": has.Front, "bolster": false} {
					if !there && strings.Contains(strings.ToLower(s.Title), word) {
						t.Errorf("%s of %+v: %s speaks of %q: %s", name, has, s.Short, word, s.Title)
					}
				}
				if strings.ContainsAny(s.Title+s.Caution, "{}|") {
					t.Errorf("%s of %+v: %s is not said: %s %s", name, has, s.Short, s.Title, s.Caution)
				}
			}
		}
	}
	words := func(has Parts, short string) string {
		for _, s := range FormThenSew(has) {
			if s.Short == short {
				return s.Title
			}
		}
		return ""
	}
	for _, c := range []struct {
		has         Parts
		short, want string
	}{
		{Whole, "CUT", "Punch the relief holes, cut the body, the welt, the strap"},
		{Parts{}, "CUT", "Cut the body"},
		{Parts{Loop: true}, "SKIVE", "Skive the end of the lap"},
		{Parts{Welt: true}, "SKIVE", "Skive the welt over its last 10-15 mm at the point"},
		{Whole, "SKIVE", "Skive the end of the lap, and the welt over its last 10-15 mm at the point"},
		{Parts{}, "SKIVE", ""},
		{Parts{}, "CEMENT", "Roughen both glue strips (the grain off), cement both, start the hold; then close, press"},
		{Whole, "CEMENT", ""},
	} {
		if got := words(c.has, c.short); got != c.want {
			t.Errorf("%s of %+v: %q, want %q", c.short, c.has, got, c.want)
		}
	}
}

// A list that follows its sheath from any parts to any others is the list of those.
func TestRefit(t *testing.T) {
	for _, list := range []func(Parts) []Step{FormThenSew, SewThenForm} {
		for _, before := range allParts() {
			for _, after := range allParts() {
				start := list(before)
				kept := slices.Clone(start)
				if got, want := Refit(start, before, after), list(after); !slices.Equal(got, want) {
					t.Fatalf("from %+v to %+v:\n%s\nwant\n%s", before, after, shorts(got), shorts(want))
				}
				if !slices.Equal(start, kept) {
					t.Fatal("the list given was changed")
				}
			}
		}
	}
}

// What a maker did, noted or made of a list stays.
func TestRefitKeepsWhatIsTheMakers(t *testing.T) {
	list := FormThenSew(Whole)
	at := func(list []Step, short string) int {
		return slices.IndexFunc(list, func(s Step) bool { return s.Short == short })
	}
	list[at(list, "LOOP")].Done = noon
	list[at(list, "STRAP")].Note = "two rivets"
	list[at(list, "SNAP")].Title = "Set both snaps"
	list[at(list, "CUT")].Caution = "Mine."
	list = slices.Delete(list, at(list, "STAMP"), at(list, "STAMP")+1)
	got := Refit(list, Whole, Parts{Front: true, Welt: true})
	for _, short := range []string{"LOOP", "STRAP", "SNAP"} {
		if at(got, short) < 0 {
			t.Errorf("%s was taken out", short)
		}
	}
	if at(got, "LAP") >= 0 || at(got, "STAMP") >= 0 {
		t.Errorf("got %s", shorts(got))
	}
	if cut := got[at(got, "CUT")]; cut.Title != "Cut the body, the welt" || cut.Caution != "Mine." {
		t.Errorf("cut: %q, %q", cut.Title, cut.Caution)
	}
	own := []Step{{Title: "Fold"}, {Title: "Sew"}}
	if got := Refit(own, Whole, Whole); !slices.Equal(got, own) {
		t.Errorf("an own list became %v", got)
	}
}

// The second loosening is due three hours after the forming was ticked, whenever the
// first was done.
func TestHoldCountsFromAnotherStep(t *testing.T) {
	must := must(t)
	list := []Step{{Short: "FORM"}, {Short: "LOOSEN 1", Hold: time.Hour, From: "FORM"}, {Short: "LOOSEN 2", Hold: 3 * time.Hour, From: "FORM"}}
	list = must(Tick(list, 0, noon))
	if got := list[2].NotBefore(); !got.Equal(noon.Add(3 * time.Hour)) {
		t.Errorf("due %v", got)
	}
	if list[1].StartedByHand(list) {
		t.Error("the tick's start passes for one by hand")
	}
	list = must(Tick(list, 1, noon.Add(2*time.Hour)))
	if got := list[2].NotBefore(); !got.Equal(noon.Add(3 * time.Hour)) {
		t.Errorf("after the first loosening due %v", got)
	}
	list = must(Untick(list, 0)) // not formed after all
	if !list[2].Started.IsZero() {
		t.Error("the hold runs on after the tick was taken back")
	}
	list = must(StartHold(list, 2, noon.Add(5*time.Hour))) // no tick to count from: its own start
	if got := list[2].NotBefore(); !got.Equal(noon.Add(8 * time.Hour)) {
		t.Errorf("by its own start due %v", got)
	}
	late := []Step{{Short: "FORM", Done: noon}, {Short: "L", Hold: time.Hour, From: "FORM"}}
	late = must(StartHold(late, 1, noon.Add(30*time.Minute)))
	if got := late[1].NotBefore(); !got.Equal(noon.Add(time.Hour)) {
		t.Errorf("a hold given later is due %v", got)
	}
}

// A hold started anew keeps when it was started first; taken back, that holds again.
func TestStartedAnew(t *testing.T) {
	must := must(t)
	list := []Step{{Title: "Dry", Hold: time.Hour}}
	if _, err := DropStart(list, 0); err == nil {
		t.Error("a start was taken back that never was")
	}
	list = must(StartHold(list, 0, noon))
	list = must(StartHold(list, 0, noon.Add(10*time.Minute)))
	list = must(StartHold(list, 0, noon.Add(20*time.Minute)))
	if s := list[0]; !s.First.Equal(noon) || !s.NotBefore().Equal(noon.Add(80*time.Minute)) {
		t.Errorf("first %v, due %v", s.First, s.NotBefore())
	}
	list = must(DropStart(list, 0))
	if s := list[0]; !s.First.IsZero() || !s.Started.Equal(noon) {
		t.Errorf("taken back: %+v", s)
	}
	list = must(DropStart(list, 0))
	if s := list[0]; !s.Started.IsZero() || s.HoldState(noon) != HoldWaiting {
		t.Errorf("taken back twice: %+v", s)
	}
}

// No tick before the data sheet's time is set; 0 says that there is none.
func TestHoldByDataSheet(t *testing.T) {
	must := must(t)
	list := []Step{{Title: "Dye", Sheet: true}}
	if got := list[0].HoldState(noon); got != HoldUnset {
		t.Errorf("state %v", got)
	}
	if _, err := Tick(list, 0, noon); !errors.Is(err, ErrNoTime) {
		t.Errorf("ticked: %v", err)
	}
	if _, err := StartHold(list, 0, noon); !errors.Is(err, ErrNoTime) {
		t.Errorf("started: %v", err)
	}
	set := must(SetHold(list, 0, 4*time.Hour, 0))
	set = must(StartHold(set, 0, noon))
	if _, err := Tick(set, 0, noon.Add(3*time.Hour)); err == nil {
		t.Error("ticked while it runs")
	}
	must(Tick(set, 0, noon.Add(4*time.Hour)))
	none := must(SetHold(list, 0, 0, 0))
	must(Tick(none, 0, noon))
}

// What the trade's list says of times that count from another step.
func TestLoosenCountsFromForming(t *testing.T) {
	for _, s := range FormThenSew(Whole) {
		want := map[string]string{"LOOSEN 1": "FORM", "LOOSEN 2": "FORM"}[s.Short]
		if s.From != want {
			t.Errorf("%s counts from %q, want %q", s.Short, s.From, want)
		}
	}
}

// A skipped step that is ticked after all is skipped no longer.
func TestTickEndsSkip(t *testing.T) {
	list := must(t)(Tick([]Step{{Title: "Stamp", Skipped: true}}, 0, noon))
	if s := list[0]; s.Skipped || s.Done.IsZero() {
		t.Errorf("ticked: %+v", s)
	}
}

func TestShortNames(t *testing.T) {
	for text, want := range map[string]string{"dye 10": "DYE 10", "Größe 2": "GROSSE 2", "0x9": "0X9", "a  b": "A B", "loosen 12345": "LOOSEN 12", " - ": ""} {
		if got := ShortFrom(text); got != want {
			t.Errorf("ShortFrom(%q) = %q, want %q", text, got, want)
		}
	}
}

// Two looks a minute apart are a leap: the program was closed, or the machine asleep. What
// fell due in between is told with its time.
func TestLeapOfAMinute(t *testing.T) {
	hold := []Hold{{Project: "a", Started: noon, Due: noon.Add(10 * time.Second)}}
	for _, c := range []struct {
		gap       time.Duration
		meanwhile bool
	}{{59 * time.Second, false}, {61 * time.Second, true}} {
		var w Watch
		w.Observe(hold, noon)
		events := w.Observe(hold, noon.Add(c.gap))
		if len(events) != 1 || events[0].Meanwhile != c.meanwhile {
			t.Errorf("after %v: %+v, want meanwhile %v", c.gap, events, c.meanwhile)
		}
	}
}
