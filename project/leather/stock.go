package leather

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"chape/calc/bend"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project/money"
	"chape/project/value"
)

// Stock is all the leather there is, and how far apart parts are cut.
type Stock struct {
	Gap    length.Length // between two parts
	Pieces []Leather
	With   []string // files of projects that are cut from it together with the one in hand
}

// Leather is one piece. Places on it are mm from its lower left corner, grain side up.
type Leather struct {
	Name          string
	Thickness     length.Length
	Width, Height length.Length // of a rectangle; 0 where there are corners, or no piece to cut from
	Corners       curve.Line
	Flaws         []Flaw
	Fixed         bool    // the grain counts
	Grain         float64 // degrees from the lower edge
	Within        float64 // degrees that the fold may lie off it
	Neutral       bend.Neutral
	Stretch       bend.Stretch
	Stretched     bool // Stretch was measured
	Price         money.ByArea
	Aside         bool // not to be cut from for now
}

// Flaw is a place to keep off: round, or with corners.
type Flaw struct {
	At      curve.Vec
	Across  float64 // mm; 0: it has corners
	Corners curve.Line
}

// The ranges of what a piece is.
const (
	mostGap       = 50
	mostThickness = 20
	mostSide      = 6000
	mostPieces    = 200
	mostFlaws     = 100
	mostCorners   = 500
	mostName      = 60
)

// DefaultGap is how far apart parts are cut, mm: common practice, no source.
const DefaultGap length.Length = 3

// New is a piece to begin with.
func New(name string) Leather {
	return Leather{Name: name, Thickness: 3.2, Width: 300, Height: 200, Within: 15}
}

// Empty is the stock of somebody who has said nothing.
func Empty() Stock { return Stock{Gap: DefaultGap} }

// Clone is a copy that shares nothing with s.
func (s Stock) Clone() Stock {
	s.With = slices.Clone(s.With)
	s.Pieces = slices.Clone(s.Pieces)
	for i, l := range s.Pieces {
		s.Pieces[i].Corners = slices.Clone(l.Corners)
		s.Pieces[i].Flaws = slices.Clone(l.Flaws)
		for j, f := range l.Flaws {
			s.Pieces[i].Flaws[j].Corners = slices.Clone(f.Corners)
		}
	}
	return s
}

// Find is the place of the leather of a name; -1: there is none.
func (s Stock) Find(name string) int {
	return slices.IndexFunc(s.Pieces, func(l Leather) bool { return l.Name == name })
}

// Take takes a project's file along, or not any more.
func (s *Stock) Take(path string) {
	if i := slices.Index(s.With, path); i >= 0 {
		s.With = slices.Delete(s.With, i, i+1)
		return
	}
	s.With = append(s.With, path)
}

// Chosen are the pieces to be cut from: those with a size that are not put aside.
func (s Stock) Chosen() []Leather {
	var out []Leather
	for _, l := range s.Pieces {
		if l.Sized() && !l.Aside {
			out = append(out, l)
		}
	}
	return out
}

// Free is a name that no piece has: the one given, or with a number behind it, cut where it
// would be too long.
func (s Stock) Free(name string) string {
	free, letters := name, []rune(name)
	for i := 2; s.Find(free) >= 0; i++ {
		number := fmt.Sprintf(" %d", i)
		free = string(letters[:min(len(letters), mostName-len(number))]) + number
	}
	return free
}

// Sized tells whether there is a piece to cut from, not only a hide's figures.
func (l Leather) Sized() bool { return len(l.Corners) > 0 || l.Width > 0 && l.Height > 0 }

// Bent tells whether the hide's bend was measured.
func (l Leather) Bent() bool { return l.Neutral.Of > 0 }

// Outline is the piece's edge, mm.
func (l Leather) Outline() curve.Line {
	if len(l.Corners) > 0 {
		return l.Corners
	}
	return nest.Rect(l.Width.MM(), l.Height.MM())
}

