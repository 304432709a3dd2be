package drypane

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/test/rig"
)

func TestTypingANumberWeighs(t *testing.T) {
	r := newRig(t, sheath(nil), 78, 19)
	r.Shows("not weighed yet since it was wetted", "Type the weight in grams")
	r.Keys("w").Type("121").Keys("enter")
	before := weigh.Weighing{When: r.Now.Truncate(time.Second), Grams: 121, State: weigh.Before}
	weighs(r, before)
	r.Wait(time.Hour).Type("179,5").Shows("Weight now, the knife out, in grams")
	r.Keys("enter")
	wet := weigh.Weighing{When: r.Now.Truncate(time.Second), Grams: 179.5, State: drying}
	weighs(r, before, wet)
	r.Shows("1 of at least 3 weighings: weigh again in an hour or more")
	if r.Pane.list.At != 1 || act.Typing(r.Pane) {
		t.Errorf("row %d chosen, typing %v; want the new one, and not", r.Pane.list.At, act.Typing(r.Pane))
	}
	r.Wait(3*time.Hour).Tool("163", 2*time.Millisecond, "enter", "ctrl+j").Wait(3*time.Hour).Tool("+  154.0 g", 2*time.Millisecond, "enter", "ctrl+j").Wait(4*time.Hour).Tool("142", 2*time.Millisecond, "enter", "ctrl+j")
	r.Shows("within 2 % of dry between", "most likely", "drying curves through 4 weighings, ending at 119.4 g (121 g before")
	want := []string{"weighing 121 g before wetting", "weighing 179.5 g", "weighing 163 g", "weighing 154 g", "weighing 142 g"}
	if !slices.Equal(r.Commits, want) || len(r.Said) > 0 {
		t.Errorf("commits %q, want %q; said %q", r.Commits, want, r.Said)
	}
}

func TestUnitsOfAScale(t *testing.T) {
	for text, want := range map[string]float64{
		"141.5": 141.5, "141,5g": 141.5, "+141.5 g": 141.5, "0.1415 kg": 141.5, "5 oz": 141.75, // 5 × 28.349523125 g, to 0.01 g
		".5kg": 500,
	} {
		r := newRig(t, sheath(nil), 78, 19)
		r.Type(text).Keys("enter")
		if len(r.Project.Weigh) != 1 || r.Project.Weigh[0].Grams != want {
			t.Errorf("%q weighs %v, want %v", text, r.Project.Weigh, want)
		}
	}
	for text, want := range map[string]string{
		"3..2":    `"3..2" is not a number: try 3.5`,
		"-2":      "-2 will not do: give more than 0 and at most 20000",
		"0":       "0 will not do: give more than 0 and at most 20000",
		"141 142": `"141 142" is not a number: try 3.5`,
		"25 kg":   "25000 will not do: give more than 0 and at most 20000",
		"1x kg":   `"1x kg" is not a weight: try 141.5, 0.1415 kg or 5 oz`,
		"+":       "no weight yet: type it in grams, such as 141.5",
	} {
		r := newRig(t, sheath(nil), 78, 19)
		r.Type(text).Keys("enter").Shows(want)
		if len(r.Project.Weigh) != 0 || !act.Typing(r.Pane) {
			t.Errorf("%q weighs %v, typing %v", text, r.Project.Weigh, act.Typing(r.Pane))
		}
	}
}

// A slip of the digits asks; a scale's own Enter, or the LF after its CR, is no
// answer.
func TestFarWeightAsks(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(4))), 78, 19)
	n := len(r.Project.Weigh)
	r.Tool("14.1", 2*time.Millisecond, "enter", "ctrl+j").Shows("far from 159 g, weighed 12:00: a slip of the digits?")
	r.Tool("155.2", 2*time.Millisecond, "enter", "ctrl+j") // the next reading is another one
	if len(r.Project.Weigh) != n+1 || r.Project.Weigh[n].Grams != 155.2 {
		t.Fatalf("weighings %v, want 155.2 g more", r.Project.Weigh)
	}
	r.Wait(time.Minute).Type("155x2").Keys("enter").Shows(`"155x2" is not a number`).Keys("backspace", "backspace").Type("2").Keys("enter")
	if len(r.Project.Weigh) != n+1 {
		t.Fatalf("taken without asking: %v", r.Project.Weigh)
	}
	if r.Send(rig.Key("enter")); len(r.Project.Weigh) != n+1 { // a held key
		t.Fatalf("a held Enter is an answer: %v", r.Project.Weigh)
	}
	r.Keys("enter")
	if len(r.Project.Weigh) != n+2 || r.Project.Weigh[n+1].Grams != 1552 {
		t.Errorf("weighings %v, want 1552 g taken after the second Enter", r.Project.Weigh)
	}
	r.Shows("is heavier than the one before")
}

