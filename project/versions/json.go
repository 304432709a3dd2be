package versions

import (
	"encoding/json"
	"math"
	"time"

	"chape/calc/compare"
	"chape/calc/length"
	"chape/project/places"
	"chape/project/report"
)

// The keys of two patterns' JSON; other programs rely on them.
type (
	pairJSON struct {
		Then       versionJSON  `json:"then"`
		Now        versionJSON  `json:"now"`
		HalfWidths []halfJSON   `json:"half_widths"`
		Figures    []figureJSON `json:"figures"`
	}
	versionJSON struct {
		Number   int     `json:"number"`
		Printed  *string `json:"printed"`
		Standing bool    `json:"standing"`
	}
	halfJSON struct {
		At     float64    `json:"at"`
		Name   string     `json:"name"`
		Stitch *widthJSON `json:"stitch"`
		Cut    *widthJSON `json:"cut"`
	}
	widthJSON struct {
		Then   float64 `json:"then"`
		Now    float64 `json:"now"`
		Change float64 `json:"change"`
	}
	figureJSON struct {
		Name string `json:"name"`
		Then string `json:"then"`
		Now  string `json:"now"`
		Unit string `json:"unit"`
	}
)

// JSON writes how the two differ for other programs: places and half-widths in mm, from
// the point and from the fold; figures as texts, as the plan shows them in mm; a day as
// 2026-12-18. What one of the two has not is null, or "none".
func (p Pair) JSON() ([]byte, error) {
	out := pairJSON{Then: p.Was.json(), Now: p.Is.json(), HalfWidths: []halfJSON{}, Figures: []figureJSON{}}
	xs := p.at(length.Millimetres)
	stitch := byPlace(compare.At(graph(p.IsPlan.Flat.Stitch), graph(p.WasPlan.Flat.Stitch), xs))
	cut := byPlace(compare.At(graph(p.IsPlan.Flat.Cut), graph(p.WasPlan.Flat.Cut), xs))
	all := places.Of(p.Is.Project())
	for _, x := range xs {
		h := halfJSON{At: tidy(x), Name: nameAt(all, x), Stitch: width(stitch, x), Cut: width(cut, x)}
		if h.Stitch != nil || h.Cut != nil {
			out.HalfWidths = append(out.HalfWidths, h)
		}
	}
	for _, r := range p.Figures(length.Millimetres).Rows {
		out.Figures = append(out.Figures, figureJSON{r[0], r[1], r[2], r[3]})
	}
	data, err := json.MarshalIndent(out, "", "  ")
	return append(data, '\n'), err
}

func (v Version) json() versionJSON {
	out := versionJSON{Number: v.Number, Standing: v.Standing}
	if !v.Printed.IsZero() {
		day := v.Printed.Format(time.DateOnly)
		out.Printed = &day
	}
	return out
}

func width(at map[float64]compare.Difference, x float64) *widthJSON {
	d, ok := at[x]
	if !ok {
		return nil
	}
	return &widthJSON{tidy(d.Plan), tidy(d.Measured), tidy(d.By)}
}

// tidy takes off what is finer than any leather, and what adding leaves behind.
func tidy(mm float64) float64 { return math.Round(mm*1e4) / 1e4 }

// Tables are the tables of how the two differ that have rows.
func (p Pair) Tables(u length.Unit) []report.Table {
	var out []report.Table
	for _, t := range []report.Table{p.Figures(u), p.HalfWidths(u)} {
		if len(t.Rows) > 0 {
			out = append(out, t)
		}
	}
	return out
}
