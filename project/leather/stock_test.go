package leather

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"chape/calc/bend"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/money"
	"chape/project/store"
)

const rackOf = `gap = 4
with = ["field-knife.toml"]
[[leather]]
name = "offcut"
thickness = "8 oz"
corners = "0 20; 300 -10; 420 60; 410 330; 120 380; 10 250"
flaws = ["330 300 30", "20 40; 60 40; 40 90"]
grain = 10
within = 20
neutral = 0.47
neutral_plus = 0.04
strips = 4
stretch_wet = 0.12
stretch_kept = 0.07
stretch_plus = 0.007
price_m2 = "92.50"
aside = true
[[leather]]
name = "shoulder"
thickness = 3.2
width = "12 in"
height = 200
`

func TestDecode(t *testing.T) {
	s, err := Decode("leather.toml", []byte(rackOf))
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Pieces) != 2 || s.Gap != 4 {
		t.Fatalf("read %+v", s)
	}
	if c := s.Chosen(); !reflect.DeepEqual(s.With, []string{"field-knife.toml"}) || len(c) != 1 || c[0].Name != "shoulder" {
		t.Errorf("with %v, cut from %+v", s.With, c)
	}
	a, b := s.Pieces[0], s.Pieces[1]
	if a.Thickness != 3.175 || len(a.Corners) != 6 || len(a.Flaws) != 2 || a.Flaws[0].Across != 30 || !a.Fixed || a.Grain != 10 || a.Within != 20 ||
		a.Neutral != (bend.Neutral{K: 0.47, Plus: 0.04, Of: 4}) || !a.Stretched || a.Stretch.Wet != 0.12 ||
		a.Price != (money.ByArea{M2: "92.50"}) {
		t.Errorf("offcut %+v", a)
	}
	if math.Abs(b.Width.MM()-304.8) > 1e-9 || b.Height != 200 || b.Fixed || b.Bent() || b.Within != 15 {
		t.Errorf("shoulder %+v", b)
	}
	again, err := Decode("again", Encode(s))
	if err != nil || !reflect.DeepEqual(again, s) {
		t.Errorf("written\n%s\nread %+v, %v", Encode(s), again, err)
	}
	if e, err := Decode("x", Encode(Empty())); err != nil || e.Gap != DefaultGap || len(e.Pieces) != 0 {
		t.Errorf("empty: %+v, %v", e, err)
	}
}

func TestDecodeRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"gap = ":    "leather.toml:1: ",
		"gap = nan": "gap: found NaN mm: give 0 to 50 mm",
		"[[leather]]\nname = \"a\"\nthickness = 3\nprice_m2 = \"dear\"":                 "price: found \"dear\": write an amount as in 92.50",
		"[[leather]]\nname = \"a\"\nthickness = 3\nprice_m2 = \"9\"\nprice_ft2 = \"9\"": "give one of the two",
		"with = 3":                   "leather.toml: ",
		"gap = true":                 "write a number of millimetres",
		"[[leather]]\ncolour = 1":    "\"leather.colour\": found a key this program does not know",
		"[[leather]]\nthickness = 3": "without a name",
		"[[leather]]\nname = \"a\"":  "thickness: found 0 mm: give 0.2 to 20 mm",
		"[[leather]]\nname = 3":      "leather.toml: ",
		"[[leather]]\nname = \"a\"\nthickness = 3\nwidth = 90000\nheight = 2":                   "sides of up to 6000 mm",
		"[[leather]]\nname = \"a\"\nthickness = 3\nwidth = 3\ncorners = \"0 0; 9 0; 0 9\"":      "give one of the two",
		"[[leather]]\nname = \"a\"\nthickness = 3\ncorners = \"0 0; 90 0\"":                     "3 to ",
		"[[leather]]\nname = \"a\"\nthickness = 3\ncorners = \"0 0; 90 0; 10 90; 90 70\"":       "crosses itself",
		"[[leather]]\nname = \"a\"\nthickness = 3\ncorners = \"0 0; 90\"":                       "corners: \"90\" is no place",
		"[[leather]]\nname = \"a\"\nthickness = 3\nwidth = 9\nheight = 9\nflaws = [\"3\"]":      "flaw 1: \"3\" is no place",
		"[[leather]]\nname = \"a\"\nthickness = 3\nwidth = 9\nheight = 9\nflaws = [\"3 3 -1\"]": "more than 0",
		"[[leather]]\nname = \"a\"\nthickness = 3\nneutral = 7":                                 "neutral: found 7",
		"[[leather]]\nname = \"a\"\nthickness = 3\nstretch_wet = 0.1\nstretch_kept = 0.2":       "dry no more than wet",
		"[[leather]]\nname = \"a\"\nthickness = 3\n[[leather]]\nname = \"a\"\nthickness = 3":    "a name that another has",
	} {
		_, err := Decode("leather.toml", []byte(text))
		if err == nil || !strings.Contains(err.Error(), want) || strings.ContainsAny(err.Error(), "\n\x1b") {
			t.Errorf("%q:\n got  %v\n want %s", text, err, want)
		}
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(rackOf))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := Decode("x", data)
		if err != nil {
			return
		}
		if again, err := Decode("again", Encode(s)); err != nil || len(again.Pieces) != len(s.Pieces) {
			t.Errorf("%q becomes\n%s\n%v", data, Encode(s), err)
		}
	})
}

