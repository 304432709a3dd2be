package drypane

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

var noon = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC) // a Thursday

// zumdahl is a first-order decay, measured: Zumdahl, Chemistry, chapter 11,
// exercise 37, with an hour for each 120 s, the last of n at noon; it stands for
// the water in 100 g of leather.
func zumdahl(n int) []project.Weighing {
	hours := []float64{0, 1, 2.5, 5, 10, 15, 20, 25, 30}
	left := []float64{1, .91, .78, .59, .37, .22, .13, .082, .050}
	var w []project.Weighing
	for i := range n {
		at := noon.Add(time.Duration((hours[i] - hours[n-1]) * float64(time.Hour)))
		w = append(w, project.Weighing{When: at, Grams: math.Round(1000+1000*left[i]) / 10, State: drying})
	}
	return w
}

// withBefore puts the weighing before wetting ahead.
func withBefore(w []project.Weighing) []project.Weighing {
	return append([]project.Weighing{{When: w[0].When.Add(-time.Hour), Grams: 100, State: project.Before}}, w...)
}

func sheath(w []project.Weighing) project.Project {
	p := project.Defaults()
	p.Weigh = w
	return p
}

// rig is the page with a root of the least kind and a clock of its own.
type rig struct {
	t       *testing.T
	m       Model
	p       project.Project
	now     *time.Time
	commits []string
	said    []string
}

func newRig(t *testing.T, p project.Project, w, h int) *rig {
	now := noon
	r := &rig{t: t, p: p, now: &now}
	r.m = New(func() time.Time { return *r.now }, ink.New(ink.Dark, ink.None))
	r.m.SetSize(w, h)
	r.show()
	return r
}

func (r *rig) show() { r.m.SetSnapshot(act.Snapshot{Project: r.p, Now: *r.now}) }

func (r *rig) wait(d time.Duration) *rig {
	*r.now = r.now.Add(d)
	r.show()
	return r
}

func (r *rig) send(msg tea.Msg) *rig {
	m, cmd := r.m.Update(msg)
	r.m = m
	if cmd == nil {
		return r
	}
	c, ok := cmd().(act.Commit)
	if !ok {
		r.t.Fatalf("%v gives no commit", msg)
	}
	q := r.p.Clone()
	if err := c.Do(&q); err != nil {
		r.said = append(r.said, err.Error())
		return r
	}
	if err := q.Validate(); err != nil {
		r.t.Fatalf("%q makes what can't be saved: %v", c.Label, err)
	}
	r.p = q
	r.commits = append(r.commits, c.Label)
	r.show()
	return r
}

var named = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "ctrl+j": tea.KeyCtrlJ, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown, "home": tea.KeyHome,
	"end": tea.KeyEnd, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "backspace": tea.KeyBackspace, "left": tea.KeyLeft, "tab": tea.KeyTab,
}

func keyMsg(name string) tea.KeyMsg {
	if t, ok := named[name]; ok {
		return tea.KeyMsg{Type: t}
	}
	if name == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune(" ")}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// keys presses keys by hand, with time between them.
func (r *rig) keys(names ...string) *rig {
	for _, n := range names {
		r.wait(300 * time.Millisecond).send(keyMsg(n))
	}
	return r
}

// typed types a text by hand.
func (r *rig) typed(text string) *rig {
	for _, c := range text {
		r.keys(string(c))
	}
	return r
}

// scale sends a reading as a tool types it, with CR and LF.
func (r *rig) scale(reading string) *rig {
	r.wait(5 * time.Second)
	for _, c := range reading {
		r.wait(2 * time.Millisecond).send(keyMsg(string(c)))
	}
	return r.wait(2 * time.Millisecond).send(keyMsg("enter")).wait(2 * time.Millisecond).send(keyMsg("ctrl+j"))
}

func (r *rig) screen() string { return ansi.Strip(r.m.View()) }

func (r *rig) shows(texts ...string) *rig {
	r.t.Helper()
	flat := strings.Join(strings.Fields(r.screen()), " ")
	for _, text := range texts {
		if !strings.Contains(flat, text) {
			r.t.Errorf("no %q in\n%s", text, r.screen())
		}
	}
	return r
}

func (r *rig) weighs(want ...project.Weighing) {
	r.t.Helper()
	if !slices.EqualFunc(r.p.Weigh, want, equal) {
		r.t.Errorf("weighings %v, want %v", r.p.Weigh, want)
	}
}

