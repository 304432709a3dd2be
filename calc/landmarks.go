package calc

import (
	"cmp"
	"math"
	"slices"

	"chape/calc/knife"
)

// LandmarkKind says what stands at a landmark.
type LandmarkKind uint8

// The landmarks, in the order in which they are told at one place.
const (
	PointMark   LandmarkKind = iota
	DeepestMark              // the blade's deepest place
	FrontMark                // where the handle begins: bolster, guard or grip
	StepMark                 // any other place where two marks stand together
	SwellMark                // where the handle is thickest
	MouthMark
	EndMark // the butt
)

// String names the landmark in plain words.
func (k LandmarkKind) String() string {
	return [...]string{"point", "deepest place", "front of the handle", "step", "swell", "mouth", "butt"}[k]
}

// Landmark is a place along the fold that can be found on the knife by eye.
type Landmark struct {
	Kind LandmarkKind
	At   float64 // mm from the point
}

// Landmarks are the places of a knife and its sheath that can be found again by
// eye: for sheets that are laid together, corrections and words. Ascending; what
// the knife does not have is left out, so a bar has no front and no swell. The
// error is that of the marks (knife.NewProfile). The mouth is left out where it
// is 0.
func (in Input) Landmarks() ([]Landmark, error) {
	k, err := knife.NewProfile(in.Knife)
	if err != nil {
		return nil, err
	}
	all := []Landmark{{PointMark, 0}, {EndMark, k.Length()}}
	if m := in.Sheath.Mouth.MM(); m > 0 {
		all = append(all, Landmark{MouthMark, m})
	}
	front, has := k.HandleFront()
	if has {
		all = append(all, Landmark{FrontMark, front})
	}
	for _, x := range k.Steps() {
		if !has || math.Abs(x-front) > tie {
			all = append(all, Landmark{StepMark, x})
		}
	}
	if at, has := swell(k); has {
		all = append(all, Landmark{SwellMark, at})
	}
	all = append(all, Landmark{DeepestMark, deepestBlade(k)})
	slices.SortFunc(all, func(a, b Landmark) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.Kind, b.Kind))
	})
	return all, nil
}

// deepestBlade is the first place where the blade (all of a thing without one)
// is deepest, found to the spacing of the curves.
func deepestBlade(k *knife.Profile) (at float64) {
	depth := 0.0
	var buf []knife.Section
	look := func(x float64) {
		buf = k.Sections(buf[:0], x)
		for _, sec := range buf {
			if !sec.Handle && sec.Depth() > depth+tie {
				depth, at = sec.Depth(), x
			}
		}
	}
	n := int(math.Ceil(k.Length() / spacing))
	for i := 0; i <= n; i++ {
		look(k.Length() * float64(i) / float64(n))
	}
	for _, x := range k.Marks() { // a mark is the better word for the place
		look(x)
	}
	return at
}

// swell is the first place where the handle is thickest.
func swell(k *knife.Profile) (at float64, has bool) {
	thick := 0.0
	var buf []knife.Section
	for _, x := range k.Marks() { // the thickness is monotone in between
		buf = k.Sections(buf[:0], x)
		for _, sec := range buf {
			if sec.Handle && sec.Thick > thick+tie {
				thick, at, has = sec.Thick, x, true
			}
		}
	}
	return at, has
}