// Bounds is its size, mm.
func (l Leather) Bounds() (w, h float64) {
	lo, hi := l.Outline().Bounds()
	return hi.X - lo.X, hi.Y - lo.Y
}

// Outline is the flaw's edge, mm.
func (f Flaw) Outline() curve.Line {
	if f.Across > 0 {
		return nest.Round(f.At, f.Across/2)
	}
	return f.Corners
}

// Piece is the leather as a search takes it.
func (l Leather) Piece() nest.Piece {
	p := nest.Piece{Name: l.Name, Outline: l.Outline(), Thickness: l.Thickness.MM(), Fixed: l.Fixed,
		Grain: l.Grain * math.Pi / 180, Within: l.Within * math.Pi / 180}
	for _, f := range l.Flaws {
		p.Flaws = append(p.Flaws, f.Outline())
	}
	return p
}

// ReadFlaw reads a flaw: three figures are a round one, its middle and how far it is
// across; places of two figures with ";" between them are its corners.
func ReadFlaw(text string, u length.Unit) (Flaw, error) {
	if figures := strings.Fields(text); len(figures) == 3 && !strings.Contains(text, ";") {
		var v [3]float64
		for i, f := range figures {
			l, err := length.Parse(f, u)
			if err != nil {
				return Flaw{}, err
			}
			v[i] = l.MM()
		}
		if !(v[2] > 0) {
			return Flaw{}, fmt.Errorf("a flaw %s across: give more than 0", length.Length(v[2]).Format(u, length.Ruler))
		}
		return Flaw{At: curve.Vec{X: v[0], Y: v[1]}, Across: v[2]}, nil
	}
	corners, err := value.Pairs(text, u)
	if err == nil && len(corners) < 3 {
		middle, more := "120 80 30", "0 0; 30 0; 30 40"
		if u == length.Inches {
			middle, more = "4 10-1/2 1", "0 0; 1 0; 1 1-1/2"
		}
		err = fmt.Errorf("a flaw is its middle and how far across, as in %s, or three corners and more: %s", middle, more)
	}
	return Flaw{Corners: corners}, err
}

// LiesOff tells whether a flaw lies beside a piece.
func (f Flaw) LiesOff(l Leather) bool {
	lo, hi := l.Outline().Bounds()
	from, to := f.Outline().Bounds()
	return to.X < lo.X || to.Y < lo.Y || from.X > hi.X || from.Y > hi.Y
}

// ReadFlaw reads a flaw of the piece. One that lies off it is a slip of the hand: nothing
// would keep off what it stands for.
func (l Leather) ReadFlaw(text string, u length.Unit) (Flaw, error) {
	f, err := ReadFlaw(text, u)
	if err == nil && l.Sized() && f.LiesOff(l) {
		lo, hi := l.Outline().Bounds()
		say := func(v float64) string { return length.Length(v).Format(u, length.Ruler) }
		err = fmt.Errorf("that lies off the leather, from %s, %s to %s, %s: measure from where its edge was measured", say(lo.X), say(lo.Y), say(hi.X), say(hi.Y))
	}
	return f, err
}

// Say is the text that ReadFlaw reads.
func (f Flaw) Say(u length.Unit) string {
	if f.Across > 0 {
		return value.SayPairs([]curve.Vec{f.At}, u) + " " + strings.ReplaceAll(length.Length(f.Across).Short(u), " ", "-")
	}
	return value.SayPairs(f.Corners, u)
}

// Add takes one more fold of the same hide together with those before.
func (l *Leather) Add(n bend.Neutral) {
	of := float64(l.Neutral.Of)
	sum := math.Hypot(l.Neutral.Plus*of, n.Plus)
	l.Neutral = bend.Neutral{K: (l.Neutral.K*of + n.K) / (of + 1), Plus: sum / (of + 1), Of: l.Neutral.Of + 1}
}
