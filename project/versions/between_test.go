package versions

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/report"
)

// corrected is a pattern and the one after it, which is by wider a side at 60.
func corrected(t *testing.T, by length.Length, u length.Unit) Pair {
	t.Helper()
	p := printed(knifeProject(), 0)
	p.Units = u
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: by, Reach: 20}, With: "leather"}}
	Raise(&p)
	all := Of(p)
	pair, err := Between(all[0], all[1], calc.DefaultLimits())
	if err != nil {
		t.Fatal(err)
	}
	return pair
}

// A figure with its sign, by hand: shown to 0.05 mm or to 1/64 in, nothing is neither.
func TestSigned(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		u    length.Unit
		want string
	}{
		{1.5, length.Millimetres, "+1.50"}, {-1.5, length.Millimetres, "-1.50"}, {0, length.Millimetres, "0.00"}, {0.02, length.Millimetres, "0.00"},
		{-0.02, length.Millimetres, "0.00"}, {0.03, length.Millimetres, "+0.05"}, {3.175, length.Inches, "+1/8"}, {-38.1, length.Inches, "-1 1/2"}, {0.1, length.Inches, "0"},
	} {
		if got := Signed(c.mm, c.u, length.Calliper); got != c.want {
			t.Errorf("%v in %v: %q, want %q", c.mm, c.u, got, c.want)
		}
	}
}

// The table stands every 10 mm, or every half inch, from before the point to the mouth, the
// landmarks among them with their names; each place once; now is then and the change.
func TestHalfWidths(t *testing.T) {
	for u, step := range map[length.Unit]float64{length.Millimetres: 10, length.Inches: 12.7} {
		pair := corrected(t, 2, u)
		mouth := pair.IsPlan.Input.Sheath.Mouth.MM()
		tab := pair.HalfWidths(u)
		at, names := map[float64]bool{}, ""
		last := math.Inf(-1)
		for _, r := range tab.Rows {
			if len(r) != len(tab.Columns) {
				t.Fatalf("%q has %d columns of %d", r, len(r), len(tab.Columns))
			}
			l, err := length.Parse(r[0], u)
			if err != nil || l.MM() <= last {
				t.Errorf("%q follows %v", r[0], last)
			}
			last = l.MM()
			at[math.Round(l.MM())] = true
			names += r[7] + ";"
			checkChange(t, r[1:4], u)
			checkChange(t, r[4:7], u)
		}
		for x := step; x < mouth; x += step {
			if !at[math.Round(x)] && !at[math.Round(x)+1] && !at[math.Round(x)-1] {
				t.Errorf("in %v nothing stands at %v", u, x)
			}
		}
		if !at[math.Round(mouth)] || !strings.Contains(names, "point;") || !strings.Contains(names, "mouth;") || !strings.Contains(names, "deepest place;") {
			t.Errorf("in %v: %v, named %s", u, at, names)
		}
		if tab.Name != "half-widths, "+u.String() {
			t.Errorf("called %q", tab.Name)
		}
	}
}

// checkChange asks that now is then and the change, as far as they are shown.
func checkChange(t *testing.T, cells []string, u length.Unit) {
	t.Helper()
	if cells[0] == "" {
		return
	}
	var v [3]float64
	for i, c := range cells {
		l, err := length.Parse(strings.TrimPrefix(c, "+"), u)
		if err != nil {
			t.Fatal(err)
		}
		v[i] = l.MM()
	}
	// Each is rounded by half a step at most: of 0.05 mm, or of 1/64 in.
	if most := map[length.Unit]float64{length.Millimetres: 0.076, length.Inches: 0.6}[u]; math.Abs(v[0]+v[2]-v[1]) > most {
		t.Errorf("%q: then and the change are not now", cells)
	}
}

