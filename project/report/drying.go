package report

import (
	"time"

	"chape/project"
	"chape/project/weigh"
)

// dryingJSON is what the weighings since the last wetting say; null without
// any. Grams, hours, shares as fractions; moments by the clock of the
// weighings, in whole seconds (RFC 3339). What is not known is null.
type dryingJSON struct {
	Before    *number    `json:"before"`    // g, weighed just before wetting
	Last      number     `json:"last"`      // g, the last weighing
	Weighings int        `json:"weighings"` // since it was wetted
	Dry       *number    `json:"dry"`       // g, where the curve ends
	Rate      *number    `json:"rate"`      // of drying, per hour
	Slow      *number    `json:"slow"`      // share of the water that is in a slower part
	Scatter   *number    `json:"scatter"`   // g, a weighing from the curve
	Reached   bool       `json:"reached"`   // within 2 % of dry
	Steady    bool       `json:"steady"`    // dry by weight: two weighings agree
	Earliest  *time.Time `json:"earliest"`  // of the window, right nine times in ten
	Likely    *time.Time `json:"likely"`
	Latest    *time.Time `json:"latest"`
	WeighNext *time.Time `json:"weigh_next"`
	Text      string     `json:"text"` // why there is no estimate, or ""
}

func dryingOf(p project.Project, d weigh.Drying) *dryingJSON {
	if len(d.Rows) == 0 {
		return nil
	}
	last := p.Weigh[d.Rows[len(d.Rows)-1]]
	out := dryingJSON{Last: number(last.Grams), Weighings: len(d.Rows), Steady: d.Steady}
	if d.Before >= 0 {
		out.Before = pointer(p.Weigh[d.Before].Grams)
	}
	if !d.Next.IsZero() {
		out.WeighNext = moment(d.Next)
	}
	if d.Err != nil {
		out.Text = d.Err.Error()
		return &out
	}
	e := d.Estimate
	out.Dry, out.Reached = pointer(e.Dry), e.Reached
	out.Earliest, out.Likely, out.Latest = moment(d.Start.Add(e.Earliest)), moment(d.Start.Add(e.Likely)), moment(d.Start.Add(e.Latest))
	if e.Rate > 0 {
		out.Rate, out.Slow, out.Scatter = pointer(e.Rate), pointer(e.Slow), pointer(e.Scatter)
	}
	return &out
}

func moment(t time.Time) *time.Time {
	t = t.Round(time.Second)
	return &t
}
