// Package carry takes corrections from one knife to the next, by the landmarks of both.
package carry

import (
	"fmt"
	"math"

	"chape/calc"
	"chape/calc/compare"
	"chape/calc/length"
	"chape/project"
	"chape/project/plain"
)

// Along takes corrections of another knife along to be offered, with words on where they
// come from. The error is that of the other knife's marks.
func Along(fits []project.Fit, from project.Project, words string) ([]project.Carried, error) {
	m, err := compare.MarksOf(from.Knife, from.Sheath.Mouth)
	if err != nil {
		return nil, err
	}
	var out []project.Carried
	for _, f := range fits {
		out = append(out, project.Carried{Fit: f, From: words, Deepest: length.Length(m.Deepest), Front: length.Length(m.Front), Mouth: length.Length(m.Mouth)})
	}
	return out, nil
}

// Placed is a correction at its place on the knife of p, by the landmarks of both.
func Placed(c project.Carried, p project.Project) (project.Fit, error) {
	to, err := compare.MarksOf(p.Knife, p.Sheath.Mouth)
	if err != nil {
		return project.Fit{}, err
	}
	from := compare.Marks{Deepest: c.Deepest.MM(), Front: c.Front.MM(), Mouth: c.Mouth.MM()}
	f := c.Fit
	f.Fit = compare.Carry(calc.Fit{At: f.At, By: f.By, Reach: f.Reach}, from, to)
	f.At, f.Reach = ruled(f.At, p.Units), ruled(f.Reach, p.Units)
	return f, nil
}

// ruled rounds to what a ruler shows: 0.5 mm, or 1/32 in.
func ruled(l length.Length, u length.Unit) length.Length {
	parts, each := 2.0, length.Millimetre
	if u == length.Inches {
		parts, each = 32, length.Inch
	}
	return length.Length(math.Round(parts*float64(l/each)))*each/length.Length(parts) + 0 // no -0
}

// Experience is what finished sheaths tend to need, as corrections to be offered for p,
// region by region; none where they tend to need none. The error is that of p's marks.
func Experience(past []compare.Tried, p project.Project) ([]project.Carried, error) {
	m, err := compare.MarksOf(p.Knife, p.Sheath.Mouth)
	if err != nil {
		return nil, err
	}
	of := "from " + plain.Many(len(past), "finished sheath") + " of " + p.Sheath.Leather.Format(p.Units, length.Calliper)
	var out []project.Carried
	for _, h := range compare.Habits(past) {
		f, ok := h.Offer(m)
		if !ok {
			continue
		}
		note := fmt.Sprintf("median of %d, %d had one, %s", h.Of, h.With, h.Region)
		f.At, f.Reach = ruled(f.At, p.Units), ruled(f.Reach, p.Units)
		out = append(out, project.Carried{Fit: project.Fit{Fit: f, With: "leather", Note: note}, From: of, Deepest: length.Length(m.Deepest), Front: length.Length(m.Front), Mouth: length.Length(m.Mouth)})
	}
	return out, nil
}
