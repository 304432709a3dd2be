package trace

import (
	"context"

	"chape/calc/trace/axes"
)

// piece reads a filled shape.
func (r *Reading) piece(ctx context.Context, p *Picture, s seen, o Options) error {
	l, err := filled(ctx, p, s)
	if err != nil {
		return err
	}
	r.Outline = l
	o.stage(Marks)
	r.measured(o)
	if o.Of == Pattern {
		r.Pattern = axes.NewPattern(r.Outline, axes.Turns{})
	}
	return ctx.Err()
}
