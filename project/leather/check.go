package leather

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"chape/calc/nest"
	"chape/project/plain"
)

// Validate tells whether the stock can be kept and used. The error is one line that
// says which leather, and what would do.
func (s Stock) Validate() error {
	switch {
	case !within(float64(s.Gap), 0, mostGap):
		return fmt.Errorf("gap: found %v mm: give 0 to %d mm", s.Gap.MM(), mostGap)
	case len(s.Pieces) > mostPieces:
		return fmt.Errorf("leather: found %d pieces: give at most %d", len(s.Pieces), mostPieces)
	}
	if len(s.With) > mostPieces {
		return fmt.Errorf("with: found %d projects: give at most %d", len(s.With), mostPieces)
	}
	for _, path := range s.With {
		if !utf8.ValidString(path) { // written, it would make a file that nobody can read
			return fmt.Errorf("with: found %s: write it as UTF-8: rename that file", plain.Quote(path))
		}
	}
	for i, l := range s.Pieces {
		if err := l.Validate(); err != nil {
			return fmt.Errorf("leather %d, %s: %w", i+1, plain.Quote(l.Name), err)
		}
		if s.Find(l.Name) < i {
			return fmt.Errorf("leather %d, %s: a name that another has: give each its own", i+1, plain.Quote(l.Name))
		}
	}
	return nil
}

// Validate tells whether the piece will do.
func (l Leather) Validate() error {
	switch {
	case strings.TrimSpace(l.Name) == "":
		return fmt.Errorf("a leather without a name: give it one")
	case !utf8.ValidString(l.Name):
		return fmt.Errorf("name: found %s: write it as UTF-8", plain.Quote(l.Name))
	case len([]rune(l.Name)) > mostName:
		return fmt.Errorf("name: found %d letters: give at most %d", len([]rune(l.Name)), mostName)
	case !within(l.Thickness.MM(), 0.2, mostThickness):
		return fmt.Errorf("thickness: found %v mm: give 0.2 to %d mm", l.Thickness.MM(), mostThickness)
	case len(l.Flaws) > mostFlaws:
		return fmt.Errorf("flaws: found %d: give at most %d", len(l.Flaws), mostFlaws)
	case !within(l.Grain, -360, 360):
		return fmt.Errorf("grain: found %v: give an angle in degrees, 0 along the lower edge", l.Grain)
	case !within(l.Within, 0, 90):
		return fmt.Errorf("within: found %v: give 0 to 90 degrees", l.Within)
	}
	if err := l.checkEdge(); err != nil {
		return err
	}
	if _, _, err := l.Price.Amount(); err != nil {
		return fmt.Errorf("price: found %s: %w", l.Price.Found(), err)
	}
	n, s := l.Neutral, l.Stretch
	switch {
	case l.Neutral.Of < 0 || l.Neutral.Of > 1000 || l.Bent() && !(within(n.K, 0, 1) && within(n.Plus, 0, 1)):
		return fmt.Errorf("neutral: found %.3g ± %.3g of %d strips: give 0 to 1 of the thickness", n.K, n.Plus, n.Of)
	case l.Stretched && !(within(s.Wet, 0, 1) && within(s.Kept, 0, 1) && within(s.Plus, 0, 1) && s.Kept <= s.Wet):
		return fmt.Errorf("stretch: found %.3g wet, %.3g dry: give shares of 0 to 1, dry no more than wet", s.Wet, s.Kept)
	}
	return nil
}

// checkEdge looks at the edge of the piece and at its flaws.
func (l Leather) checkEdge() error {
	if n := len(l.Corners); n > mostCorners || n == 1 || n == 2 {
		return fmt.Errorf("corners: found %d: give 3 to %d", n, mostCorners)
	}
	if len(l.Corners) == 0 {
		if !within(l.Width.MM(), 0, mostSide) || !within(l.Height.MM(), 0, mostSide) {
			return fmt.Errorf("found %v by %v mm: give sides of up to %d mm, or corners", l.Width.MM(), l.Height.MM(), mostSide)
		}
		if !l.Sized() {
			return nil // a hide's figures alone
		}
	}
	err := nest.Task{Pieces: []nest.Piece{l.Piece()}}.Validate()
	if err == nil {
		return nil
	}
	_, text, _ := strings.Cut(err.Error(), fmt.Sprintf("%q", l.Name)) // it is named already
	return fmt.Errorf("%s", strings.TrimLeft(text, ":, "))
}

// within tells whether a figure is one from least to most.
func within(v, least, most float64) bool { return !math.IsNaN(v) && v >= least && v <= most }
