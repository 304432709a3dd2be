package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/project/print/letters"
)

// flow is pages of 194 by 281 mm, A4 without its rim, with so many columns.
func flow(cols int) *Flow {
	return NewFlow(194, 281, "Work card", cols, func(size, width float64) string { return letters.Fit("Garden knife · pattern 3", size, width, false) })
}

// onPages looks for words and lines that leave the page or their column, or stand on others.
func onPages(t *testing.T, name string, f *Flow) {
	t.Helper()
	for n, p := range f.Pages {
		texts := p.Drawing.Texts
		for i, w := range texts {
			b := w.Box()
			if b.Lo.X < -0.01 || b.Hi.X > 194.01 || b.Lo.Y < -0.01 || b.Hi.Y > 281-PageNumber+0.01 {
				t.Errorf("%s, page %d: %q stands at %v", name, n+1, w.Says, b)
			}
			for _, o := range texts[:i] {
				if a, c := b.Grow(-0.45), o.Box().Grow(-0.45); a.meets(c) {
					t.Errorf("%s, page %d: %q stands on %q at %v", name, n+1, w.Says, o.Says, w.At)
				}
			}
		}
		if b := p.Drawing.Bounds(); b.Lo.X < 0.1 || b.Hi.X > 193.9 {
			t.Errorf("%s, page %d: lines reach from %v to %v", name, n+1, b.Lo.X, b.Hi.X)
		}
	}
}

// said is the words of a page in the order in which they were written.
func said(p Page) []string {
	var out []string
	for _, w := range p.Drawing.Texts {
		out = append(out, w.Says)
	}
	return out
}

// A page has as many columns as leave each 85 mm, with 8 mm between them.
func TestColumns(t *testing.T) {
	for _, c := range []struct {
		wide       float64
		cols, want int
	}{{194, 1, 1}, {194, 2, 2}, {194, 3, 2}, {177, 2, 1}, {178, 2, 2}, {281, 3, 3}, {132, 2, 1}} {
		f := NewFlow(c.wide, 281, "x", c.cols, func(float64, float64) string { return "" })
		if f.cols != c.want || math.Abs(f.Width*float64(c.want)+8*float64(c.want-1)-c.wide) > 1e-9 {
			t.Errorf("%v mm, up to %d columns: %d of %.1f mm", c.wide, c.cols, f.cols, f.Width)
		}
	}
}

// Each page has its name at the left of its head and what tells the print at the right; from
// the second on its number.
func TestHeads(t *testing.T) {
	f := flow(2)
	for range 5 {
		f.Need(250)
		f.Y += 250
	}
	if len(f.Pages) != 3 {
		t.Fatalf("%d pages for five columns", len(f.Pages))
	}
	for i, p := range f.Pages {
		want := "Work card"
		if i > 0 {
			want = fmt.Sprintf("Work card, page %d", i+1)
		}
		got := said(p)
		if p.Name != want || got[0] != want || got[1] != "Garden knife · pattern 3" {
			t.Errorf("page %d is %q and says %q", i+1, p.Name, got)
		}
		a, b, line := p.Drawing.Texts[0], p.Drawing.Texts[1], p.Drawing.Paths[0].Pts
		if a.At.Y != b.At.Y || a.At.X != 0 || b.At.X != 194 || b.Anchor != End || line[0].Y < a.At.Y+0.25*a.Size || line[0].Y > f.Top {
			t.Errorf("page %d: the head stands at %v and %v, over a line at %v", i+1, a.At, b.At, line)
		}
	}
	long := NewFlow(194, 281, strings.Repeat("Parts on a piece of leather ", 9), 1, func(size, width float64) string { return letters.Fit(strings.Repeat("W", 300), size, width, false) })
	onPages(t, "long names", long)
}

