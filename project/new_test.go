package project

import (
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
)

// The form's own proposal never draws a remark about its mouth, whatever point,
// front and sizes are chosen, unless the knife is too short for it. Before a proud
// guard the one remark is that a strap is needed.
func TestProposedMouthIsFine(t *testing.T) {
	base := Defaults()
	for _, point := range knife.Points {
		for _, front := range knife.Fronts {
			for _, frontDepth := range []length.Length{26, 34.2, 44, 60} {
				for _, handle := range []length.Length{60, 84.5, 101, 113.7, 128.3, 150} {
					for _, frontThick := range []length.Length{12, 30} {
						p := base.Clone()
						o := &p.Outline
						o.Point, o.Front, o.FrontDepth, o.FrontThick, o.Handle = point, front, frontDepth, frontThick, handle
						if err := p.refill(); err != nil {
							t.Fatal(err)
						}
						p.Sheath.Mouth = calc.ProposeMouth(p.Knife, length.Millimetres)
						checkProposed(t, p)
					}
				}
			}
		}
	}
}

func checkProposed(t *testing.T, p Project) {
	t.Helper()
	o := p.Outline
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Errorf("%v: %v", o, err)
		return
	}
	s := p.Knife.Stations
	fat := s[0]
	for _, m := range s {
		if m.Kind != knife.Blade && m.Thick > fat.Thick {
			fat = m
		}
	}
	short := p.Knife.Length()-fat.At < 50+1
	for _, c := range plan.Checks {
		switch {
		case c.Name == "mouth" && c.Level != calc.OK && !short:
			t.Errorf("%v, %v, handle %v: %s", o.Point, o.Front, o.Handle, c.Text(length.Millimetres))
		case c.Name == "strap" && o.Front != knife.Guard, c.Name == "back" && strings.Contains(c.Text(length.Millimetres), "end the mouth before that") && p.Outline.FrontDepth <= 30:
			t.Errorf("%v, %v %v deep: %s", o.Point, o.Front, o.FrontDepth, c.Text(length.Millimetres))
		}
	}
}

// Nor does any unit show the mouth short by the rounding of its figure.
func TestProposedMouthIsWhole(t *testing.T) {
	p := Defaults()
	for h := length.Length(60); h < 160; h += 0.7 {
		p.Outline.Handle = h
		if err := p.refill(); err != nil {
			t.Fatal(err)
		}
		m := calc.ProposeMouth(p.Knife, length.Millimetres)
		if m != length.Length(int(m)) || p.Knife.Length()-m < 50-1e-9 {
			t.Errorf("handle %v: mouth %v of %v", h, m, p.Knife.Length())
		}
	}
}
