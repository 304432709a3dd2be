package drypane

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/project/weigh"
	"chape/ui/canvas"
)

func TestTypingANumberWeighs(t *testing.T) {
	r := newRig(t, sheath(nil), 78, 19)
	r.shows("not weighed yet since it was wetted", "Type the weight in grams")
	r.keys("w").typed("121").keys("enter")
	before := weigh.Weighing{When: r.now.Truncate(time.Second), Grams: 121, State: weigh.Before}
	r.weighs(before)
	r.wait(time.Hour).typed("179,5").shows("Weight now, the knife out, in grams")
	r.keys("enter")
	wet := weigh.Weighing{When: r.now.Truncate(time.Second), Grams: 179.5, State: drying}
	r.weighs(before, wet)
	r.shows("1 of at least 3 weighings: weigh again in an hour or more")
	if r.m.at != 1 || r.m.Typing() {
		t.Errorf("row %d chosen, typing %v; want the new one, and not", r.m.at, r.m.Typing())
	}
	r.wait(3 * time.Hour).scale("163").wait(3 * time.Hour).scale("+  154.0 g").wait(4 * time.Hour).scale("142")
	r.shows("within 2 % of dry between", "most likely", "drying curves through 4 weighings, ending at 119.4 g (121 g before")
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
	r.scale("155.2") // the next reading is another one
	if len(r.p.Weigh) != n+1 || r.p.Weigh[n].Grams != 155.2 {
		t.Fatalf("weighings %v, want 155.2 g more", r.p.Weigh)
	}
	r.wait(time.Minute).typed("155x2").keys("enter").shows(`"155x2" is not a number`).keys("backspace", "backspace").typed("2").keys("enter")
	if len(r.p.Weigh) != n+1 {
		t.Fatalf("taken without asking: %v", r.p.Weigh)
	}
	if r.send(keyMsg("enter")); len(r.p.Weigh) != n+1 { // a held key
		t.Fatalf("a held Enter is an answer: %v", r.p.Weigh)
	}
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
	if !last.When.Equal(r.p.Weigh[0].When.Add(-time.Minute)) || last.State != weigh.Before {
		t.Errorf("put in as %+v", last)
	}
	r.shows("(100 g before")
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
	if want := (weigh.Room{Temperature: 20, Humidity: 50, HasTemperature: true, HasHumidity: true}); r.p.Room != want {
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
	at := func(h, g float64) weigh.Weighing {
		return weigh.Weighing{When: noon.Add(time.Duration(h * float64(time.Hour))), Grams: g, State: drying}
	}
	before := weigh.Weighing{When: noon.Add(-50 * time.Hour), Grams: 100, State: weigh.Before}
	for _, c := range []struct {
		name  string
		weigh []weigh.Weighing
		wait  time.Duration
		want  string
	}{
		{"none", nil, 0, "not weighed yet since it was wetted: weigh it, the knife out, once the surface no longer shines"},
		{"too few", withBefore(zumdahl(2)), 0, "! 2 of at least 3 weighings: weigh again in an hour or more"},
		{"too few without", zumdahl(3), 0, "! 3 of at least 4 weighings (3 with the weight before wetting): weigh again in an hour or more"},
		{"heavier", append(withBefore(zumdahl(5)), at(1, 150)), 1 * time.Hour, "! weighing 6 is heavier than the one before (137 g, then 150 g): take out the wrong one"},
		{"below dry", append(withBefore(zumdahl(5)), at(1, 80)), 1 * time.Hour, "! weighing 6 is below the dry weight (80 g against 100 g): correct one of them"},
		{"estimate", withBefore(zumdahl(6)), 0, "within 2 % of dry between"},
		{"without dry", zumdahl(8), 0, "drying curves through 8 weighings, not weighed before wetting, ending at"},
		{"over", withBefore(zumdahl(9)), 100 * time.Hour, ": weigh it now"},
		{"dry", append(withBefore(zumdahl(9)), at(6, 101)), 6 * time.Hour, "dry: 101 g at 18:00 is within 2 % of where the curve ends"},
		{"dry at once", []weigh.Weighing{before, at(0, 101)}, 0, "by the weight before wetting alone, 100 g"},
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
	for range 1_500 {
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
	if len(r.commits) < 30 {
		t.Errorf("only %d changes", len(r.commits))
	}
}

// A terminal may hand over a whole reading, or what of a line is no number, in one
// piece; a pasted one waits for Enter.
func TestReadingsInOnePiece(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(4))), 78, 19)
	n := len(r.p.Weigh)
	r.send(keyMsg("ST,GS,+")).send(keyMsg(" ")).send(keyMsg("155.5")).send(keyMsg(" ")).send(keyMsg("g")).send(keyMsg("enter"))
	if len(r.p.Weigh) != n+1 || r.p.Weigh[n].Grams != 155.5 {
		t.Fatalf("weighings %v, want 155.5 g more", r.p.Weigh)
	}
	r.wait(time.Minute).send(tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune("154.5\r\n153\r\n")})
	if !r.m.Typing() || len(r.p.Weigh) != n+1 {
		t.Fatalf("a pasted number: typing %v, %v", r.m.Typing(), r.p.Weigh)
	}
	r.keys("enter")
	if len(r.p.Weigh) != n+2 || r.p.Weigh[n+1].Grams != 154.5 {
		t.Errorf("weighings %v, want 154.5 g more", r.p.Weigh)
	}
	r.send(tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune("x")})
	if r.m.Typing() || len(r.p.Weigh) != n+2 {
		t.Error("a pasted letter is a command")
	}
}

// A reading that arrives while something else is asked changes nothing but, at
// most, adds a weighing.
func TestReadingInEveryState(t *testing.T) {
	for _, keys := range [][]string{nil, {"t"}, {"r"}, {"h"}, {"x"}, {"home", "x"}} {
		r := newRig(t, sheath(withBefore(zumdahl(4))), 78, 19)
		was := slices.Clone(r.p.Weigh)
		r.keys(keys...).scale("155.5")
		if len(r.p.Weigh) == len(was)+1 {
			was = append(was, weigh.Weighing{When: r.now.Truncate(time.Second), Grams: 155.5, State: drying})
		}
		r.weighs(was...)
		if r.p.Room != (weigh.Room{}) {
			t.Errorf("after %q the room is %+v", keys, r.p.Room)
		}
	}
}

// Correcting a slip asks nothing: the weights beside it count, not the slip.
func TestCorrectingASlip(t *testing.T) {
	w := withBefore(zumdahl(5))
	w[5].Grams = 13.7
	r := newRig(t, sheath(w), 78, 19)
	r.keys("end", "g").typed("137").keys("enter")
	if r.p.Weigh[5].Grams != 137 || r.m.Typing() {
		t.Errorf("weighings %v, typing %v", r.p.Weigh, r.m.Typing())
	}
}
