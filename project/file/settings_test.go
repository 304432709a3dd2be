package file

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"chape/project"
)

// bench is a file of settings with a key of each kind, and one that goes by another.
type bench struct {
	name   string
	high   float64
	lit    bool
	tools  []string
	looked int
}

func (b *bench) own() []Setting {
	return []Setting{
		{project.Spec{Key: "name", Hint: "what it is called", Kind: project.Text, Max: 9}, func() any { return b.name }, func(v any) { b.name = v.(string) }},
		{project.Spec{Key: "tools", Hint: "by hand", Kind: project.Words, Max: 3}, func() any { return b.tools }, func(v any) { b.tools = v.([]string) }},
		{project.Spec{Key: "bench.high", Hint: "how high", Kind: project.Number, Min: 1, Max: 2}, func() any { return b.high }, func(v any) { b.high = v.(float64) }},
		{project.Spec{Key: "bench.lit", Hint: "a lamp", Kind: project.Flag}, func() any { return b.lit }, func(v any) { b.lit = v.(bool) }},
	}
}

func (b *bench) check(p project.Project) (ps project.Problems) {
	b.looked++
	if b.name == "none" {
		ps = append(ps, project.Problem{Key: "name", Index: -1, Found: `"none"`, Remedy: "give another"})
	}
	return ps
}

// What settings hold is put where it belongs, with the tables of a project beside them; what a
// file lacks is not touched.
func TestDecodeSettings(t *testing.T) {
	b := bench{name: "as it was", high: 1.5, tools: []string{"awl"}}
	p, err := DecodeSettings("s.toml", []byte("bench.high = 2\nbench.lit = true\n[sheath]\nleather = \"8 oz\"\n[[step]]\ntitle = \"Cement\"\nsheet = true\nhold = \"1h\"\nexpected = \"20m\"\n"), b.own(), b.check)
	if err != nil || b.name != "as it was" || b.high != 2 || !b.lit || !reflect.DeepEqual(b.tools, []string{"awl"}) || b.looked != 1 {
		t.Errorf("%+v, %v", b, err)
	}
	if p.Sheath.Leather != 3.175 || p.Sheath.Gap != project.Defaults().Sheath.Gap || len(p.Steps) != 1 || !p.Steps[0].Sheet || p.Steps[0].Hold != time.Hour || p.Steps[0].Expect != 20*time.Minute {
		t.Errorf("%+v", p)
	}
	again := bench{}
	q, err := DecodeSettings("s.toml", EncodeSettings("# mine\n", p, b.own()), again.own(), again.check)
	if err != nil || again.name != b.name || again.high != b.high || again.lit != b.lit || !reflect.DeepEqual(again.tools, b.tools) || !reflect.DeepEqual(q, p) {
		t.Errorf("written\n%s\nread %+v, %v", EncodeSettings("# mine\n", p, b.own()), again, err)
	}
}

// What settings do not hold is refused with its line and where it belongs; nothing that the
// file says is put anywhere out of its range, and what no key tells is asked of the check.
func TestDecodeSettingsRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"\nnam = \"x\"":                           "s.toml:2: nam: found a key this program does not know: did you mean name? Change it or take it out",
		"high = 2":                                "s.toml:1: high: found a key this program does not know: high belongs in [bench]: move it or take it out",
		"[bench]\nhigh = 3":                       "s.toml:2: bench.high: found 3: give between 1 and 2",
		"name = \"0123456789\"":                   "s.toml:1: name: found 10 letters: give at most 9 letters",
		"tools = [\"a\",\"b\",\"c\",\"d\"]":       "s.toml:1: tools: found 4 words: give at most 3",
		"tools = [\"a\\u0000\"]":                  "s.toml:1: tools: found a list: write a list of texts",
		"name = \"none\"":                         `s.toml:1: name: found "none": give another`,
		"title = \"x\"":                           "s.toml:1: title: found a key this program does not know",
		"[stitch]\nmeasured = 400":                "s.toml:2: stitch.measured: found a key this program does not know: it is of one knife alone: take it out",
		"[knife]\nback = \"blunt\"":               "s.toml:1: knife: found a key this program does not know",
		"[[fit]]\nat = 1":                         "s.toml:1: fit: found a key this program does not know",
		"[[step]]\ntitle = \"x\"\nskipped = true": "s.toml:3: step.skipped of step 1: found a key this program does not know",
		"[[step]]\ntitle = \"x\"\n[[step]]\ntitle = \"y\"\nspent = \"1h\"": "step.spent of step 2: found a key this program does not know",
		"[[step]]\ntitle = \"x\"\nstarted = 2026-01-01T00:00:00Z":          "s.toml:3: step.started of step 1: found a key this program does not know",
	} {
		b := bench{high: 1.5}
		_, err := DecodeSettings("s.toml", []byte(text), b.own(), b.check)
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q:\n got  %v\n want %s", text, err, want)
		}
		if b.high != 1.5 || len(b.tools) > 3 {
			t.Errorf("%q puts %+v", text, b)
		}
	}
}

// Every key is written with what it is before it, once; a key that has no value is not given.
func TestEncodeSettingsExplains(t *testing.T) {
	b := bench{name: "a", high: 1}
	text := string(EncodeSettings("# mine\n", project.Defaults(), b.own()))
	for _, want := range []string{"# mine\n", "# what it is called\nname = \"a\"\n", "\n[bench]\n# how high\nhigh = 1.0\n# a lamp\nlit = false\n", "\n[sheath]\n", "half the smallest hollow's diameter", "# offset, left out: centred. "} {
		if strings.Count(text, want) != 1 {
			t.Errorf("%q stands %d times in\n%s", want, strings.Count(text, want), text)
		}
	}
	d := project.Defaults()
	for _, f := range parts {
		if line := fmt.Sprintf("\n%s = ", last(f.Key)); f.Written(&d) && !strings.Contains(text, line) {
			t.Errorf("no %s", f.Key)
		}
	}
	if strings.Contains(text, "mouth = ") || strings.Contains(text, "measured = ") {
		t.Error("what is of one knife alone is written")
	}
}
