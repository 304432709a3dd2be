package trace

import (
	"context"
	"math"

	"chape/calc/curve"
	"chape/calc/trace/axes"
)

// Reading is what a picture says. Places are mm on the sheet: x along its width, y along its height, down it, from the
// frame's inner corner beside the dotted mark. So a closed line whose signed area is above 0, as an outline's is, runs
// clockwise as the sheet is seen; taken as places with y up it would be the mirror image of what lay there, and whoever
// counts up from below, as leather does, has to turn y round.
type Reading struct {
	Sheet    Sheet
	Residual Residual
	Of       Of
	Gaps     []float64  // widths of the gaps in the line that were bridged, mm
	Outline  curve.Line // closed, its signed area above 0, neighbours at most 0.5 mm apart
	// Of a knife:
	Line     float64 // width of the drawn line, mm
	Standoff float64 // from its middle to the outline, mm
	Strokes  []Stroke
	Knife    axes.Knife
	// Of a pattern:
	Pattern axes.Pattern
	// Of a rule that was traced to calibrate: the stand-off that makes it as wide as it is; 0: none was.
	Calibrated float64
}

// Read reads a picture. It gives up with ctx's error, and refuses with a *Refused what it can't read true.
func Read(ctx context.Context, p *Picture, o Options) (Reading, error) {
	if err := ctx.Err(); err != nil {
		return Reading{}, err
	}
	s, err := findSheet(ctx, p, o)
	if err != nil {
		return Reading{}, err
	}
	r := Reading{Sheet: s.sheet, Residual: s.residual, Of: o.Of}
	o.stage(Outline)
	if o.Of == Knife {
		err = r.drawn(ctx, p, s, o)
	} else {
		err = r.piece(ctx, p, s, o)
	}
	if err != nil {
		return Reading{}, err
	}
	return r, ctx.Err()
}

// drawn reads a drawn line.
func (r *Reading) drawn(ctx context.Context, p *Picture, s seen, o Options) error {
	t, err := straighten(ctx, p, s)
	if err != nil {
		return err
	}
	d, err := t.draw(ctx, s.soft, o)
	if err != nil {
		return err
	}
	r.Gaps, r.Line, r.Standoff, r.Outline = d.gaps, d.width, d.standoff, d.outline
	r.Strokes = d.strokes(t)
	if err := ctx.Err(); err != nil {
		return err
	}
	o.stage(Marks)
	r.measured(o)
	if o.Rule > 0 {
		if r.Calibrated, err = calibrate(r.Outline, r.Standoff, o.Rule); err != nil {
			return err
		}
	}
	feet := make([]curve.Vec, len(r.Strokes))
	for i, f := range r.Strokes {
		feet[i] = f.Foot
	}
	r.Knife = axes.NewKnife(r.Outline, feet)
	return nil
}

// measured stretches all places by what the sheet's own 100 mm measure.
func (r *Reading) measured(o Options) {
	stretch := func(v curve.Vec) curve.Vec {
		if o.MeasuredX > 0 {
			v.X *= o.MeasuredX / 100
		}
		if o.MeasuredY > 0 {
			v.Y *= o.MeasuredY / 100
		}
		return v
	}
	for i, v := range r.Outline {
		r.Outline[i] = stretch(v)
	}
	for i, k := range r.Strokes {
		r.Strokes[i] = Stroke{stretch(k.Foot), stretch(k.End)}
	}
}

// calibrate is the stand-off that makes a traced rule as wide as it is: the outline is too wide on both sides by
// what is missing from the stand-off that was used.
func calibrate(outline curve.Line, used, width float64) (float64, error) {
	seen, long := axes.Band(outline)
	off := used + (seen-width)/2
	switch {
	case long < 3*seen || long < 60:
		return 0, refuse("what is drawn is no rule, %.1f mm long and %.1f wide: trace a steel rule all the way round", long, seen)
	case math.Abs(off-used) > 1.5 || off < 0:
		return 0, refuse("the traced rule is %.2f mm wide, and %.2f was given: measure the rule with a calliper and give its width", seen, width)
	}
	return off, nil
}
