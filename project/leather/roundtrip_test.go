package leather

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
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

// tenths is a random figure of tenths.
func tenths(r *rand.Rand, most int) float64 { return float64(r.IntN(most*10)) / 10 }

// ring is a random outline round a middle: a star without knots.
func ring(r *rand.Rand, x, y, least, more float64) curve.Line {
	n := 3 + r.IntN(9)
	var l curve.Line
	for i := range n {
		a, d := 2*math.Pi*float64(i)/float64(n), least+r.Float64()*more
		l = append(l, curve.Vec{X: math.Round((x+d*math.Cos(a))*1e4) / 1e4, Y: math.Round((y+d*math.Sin(a))*1e4) / 1e4})
	}
	return l
}

// anyStock is random leather of every making.
func anyStock(r *rand.Rand) Stock {
	s := Stock{Gap: length.Length(tenths(r, 50))}
	for i := range r.IntN(4) {
		s.With = append(s.With, fmt.Sprintf("knife \"%d\"\n.toml", i))
	}
	for i := range r.IntN(5) {
		l := Leather{Name: fmt.Sprintf("né %d \\ \x1b %c", i, rune('a'+i)), Thickness: length.Length(0.2 + tenths(r, 19)), Within: tenths(r, 90), Aside: r.IntN(2) == 0}
		switch r.IntN(3) {
		case 0:
			l.Corners = ring(r, 300, 300, 80, 200)
			l.Flaws = append(l.Flaws, Flaw{At: curve.Vec{X: 300, Y: 310}, Across: 1 + tenths(r, 30)}, Flaw{Corners: ring(r, 300, 300, 5, 20)})
		case 1:
			l.Width, l.Height = length.Length(10+tenths(r, 900)), length.Length(10+tenths(r, 900))
		}
		if r.IntN(2) == 0 {
			l.Fixed, l.Grain = true, tenths(r, 720)-360
		}
		if r.IntN(2) == 0 {
			l.Neutral = bend.Neutral{K: r.Float64(), Plus: r.Float64() / 10, Of: 1 + r.IntN(9)}
		}
		if r.IntN(2) == 0 {
			wet := r.Float64()
			l.Stretch, l.Stretched = bend.Stretch{Wet: wet, Kept: wet * r.Float64(), Plus: r.Float64() / 10}, true
		}
		l.Price = []money.ByArea{{}, {M2: "92.50"}, {Ft2: "0.1"}}[r.IntN(3)]
		s.Pieces = append(s.Pieces, l)
	}
	return s
}

// Whatever leather there is, written and read again it is the same; and written once more not
// a letter differs.
func TestStockRoundTrip(t *testing.T) {
	r := rand.New(rand.NewPCG(20, 26))
	for n := range 150 {
		s := anyStock(r)
		if err := s.Validate(); err != nil {
			t.Fatalf("stock %d: %v", n, err)
		}
		data := Encode(s)
		got, err := Decode("x", data)
		if err != nil || !reflect.DeepEqual(got, s) {
			t.Fatalf("stock %d: %v\n%+v\nwritten as\n%s\nread\n%+v", n, err, s, data, got)
		}
		if again := string(Encode(got)); again != string(data) {
			t.Fatalf("stock %d is written as\n%s\nand then as\n%s", n, data, again)
		}
	}
}

// Keys without which there is a default: a stretch without what is kept, a bend of one strip.
func TestDefaultsOfKeys(t *testing.T) {
	const row = "[[leather]]\nname = \"a\"\nthickness = 3\n"
	for text, want := range map[string]Leather{
		"":                          {},
		"neutral = 0.4":             {Neutral: bend.Neutral{K: 0.4, Of: 1}},
		"neutral = 0.4\nstrips = 0": {Neutral: bend.Neutral{K: 0.4, Of: 1}},
		"stretch_wet = 0.1":         {Stretch: bend.Stretch{Wet: 0.1}, Stretched: true},
		"grain = 0":                 {Fixed: true},
		"width = \"1 1/2 in\"":      {Width: 38.1},
		"price_ft2 = \"7\"":         {Price: money.ByArea{Ft2: "7"}},
	} {
		want.Name, want.Thickness, want.Within = "a", 3, 15
		s, err := Decode("x", []byte(row+text))
		if err != nil || len(s.Pieces) != 1 || !reflect.DeepEqual(s.Pieces[0], want) || s.Gap != DefaultGap {
			t.Errorf("%q: %+v, %v, want %+v", text, s, err, want)
		}
	}
}