func TestLaterWeightBeforeWettingGoesAhead(t *testing.T) {
	r := newRig(t, sheath(zumdahl(5)), 78, 19)
	r.Keys("w").Shows("put ahead of the first one here").Type("100").Keys("enter")
	last := r.Project.Weigh[5]
	if !last.When.Equal(r.Project.Weigh[0].When.Add(-time.Minute)) || last.State != weigh.Before {
		t.Errorf("put in as %+v", last)
	}
	r.Shows("(100 g before")
	// Wetted again, what was weighed counts no more.
	r.Keys("w").Shows("counts no more").Type("99.5").Keys("enter")
	r.Shows("earlier", "not weighed yet since it was wetted")
}

func TestCorrecting(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(5))), 78, 19)
	was := slices.Clone(r.Project.Weigh)
	r.Keys("end", "g").Shows("Grams at 12:00").Type("138.5").Keys("enter")
	was[5].Grams = 138.5
	weighs(r, was...)
	r.Keys("t").Shows("When it was weighed").Keys("backspace", "backspace").Type("xx").Keys("enter").Shows(`"12:xx" is not a time: try 14:20`)
	r.Keys("backspace", "backspace").Type("59").Keys("enter")
	was[5].When = noon.Add(-23*time.Hour - time.Minute) // 12:59 yesterday: today's has not been
	was[5].When = time.Date(2026, 11, 25, 12, 59, 0, 0, time.UTC)
	weighs(r, was...)
	r.Keys("u", "s") // u is nobody's here
	if got := r.Pane.rows; len(r.Project.Weigh) != 6 || len(got) != 6 {
		t.Errorf("rows %v", got)
	}
	r.Keys("home", "x").Shows("Enter takes out the weighing of").Keys("n")
	if len(r.Project.Weigh) != 6 {
		t.Error("another key took it out")
	}
	r.Keys("x", "enter")
	if len(r.Project.Weigh) != 5 {
		t.Errorf("weighings %v, want one out", r.Project.Weigh)
	}
	n := len(r.Commits)
	r.Keys("g", "enter", "t", "enter", "r", "enter", "h", "esc", "g", "esc")
	if len(r.Commits) != n || act.Typing(r.Pane) {
		t.Errorf("nothing typed changed something: %q", r.Commits[n:])
	}
}

// What someone else changed meanwhile is not overwritten.
// A weighing that moves to its new time, or to those before a wetting, stays the one in hand.
func TestInHandWhereItGoes(t *testing.T) {
	r := newRig(t, sheath(zumdahl(4)), 100, 30)
	grams := r.Project.Weigh[3].Grams
	inHand := func(after string) {
		t.Helper()
		if w, _, _ := r.Pane.weighing(); w.Grams != grams {
			t.Errorf("%s: in hand is %v", after, w)
		}
	}
	first := r.Project.Weigh[0].When
	r.Keys("t").Answer(first.Add(-time.Hour).Format("2 Jan 15:04"))
	inHand("put first")
	r.Keys("t").Answer(first.Add(time.Minute).Format("2 Jan 15:04"))
	inHand("put second")
	if got := r.Project.Weigh[3].When; !got.Equal(first.Add(time.Minute)) {
		t.Errorf("the second t changed another weighing: %v", r.Project.Weigh)
	}
	r.Keys("s")
	inHand("before wetting")
	r.Keys("s")
	inHand("while drying")
}

func TestChangedMeanwhile(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(5))), 78, 19)
	r.Keys("end", "x")
	r.Project.Weigh = r.Project.Weigh[:3]
	r.Send(rig.Key("enter"))
	r.Wait(time.Second).Send(rig.Key("enter"))
	if len(r.Project.Weigh) != 3 || len(r.Said) != 1 || !strings.Contains(r.Said[0], "changed meanwhile: choose again") {
		t.Errorf("weighings %v, said %q", r.Project.Weigh, r.Said)
	}
}

func TestRoom(t *testing.T) {
	r := newRig(t, sheath(nil), 78, 19)
	r.Shows("room not known: r temperature, h humidity")
	r.Keys("r").Type("68 F").Keys("enter").Shows("room 20 °C (r); its humidity: h")
	r.Keys("h").Type("50 %").Keys("enter").Shows("room 20 °C, 50 % (r, h)", "a guess: dry 24 to 48 h after it was wetted, by 20 °C and 50 % alone")
	if want := (weigh.Room{Temperature: 20, Humidity: 50, HasTemperature: true, HasHumidity: true}); r.Project.Room != want {
		t.Errorf("room %+v, want %+v", r.Project.Room, want)
	}
	r.Keys("w").Type("121").Keys("enter").Shows("a guess: dry between Fri 12:00 and Sat 12:00")
	r.Keys("r").Type("45").Keys("enter").Shows("! 45 °C is too hot for wet leather: dry it at room temperature, never above 40 °C")
	r.Keys("h").Type("101").Keys("enter").Shows("101 will not do: give between 0 and 100").Keys("esc")
	r.Keys("h").Tool("55", 2*time.Millisecond, "enter", "ctrl+j") // opened by hand, typed by a tool: two characters are a hand's
	r.Keys("esc", "h").Tool("55.2", 2*time.Millisecond, "enter", "ctrl+j")
	if r.Project.Room.Humidity == 55.2 {
		t.Error("a scale's reading became the humidity")
	}
	r.Keys("esc", "h", "backspace", "enter")
	if r.Project.Room.HasHumidity {
		t.Errorf("room %+v, want no humidity", r.Project.Room)
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
		r.Wait(c.wait).Shows(c.want)
		if !strings.Contains(r.Screen(), "never above 40 °C, away from heat and sun") {
			t.Errorf("%s: no caution in\n%s", c.name, r.Screen())
		}
		if t.Failed() {
			t.Fatalf("at %s", c.name)
		}
	}
	// The published rate says 2 % after 39.04 h, 24.04 h after the sixth weighing.
	r := newRig(t, sheath(withBefore(zumdahl(6))), 100, 24)
	from, likely, to := r.Pane.dry.Window()
	if want := noon.Add(24*time.Hour + 2*time.Minute); likely.Sub(want).Abs() > time.Hour || from.After(want) || to.Before(want) {
		t.Errorf("window %v, %v, %v, want about %v", from, likely, to, want)
	}
}

