package leather

import (
	"math"
	"slices"
	"strings"
	"testing"
	"unicode"

	"chape/calc/bend"
	"chape/calc/curve"
	"chape/calc/length"
)

// odd is a piece of five corners with a round flaw and one with corners.
func odd() Leather {
	l := New("offcut")
	l.Corners = curve.Line{{X: 0, Y: 20}, {X: 300, Y: -10}, {X: 420, Y: 60}, {X: 400, Y: 330}, {X: 10, Y: 250}}
	l.Width, l.Height = 0, 0
	l.Flaws = []Flaw{{At: curve.Vec{X: 200, Y: 150}, Across: 30}, {Corners: curve.Line{{X: 50, Y: 60}, {X: 80, Y: 60}, {X: 50, Y: 100}}}}
	return l
}

// refused tells whether an error is the one wanted, in one harmless line.
func refused(err error, want string) bool {
	if want == "" || err == nil {
		return (err == nil) == (want == "")
	}
	return strings.Contains(err.Error(), want) && !strings.ContainsFunc(err.Error(), unicode.IsControl)
}

// Every figure of a piece just in and just out of its range.
func TestPieceAtItsBounds(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	sized := func(p func(*Leather) *length.Length) func(*Leather, float64) {
		return func(l *Leather, v float64) { *p(l) = length.Length(v) }
	}
	thick := sized(func(l *Leather) *length.Length { return &l.Thickness })
	width, height := sized(func(l *Leather) *length.Length { return &l.Width }), sized(func(l *Leather) *length.Length { return &l.Height })
	bent := func(k, plus float64) func(*Leather, float64) {
		return func(l *Leather, v float64) { l.Neutral = bend.Neutral{K: k + v, Plus: plus, Of: 2} }
	}
	gives := func(l *Leather, v float64) {
		l.Stretch, l.Stretched = bend.Stretch{Wet: 0.5, Kept: v, Plus: 0.01}, true
	}
	for _, c := range []struct {
		what    string
		set     func(*Leather, float64)
		in, out []float64
		want    string
	}{
		{"thickness", thick, []float64{0.2, 20, 3.2}, []float64{0.19999, 20.0001, 0, -1, nan, inf}, "give 0.2 to 20 mm"},
		{"width", width, []float64{6000, 1, 0}, []float64{6000.001, -0.001, nan, inf, -inf}, "give sides of up to 6000 mm, or corners"},
		{"height", height, []float64{6000, 1, 0}, []float64{6000.001, -0.001, nan, inf}, "give sides of up to 6000 mm, or corners"},
		{"grain", func(l *Leather, v float64) { l.Fixed, l.Grain = true, v }, []float64{-360, 360, 0}, []float64{-360.001, 361, nan, inf}, "give an angle in degrees"},
		{"within", func(l *Leather, v float64) { l.Within = v }, []float64{0, 90, 15}, []float64{-0.001, 90.001, nan, inf}, "give 0 to 90 degrees"},
		{"neutral", bent(0, 0.05), []float64{0, 1, 0.5}, []float64{-0.001, 1.001, nan, inf}, "give 0 to 1 of the thickness"},
		{"its doubt", func(l *Leather, v float64) { bent(0.5, v)(l, 0) }, []float64{0, 1}, []float64{-0.001, 1.001, nan}, "give 0 to 1 of the thickness"},
		{"strips", func(l *Leather, v float64) { l.Neutral.Of = int(v) }, []float64{0, 1000}, []float64{-1, 1001}, "neutral: found"},
		{"stretch", gives, []float64{0, 0.5, 0.2}, []float64{-0.001, 0.501, nan, inf}, "dry no more than wet"},
	} {
		for _, v := range c.in {
			l := New("x")
			if c.set(&l, v); l.Validate() != nil {
				t.Errorf("%s of %v: %v", c.what, v, l.Validate())
			}
		}
		for _, v := range c.out {
			l := New("x")
			if c.set(&l, v); !refused(l.Validate(), c.want) {
				t.Errorf("%s of %v: %v, want %q", c.what, v, l.Validate(), c.want)
			}
		}
	}
}

// What a piece is called and how much of it there is; names may hold anything that a file can.
func TestPieceRefused(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*Leather)
		want   string
	}{
		{"odd", func(*Leather) {}, ""},
		{"a name of 60 letters", func(l *Leather) { l.Name = strings.Repeat("é", 60) }, ""},
		{"one letter more", func(l *Leather) { l.Name = strings.Repeat("é", 61) }, "name: found 61 letters: give at most 60"},
		{"blanks", func(l *Leather) { l.Name = " \t" }, "a leather without a name: give it one"},
		{"no text", func(l *Leather) { l.Name = "\xff" }, "write it as UTF-8"},
		{"100 flaws", func(l *Leather) { l.Flaws = slices.Repeat(l.Flaws[:1], 100) }, ""},
		{"101 flaws", func(l *Leather) { l.Flaws = slices.Repeat(l.Flaws[:1], 101) }, "flaws: found 101: give at most 100"},
		{"501 corners", func(l *Leather) { l.Corners = slices.Repeat(l.Corners, 101)[:501] }, "corners: found 501: give 3 to 500"},
		{"two corners", func(l *Leather) { l.Corners = l.Corners[:2] }, "corners: found 2: give 3 to 500"},
		{"a knot", func(l *Leather) { l.Corners[1], l.Corners[2] = l.Corners[2], l.Corners[1] }, "crosses itself"},
		{"corners of nothing", func(l *Leather) { l.Corners[1].X = math.NaN() }, "mm"},
		{"a flaw of two corners", func(l *Leather) { l.Flaws[1].Corners = l.Flaws[1].Corners[:2] }, "flaw 2: an outline of 2 corners"},
		{"both prices", func(l *Leather) { l.Price.M2, l.Price.Ft2 = "9", "8" }, "price: found both, \"9\" and \"8\": by the square metre and by the square foot: give one of the two"},
		{"a price in words", func(l *Leather) { l.Price.Ft2 = "d\x1bear" }, "price: found \"d\\x1bear\": write an amount as in 92.50"},
	} {
		l := odd()
		if c.change(&l); !refused(l.Validate(), c.want) {
			t.Errorf("%s: %v, want %q", c.what, l.Validate(), c.want)
		}
	}
}

