package report

import (
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/clock"
	"chape/project/steps"
)

// StepLine is one line of the checklist.
type StepLine struct {
	Title   string
	Hold    string // "wait 24 h, look by 48 h", or ""
	Caution string
	Done    bool
	Skipped bool
}

// Steps gives the checklist in order.
func Steps(p project.Project) []StepLine {
	out := make([]StepLine, len(p.Steps))
	for i, s := range p.Steps {
		out[i] = StepLine{Title: s.Title, Hold: hold(s), Caution: s.Caution, Done: !s.Done.IsZero(), Skipped: s.Skipped}
	}
	return out
}

func hold(s steps.Step) string {
	var parts []string
	if s.Hold > 0 {
		parts = append(parts, "wait "+clock.Span(s.Hold))
	}
	if s.Latest > 0 {
		parts = append(parts, "look by "+clock.Span(s.Latest))
	}
	return strings.Join(parts, ", ")
}

// Checks puts the checks of at least the given level into words.
func Checks(plan *calc.Plan, from calc.Level, u length.Unit) []string {
	var out []string
	for _, c := range plan.Checks {
		if c.Level >= from {
			out = append(out, c.Level.String()+": "+c.Text(u))
		}
	}
	return out
}

// Warnings are the checks that warn, as sheets and commands say them.
func Warnings(plan *calc.Plan, u length.Unit) []string {
	var out []string
	for _, c := range plan.Checks {
		if c.Level == calc.Warn {
			out = append(out, "warning: "+c.Text(u))
		}
	}
	return out
}

// Dividers says how to step the holes off.
func Dividers() []string {
	return []string{
		"Set the dividers on a calliper and step the line once without pricking.",
		"If the last step misses, share the miss: open or close the dividers by the miss divided by the number of stitches, and step again.",
		"Check every tenth hole by its distance along the line before you drill.",
	}
}

// Cautions are for the bench; product data sheets and local rules come first.
//
// Sources: leather dust, IARC monograph 100C; solvent vapours, flash points
// of n-heptane and ethanol; 40 °C, ISO 4044; oily rags, NFPA.
func Cautions() []string {
	return []string{
		"Tape the edge and wrap the point before any fitting. Never a palm under the point or along the seam.",
		"Cement, dye and finish: read the product's data sheet first, it goes before this card. Fresh air, no flame or spark, gloves; the solvents burn below room temperature.",
		"Drilling: work clamped on a backing board, eyes covered; no gloves, sleeves or loose hair near the drill.",
		"Sanding: leather dust can cause cancer of the nose: mask and extraction.",
		"No heat above 40 °C on wet leather.",
		"Oily rags can catch fire by themselves: spread them out to dry or keep them under water.",
	}
}

// Care is for the person who gets the knife.
//
// Sources: blades in vegetable-tanned leather (pH 3 to 6, ISO 4045) corrode;
// the rest is common practice, no source.
func Care() []string {
	return []string{
		"This sheath is for carrying, not for storage: leather is slightly acid and holds damp, and a blade kept in it rusts. Keep the knife beside it, dry and lightly oiled.",
		"Put the knife away dry. If the sheath gets wet, take the knife out and let both dry in the air: no stove, no radiator, no sun behind glass.",
		"A little wax or leather grease once or twice a year, on the outside. Too much oil makes it soft, and a soft sheath does not hold a knife.",
		"Draw and put back with the edge away from you, the free hand never in front of the mouth or along the seam: a sharp edge can cut through leather and stitches.",
		"Before you rely on it, try the hold: upside down over something soft, no hand below. If the knife slips out, don't carry it until it has been put right.",
		"Look at the stitches and the loop now and then. A cut stitch or a torn loop wants mending before the next carry.",
		"Keep knife and sheath from children.",
		"Rules on carrying knives differ from place to place, and can differ for a fixed blade or for a certain length: ask your local rules before you carry it.",
	}
}
