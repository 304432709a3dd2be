package report

import (
	"encoding/json"
	"math"
	"strconv"

	"chape/calc"
	"chape/calc/curve"
	"chape/project"
	"chape/project/plain"
	"chape/project/weigh"
)

// number is a figure of the JSON plan, in full precision. What is no number
// is null.
type number float64

// MarshalJSON writes the shortest decimal that reads back the same.
func (n number) MarshalJSON() ([]byte, error) {
	f := float64(n)
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return []byte("null"), nil
	}
	return strconv.AppendFloat(nil, f+0, 'f', -1, 64), nil
}

// The keys of the JSON plan; other programs rely on them.
type (
	planJSON struct {
		Title    string       `json:"title"`
		Revision int          `json:"revision"`
		Body     bodyJSON     `json:"body"`
		Welt     weltJSON     `json:"welt"`
		Stitch   stitchJSON   `json:"stitch"`
		Loop     loopJSON     `json:"loop"`
		Thread   threadJSON   `json:"thread"`
		FoldLine foldLineJSON `json:"fold_line"`
		Drain    *drainJSON   `json:"drain"`
		Strap    *strapJSON   `json:"strap"`
		Checks   []checkJSON  `json:"checks"`
		Drying   *dryingJSON  `json:"drying"`
	}
	bodyJSON struct {
		Length      number       `json:"length"`
		Width       number       `json:"width"`
		Area        number       `json:"area"`
		TabLength   number       `json:"tab_length"`
		AreaWithTab number       `json:"area_with_tab"`
		MouthStitch number       `json:"mouth_stitch"`
		MouthCut    number       `json:"mouth_cut"`
		Bend        number       `json:"bend"`
		Offsets     []offsetJSON `json:"offsets"`
	}
	offsetJSON struct {
		At     number  `json:"at"`
		Stitch *number `json:"stitch"`
		Glue   *number `json:"glue"`
		Cut    number  `json:"cut"`
	}
	weltJSON struct {
		Area      number `json:"area"`
		Thickness number `json:"thickness"`
		Plies     int    `json:"plies"`
	}
	stitchJSON struct {
		Line          number      `json:"line"`
		PlaneLine     number      `json:"plane_line"`
		Stitches      int         `json:"stitches"`
		Holes         int         `json:"holes"`
		Pitch         number      `json:"pitch"`
		Walk          number      `json:"walk"`
		Walk10        number      `json:"walk10"`
		Stack         number      `json:"stack"`
		Positions     [][2]number `json:"positions"`
		FlatPositions [][2]number `json:"flat_positions"`
		Drills        []drillJSON `json:"drills"`
	}
	drillJSON struct {
		Series   string `json:"series"`
		Name     string `json:"name"`
		Diameter number `json:"diameter"`
		Choice   bool   `json:"choice"`
	}
	loopJSON struct {
		Rows   int    `json:"rows"`
		Holes  int    `json:"holes"`
		Thread number `json:"thread"`
	}
	threadJSON struct {
		Length number `json:"length"`
		Ratio  number `json:"ratio"`
	}
	foldLineJSON struct {
		Gap   number `json:"gap"`
		Slope number `json:"slope"`
	}
	drainJSON struct {
		At       number `json:"at"`
		FromFold number `json:"from_fold"`
		Diameter number `json:"diameter"`
	}
	strapJSON struct {
		At       number `json:"at"`
		Length   number `json:"length"`
		ArmBack  number `json:"arm_back"`
		ArmBelly number `json:"arm_belly"`
		Width    number `json:"width"`
		Snap     number `json:"snap"`
		Fixing   number `json:"fixing"`
	}
	checkJSON struct {
		Name  string  `json:"name"`
		Value number  `json:"value"`
		At    *number `json:"at"`
		Level string  `json:"level"`
		Text  string  `json:"text"`
	}
)

// JSON gives the plan as one indented JSON object that ends in a newline:
// millimetres, square millimetres, shares as fractions; the same input gives
// the same bytes. Only the text of the checks is in the project's unit. What
// has no value, or is no finite number, is null. d is what the project's
// weighings say.
func JSON(p project.Project, plan *calc.Plan, d weigh.Drying) ([]byte, error) {
	b, s := plan.Body, plan.Stitch
	out := planJSON{
		Title: p.Title, Revision: p.Revision,
		Body: bodyJSON{
			Length: number(b.Length), Width: number(b.Width), Area: number(b.Area),
			TabLength: number(b.TabLength), AreaWithTab: number(b.AreaWithTab),
			MouthStitch: number(b.MouthStitch), MouthCut: number(b.MouthCut), Bend: number(b.Bend),
			Offsets: []offsetJSON{},
		},
		Welt: weltJSON{number(plan.Welt.Area), number(plan.Welt.Thickness), plan.Welt.Plies},
		Stitch: stitchJSON{
			Line: number(s.Line), PlaneLine: number(s.PlaneLine), Stitches: s.Stitches, Holes: s.Holes,
			Pitch: number(s.Pitch), Walk: number(s.Walk), Walk10: number(s.Walk10()), Stack: number(s.Stack),
			Positions: pairs(s.Positions), FlatPositions: pairs(s.Flat), Drills: []drillJSON{},
		},
		Loop:     loopJSON{plan.Loop.Rows, plan.Loop.Holes, number(plan.Loop.Thread)},
		Thread:   threadJSON{number(plan.Thread.Length), number(plan.Thread.Ratio)},
		FoldLine: foldLineJSON{number(plan.Fold.Gap), number(plan.Fold.Slope)},
		Checks:   []checkJSON{},
		Drying:   dryingOf(p, d),
	}
	if hole := plan.Flat.Drain; hole != nil {
		out.Drain = &drainJSON{number(hole.Centre.X), number(hole.Centre.Y), number(hole.Diameter)}
	}
	if c := plan.Strap; c != nil {
		out.Strap = &strapJSON{number(c.At), number(c.Length), number(c.ArmBack), number(c.ArmBelly), number(c.Width), number(c.Snap), number(c.Fixing)}
	}
	for _, o := range b.Offsets {
		row := offsetJSON{At: number(o.At), Cut: number(o.Cut)}
		if o.Sewn {
			row.Stitch, row.Glue = pointer(o.Stitch), pointer(o.Glue)
		}
		out.Body.Offsets = append(out.Body.Offsets, row)
	}
	for _, d := range s.Drills {
		out.Stitch.Drills = append(out.Stitch.Drills, drillJSON{d.Series, d.Name, number(d.Diameter), d.Choice})
	}
	for _, c := range plan.Checks {
		row := checkJSON{Name: c.Name, Value: number(c.Value), Level: c.Level.String(), Text: c.Text(p.Units)}
		if c.HasAt {
			row.At = pointer(c.At)
		}
		out.Checks = append(out.Checks, row)
	}
	data, err := json.MarshalIndent(out, "", "  ")
	return append(plain.Escaped(data), '\n'), err
}

func pointer(f float64) *number {
	n := number(f)
	return &n
}

func pairs(l []curve.Vec) [][2]number {
	out := make([][2]number, len(l))
	for i, v := range l {
		out[i] = [2]number{number(v.X), number(v.Y)}
	}
	return out
}