// The stock as a whole: the gap, how many, each name once; which leather it is, is said.
func TestStockRefused(t *testing.T) {
	many := func(n int) (ls []Leather) {
		for range n {
			ls = append(ls, New(Stock{Pieces: ls}.Free("x")))
		}
		return ls
	}
	for _, c := range []struct {
		what string
		s    Stock
		want string
	}{
		{"none", Empty(), ""}, {"no gap", Stock{}, ""}, {"gap 50", Stock{Gap: 50}, ""},
		{"gap 50.01", Stock{Gap: 50.01}, "gap: found 50.01 mm: give 0 to 50 mm"}, {"gap -1", Stock{Gap: -1}, "gap: found -1 mm"}, {"gap NaN", Stock{Gap: length.Length(math.NaN())}, "gap: found NaN mm"},
		{"200 pieces", Stock{Pieces: many(200)}, ""}, {"201 pieces", Stock{Pieces: many(201)}, "leather: found 201 pieces: give at most 200"},
		{"201 projects", Stock{With: make([]string, 201)}, "with: found 201 projects: give at most 200"},
		{"a file's name that is no text", Stock{With: []string{"a.toml", "b\xff.toml"}}, "write it as UTF-8"},
		{"a name twice", Stock{Pieces: []Leather{New("a"), New("b"), New("a")}}, `leather 3, "a": a name that another has: give each its own`},
		{"the second too thick", Stock{Pieces: []Leather{New("a"), {Name: "b\n", Thickness: 99}}}, `leather 2, "b\n": thickness: found 99 mm: give 0.2 to 20 mm`},
	} {
		if !refused(c.s.Validate(), c.want) {
			t.Errorf("%s: %v, want %q", c.what, c.s.Validate(), c.want)
		}
	}
}

// A free name is one that nobody has, and will do, however long the first was.
func TestFree(t *testing.T) {
	s := Stock{Pieces: []Leather{New("offcut"), New("offcut 2"), New("offcut 4"), New(strings.Repeat("é", 60))}}
	for name, want := range map[string]string{"shoulder": "shoulder", "offcut": "offcut 3", "offcut 4": "offcut 4 2", strings.Repeat("é", 60): strings.Repeat("é", 58) + " 2"} {
		got := s.Free(name)
		if l := New(got); got != want || s.Find(got) >= 0 || l.Validate() != nil {
			t.Errorf("free of %q is %q, want %q", name, got, want)
		}
	}
}

// A copy shares nothing: what undo goes back to is as it was.
func TestCloneSharesNothing(t *testing.T) {
	s := Stock{Gap: 3, Pieces: []Leather{odd(), New("b")}, With: []string{"a.toml", "b.toml"}}
	before := string(Encode(s))
	c := s.Clone()
	c.Pieces[0].Corners[0].X, c.Pieces[0].Flaws[0].Across, c.Pieces[1].Name = 77, 77, "other"
	c.Pieces[0].Corners = append(c.Pieces[0].Corners, curve.Vec{X: 1, Y: 1})
	c.Take("a.toml")
	c.Gap = 9
	if after := string(Encode(s)); after != before {
		t.Errorf("it was\n%s\nand is\n%s", before, after)
	}
	if got := c.With; !slices.Equal(got, []string{"b.toml"}) {
		t.Errorf("with %q", got)
	}
	if c.Take("c.toml"); !slices.Equal(c.With, []string{"b.toml", "c.toml"}) {
		t.Errorf("with %q", c.With)
	}
	flaw := &c.Pieces[0].Flaws[1].Corners[0]
	if flaw.X = 66; s.Pieces[0].Flaws[1].Corners[0].X == 66 {
		t.Error("the corners of a flaw are shared")
	}
}

// To be cut from are the pieces with a size that are not put aside.
func TestChosen(t *testing.T) {
	aside, bare, flat := New("aside"), Leather{Name: "bare", Thickness: 3}, New("flat")
	aside.Aside, flat.Height = true, 0
	s := Stock{Pieces: []Leather{New("a"), aside, bare, flat, odd()}}
	var names []string
	for _, l := range s.Chosen() {
		names = append(names, l.Name)
	}
	if !slices.Equal(names, []string{"a", "offcut"}) || s.Find("flat") != 3 || s.Find("none") != -1 {
		t.Errorf("chosen %q; flat is %d, none is %d", names, s.Find("flat"), s.Find("none"))
	}
}

// A quote mark that is missing is named, and what would do.
func TestQuoteMissing(t *testing.T) {
	for text, line := range map[string]string{"[[leather]]\nname = \"Side A\nthick = 3.2\n": "2", "[[leather]]\nname = \"Side A": "2"} {
		_, err := Decode("leather.toml", []byte(text))
		if want := "leather.toml:" + line + ": found a text that does not end: close it with the quote it began with"; err == nil || err.Error() != want {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}
