package calc

import (
	"chape/calc/curve"
)

// Part is one piece to be cut out.
type Part struct {
	Name      string     // "body", "welt", "strap"
	Outline   curve.Line // closed, mm, drawn with the grain side up; the body with its tab
	Holes     []Circle   // to be punched out of it: relief holes, drain
	Count     int        // how many of it are cut
	Thickness float64    // of the leather it is cut from, mm
}

// Parts are the pieces of the sheath as they are cut from the leather. The
// body's back half, with the tab, has y > 0; whoever lays the parts on leather
// mirrors it for the hand (BackIsRight).
func (p *Plan) Parts() []Part {
	sh := p.Input.Sheath
	plies := max(1, p.Welt.Plies)
	body := Part{Name: "body", Outline: p.Flat.Outline, Count: 1, Thickness: sh.Leather.MM()}
	body.Holes = append(body.Holes, p.Loop.Relief...)
	if p.Flat.Drain != nil {
		body.Holes = append(body.Holes, *p.Flat.Drain)
	}
	parts := []Part{body, {Name: "welt", Outline: p.Welt.Outline, Count: plies, Thickness: sh.Welt.MM() / float64(plies)}}
	if p.Strap != nil {
		parts = append(parts, Part{Name: "strap", Outline: p.Strap.Outline, Count: 1, Thickness: p.Input.Strap.Thickness.MM()})
	}
	return parts
}

// boxes is the area of the smallest rectangles round all parts, mm²: what they
// take side by side.
func (p *Plan) boxes() float64 {
	var sum float64
	for _, part := range p.Parts() {
		w, h := part.Outline.SmallestBox()
		sum += float64(part.Count) * w * h
	}
	return sum
}