// Room is made in the next column first, then on the next page; what fits to the last
// millimetre stays, and nothing is moved that need not be.
func TestNeed(t *testing.T) {
	f := flow(2)
	if f.X() != 0 || f.Y != 8 {
		t.Errorf("begins at %v, %v", f.X(), f.Y)
	}
	room := f.H - 1 - f.Y
	f.Need(room)
	if f.X() != 0 {
		t.Error("what fits was moved")
	}
	f.Gap(100)
	f.Need(room - 100)
	f.Need(room - 99.9)
	if f.X() != f.Width+gutter || f.Y != f.Top || len(f.Pages) != 1 {
		t.Errorf("0.1 mm more stands at %v, %v on page %d", f.X(), f.Y, len(f.Pages))
	}
	f.Gap(200)
	f.Need(100)
	if f.X() != 0 || f.Y != 8 || len(f.Pages) != 2 {
		t.Errorf("100 mm more stand at %v, %v on page %d", f.X(), f.Y, len(f.Pages))
	}
}

// Whatever is written stays on its page and in its column, every word of it, in its order.
func TestWritingStaysOnThePage(t *testing.T) {
	for _, cols := range []int{1, 2} {
		f := flow(cols)
		var want []string
		for i := range 120 {
			s := fmt.Sprintf("number %d of many, %s end%d", i, strings.Repeat("with words ", i%23), i)
			want = append(want, strings.Fields(s)...)
			switch i % 4 {
			case 0:
				f.Heading(fmt.Sprintf("heading %d", i))
				want = append(want[:len(want)-len(strings.Fields(s))], "heading", fmt.Sprint(i))
			case 1:
				f.Para(s, 2.7, 4)
			case 2:
				f.Bold(s, 3)
			default:
				f.Item("–", s)
				want = append(want, "–")
			}
		}
		if len(f.Pages) < 2 {
			t.Fatalf("%d pages: this test shows nothing", len(f.Pages))
		}
		onPages(t, fmt.Sprintf("%d columns", cols), f)
		count := map[string]int{}
		for _, w := range want {
			count[w]++
		}
		for _, p := range f.Pages {
			for _, s := range said(p)[2:] {
				for _, w := range strings.Fields(s) {
					count[w]--
				}
			}
		}
		for w, n := range count {
			if n != 0 {
				t.Errorf("%d columns: %q is written %d times too few", cols, w, n)
			}
		}
	}
}

// A heading stands over a line and never alone at the foot of a column; one that is too long
// is cut.
func TestHeading(t *testing.T) {
	f := flow(2)
	f.Gap(f.H - 1 - f.Y - 15)
	f.Heading("figures")
	if f.X() == 0 || f.Y > 20 {
		t.Errorf("with 15 mm left a heading stands at %v, %v", f.X(), f.Y)
	}
	texts, lines := f.Page().Texts, f.Page().Paths
	word, line := texts[len(texts)-1], lines[len(lines)-1].Pts
	if !word.Bold || line[0].Y < word.At.Y || line[0].Y > word.At.Y+2 || line.Length() < f.Width-1 || math.Abs(line[0].X-f.X()) > 0.5 {
		t.Errorf("%+v over %v", word, line)
	}
	f.Heading(strings.Repeat("long ", 60))
	onPages(t, "a long heading", f)
}

// A title takes as many lines as it may; of one that needs more the last ends in an ellipsis.
func TestBig(t *testing.T) {
	for _, c := range []struct {
		title string
		most  int
		want  int
		cut   bool
	}{{"Garden knife", 2, 1, false}, {strings.Repeat("long knife ", 8), 3, 2, false}, {strings.Repeat("long knife ", 60), 2, 2, true}, {strings.Repeat("W", 300), 3, 3, true}} {
		f := flow(1)
		at := f.Y
		f.Big(c.title, c.most)
		lines := said(f.Pages[0])[2:]
		if len(lines) != c.want || strings.HasSuffix(lines[len(lines)-1], "…") != c.cut || f.Y <= at {
			t.Errorf("%.20q: %q", c.title, lines)
		}
		onPages(t, c.title, f)
	}
}

// Words are put at an indent of their column, by their beginning, middle or end.
func TestPut(t *testing.T) {
	f := flow(2)
	f.Need(1000)
	f.Need(1000) // the second column of the second page
	f.Need(1000)
	f.Put(10, "x", 3, true, End)
	w := f.Page().Texts[len(f.Page().Texts)-1]
	if w.At != (curve.Vec{X: f.X() + 10, Y: f.Y + 3}) || w.Anchor != End || !w.Bold || w.Size != 3 || f.X() != f.Width+8 {
		t.Errorf("%+v", w)
	}
}
