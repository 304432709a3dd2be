package print

import (
	"math"
	"sort"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/sheet"
)

// mostShorter is the share of the tab that a maker may like to give up for a sheet of paper
// (common practice, no source).
const mostShorter = 0.15

// bodyPiece is the pattern as a run of sheets, with the words on each of them.
func (j *job) bodyPiece() (piece, []string) {
	name := "Pattern"
	if j.o.Half {
		name = "Half pattern"
	}
	return piece{name, "B", true}, []string{j.sideWords(), j.scaleWords(), j.looseWords()}
}

// cut lays the sheets of a piece over its drawing, in the room that each has.
func (j *job) cut(p piece, d *sheet.Drawing, words []string) (sheet.Tiling, tile) {
	all := signsOn(d)
	all = append(all, signs[len(signs)-1]) // room for the joints, should there be any
	room := j.tile(p, words, all)
	return sheet.CutUp(d, room.w, room.h, p.letter), room
}

// Sheets is how many sheets the pattern takes, and with how much shorter a lap (as a ruler
// shows it) it takes how many fewer: 0 where nothing up to mostShorter of the tab does, or where that
// makes a check worse or costs a row of stitches. Errors are those of PDF.
func Sheets(p project.Project, plan *calc.Plan, o Options) (n int, shorter length.Length, fewer int, err error) {
	j, err := newJob(p, plan, o)
	if err != nil {
		return 0, 0, 0, err
	}
	n = j.bodySheets()
	step := length.Millimetre
	if p.Units == length.Inches {
		step = length.Inch / 16
	}
	most := int(math.Min(mostShorter*j.plan.Body.TabLength, j.plan.Input.Belt.Lap.MM()) / step.MM())
	if n == 1 || most < 1 {
		return n, 0, 0, nil
	}
	var less *calc.Plan
	steps := 1 + sort.Search(most, func(i int) bool {
		with := *j
		with.p.Belt.Lap -= length.Length(i+1) * step
		in := j.plan.Input
		in.Belt.Lap = with.p.Belt.Lap
		plan, err := calc.Compute(in)
		if err != nil {
			return false
		}
		with.plan = plan
		takes := with.bodySheets()
		if takes < n {
			less, fewer = plan, n-takes // the least that was found to do: Search ends there
		}
		return takes < n
	})
	if steps > most || len(less.Loop.LapX) != len(j.plan.Loop.LapX) || worse(j.plan, less) {
		return n, 0, 0, nil
	}
	return n, length.Length(steps) * step, fewer, nil
}

func (j *job) bodySheets() int {
	pattern := j.pattern()
	p, words := j.bodyPiece()
	t, _ := j.cut(p, &pattern, words)
	return len(t.Sheets)
}

// worse tells whether a check of the plan b is worse than that of a.
func worse(a, b *calc.Plan) bool {
	was := map[string]calc.Level{}
	for _, c := range a.Checks {
		was[c.Name] = max(was[c.Name], c.Level)
	}
	for _, c := range b.Checks {
		if c.Level > was[c.Name] {
			return true
		}
	}
	return false
}