func TestKeyTable(t *testing.T) {
	r := newRig(t, sheath(nil), 78, 19)
	rig.CheckKeys(t, r.Pane)
	rig.CheckKeys(t, r.Keys("w").Pane)
}

func TestMouse(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(9))), 78, 19)
	y := r.Pane.arrange().table.Y
	r.Send(tea.MouseMsg{X: 3, Y: y + 2, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	if want := r.Pane.list.Top + 1; r.Pane.list.At != want {
		t.Errorf("a click on the second row chose %d, want %d", r.Pane.list.At, want)
	}
	for range 20 {
		r.Send(tea.MouseMsg{X: 3, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonWheelUp})
	}
	if r.Pane.list.At != 0 || len(r.Commits) > 0 {
		t.Errorf("the wheel went to %d, commits %q", r.Pane.list.At, r.Commits)
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
			r.Pane.SetSize(rnd.IntN(120), rnd.IntN(40))
			setFont(r, canvas.Glyphs(rnd.IntN(3)))
		}
		r.Wait(time.Duration(rnd.IntN(2000)) * time.Millisecond)
		r.Send(rig.Key(names[rnd.IntN(len(names))]))
		if rnd.IntN(20) == 0 {
			r.Keys("esc").Type("120").Keys("enter", "enter")
		}
		exact(t, r.Pane)
	}
	if len(r.Commits) < 30 {
		t.Errorf("only %d changes", len(r.Commits))
	}
}

// A terminal may hand over a whole reading, or what of a line is no number, in one
// piece; a pasted one waits for Enter.
func TestReadingsInOnePiece(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(4))), 78, 19)
	n := len(r.Project.Weigh)
	r.Send(rig.Key("ST,GS,+")).Send(rig.Key(" ")).Send(rig.Key("155.5")).Send(rig.Key(" ")).Send(rig.Key("g")).Send(rig.Key("enter"))
	if len(r.Project.Weigh) != n+1 || r.Project.Weigh[n].Grams != 155.5 {
		t.Fatalf("weighings %v, want 155.5 g more", r.Project.Weigh)
	}
	r.Wait(time.Minute).Send(tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune("154.5\r\n153\r\n")})
	if !act.Typing(r.Pane) || len(r.Project.Weigh) != n+1 {
		t.Fatalf("a pasted number: typing %v, %v", act.Typing(r.Pane), r.Project.Weigh)
	}
	r.Keys("enter")
	if len(r.Project.Weigh) != n+2 || r.Project.Weigh[n+1].Grams != 154.5 {
		t.Errorf("weighings %v, want 154.5 g more", r.Project.Weigh)
	}
	r.Send(tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune("x")})
	if act.Typing(r.Pane) || len(r.Project.Weigh) != n+2 {
		t.Error("a pasted letter is a command")
	}
}

// A reading that arrives while something else is asked changes nothing but, at
// most, adds a weighing.
func TestReadingInEveryState(t *testing.T) {
	for _, keys := range [][]string{nil, {"t"}, {"r"}, {"h"}, {"x"}, {"home", "x"}} {
		r := newRig(t, sheath(withBefore(zumdahl(4))), 78, 19)
		was := slices.Clone(r.Project.Weigh)
		r.Keys(keys...).Tool("155.5", 2*time.Millisecond, "enter", "ctrl+j")
		if len(r.Project.Weigh) == len(was)+1 {
			was = append(was, weigh.Weighing{When: r.Now.Truncate(time.Second), Grams: 155.5, State: drying})
		}
		weighs(r, was...)
		if r.Project.Room != (weigh.Room{}) {
			t.Errorf("after %q the room is %+v", keys, r.Project.Room)
		}
	}
}

// Correcting a slip asks nothing: the weights beside it count, not the slip.
func TestCorrectingASlip(t *testing.T) {
	w := withBefore(zumdahl(5))
	w[5].Grams = 13.7
	r := newRig(t, sheath(w), 78, 19)
	r.Keys("end", "g").Type("137").Keys("enter")
	if r.Project.Weigh[5].Grams != 137 || act.Typing(r.Pane) {
		t.Errorf("weighings %v, typing %v", r.Project.Weigh, act.Typing(r.Pane))
	}
}
