package steps

import (
	"slices"
	"strings"
	"time"
)

// Parts is what a sheath has beyond its body: a step that is only about a part the
// sheath has not is not in its list, and the other steps don't speak of it.
type Parts struct {
	Loop  bool // a folded belt loop
	Strap bool // a retention strap with a snap
	Front bool // a bolster, a guard or a handle inside the mouth
	Welt  bool
}

// Whole has every part.
var Whole = Parts{Loop: true, Strap: true, Front: true, Welt: true}

// FormThenSew is the checklist of a sheath that is wet-formed before its seam
// is drilled and sewn. Hold times are common practice, no source: defaults that the
// product's data sheet comes before. Each call returns a list of its own.
func FormThenSew(has Parts) []Step {
	return titled(formThenSew(), has)
}

// SewThenForm is the checklist of a sheath that is sewn before it is formed.
func SewThenForm(has Parts) []Step {
	return titled(sewThenForm(), has)
}

func formThenSew() []row { return slices.Concat(prepare, glue, form, seam, finish) }
func sewThenForm() []row { return slices.Concat(prepare, glue, seam, form, finish) }

// A row is one line of the lists as it is kept here. In title and caution, what stands
// between braces is said only of a sheath with that part: "cut body{welt:, welt}".
type row struct {
	part    string // the whole step is about it; "": every sheath has it
	short   string
	work    int // minutes at the bench
	title   string
	caution string
	hold    time.Duration
	latest  time.Duration
	from    string // the short name of the step whose tick the hold counts from
	sheet   bool   // how long is for the data sheet to say
}

// Cautions that more than one step needs.
const (
	tipCaution = "The tip cuts through tape and film: never a palm under it or along the seam; push from the handle."
	airCaution = "Solvents burn below room temperature and their vapour harms: fresh air, no flame or spark, gloves. " +
		"Read the data sheet; local rules come first."
	drillCaution = "Clamp the work on a backing board, eye protection on. No gloves, loose sleeves or loose hair near a " +
		"turning drill. The machine's instructions and local rules come first."
	dustCaution = "Leather dust causes cancer of the nose and sinuses (IARC 100C): a fitting mask and extraction. " +
		"Local rules come first."
	drumCaution  = "At a drum or burnisher: eye protection, fingers off the drum, no gloves, sleeves or loose hair."
	awlCaution   = "No finger behind the leather where awl or needle comes through."
	knifeCaution = "Cut away from yourself, the other hand behind the blade."
	heatCaution  = "No heat above 40 °C, no stove, no hot air: wet leather shrinks and goes hard for good."
	ragCaution   = "Rags with oil can catch fire by themselves: spread out outdoors, or under water."
	ironCaution  = "Iron stains wet leather black: clean tools, covered clamps."
)

// How long cement is left open before it is pressed together (common practice, no
// source).
const (
	openFrom = 10 * time.Minute
	openTo   = 15 * time.Minute
)

// prepare is everything up to the flat, finished parts.
var prepare = []row{
	{short: "MEASURE", work: 20, title: "Tape the edge, then measure the knife",
		caution: "Tape the edge before anything else and hold the knife by the handle."},
	{short: "PRINT", work: 20, title: "Print, check the scale with dividers, fold a trial{welt: with the welt in}",
		caution: "The knife goes into the trial fold with its edge taped, and no hand under the tip."},
	{short: "CHOOSE", work: 5, title: "Choose the leather: which way it stretches (least along the fold), which half is the back"},
	{short: "CUT", work: 20, title: "{loop:Punch the relief holes, cut the body|Cut the body}{welt:, the welt}{strap:, the strap}", caution: knifeCaution},
	{short: "STAMP", work: 5, title: "Dampen, stamp the maker's mark, let it dry", caution: heatCaution},
	{short: "MOUTH", work: 20, title: "Bevel the mouth{loop: and the tab}, burnish with water only; dye those edges{loop: and what lies under the loop}",
		caution: knifeCaution + " Gum and wax would keep the dye off. Dye: " + airCaution},
	{short: "SLICK", work: 5, title: "Slick the inside, nothing on the glue strip"},
	{part: "loop or welt", short: "SKIVE", work: 10, title: "Skive {loop:the end of the lap}{both:, and }{welt:the welt over its last 10-15 mm at the point}", caution: knifeCaution},
	{part: "loop", short: "LAP", work: 5, title: "Loop: roughen both lap faces, cement both, start the hold; then press them together",
		hold: openFrom, latest: openTo, caution: airCaution},
	{part: "loop", short: "LOOP", work: 30, title: "Loop: groove, drill, sew; sink the inside stitches in their groove",
		caution: drillCaution + " " + awlCaution},
	{part: "strap", short: "STRAP", work: 15, title: "Fix the strap on the back, before the sheath is closed",
		caution: awlCaution + " Rivets: eye protection, fingers off the setter."},
	{short: "FOLD", work: 5, title: "Dampen the fold only, fold, clamp; start the hold", hold: 2 * time.Hour, caution: heatCaution + " " + ironCaution},
}

// glue closes the pouch: two faces at a time, each with its own wait.
var glue = []row{
	{part: "welt", short: "CEMENT 1", work: 10, title: "Roughen one glue strip and one face of the welt (the grain off), cement both, start the hold; then lay on, press",
		hold: openFrom, latest: openTo, caution: airCaution},
	{part: "welt", short: "CEMENT 2", work: 10, title: "The same with the other two faces: roughen, cement, start the hold; then close, press",
		hold: openFrom, latest: openTo, caution: airCaution},
	{part: "no welt", short: "CEMENT", work: 10, title: "Roughen both glue strips (the grain off), cement both, start the hold; then close, press",
		hold: openFrom, latest: openTo, caution: airCaution},
	{short: "CURE", title: "Leave the cement to come to full strength before any water; start the hold",
		hold:    12 * time.Hour,
		caution: "The vapour still burns and harms: leave it in fresh air, away from flame. 12 h at least; the data sheet says how long."},
}