// A flaw as it is typed; what is none is refused with both ways to write it.
func TestReadFlaw(t *testing.T) {
	for text, want := range map[string]Flaw{
		"120 80 30":             {At: curve.Vec{X: 120, Y: 80}, Across: 30},
		" -5\t0 0,5 ":           {At: curve.Vec{X: -5, Y: 0}, Across: 0.5},
		"0 0; 30 0; 30 40":      {Corners: curve.Line{{X: 0, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 40}}},
		"0 0; 30 0; 30 40; 0 9": {Corners: curve.Line{{X: 0, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 40}, {X: 0, Y: 9}}},
	} {
		got, err := ReadFlaw(text, length.Millimetres)
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%q: %+v, %v, want %+v", text, got, err, want)
		}
		if back, err := ReadFlaw(got.Say(length.Millimetres), length.Millimetres); err != nil || !reflect.DeepEqual(back, want) {
			t.Errorf("%q is said as %q and read as %+v, %v", text, got.Say(length.Millimetres), back, err)
		}
	}
	for text, want := range map[string]string{
		"": "three corners and more", "1 2": "three corners and more", "0 0; 30 0": "as in 120 80 30", "1 2 3 4": "is no place", "1 2 0": "give more than 0", "1 2 -3": "give more than 0",
		"1 2 x": "is not a length", "1 2 NaN": "is not a length", "1 2 3; 4 5": "is no place",
	} {
		if _, err := ReadFlaw(text, length.Millimetres); !refused(err, want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// A file that can't be read is never written over, not by the emptiness that reading it gave.
func TestTornFileIsLeft(t *testing.T) {
	for _, text := range []string{"gap = ", "gap = 99", "[[leather]]\nname = \"a\"\nthickness = 3\ncolour = 1\n", "\xff", "\x00"} {
		path := filepath.Join(t.TempDir(), Name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		f := &File{FS: store.OS(), Path: path}
		if _, err := f.Read(); !refused(err, Name) || err == nil {
			t.Errorf("%q is read: %v", text, err)
		}
		if err := f.Keep(Stock{Pieces: []Leather{New("a")}}); !refused(err, "changed by another program") || err == nil {
			t.Errorf("%q is written over: %v", text, err)
		}
		if got, err := os.ReadFile(path); err != nil || string(got) != text {
			t.Errorf("%q is now %q, %v", text, got, err)
		}
	}
}

// Kept nowhere it is kept for this time only; what would make a file that nobody can read is
// not written; a folder that can't be made is said.
func TestKeep(t *testing.T) {
	nowhere := &File{}
	if s, err := nowhere.Read(); err != nil || !reflect.DeepEqual(s, Empty()) || nowhere.Keep(Stock{Pieces: []Leather{New("a")}}) != nil {
		t.Errorf("nowhere: %+v, %v", s, err)
	}
	dir := t.TempDir()
	f := &File{FS: store.OS(), Path: filepath.Join(dir, Name)}
	if err := f.Keep(Stock{With: []string{"\xff.toml"}}); !refused(err, "write it as UTF-8") {
		t.Errorf("a name that is no text: %v", err)
	}
	if _, err := os.Stat(f.Path); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("there is a file: %v", err)
	}
	for i := range 3 {
		if err := f.Keep(Stock{Gap: length.Length(i + 1)}); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := f.Read(); err != nil || got.Gap != 3 {
		t.Errorf("kept three times it is %+v, %v", got, err)
	}
	under := &File{FS: store.OS(), Path: filepath.Join(f.Path, "chape", Name)}
	if err := under.Keep(Empty()); err == nil || !strings.Contains(err.Error(), "can't be made") {
		t.Errorf("a folder below a file: %v", err)
	}
}
