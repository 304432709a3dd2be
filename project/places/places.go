// Package places names the places along the fold that a maker can find again by
// eye, on the knife and on what was folded round it: the marks and the landmarks.
package places

import (
	"fmt"
	"math"
	"strings"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
)

// Place is one place along the fold.
type Place struct {
	At    float64 // mm from the point
	Name  string  // "bolster, back face"; "" where only marks stand
	Marks []int   // the numbers of the marks that stand there, from 1
}

// Said is the place in words: "bolster, back face (marks 8, 9)".
func (p Place) Said() string {
	var numbers []string
	for _, n := range p.Marks {
		numbers = append(numbers, fmt.Sprint(n))
	}
	marks := "mark " + strings.Join(numbers, ", ")
	if len(numbers) > 1 {
		marks = "marks " + strings.Join(numbers, ", ")
	}
	switch {
	case len(numbers) == 0:
		return p.Name
	case p.Name == "":
		return marks
	}
	return p.Name + " (" + marks + ")"
}

// one is how near two places count as one, mm: a pencil mark is no finer.
const one = 0.25

// Of gives the places from the point to the mouth, ascending; where several meet they
// are one. Without marks that make a knife there are none.
func Of(p project.Project) []Place {
	in := p.Input(calc.Limits{})
	landmarks, err := in.Landmarks()
	if err != nil {
		return nil
	}
	var all []Place
	at := func(x float64) *Place {
		i := 0
		for i < len(all) && all[i].At < x-one {
			i++
		}
		if i == len(all) || all[i].At > x+one {
			all = append(all[:i], append([]Place{{At: x}}, all[i:]...)...)
		}
		return &all[i]
	}
	mouth := in.Sheath.Mouth.MM()
	names := namesOf(p)
	for _, l := range landmarks {
		name := names(l)
		if l.At > mouth+one {
			continue
		}
		if q := at(l.At); q.Name == "" {
			q.Name = name
		} else {
			q.Name += ", " + name
		}
	}
	for i, s := range p.Knife.Stations {
		if x := s.At.MM(); x <= mouth+one {
			q := at(x)
			q.Marks = append(q.Marks, i+1)
		}
	}
	return all
}

// What stands before the handle begins and ends at these.
const frontFace, backFace = ", front face", ", back face"

// namesOf names landmarks, one after the other along the knife: what stands in front of
// the handle is called what the maker called it, where that is known.
func namesOf(p project.Project) func(calc.Landmark) string {
	front := ""
	if p.Source == project.FromOutline && p.Outline.Front != knife.NoFront {
		front = p.Outline.Front.String()
	}
	begun, steps := false, 0
	return func(l calc.Landmark) string {
		switch l.Kind {
		case calc.FrontMark:
			begun = true
			if front != "" {
				return front + frontFace
			}
		case calc.StepMark:
			if begun {
				steps++
			}
			if begun && steps == 1 && front != "" {
				return front + backFace
			}
		}
		return l.Kind.String()
	}
}

// At is the place at x, or where x lies between two: "between deepest place (mark 6)
// and bolster, front face (marks 7, 8)".
func At(all []Place, x float64) string {
	for i, p := range all {
		switch {
		case math.Abs(p.At-x) <= one:
			return p.Said()
		case p.At > x && i == 0:
			return "before the " + p.Said()
		case p.At > x:
			return "between " + all[i-1].Said() + " and " + p.Said()
		}
	}
	if len(all) == 0 {
		return ""
	}
	return "past the " + all[len(all)-1].Said()
}

// Figure is a place along the fold as a ruler shows it, without the unit: "110", "4 11/32".
func Figure(x float64, u length.Unit) string {
	return strings.TrimSuffix(length.Length(x).Figure(u, length.Ruler), ".0")
}

// On is where x lies on the knife, in as few words as will do: "over the bolster", "at the
// mouth"; else as At says it.
func On(all []Place, x float64) string {
	for i, p := range all {
		front, ok := strings.CutSuffix(p.Name, frontFace)
		for j := i + 1; ok && j < len(all); j++ {
			if all[j].Name == front+backFace && x >= p.At-one && x <= all[j].At+one {
				return "over the " + front
			}
		}
		if p.Name != "" && math.Abs(p.At-x) <= one {
			return "at the " + p.Name
		}
	}
	return At(all, x)
}

// Next is the place after x, or before it where by is below 0; x itself where there is
// none.
func Next(all []Place, x float64, by int) float64 {
	if by > 0 {
		for _, p := range all {
			if p.At > x+one {
				return p.At
			}
		}
		return x
	}
	for i := len(all) - 1; i >= 0; i-- {
		if all[i].At < x-one {
			return all[i].At
		}
	}
	return x
}
