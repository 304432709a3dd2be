package leather

import (
	"fmt"
	"math"
	"strconv"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
)

// Verdict says in a line whether everything fits.
func (l Laid) Verdict() string {
	placed, all := len(l.Result.Placements), l.Copies()
	s := fmt.Sprintf("%d parts have their place", all)
	switch {
	case placed == 0:
		return "nothing fits"
	case all == 1:
		s = "the part has its place"
	case !l.Result.Fits():
		s = fmt.Sprintf("only %d of %d parts fit", placed, all)
	}
	return s + ", yield " + percent(l.Result.Yield()) + l.broken()
}

func (l Laid) broken() string {
	if l.Result.Stopped {
		return "; broken off, the best so far"
	}
	return ""
}

// Missing says what found no room, and why, a line each.
func (l Laid) Missing(u length.Unit) []string {
	var out []string
	for _, m := range l.Result.Missing {
		p := l.Task.Parts[m.Part]
		why := "no room"
		if m.Thickness {
			why = "no piece is " + length.Length(p.Thickness).Format(u, length.Calliper) + " thick"
		}
		out = append(out, fmt.Sprintf("missing: %s%s, %s", l.Part(m.Part), times(m.Count), why))
	}
	return out
}

// Used says what becomes of a piece, in a line.
func (l Laid) Used(use nest.Use, u length.Unit) string {
	w, h := use.Hi.X-use.Lo.X, use.Hi.Y-use.Lo.Y
	return fmt.Sprintf("%s: a rectangle of %s × %s is used, %s of it becomes parts", l.Task.Pieces[use.Piece].Name,
		length.Length(w).Format(u, length.Ruler), length.Length(h).Format(u, length.Ruler), percent(use.Yield()))
}

func times(n int) string {
	if n == 1 {
		return ""
	}
	return fmt.Sprintf(" × %d", n)
}

func percent(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }

// Where says how a part lies, by the two ends of its fold or of the middle of its length,
// counted from the lower left corner of the upright rectangle round the piece.
func (l Laid) Where(p nest.Placement, u length.Unit) string {
	lo, _ := l.Task.Pieces[p.Piece].Outline.Bounds()
	by := "middle"
	if l.Folds[p.Part] != nil {
		by = "fold"
	}
	figure := func(mm float64) string { return length.Length(mm).Figure(u, length.Ruler) }
	ends := p.Put(l.Axis(p.Part))
	say := func(v curve.Vec) string { return figure(v.X-lo.X) + ", " + figure(v.Y-lo.Y) }
	turned := ""
	if p.Turned {
		turned = "; grain side down"
	}
	return fmt.Sprintf("%s: %s from %s to %s; turned by %s°%s", l.Part(p.Part), by, say(ends[0]), say(ends[1]), degrees(p.Angle), turned)
}

// degrees is an angle of radians as 0 to under 360, to a tenth: over the length of a strap a
// fifth of a degree is a millimetre.
func degrees(angle float64) string {
	tenths := math.Round(angle * 1800 / math.Pi)
	return strconv.FormatFloat(math.Mod(math.Mod(tenths, 3600)+3600, 3600)/10, 'f', -1, 64)
}

// Size is a piece in words: "3.2 mm, 420 mm × 390 mm, odd, 1 flaw, fold within 15° of 90°".
func (l Leather) Size(u length.Unit) string {
	s := l.Thickness.Format(u, length.Calliper)
	if !l.Sized() {
		return s + ", no size given: for its bend and stretch alone"
	}
	w, h := l.Bounds()
	s += ", " + length.Length(w).Format(u, length.Ruler) + " × " + length.Length(h).Format(u, length.Ruler)
	if len(l.Corners) > 0 {
		s += fmt.Sprintf(", %d corners", len(l.Corners))
	}
	switch len(l.Flaws) {
	case 0:
	case 1:
		s += ", 1 flaw"
	default:
		s += fmt.Sprintf(", %d flaws", len(l.Flaws))
	}
	if l.Fixed {
		s += fmt.Sprintf(", fold within %.0f° of %.0f°", l.Within, l.Grain)
	}
	return s
}