func TestFlaws(t *testing.T) {
	f, err := ReadFlaw("1 2 1/2", length.Inches)
	if err != nil || f.At.Dist(curve.Vec{X: 25.4, Y: 50.8}) > 1e-9 || math.Abs(f.Across-12.7) > 1e-9 {
		t.Errorf("a round flaw in inches: %+v, %v", f, err)
	}
	if g, err := ReadFlaw(f.Say(length.Inches), length.Inches); err != nil || g.At.Dist(f.At) > 1e-9 || g.Across != f.Across {
		t.Errorf("%q is read as %+v, %v", f.Say(length.Inches), g, err)
	}
	if a := math.Abs(f.Outline().Area()); a < math.Pi*6.35*6.35 || a > 1.02*math.Pi*6.35*6.35 {
		t.Errorf("its outline encloses %v mm²", a)
	}
}

// Four strips by hand: their mean, and half the doubt of one.
func TestAddFolds(t *testing.T) {
	var l Leather
	for _, legs := range [][2]float64{{67.5, 67.5}, {66, 67.5}, {67, 66.5}, {67, 66.5}} {
		n, err := bend.Fold{Strip: 150, LegA: legs[0], LegB: legs[1], Bar: 6, Leather: 3.2}.Neutral()
		if err != nil {
			t.Fatal(err)
		}
		l.Add(n)
	}
	// (15+16.5+16.5+16.5)/4 = 16.125; /π − 3, over 3.2.
	want := (16.125/math.Pi - 3) / 3.2
	if l.Neutral.Of != 4 || math.Abs(l.Neutral.K-want) > 1e-9 || math.Abs(l.Neutral.Plus-0.086145/2) > 1e-6 {
		t.Errorf("four strips: %+v, want %v ± %v", l.Neutral, want, 0.086145/2)
	}
}

// The file is made where there is none, kept, read again; what another program made of it
// meanwhile is left.
func TestFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "chape", Name)
	f := &File{FS: store.OSLockingIn(""), Path: path}
	s, err := f.Read()
	if err != nil || len(s.Pieces) != 0 {
		t.Fatalf("without a file: %+v, %v", s, err)
	}
	s.Pieces = append(s.Pieces, New("shoulder"))
	if err := f.Keep(s); err != nil {
		t.Fatal(err)
	}
	other := &File{FS: store.OSLockingIn(""), Path: path}
	if got, err := other.Read(); err != nil || !reflect.DeepEqual(got, s) {
		t.Errorf("read again: %+v, %v", got, err)
	}
	s.Pieces[0].Thickness = 99
	if err := f.Keep(s); err == nil {
		t.Error("leather 99 mm thick is kept")
	}
	theirs := []byte("gap = 7\n")
	if err := os.WriteFile(path, theirs, 0o600); err != nil {
		t.Fatal(err)
	}
	s.Pieces[0].Thickness = 3
	if err := f.Keep(s); err == nil || !strings.Contains(err.Error(), "changed by another program") {
		t.Errorf("over another's change: %v", err)
	}
	if got, _ := os.ReadFile(path); string(got) != string(theirs) {
		t.Errorf("their file is now %q", got)
	}
}
