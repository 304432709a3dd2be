package calc

import (
	"math"

	"chape/calc/curve"
)

// tabLength is the leather past the mouth for a folded loop: up from the
// mouth, over the belt, down to the stitch row, and the lap past it.
func tabLength(b Belt, sh Sheath) float64 {
	return b.rise() + b.turn(sh) + b.fall() + b.Lap.MM()
}

// halfBelt is the inside radius of the turn over the belt.
func (b Belt) halfBelt() float64 { return b.Thickness.MM() / 2 }

// height is the loop's inside height, from its stitch row to the top.
func (b Belt) height() float64 { return (b.Width + b.Ease).MM() }

// rise is the straight part from the mouth up to the turn.
func (b Belt) rise() float64 { return b.height() - b.Row.MM() - b.halfBelt() }

// turn is the neutral fibre's way round the belt.
func (b Belt) turn(sh Sheath) float64 {
	return Bend(math.Pi, b.halfBelt(), sh.Leather.MM(), sh.Neutral)
}

// fall is the straight part from the turn down to the stitch row.
func (b Belt) fall() float64 { return b.height() - b.halfBelt() }

// secondRow is how far below the first the loop's second stitch row lies,
// where the lap is at least lapForTwo, mm.
const (
	secondRow = 12
	lapForTwo = 16
)

// makeLoop lays out the tab, its relief holes and its stitches.
func (p *Plan) makeLoop() Loop {
	b, sh, s := p.Input.Belt, p.Input.Sheath, p.at
	tab := b.Tab.MM()
	l := Loop{Offset: b.Offset.MM(), Stack: 2 * sh.Leather.MM()}
	if b.Centred {
		l.Offset = (p.Body.MouthStitch - tab) / 2
	}
	l.Start = s.mouthX(l.Offset + tab/2)
	l.Bends = []float64{b.rise(), b.rise() + b.turn(sh)}

	r := math.Max(sh.Leather.MM(), 3) / 2
	for _, y := range []float64{l.Offset - r, l.Offset + tab + r} {
		l.Relief = append(l.Relief, Circle{curve.Vec{X: s.mouthX(y), Y: y}, 2 * r})
	}

	rows := 1
	if b.Lap >= lapForTwo {
		rows = 2
	}
	for i := range rows {
		down := b.Row.MM() + secondRow*float64(i)
		l.RowX = append(l.RowX, l.Start-down)
		l.LapX = append(l.LapX, l.Start+tabLength(b, sh)-b.Lap.MM()+secondRow*float64(i))
	}
	p.sewLoop(&l)
	return l
}

// sewLoop puts whole stitches of the seam's pitch into each row, with margins
// of a pitch or more at both sides. Each row is sewn with a thread of its own.
// A tab too narrow for one stitch has no holes; the check on the tab says so.
func (p *Plan) sewLoop(l *Loop) {
	st, tab := p.Input.Stitch, p.Input.Belt.Tab.MM()
	pitch := st.Pitch.MM()
	n := math.Floor((tab-2*pitch)/pitch + 1e-9)
	if n < 1 || n > maxStitches {
		return
	}
	l.Rows, l.Stitches = len(l.RowX), int(n)
	l.Holes = l.Rows * (l.Stitches + 1)
	first := l.Offset + (tab-n*pitch)/2
	for i := range l.Rows {
		for k := 0; k <= l.Stitches; k++ {
			y := first + float64(k)*pitch
			l.Body = append(l.Body, curve.Vec{X: l.RowX[i], Y: y})
			l.Lap = append(l.Lap, curve.Vec{X: l.LapX[i], Y: y})
		}
	}
	row := (1+st.Waste)*2*strand(l.Stitches, l.Stitches+1, st.Back, pitch, l.Stack) + 2*st.Tail.MM()
	l.Thread = float64(l.Rows) * row
}