func TestTypingANumberWeighs(t *testing.T) {
	r := newRig(t, sheath(nil), 78, 19)
	r.shows("not weighed yet since it was wetted", "Type the weight in grams")
	r.keys("w").typed("121").keys("enter")
	before := project.Weighing{When: r.now.Truncate(time.Second), Grams: 121, State: project.Before}
	r.weighs(before)
	r.wait(time.Hour).typed("179,5").shows("Weight now, the knife out, in grams")
	r.keys("enter")
	wet := project.Weighing{When: r.now.Truncate(time.Second), Grams: 179.5, State: drying}
	r.weighs(before, wet)
	r.shows("1 of at least 3 weighings: weigh again in an hour or more")
	if r.m.at != 1 || r.m.Typing() {
		t.Errorf("row %d chosen, typing %v; want the new one, and not", r.m.at, r.m.Typing())
	}
	r.wait(3 * time.Hour).scale("163").wait(3 * time.Hour).scale("+  154.0 g").wait(4 * time.Hour).scale("142")
	r.shows("within 2 % of dry between", "most likely", "the drying law through 4 weighings, towards 121 g before wetting")
	want := []string{"weighing 121 g before wetting", "weighing 179.5 g", "weighing 163 g", "weighing 154 g", "weighing 142 g"}
	if !slices.Equal(r.commits, want) || len(r.said) > 0 {
		t.Errorf("commits %q, want %q; said %q", r.commits, want, r.said)
	}
}

func TestUnitsOfAScale(t *testing.T) {
	for text, want := range map[string]float64{
		"141.5": 141.5, "141,5g": 141.5, "+141.5 g": 141.5, "0.1415 kg": 141.5, "5 oz": 141.75, // 5 × 28.349523125 g, to 0.01 g
		".5kg": 500,
	} {
		r := newRig(t, sheath(nil), 78, 19)
		r.typed(text).keys("enter")
		if len(r.p.Weigh) != 1 || r.p.Weigh[0].Grams != want {
			t.Errorf("%q weighs %v, want %v", text, r.p.Weigh, want)
		}
	}
	for text, want := range map[string]string{
		"3..2":    `"3..2" is not a number: try 3.5`,
		"-2":      "-2 will not do: give more than 0, up to 20000",
		"0":       "0 will not do: give more than 0, up to 20000",
		"141 142": `"141 142" is not a number: try 3.5`,
		"25 kg":   "25000 will not do: give more than 0, up to 20000",
		"1x kg":   `"1x kg" is not a weight: try 141.5, 0.1415 kg or 5 oz`,
		"+":       "no weight yet: type it in grams, such as 141.5",
	} {
		r := newRig(t, sheath(nil), 78, 19)
		r.typed(text).keys("enter").shows(want)
		if len(r.p.Weigh) != 0 || !r.m.Typing() {
			t.Errorf("%q weighs %v, typing %v", text, r.p.Weigh, r.m.Typing())
		}
	}
}

// A slip of the digits asks; a scale's own Enter, or the LF after its CR, is no
// answer.
func TestFarWeightAsks(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(4))), 78, 19)
	n := len(r.p.Weigh)
	r.scale("14.1").shows("far from 159 g, weighed 12:00: a slip of the digits?")
	r.scale("155.2").shows(`"14.1155.2" is not a number`)
	r.keys("esc").scale("155.2")
	if len(r.p.Weigh) != n+1 || r.p.Weigh[n].Grams != 155.2 {
		t.Fatalf("weighings %v, want 155.2 g more", r.p.Weigh)
	}
	r.wait(time.Minute).typed("1552").keys("enter")
	if len(r.p.Weigh) != n+1 {
		t.Fatalf("taken without asking: %v", r.p.Weigh)
	}
	r.send(keyMsg("enter")) // a held key
	r.keys("enter")
	if len(r.p.Weigh) != n+2 || r.p.Weigh[n+1].Grams != 1552 {
		t.Errorf("weighings %v, want 1552 g taken after the second Enter", r.p.Weigh)
	}
	r.shows("is heavier than the one before")
}

func TestLaterWeightBeforeWettingGoesAhead(t *testing.T) {
	r := newRig(t, sheath(zumdahl(5)), 78, 19)
	r.keys("w").shows("put ahead of the first one here").typed("100").keys("enter")
	last := r.p.Weigh[5]
	if !last.When.Equal(r.p.Weigh[0].When.Add(-time.Minute)) || last.State != project.Before {
		t.Errorf("put in as %+v", last)
	}
	r.shows("towards 100 g before wetting")
	// Wetted again, what was weighed counts no more.
	r.keys("w").shows("counts no more").typed("99.5").keys("enter")
	r.shows("earlier", "not weighed yet since it was wetted")
}

