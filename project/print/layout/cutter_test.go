package layout

import (
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/nest"
	"chape/project/leather"
	"chape/project/print/svg"
)

// square is a closed outline with a corner at a place.
func square(at curve.Vec, side float64) curve.Line {
	return curve.Line{at, at.Add(curve.Vec{X: side}), at.Add(curve.Vec{X: side, Y: side}), at.Add(curve.Vec{Y: side})}
}

// A placing for a cutter has the part where it lies to be cut, and, unless only what is cut
// is wanted, the leather with its flaw to lay it by.
func TestPlacingForCutter(t *testing.T) {
	l := leather.Laid{
		Task: nest.Task{Parts: []nest.Part{{Name: "welt", Outline: square(curve.Vec{}, 30), Count: 1}},
			Pieces: []nest.Piece{{Name: "shoulder", Outline: square(curve.Vec{}, 200), Flaws: []curve.Line{square(curve.Vec{X: 150, Y: 150}, 10)}}}},
		Result: nest.Result{Placements: []nest.Placement{{At: curve.Vec{X: 40, Y: 50}}}, Uses: []nest.Use{{}}},
		Whose:  []string{"a knife"}, Folds: make([]curve.Line, 1),
	}
	all := string(SVG(l, l.Result.Uses[0], "T", svg.Look{}))
	for _, want := range []string{`<g id="cut"`, `M40 -50L70 -50L70 -80L40 -80Z`, `<g id="marks"`, `M0 0L200 0L200 -200L0 -200Z`, `M150 -150`} {
		if !strings.Contains(all, want) {
			t.Errorf("the placing has no %q:\n%s", want, all)
		}
	}
	if bare := string(SVG(l, l.Result.Uses[0], "T", svg.Look{Bare: true})); !strings.Contains(bare, `M40 -50L70`) || strings.Contains(bare, `M0 0L200`) || strings.Contains(bare, "<text") {
		t.Errorf("only what is cut:\n%s", bare)
	}
}
