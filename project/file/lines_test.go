package file

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode"

	"chape/calc/length"
	"chape/project"
	"chape/project/steps"
)

// everything is a project with two rows of every list and something in every key.
func everything() project.Project {
	p := full()
	noon := time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)
	day := noon.Truncate(24 * time.Hour)
	p.Title, p.Notes, p.Customer.Name, p.Customer.Due, p.Untouched = "Orchard", "a\n\"b\"", "nobody", day, "blade"
	p.Tracing = project.Tracing{Picture: "x.jpg", Residual: 0.2, Read: day, Left: []length.Length{10, 40}}
	p.Hide = project.Hide{Name: "shoulder", Lost: 0.3, Placed: true, Cut: 80000}
	p.Hide.Price.M2 = "92.50"
	p.MadeFor = project.MadeFor{Title: "Boning", Inputs: "format = 1\n"}
	p.Room.Temperature, p.Room.Humidity, p.Room.HasHumidity, p.Room.HasTemperature = 20, 50, true, true
	p.Outline.BackGiven, p.Outline.EdgeGiven, p.Strap.Placed, p.Strap.At, p.Belt.Centred, p.Belt.Offset, p.Stitch.NeedleSet, p.Stitch.Needle = true, true, true, 150, false, 8, true, 1.2
	p.Fits = append(p.Fits, project.Fit{With: "leather", Note: "tight"})
	p.Fits[1].At, p.Fits[1].By, p.Fits[1].Reach = 60, 1.5, 20
	p.Carried = []project.Carried{{Fit: p.Fits[1], From: "x", Front: 100, Mouth: 140}, {Fit: p.Fits[1], From: "y", Deepest: 9, Front: 90, Mouth: 120}}
	p.Earlier = []project.Half{{At: 10, Wide: 20, Line: "edge"}, {At: 30, Wide: 22, Line: "stitches"}}
	p.Steps = []steps.Step{{Title: "Form", Short: "FORM", Started: noon, First: noon, Done: noon, Spent: time.Hour, Skipped: true},
		{Title: "Dry", Caution: "heat", Note: "n", Hold: 24 * time.Hour, Latest: 48 * time.Hour, From: "FORM", Expect: time.Minute, Sheet: true, Ended: noon}}
	p.Patterns = append(p.Patterns, project.Pattern{Number: 2, Printed: day})
	p.Quotes = []project.Quote{{Date: day, Lines: "work | 80.00 | work | 2 h"}, {Date: day, Until: day, Due: day, Accepted: day, Lines: "work | 80.00 | work | 2 h", Currency: "€", Unit: "0.05", What: "w"}}
	p.Weigh = append(p.Weigh, p.Weigh[0])
	p.Added = []project.Part{{Name: "loop", Count: 1, Length: 60, Width: 20}, {Name: "leaf", Count: 2, Halves: "0 0; 40 15; 80 0", Thickness: 2}}
	return p
}

// eachLine visits every line with a key and a value on it, with its number and the key's name.
func eachLine(text string, visit func(lines []string, i int, key string)) {
	lines := strings.Split(text, "\n")
	long := false
	for i, l := range lines {
		if strings.Count(l, `"""`) == 1 {
			long = !long
			continue
		}
		if key, _, ok := strings.Cut(l, " = "); ok && !long && !strings.HasPrefix(l, "#") {
			visit(lines, i, key)
		}
	}
}

// with is the text with another line in place of line i.
func with(lines []string, i int, line string) []byte {
	out := append([]string{}, lines...)
	out[i] = line
	return []byte(strings.Join(out, "\n"))
}

// nonsense is what stands in hardly any key.
var nonsense = []string{"nan", "-inf", "1e300", "-99999999999", "[]", "[[1]]", "{}", "{ a = 1 }", "1979-05-27", "07:32:00", `"\u001b[31m\u202e"`, `"\n"`, "[\"a\", 1]"}

// Nonsense in every key, a few of it in each, is either taken as its kind or refused, in one
// harmless line with the file, the line, the key and what would do.
func TestNonsenseInEveryKey(t *testing.T) {
	text := string(Encode(everything()))
	if p, _, err := Decode("f.toml", []byte(text)); err != nil || !reflect.DeepEqual(p, everything()) {
		t.Fatalf("%v\n%+v\nwant\n%+v", err, p, everything())
	}
	keys := 0
	eachLine(text, func(lines []string, i int, key string) {
		keys++
		for j := range 2 {
			value := nonsense[(2*keys+j)%len(nonsense)]
			p, _, err := Decode("f.toml", with(lines, i, key+" = "+value))
			if err == nil {
				if strings.HasPrefix(value, `"`) || value == "1979-05-27" && (key == "due" || key == "printed" || key == "date" || key == "until" || key == "accepted" || key == "read") {
					continue
				}
				t.Errorf("line %d: %s = %s is taken: %v", i+1, key, value, p.Title)
				continue
			}
			line := err.Error()
			if strings.ContainsFunc(line, func(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) }) || !strings.HasPrefix(line, "f.toml:") || !strings.Contains(line, "found ") {
				t.Errorf("line %d: %s = %s: %q", i+1, key, value, line)
			}
			if !strings.HasPrefix(value, `"`) && (!strings.HasPrefix(line, fmt.Sprintf("f.toml:%d: ", i+1)) || !strings.Contains(line, key)) && value != "1979-05-27" && key != "width" { // a part's length is named with its width
				t.Errorf("line %d: %s = %s: %q", i+1, key, value, line)
			}
		}
	})
	if n := len(project.Fields); keys < n {
		t.Errorf("%d keys looked at, of %d that stand once alone", keys, n)
	}
}