// form is the wet forming, up to the dry pouch.
var form = []row{
	{short: "WRAP", work: 10, title: "Weigh the sheath; a light oil on the knife (food-safe for a kitchen knife), edge taped, wrap it in two layers of film",
		caution: "Edge and tip taped before wrapping. " + tipCaution + " " + ragCaution},
	{short: "WET", work: 5, title: "Wet evenly until the bubbles stop, or until it is damp through",
		caution: "Water by hand warmth at most. " + heatCaution},
	{short: "FORM", work: 25, title: "Push the knife in, form{front:, bone it in round the front of the handle}, the glued edge clamped; knife out, dry it and oil it",
		caution: tipCaution + " " + ironCaution + " " + ragCaution},
	{short: "LOOSEN 1", work: 2, title: "1 h from forming: the wrapped knife in and out once, so that the pouch does not shrink tight",
		hold: time.Hour, from: "FORM", caution: tipCaution},
	{short: "LOOSEN 2", work: 2, title: "3 h from forming: the wrapped knife in and out once more",
		hold: 3 * time.Hour, from: "FORM", caution: tipCaution},
	{short: "DRY", title: "Let it dry away from heat, the knife out; start the hold",
		hold: 24 * time.Hour, latest: 48 * time.Hour, caution: heatCaution},
	{short: "DRYFIT", work: 5, title: "Try the knife in the dry pouch, its edge taped: it slides in and stays",
		caution: tipCaution},
}

// seam is the sanded edge and the seam through it.
var seam = []row{
	{short: "SAND", work: 15, title: "Sand the edge flush", caution: dustCaution + " " + drumCaution},
	{short: "GROOVE", work: 5, title: "Groove the front", caution: knifeCaution},
	{short: "STEPOFF", work: 10, title: "Measure the line, set the dividers, step it off"},
	{short: "DRILL", work: 20, title: "Shim the pouch so that it lies level, clamp it on a backing board, drill square", caution: drillCaution},
	{short: "BACK", work: 5, title: "Groove the back", caution: knifeCaution},
	{short: "SEW", work: 60, title: "Sew from the mouth, two stitches back at each end, tap down",
		caution: awlCaution + " Light thread takes the dye: choose it with that in mind."},
}

// finish is everything after seam and drying.
var finish = []row{
	{short: "BEVEL", work: 15, title: "Bevel the edge, sand it fine", caution: dustCaution + " " + drumCaution},
	{short: "DYE", work: 10, title: "Dye, the edges too; start the hold that the data sheet says", sheet: true,
		caution: airCaution + " Light thread takes the dye. Spread dye rags out to dry, away from flame."},
	{short: "DYE 2", work: 10, title: "Second coat of dye; start the hold that the data sheet says", sheet: true,
		caution: airCaution + " Spread dye rags out to dry, away from flame."},
	{short: "BUFF", work: 10, title: "Buff until a white rag stays clean; a light oiling of the leather",
		caution: "A machine buff catches cloth and hair: no gloves or loose sleeves, eye protection, mask. " + ragCaution},
	{short: "BURNISH", work: 15, title: "Burnish the edge, after the dye: gum and wax resist it", caution: drumCaution},
	{short: "SEAL", work: 10, title: "Wax or seal the outside; start the hold, overnight", hold: 12 * time.Hour,
		caution: ragCaution + " Sealers: fresh air, no flame, the data sheet first. No heat above 40 °C."},
	{part: "strap", short: "SNAP", work: 5, title: "Set the snap, the knife in: mark its place on the closed strap first",
		caution: "Edge taped, eye protection, fingers off the setter."},
	{short: "RETENTION", work: 5, title: "Edge taped, upside down over a folded towel, three shakes, then draw ten times; again untaped, over something soft",
		caution: "No hand, foot or person below: the knife may fall. If it does, the sheath is not ready to be worn."},
	{short: "CARE", work: 5, title: "Write the care card and put it with the sheath",
		caution: "Say on it: do not keep the knife in the sheath. Vegetable-tanned leather is acid (pH 3-6, measured as ISO 4045 says) and blades rust in it."},
}

// titled makes the steps of a sheath from the rows.
func titled(rows []row, has Parts) []Step {
	var out []Step
	for _, r := range rows {
		if has.part(r.part) {
			out = append(out, r.step(has))
		}
	}
	return out
}

func (r row) step(has Parts) Step {
	return Step{
		Title: has.say(r.title), Short: r.short, Caution: has.say(r.caution),
		Hold: r.hold, Latest: r.latest, From: r.from, Sheet: r.sheet,
		Expect: time.Duration(r.work) * time.Minute,
	}
}

// part tells whether the sheath has what a row is about.
func (p Parts) part(name string) bool {
	switch name {
	case "loop":
		return p.Loop
	case "strap":
		return p.Strap
	case "front":
		return p.Front
	case "welt":
		return p.Welt
	case "no welt":
		return !p.Welt
	case "both":
		return p.Loop && p.Welt
	case "loop or welt":
		return p.Loop || p.Welt
	}
	return true
}

// say puts in what stands between braces where the sheath has the part, and what
// stands after the bar where it has not.
func (p Parts) say(text string) string {
	for {
		before, rest, ok := strings.Cut(text, "{")
		if !ok {
			return text
		}
		inside, after, _ := strings.Cut(rest, "}")
		name, words, _ := strings.Cut(inside, ":")
		with, without, _ := strings.Cut(words, "|")
		if !p.part(name) {
			with = without
		}
		text = before + with + after
	}
}