func TestCorrecting(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(5))), 78, 19)
	was := slices.Clone(r.p.Weigh)
	r.keys("end", "g").shows("Grams at 12:00").typed("138.5").keys("enter")
	was[5].Grams = 138.5
	r.weighs(was...)
	r.keys("t").shows("When it was weighed").keys("backspace", "backspace").typed("xx").keys("enter").shows(`"12:xx" is not a time: try 14:20`)
	r.keys("backspace", "backspace").typed("59").keys("enter")
	was[5].When = noon.Add(-23*time.Hour - time.Minute) // 12:59 yesterday: today's has not been
	was[5].When = time.Date(2026, 11, 25, 12, 59, 0, 0, time.UTC)
	r.weighs(was...)
	r.keys("u", "s") // u is nobody's here
	if got := r.m.rows; len(r.p.Weigh) != 6 || len(got) != 6 {
		t.Errorf("rows %v", got)
	}
	r.keys("home", "x").shows("Enter takes out the weighing of").keys("n")
	if len(r.p.Weigh) != 6 {
		t.Error("another key took it out")
	}
	r.keys("x", "enter")
	if len(r.p.Weigh) != 5 {
		t.Errorf("weighings %v, want one out", r.p.Weigh)
	}
	n := len(r.commits)
	r.keys("g", "enter", "t", "enter", "r", "enter", "h", "esc", "g", "esc")
	if len(r.commits) != n || r.m.Typing() {
		t.Errorf("nothing typed changed something: %q", r.commits[n:])
	}
}

// What someone else changed meanwhile is not overwritten.
func TestChangedMeanwhile(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(5))), 78, 19)
	r.keys("end", "x")
	r.p.Weigh = r.p.Weigh[:3]
	r.send(keyMsg("enter"))
	r.wait(time.Second).send(keyMsg("enter"))
	if len(r.p.Weigh) != 3 || len(r.said) != 1 || !strings.Contains(r.said[0], "changed meanwhile: choose again") {
		t.Errorf("weighings %v, said %q", r.p.Weigh, r.said)
	}
}

func TestRoom(t *testing.T) {
	r := newRig(t, sheath(nil), 78, 19)
	r.shows("room not known: r temperature, h humidity")
	r.keys("r").typed("68 F").keys("enter").shows("room 20 °C (r); its humidity: h")
	r.keys("h").typed("50 %").keys("enter").shows("room 20 °C, 50 % (r, h)", "a guess: dry 24 to 48 h after it was wetted, by 20 °C and 50 % alone")
	if want := (project.Room{Temperature: 20, Humidity: 50, HasTemperature: true, HasHumidity: true}); r.p.Room != want {
		t.Errorf("room %+v, want %+v", r.p.Room, want)
	}
	r.keys("w").typed("121").keys("enter").shows("a guess: dry between Fri 12:00 and Sat 12:00")
	r.keys("r").typed("45").keys("enter").shows("! 45 °C is too hot for wet leather: dry it at room temperature, never above 40 °C")
	r.keys("h").typed("101").keys("enter").shows("101 will not do: give 0, up to 100").keys("esc")
	r.keys("h").scale("55") // opened by hand, typed by a tool: two characters are a hand's
	r.keys("esc", "h").scale("55.2")
	if r.p.Room.Humidity == 55.2 {
		t.Error("a scale's reading became the humidity")
	}
	r.keys("esc", "h", "backspace", "enter")
	if r.p.Room.HasHumidity {
		t.Errorf("room %+v, want no humidity", r.p.Room)
	}
}