// Every line may be missing: the key has its default then, or the refusal names it. Every line
// twice is refused, with the line of the second.
func TestEveryLineMissingOrTwice(t *testing.T) {
	missing := 0
	eachLine(string(Encode(everything())), func(lines []string, i int, key string) {
		p, _, err := Decode("f.toml", with(lines, i, ""))
		switch {
		case key == "picture" || key == "halves": // what goes with it says nothing then, or is said
		case err != nil && !strings.Contains(err.Error(), key):
			t.Errorf("without line %d, %s: %v", i+1, lines[i], err)
		case err == nil:
			missing++
			again, _, err := Decode("f.toml", Encode(p))
			if err != nil || !reflect.DeepEqual(again, p) {
				t.Errorf("without line %d, %s, it is not what it is when saved: %v", i+1, lines[i], err)
			}
		}
		if _, _, err = Decode("f.toml", with(lines, i, lines[i]+"\n"+lines[i])); err == nil || !strings.HasPrefix(err.Error(), fmt.Sprintf("f.toml:%d: ", i+2)) {
			t.Errorf("line %d twice, %s: %v", i+1, lines[i], err)
		}
	})
	if missing < 60 {
		t.Errorf("only %d keys have a default", missing)
	}
}

// An unknown key in every table is refused with its line and its table, and row.
func TestUnknownKeyInEveryTable(t *testing.T) {
	lines := strings.Split(string(Encode(everything())), "\n")
	rows := map[string]int{}
	tables := 0
	for i, l := range lines {
		if !strings.HasPrefix(l, "[") {
			continue
		}
		tables++
		name := strings.Trim(l, "[]")
		_, _, err := Decode("f.toml", with(lines, i, l+"\nqwxz = 1"))
		want := fmt.Sprintf("f.toml:%d: %s.qwxz: found a key this program does not know", i+2, name)
		if strings.HasPrefix(l, "[[") {
			rows[name]++
			want = fmt.Sprintf("f.toml:%d: %s.qwxz of ", i+2, name)
		}
		if err == nil || !strings.HasPrefix(err.Error(), want) || rows[name] > 0 && !strings.Contains(err.Error(), fmt.Sprintf(" %d: found a key", rows[name])) {
			t.Errorf("in %s: %v\nwant %s", l, err, want)
		}
	}
	if tables < 20 || len(rows) != len(project.Lists) {
		t.Errorf("%d tables, rows of %v", tables, rows)
	}
}

// randomly puts random values that will do into a project, as if typed.
func randomly(r *rand.Rand, p *project.Project) {
	fields := append([]project.Field{}, project.Fields...)
	for _, l := range project.Lists {
		for i := range l.Rows(p) {
			for _, c := range l.Columns {
				fields = append(fields, c.At(i))
			}
		}
	}
	texts := []string{"", "x", "é \"q\" \\ ", "\t\x1b[31m\u202e", "a\nb", "'''", `"""`, "# no remark", "= [x]", "ends \\"}
	for range 40 {
		f := fields[r.IntN(len(fields))]
		var v any
		switch f.Kind {
		case project.Length, project.Leather:
			v = length.Length(f.Min + (f.Max-f.Min)*r.Float64()*r.Float64())
		case project.Share, project.Number:
			v = f.Min + (f.Max-f.Min)*r.Float64()
		case project.Count:
			v = int(f.Min) + r.IntN(9)
		case project.Choice:
			v = f.Options[r.IntN(len(f.Options))]
		case project.Text, project.Lines:
			v = texts[r.IntN(len(texts))]
		case project.Date:
			v = time.Date(1970+r.IntN(230), 1, 1+r.IntN(365), 0, 0, 0, 0, time.UTC)
		case project.Moment:
			v = time.Unix(r.Int64N(7e9), 0).In(time.FixedZone("", (r.IntN(27)-12)*3600+r.IntN(4)*900))
			if _, off := v.(time.Time).Zone(); off == 0 {
				v = v.(time.Time).UTC()
			}
		case project.Span:
			v = time.Duration(r.Float64() * f.Max)
		case project.Flag:
			v = r.IntN(2) == 0
		}
		before := p.Clone()
		f.Keep(p, v)
		if p.Validate() != nil {
			*p = before
		}
	}
}

// Whatever a project holds, as far as it will do, it comes back from its file to the last bit,
// and the file written again is the same.
func TestRandomProjectsSurviveTheFile(t *testing.T) {
	r := rand.New(rand.NewPCG(26, 11))
	for range 24 {
		p := everything()
		randomly(r, &p)
		data := Encode(p)
		got, _, err := Decode("f.toml", data)
		if err != nil || string(Encode(got)) != string(data) {
			t.Fatalf("%v in\n%s\nwritten again\n%s", err, data, Encode(got))
		}
		for _, f := range project.Fields {
			if a, b := f.Kept(&got), f.Kept(&p); f.Written(&p) && !same(a, b) {
				t.Fatalf("%s was %v and is %v", f.Key, b, a)
			}
		}
		for _, l := range project.Lists {
			if l.Key == "knife.station" && p.Source == project.FromOutline { // filled from it
				continue
			}
			for i := range l.Rows(&p) {
				for _, c := range l.Columns {
					if a, b := c.At(i).Kept(&got), c.At(i).Kept(&p); c.At(i).Written(&p) && !same(a, b) {
						t.Fatalf("%s of row %d was %v and is %v", c.Key, i, b, a)
					}
				}
			}
		}
	}
}

// same tells whether two values are, in whatever zone a moment is told.
func same(a, b any) bool {
	if x, ok := a.(time.Time); ok {
		y := b.(time.Time)
		return x.Equal(y) && x.Format(time.RFC3339) == y.Format(time.RFC3339)
	}
	return reflect.DeepEqual(a, b)
}
