package words

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/report"
)

// said is what a word says, by its field or, without one, by its name.
func said(t *testing.T, name string) string {
	t.Helper()
	for _, w := range table {
		if w.Key == name || w.Key == "" && w.Name == name {
			return w.Text
		}
	}
	t.Fatalf("nothing is said of %q", name)
	return ""
}

// figure is the number that a word says, where the expression has it.
func figure(t *testing.T, name, expression string) float64 {
	t.Helper()
	m := regexp.MustCompile(expression).FindStringSubmatch(said(t, name))
	if m == nil {
		t.Fatalf("%s: no %q in %q", name, expression, said(t, name))
	}
	v, err := strconv.ParseFloat(m[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// plan is that of the project a maker starts from, changed.
func plan(t *testing.T, change func(*project.Project)) *calc.Plan {
	t.Helper()
	p := project.Defaults()
	change(&p)
	out, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// The figures in the words are those that the program reckons with: the ounce, the lap from
// which there are two rows, the share that is five in a hundred.
func TestFiguresInTheWords(t *testing.T) {
	if n := figure(t, "sheath.leather", `one ounce is 1/(\d+) of an inch`); length.Inch/length.Length(n) != length.Ounce {
		t.Errorf("an ounce is said to be 1/%v in, it is %v mm", n, length.Ounce.MM())
	}
	lap := length.Length(figure(t, "belt.lap", `from (\d+) mm on there is room for a second row`))
	for l, want := range map[length.Length]int{lap: 2, lap - 0.1: 1} {
		if got := plan(t, func(p *project.Project) { p.Belt.Lap = l }).Loop.Rows; got != want {
			t.Errorf("a lap of %v has %d rows, want %d", l, got, want)
		}
	}
	if v := figure(t, "stitch.waste", `([\d.]+) is five in a hundred`); v != 5.0/100 {
		t.Errorf("%v is said to be five in a hundred", v)
	}
	if b := said(t, "sheath.blend"); !strings.Contains(b, "diameter") {
		t.Errorf("the smallest hollow is a diameter: %q", b)
	}
}

// The layer that keeps its length: folded flat, leather's inside makes a turn of nothing and
// its outside one of π·t, half of it for each half; so 0 is the inside, 1 the outside.
func TestBendAllowanceInWords(t *testing.T) {
	text := said(t, "sheath.neutral")
	for share, where := range map[float64]string{0: "inside", 0.5: "middle", 1: "outside"} {
		if want := regexp.MustCompile(fmt.Sprintf(`\b%v (at|in) the %s\b`, share, where)); !want.MatchString(text) {
			t.Errorf("that %v is the %s is not said: %q", share, where, text)
		}
		got := plan(t, func(p *project.Project) { p.Sheath.Neutral = share })
		if want := math.Pi / 2 * share * got.Input.Sheath.Leather.MM(); math.Abs(got.Body.Bend-want) > 1e-9 {
			t.Errorf("at %v a half gains %v mm, want %v", share, got.Body.Bend, want)
		}
	}
}

// What the words say of the plan holds of it: all layers together, a chord shorter than its
// arc, ease on each half, a drain or none, the line as measured, a tab in the middle.
func TestWhatIsSaidOfThePlanHolds(t *testing.T) {
	p := project.Defaults()
	base := plan(t, func(*project.Project) {})
	if got, want := base.Stitch.Stack, 2*p.Sheath.Leather.MM()+p.Sheath.Welt.MM(); math.Abs(got-want) > 1e-9 || !strings.Contains(said(t, "thickness to sew through"), "the leather twice, and the welt") {
		t.Errorf("to sew through: %v, the leather twice and the welt are %v", got, want)
	}
	if base.Stitch.Walk > base.Stitch.Pitch || !strings.Contains(said(t, "divider setting"), "a little less than the stitch length") {
		t.Errorf("dividers are set to %v, the stitch is %v long", base.Stitch.Walk, base.Stitch.Pitch)
	}
	wider := plan(t, func(p *project.Project) { p.Sheath.Ease = 0.5 })
	if got := wider.Body.MouthStitch - base.Body.MouthStitch; math.Abs(got-0.5) > 1e-6 || !strings.Contains(said(t, "sheath.ease"), "each half") {
		t.Errorf("0.5 mm of ease makes a half %v wider", got)
	}
	for drain, want := range map[length.Length]bool{0: false, 4: true} {
		got := plan(t, func(p *project.Project) { p.Sheath.Drain = drain })
		if (got.Flat.Drain != nil) != want || !strings.Contains(said(t, "sheath.drain"), "0 for none") || want && got.Flat.Drain.Centre.Y <= 0 {
			t.Errorf("a drain of %v: %+v", drain, got.Flat.Drain)
		}
	}
	measured := plan(t, func(p *project.Project) { p.Stitch.Measured = length.Length(base.Stitch.PlaneLine + 3) })
	if measured.Stitch.Laid != base.Stitch.PlaneLine+3 || base.Stitch.Laid != base.Stitch.PlaneLine || !strings.Contains(said(t, "stitch.measured"), "0 takes the line as worked out") {
		t.Errorf("measured 3 mm longer the holes are laid on %v of %v", measured.Stitch.Laid, base.Stitch.PlaneLine)
	}
	half := said(t, "fit.by")
	if !strings.Contains(half, "each half") || !strings.Contains(half, "less than 0 takes away") {
		t.Errorf("of a correction: %q", half)
	}
}

// Words without a field are those that the report, the sheets or the form use: a maker who
// reads one on paper finds it here by that name.
func TestWordsOfTheReportAreExplained(t *testing.T) {
	p := project.Defaults()
	base := plan(t, func(*project.Project) {})
	rows := map[string]bool{}
	for _, r := range report.Figures(p, base, length.Millimetres, 0.2) {
		rows[r.Name] = true
	}
	for _, r := range report.LoopFigures(base, length.Millimetres) {
		rows[strings.TrimSuffix(r.Name, ", across")] = true
	}
	table := report.HalfWidths(base, length.Millimetres)
	rows[strings.TrimSuffix(table.Name, ", mm")] = true
	for _, c := range table.Columns {
		rows[c] = true
	}
	for _, name := range []string{"divider setting", "thickness to sew through", "tightest place", "half-widths", "glue line", "relief hole"} {
		if said(t, name); !rows[name] {
			t.Errorf("the report has no %q", name)
		}
	}
}

// The list is read on a screen, a paper and in a shell: plain sentences, one blank between
// words, nothing that a terminal takes for an order; and in the order of the alphabet, whether
// a name begins with a capital or not, without changing the list behind it.
func TestTheListReadsWell(t *testing.T) {
	first := slices.Clone(table)
	all := All()
	all[0].Text = "changed"
	if !slices.Equal(first, table) || len(all) != len(table) {
		t.Error("the list is another after it was asked for")
	}
	for _, w := range table {
		if got, ok := Of(w.Key); w.Key != "" && (!ok || got != w) {
			t.Errorf("of %s %+v is said", w.Key, got)
		}
		if strings.ContainsFunc(w.Name+w.Text, unicode.IsControl) || strings.Contains(w.Text, "  ") || strings.TrimSpace(w.Text) != w.Text || len(w.Text) > 400 {
			t.Errorf("%s: %q", w.Name, w.Text)
		}
	}
	old := table
	defer func() { table = old }()
	table = []Word{{Name: "b"}, {Name: "A"}, {Name: "a c"}, {Name: "C"}}
	var names []string
	for _, w := range All() {
		names = append(names, w.Name)
	}
	if got := strings.Join(names, " "); got != "A a c b C" {
		t.Errorf("in the order of the alphabet: %s", got)
	}
	if _, ok := Of("knife.nothing"); ok {
		t.Error("something is said of a field that is none")
	}
}