// Everything that can be said about the weighings.
func TestVerdicts(t *testing.T) {
	at := func(h, g float64) project.Weighing {
		return project.Weighing{When: noon.Add(time.Duration(h * float64(time.Hour))), Grams: g, State: drying}
	}
	before := project.Weighing{When: noon.Add(-50 * time.Hour), Grams: 100, State: project.Before}
	for _, c := range []struct {
		name  string
		weigh []project.Weighing
		wait  time.Duration
		want  string
	}{
		{"none", nil, 0, "not weighed yet since it was wetted: weigh it, the knife out, once the surface no longer shines"},
		{"too few", withBefore(zumdahl(2)), 0, "! 2 of at least 3 weighings: weigh again in an hour or more"},
		{"too few without", zumdahl(3), 0, "! 3 of at least 4 weighings (3 with the weight before wetting): weigh again in an hour or more"},
		{"heavier", append(withBefore(zumdahl(5)), at(1, 150)), 0, "! weighing 6 is heavier than the one before (137 g, then 150 g): take out the wrong one"},
		{"below dry", append(withBefore(zumdahl(5)), at(1, 80)), 0, "! weighing 6 is below the dry weight (80 g against 100 g): correct one of them"},
		{"estimate", withBefore(zumdahl(6)), 0, "within 2 % of dry between"},
		{"without dry", zumdahl(8), 0, "the drying law through 8 weighings, not weighed before wetting, ends at"},
		{"over", withBefore(zumdahl(9)), 100 * time.Hour, ": weigh it now"},
		{"dry", append(withBefore(zumdahl(9)), at(6, 101)), 0, "dry: 101 g 18:00 is within 2 % of its weight before wetting, 100 g"},
		{"dry at once", []project.Weighing{before, at(0, 101)}, 0, "by the weight before wetting alone, 100 g"},
	} {
		r := newRig(t, sheath(c.weigh), 100, 24)
		r.wait(c.wait).shows(c.want)
		if !strings.Contains(r.screen(), "never above 40 °C, away from heat and sun") {
			t.Errorf("%s: no caution in\n%s", c.name, r.screen())
		}
		if t.Failed() {
			t.Fatalf("at %s", c.name)
		}
	}
	// The published rate says 2 % after 39.04 h, 24.04 h after the sixth weighing.
	r := newRig(t, sheath(withBefore(zumdahl(6))), 100, 24)
	from, likely, to := r.m.dry.Window()
	if want := noon.Add(24*time.Hour + 2*time.Minute); likely.Sub(want).Abs() > time.Hour || from.After(want) || to.Before(want) {
		t.Errorf("window %v, %v, %v, want about %v", from, likely, to, want)
	}
}

// Keys come from one table: each is listed in the help, none twice in one
// state, none is a digit or sign.
func TestKeyTable(t *testing.T) {
	k := DefaultKeyMap()
	listed := map[string]bool{}
	for _, group := range append(k.FullHelp(), k.QuestionHelp()) {
		for _, b := range group {
			for _, name := range b.Keys() {
				if listed[name] && name != "esc" { // leaves what is typed, then the page
					t.Errorf("key %q twice", name)
				}
				listed[name] = true
				if strings.ContainsAny(name, "0123456789.,-") || name == "+" || b.Help().Desc == "" {
					t.Errorf("a scale types %q, or it has no help", name)
				}
			}
		}
	}
	table := reflect.ValueOf(k)
	for i := range table.NumField() {
		for _, name := range table.Field(i).Interface().(key.Binding).Keys() {
			if !listed[name] {
				t.Errorf("key %q is not in the help", name)
			}
		}
	}
}

func TestMouse(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(9))), 78, 19)
	y := r.m.arrange().table.Y
	r.send(tea.MouseMsg{X: 3, Y: y + 2, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	if want := r.m.top + 1; r.m.at != want {
		t.Errorf("a click on the second row chose %d, want %d", r.m.at, want)
	}
	for range 20 {
		r.send(tea.MouseMsg{X: 3, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonWheelUp})
	}
	if r.m.at != 0 || len(r.commits) > 0 {
		t.Errorf("the wheel went to %d, commits %q", r.m.at, r.commits)
	}
}

// Whatever is pressed, the page is exactly its size, the project can be saved and
// nothing panics.
func TestRandomKeysAndSizes(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 5))
	names := []string{"up", "down", "pgup", "pgdown", "home", "end", " ", "w", "g", "t", "s", "x", "r", "h", "v", "1", "2", "4", ".",
		"enter", "enter", "esc", "ctrl+j", "q", "刀", "backspace", "left", "tab", "-"}
	r := newRig(t, sheath(withBefore(zumdahl(3))), 60, 30)
	for range 3_000 {
		if rnd.IntN(20) == 0 {
			r.m.SetSize(rnd.IntN(120), rnd.IntN(40))
			r.m.SetGlyphs(canvas.Glyphs(rnd.IntN(3)), 2)
		}
		r.wait(time.Duration(rnd.IntN(2000)) * time.Millisecond)
		r.send(keyMsg(names[rnd.IntN(len(names))]))
		if rnd.IntN(20) == 0 {
			r.keys("esc").typed("120").keys("enter", "enter")
		}
		exact(t, r.m)
	}
	if len(r.commits) < 60 {
		t.Errorf("only %d changes", len(r.commits))
	}
}

// exact checks that a view has exactly its size.
func exact(t *testing.T, m Model) {
	t.Helper()
	view := m.View()
	if m.w == 0 || m.h == 0 {
		if view != "" {
			t.Fatalf("%q in no room", view)
		}
		return
	}
	lines := strings.Split(view, "\n")
	if len(lines) != m.h {
		t.Fatalf("%d lines in %d×%d", len(lines), m.w, m.h)
	}
	for _, l := range lines {
		if ansi.StringWidth(l) != m.w {
			t.Fatalf("%d wide in %d×%d: %q", ansi.StringWidth(l), m.w, m.h, l)
		}
	}
}
