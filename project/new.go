package project

import (
	"math"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
)

// Blank is a project with every default and no knife.
func Blank() Project {
	var p Project
	for _, c := range scalars {
		c.set(&p, c.def)
	}
	return p
}

// Defaults is what a new project starts from: our own middling drop point
// with a bolster and an oval handle, to be typed over, and the defaults of
// every field. It is a project that can be planned.
func Defaults() Project {
	p := Blank()
	p.Source, p.Untouched = FromOutline, asNew
	if err := p.FillMarks(); err != nil {
		panic("the outline of a new project: " + err.Error())
	}
	p.Sheath.Mouth = p.ProposedMouth()
	return p
}

// New is a project that starts from defaults: Defaults, or what the user made
// of them, in round figures of the unit. It shares nothing with defaults.
func New(title string, units length.Unit, defaults Project) Project {
	p := defaults.Clone()
	p.Title, p.Revision = title, 1
	p.BeginIn(units)
	return p
}

// FillMarks puts the marks that the outline gives in place of those there are. The error
// is a Problem, and the marks stay.
func (p *Project) FillMarks() error {
	stations, err := p.Outline.Stations()
	if err != nil {
		return misfit(err, p.Units)
	}
	p.Knife.Stations = stations
	return nil
}

// refill makes the marks follow the outline, where they come from it. While
// the mouth stands where ProposeMouth put it, it follows too.
func (p *Project) refill() error {
	if p.Source != FromOutline {
		return nil
	}
	proposed := p.Sheath.Mouth == p.ProposedMouth()
	if err := p.FillMarks(); err != nil {
		return err
	}
	if proposed {
		p.Sheath.Mouth = p.ProposedMouth()
	}
	return nil
}

// leastHeld is the handle that must be left to hold, mm: common practice, no
// source.
const leastHeld = 50

// ProposeMouth is where the mouth goes unless the maker knows better: over the
// bolster, half the handle and its fattest part, with at least 50 mm left to hold,
// but never short of the blade; just before a guard that stands proud of the back,
// since that would hold the fold off. Whole millimetres; 0 without marks.
func ProposeMouth(k knife.Knife) length.Length {
	end := k.Length()
	s := k.Stations
	blade, handle := 0, 0 // the first marks of what follows the blade, and of the handle
	var fat knife.Station // the first where that is thickest
	for i := range s {
		if s[i].Kind == knife.Blade {
			continue
		}
		if blade == 0 {
			blade = i
		}
		if i > 0 && s[i].At == s[i-1].At {
			handle = i
		}
		if s[i].Thick > fat.Thick {
			fat = s[i]
		}
	}
	if blade == 0 || s[blade].At == 0 {
		return downToWhole(end * 0.75)
	}
	if s[blade].At == s[blade-1].At && s[blade-1].Top-s[blade].Top > calc.DefaultLimits().HeldOff {
		return downToWhole(s[blade].At - 1)
	}
	from := s[max(blade, handle)].At
	past := length.Length(math.Ceil(float64(max(from+(end-from)/2, fat.At))))
	if end-past >= leastHeld {
		return past
	}
	return max(downToWhole(min(past, end-leastHeld)), min(downToWhole(s[blade].At), downToWhole(end)))
}

// downToWhole rounds down to whole millimetres, but not to nothing.
func downToWhole(l length.Length) length.Length {
	if l < 1 {
		return l
	}
	return length.Length(math.Floor(float64(l)))
}
