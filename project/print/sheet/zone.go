package sheet

import (
	"math"
	"slices"

	"chape/calc/curve"
	"chape/project/print/letters"
)

// Zone is a part of a drawing that has words in the middle of it, once on
// each sheet that it reaches.
type Zone struct {
	Area  Box
	Words []string // one below the other, the first large
	// Guides are lines that words may run along instead, one after the other, as on a
	// piece too narrow for a block of them: those of the guide on which most find room.
	Guides []curve.Line
}

// Put sets the words of each zone where the sheet has room for them.
func (d *Drawing) Put(zones []Zone, sheet Box) {
	for _, z := range zones {
		in := Box{curve.Vec{X: math.Max(z.Area.Lo.X, sheet.Lo.X), Y: math.Max(z.Area.Lo.Y, sheet.Lo.Y)},
			curve.Vec{X: math.Min(z.Area.Hi.X, sheet.Hi.X), Y: math.Min(z.Area.Hi.Y, sheet.Hi.Y)}}
		if in.Width() <= 0 || in.Height() <= 0 {
			continue
		}
		if len(z.Guides) > 0 {
			d.Texts = append(d.Texts, z.strung(in, d.taken(0.5), d.Paths)...)
		} else {
			d.blocks(in, z.Words, true)
		}
	}
}

// blocks sets words below each other or, where they don't all fit in one place, in two
// or more.
func (d *Drawing) blocks(in Box, words []string, first bool) {
	taken := d.taken(0.5)
	fits := func(t Text) bool { return free(t.Box(), in, taken) && !t.Crossed(d.Paths) }
	if block := placed(in, words, first, fits); block != nil || len(words) < 2 {
		d.Texts = append(d.Texts, block...)
		return
	}
	half := (len(words) + 1) / 2
	d.blocks(in, words[:half], first)
	d.blocks(in, words[half:], false)
}

// taken is the room that words and circles take, with so much round them.
func (d *Drawing) taken(round float64) []Box {
	var out []Box
	for _, t := range d.Texts {
		out = append(out, t.Box().Grow(round))
	}
	for _, c := range d.Circles {
		out = append(out, c.box().Grow(round))
	}
	return out
}

// placed is the words where all of them fit: as near to the middle as may be, turned
// if they must be; none where there is no such place.
func placed(in Box, words []string, first bool, fits func(Text) bool) []Text {
	for _, angle := range []float64{0, math.Pi / 2} {
		for _, along := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
			for _, down := range []float64{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9} {
				block := block(words, first, in.Lo.Add(curve.Vec{X: along * in.Width(), Y: down * in.Height()}), angle)
				if !slices.ContainsFunc(block, func(t Text) bool { return !fits(t) }) {
					return block
				}
			}
		}
	}
	return nil
}

// block is words below each other, about a place, the first large.
func block(words []string, first bool, at curve.Vec, angle float64) []Text {
	const line = 3.6
	sin, cos := math.Sincos(angle)
	down := curve.Vec{X: sin, Y: cos}
	at = at.Add(down.Mul(1 - line*float64(len(words)-1)/2))
	var out []Text
	for i, s := range words {
		t := Text{Layer: WordLayer, At: at, Says: letters.Printable(s), Size: WordSize, Anchor: Middle, Angle: angle}
		if i == 0 && first {
			t.Size, t.Bold = 4, true
		}
		out = append(out, t)
		at = at.Add(down.Mul(line))
	}
	return out
}

// strung is the words along that of the guides that has room for most of them.
func (z Zone) strung(in Box, taken []Box, lines []Path) []Text {
	var best []Text
	for _, g := range z.Guides {
		for _, p := range (Path{Pts: g}).Clip(in) {
			if got := stringed(p.Pts, z.Words, in, taken, lines); len(got) > len(best) {
				best = got
			}
		}
	}
	return best
}

// stringed sets words along a line, each where the line is straight enough and free.
func stringed(guide curve.Line, words []string, in Box, taken []Box, lines []Path) []Text {
	const step, between, bow = 1.0, 4.0, 0.35
	long := guide.Length()
	at := 1.0
	var out []Text
	for i, s := range words {
		s = letters.Printable(s)
		w := letters.Width(s, i == 0) * WordSize
		for from := at; from+w <= long; from += step {
			a, mid, b := along(guide, from), along(guide, from+w/2), along(guide, from+w)
			if a.Dist(b) < 0.97*w || toSegment(mid, a, b) > bow {
				continue
			}
			d := b.Sub(a).Mul(1 / a.Dist(b))
			if d.X < -0.3 { // not upside down
				d = d.Mul(-1)
			}
			t := running(s, d, a.Add(b).Mul(0.5))
			t.Bold = i == 0
			if free(t.Box(), in, taken) && !t.Crossed(lines) {
				out = append(out, t)
				at = from + w + between
				break
			}
		}
	}
	return out
}