// In words: where it is wider and narrower at most; less than a calliper shows is nothing.
func TestMost(t *testing.T) {
	for _, c := range []struct {
		by   length.Length
		u    length.Unit
		want string
	}{
		{2, length.Millimetres, "2 mm wider a side at 60"}, {-1.5, length.Millimetres, "1.5 mm narrower a side at "},
		{3.175, length.Inches, "1/8 in wider a side at 2 3/8"}, {0.04, length.Millimetres, "the stitch lines are alike"}, {-0.04, length.Millimetres, "the stitch lines are alike"}, {0, length.Millimetres, "the stitch lines are alike"},
	} {
		if got := corrected(t, c.by, c.u).Most(c.u); !strings.HasPrefix(got, c.want) || strings.Contains(got, ";") {
			t.Errorf("by %v: %q, want %q", c.by, got, c.want)
		}
	}
	p := printed(knifeProject(), 0)
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 30, By: 1, Reach: 10}, With: "leather"}, {Fit: calc.Fit{At: 60, By: -1, Reach: 10}, With: "leather"}}
	Raise(&p)
	pair, err := Between(Of(p)[0], Of(p)[1], calc.DefaultLimits())
	if got := pair.Most(length.Millimetres); err != nil || !strings.HasPrefix(got, "1 mm wider a side at 30") || !strings.Contains(got, " mm narrower a side at ") {
		t.Errorf("wider and narrower: %q, %v", got, err)
	}
}

// What another program reads: the keys, figures in mm that agree with the table, null where a
// pattern has nothing or was not printed.
func TestPairJSON(t *testing.T) {
	pair := corrected(t, 2, length.Inches)
	data, err := pair.JSON()
	var got struct {
		Then, Now struct {
			Number   int
			Printed  *string
			Standing bool
		}
		HalfWidths []struct {
			At          float64
			Name        string
			Stitch, Cut *struct{ Then, Now, Change float64 }
		} `json:"half_widths"`
		Figures []struct{ Name, Then, Now, Unit string }
	}
	if err != nil || json.Unmarshal(data, &got) != nil {
		t.Fatalf("%s, %v", data, err)
	}
	if got.Then.Number != 1 || *got.Then.Printed != "2026-11-25" || got.Then.Standing || got.Now.Number != 2 || got.Now.Printed != nil || !got.Now.Standing {
		t.Errorf("then %+v, now %+v", got.Then, got.Now)
	}
	changes := map[float64]float64{60: 2, 50: 1, 70: 1, 30: 0}
	for _, h := range got.HalfWidths {
		if want, ok := changes[h.At]; ok {
			delete(changes, h.At)
			if h.Stitch == nil || h.Cut == nil || math.Abs(h.Stitch.Change-want) > 0.001 || math.Abs(h.Stitch.Now-h.Stitch.Then-h.Stitch.Change) > 0.0002 || h.Cut.Now <= h.Stitch.Now {
				t.Errorf("at %v: stitches %+v, cut %+v, want %v", h.At, h.Stitch, h.Cut, want)
			}
		}
	}
	if len(changes) > 0 || slices.IndexFunc(got.Figures, func(f struct{ Name, Then, Now, Unit string }) bool {
		return f.Name == "corrections" && f.Then == "0" && f.Now == "1"
	}) < 0 {
		t.Errorf("not found at %v; figures %+v", changes, got.Figures)
	}
	if n := len(pair.Tables(length.Millimetres)); n != 2 {
		t.Errorf("%d tables, want figures and half-widths", n)
	}
	same, err := Between(pair.Is, pair.Is, calc.DefaultLimits())
	if err != nil {
		t.Fatal(err)
	}
	if data, err := same.JSON(); err != nil || !strings.Contains(string(data), `"figures": []`) || len(same.Tables(length.Millimetres)) != 1 {
		t.Errorf("with itself %.200s, %v, %d tables", data, err, len(same.Tables(length.Millimetres)))
	}
}

// What one of the two has not is "none": without a loop there is no thread for it.
func TestFiguresThatOneHasNot(t *testing.T) {
	p := printed(knifeProject(), 0)
	p.Belt.Loop = calc.NoLoop
	Raise(&p)
	all := Of(p)
	for i, col := range []int{2, 1} { // then with, now without; and the other way round
		pair, err := Between(all[i], all[1-i], calc.DefaultLimits())
		if err != nil {
			t.Fatal(err)
		}
		row := find(pair.Figures(length.Millimetres), "thread for the loop")
		if row == nil || row[col] != "none" || row[3-col] == "none" {
			t.Errorf("thread for the loop: %q", row)
		}
		if n := pair.HalfWidths(length.Millimetres).Note; i == 1 && n != "along the fold; then, now; + where pattern "+strconv.Itoa(all[0].Number)+" is wider" {
			t.Errorf("note %q", n)
		}
	}
}

func find(t report.Table, name string) []string {
	for _, r := range t.Rows {
		if r[0] == name {
			return r
		}
	}
	return nil
}
