package steps

import (
	"slices"
	"time"
)

// FormThenSew is the checklist of a sheath that is wet-formed before its seam
// is drilled and sewn. Hold times are common practice, no source: defaults that the
// product's data sheet comes before. Each call returns a list of its own.
func FormThenSew() []Step {
	return slices.Concat(prepare(), form(), seam(), finish())
}

// SewThenForm is the checklist of a sheath that is sewn before it is formed.
func SewThenForm() []Step {
	return slices.Concat(prepare(), seam(), form(), finish())
}

// Cautions that more than one step needs.
const (
	tipCaution = "The tip cuts through tape and film: never a palm under it or along the seam; push from the handle."
	airCaution = "Solvents burn below room temperature and their vapour harms: fresh air, no flame or spark, gloves. " +
		"Read the data sheet; local rules come first."
	drillCaution = "Clamp the work on a backing board, eye protection on. No gloves, loose sleeves or loose hair near a " +
		"turning drill. The machine's instructions and local rules come first."
	dustCaution = "Leather dust causes cancer of the nose and sinuses (IARC 100C): a fitting mask and extraction, no " +
		"sweeping dry. Local rules come first."
	knifeCaution = "Cut away from yourself and keep the other hand behind the blade."
	heatCaution  = "No heat above 40 °C, no stove, no hot air: wet leather shrinks and goes hard for good."
	ragCaution   = "Rags with oil can catch fire by themselves: spread them out to dry outdoors, or under water in a closed tin."
)

// prepare is everything up to the glued, dry pouch.
func prepare() []Step {
	return []Step{
		{Title: "Tape the edge, then measure the knife", Short: "MEASURE",
			Caution: "Tape the edge before anything else and hold the knife by the handle."},
		{Title: "Print, check the scale with a ruler, fold a trial of paper with the welt in", Short: "PRINT",
			Caution: "The knife goes into the trial fold with its edge taped, and no hand under the tip."},
		{Title: "Punch the relief holes, cut body and welt", Short: "CUT", Caution: knifeCaution},
		{Title: "Dampen, stamp the maker's mark, let it dry", Short: "STAMP", Caution: heatCaution},
		{Title: "Bevel and burnish mouth and tab, which are out of reach later", Short: "MOUTH", Caution: knifeCaution},
		{Title: "Slick the inside, nothing on the glue strip", Short: "SLICK"},
		{Title: "Skive the end of the lap, and the welt over its last 10-15 mm at the point", Short: "SKIVE", Caution: knifeCaution},
		{Title: "Loop: roughen and glue both lap faces, groove, drill, sew; sink the inside stitches in a groove", Short: "LOOP",
			Caution: drillCaution + " Cement: fresh air, no flame, gloves, its data sheet first."},
		{Title: "Dampen the fold only, fold, clamp; start the hold", Short: "FOLD", Hold: 2 * time.Hour, Caution: heatCaution},
		{Title: "Roughen both faces of the glue strip, cement both and one side of the welt; start the hold", Short: "CEMENT",
			Hold: 10 * time.Minute, Latest: 15 * time.Minute, Caution: airCaution},
		{Title: "Cement the other side, close, press", Short: "CLOSE", Caution: airCaution},
		{Title: "Leave the cement to come to full strength before any water", Short: "CURE",
			Hold: 12 * time.Hour, Latest: 24 * time.Hour, Caution: "The vapour still burns and harms: leave it in fresh air, away from flame. The data sheet says how long."},
	}
}

// form is the wet forming, up to the dry pouch.
func form() []Step {
	return []Step{
		{Title: "Weigh the sheath, wrap the taped knife in two layers of film", Short: "WRAP",
			Caution: "Edge and tip taped before wrapping. " + tipCaution},
		{Title: "Wet evenly until the bubbles stop, or until it is damp through", Short: "WET",
			Caution: "Water by hand warmth at most. " + heatCaution},
		{Title: "Push the knife in, form, bone round the bolster; knife out, dry it and oil it", Short: "FORM",
			Caution: tipCaution + " " + ragCaution},
		{Title: "Start the hold; after it the wrapped knife in and out once, so that the pouch does not shrink tight", Short: "INOUT1",
			Hold: time.Hour, Caution: tipCaution},
		{Title: "Start the hold; after it, 3 h from forming, the wrapped knife in and out once more", Short: "INOUT2",
			Hold: 2 * time.Hour, Caution: tipCaution},
		{Title: "Let it dry away from heat, the knife out; start the hold", Short: "DRY",
			Hold: 24 * time.Hour, Latest: 48 * time.Hour, Caution: heatCaution},
	}
}

// seam is the finished edge and the seam through it.
func seam() []Step {
	return []Step{
		{Title: "Sand the edge flush", Short: "SAND", Caution: dustCaution},
		{Title: "Groove the front", Short: "GROOVE", Caution: knifeCaution},
		{Title: "Measure the line, set the dividers, step it off", Short: "STEPOFF"},
		{Title: "Drill square, on a backing board, clamped", Short: "DRILL", Caution: drillCaution},
		{Title: "Groove the back", Short: "BACK", Caution: knifeCaution},
		{Title: "Sew from the mouth, two stitches back at each end, tap down", Short: "SEW",
			Caution: "No finger behind the leather where awl or needle comes through. Light thread takes the dye: choose it with that in mind."},
	}
}

// finish is everything after seam and drying.
func finish() []Step {
	return []Step{
		{Title: "Bevel the edge, sand it fine", Short: "BEVEL", Caution: dustCaution},
		{Title: "Dye, the edges too; second coat; hold it as long as the data sheet says", Short: "DYE",
			Caution: airCaution + " Light thread takes the dye. The hold has no default: set it from the data sheet. " +
				"Spread dye rags out to dry, away from flame."},
		{Title: "Buff until a white rag stays clean", Short: "BUFF",
			Caution: "A machine buff catches cloth and hair: no gloves or loose sleeves, eye protection, mask."},
		{Title: "Burnish the edge, after the dye: gum and wax resist it", Short: "BURNISH",
			Caution: "On a turning burnisher: no gloves, loose sleeves or loose hair."},
		{Title: "Wax or seal the outside; start the hold, overnight", Short: "SEAL",
			Hold: 12 * time.Hour, Caution: ragCaution + " Sealers: fresh air, no flame, the data sheet first. No heat above 40 °C."},
		{Title: "Retention: edge taped, upside down over a folded towel, three shakes, then draw ten times", Short: "SHAKE",
			Caution: "Edge taped, no hand, foot or person below: the knife may fall. If it does, it is not ready to be worn."},
		{Title: "Write the care card and put it with the sheath", Short: "CARE",
			Caution: "Say on it: do not keep the knife in the sheath. Vegetable-tanned leather is acid (pH 3-6, ISO 4045) and blades rust in it."},
	}
}
