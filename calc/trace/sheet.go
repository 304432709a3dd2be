package trace

import (
	"context"
	"errors"
	"fmt"
	"math"

	"chape/calc/trace/camera"
	"chape/calc/trace/find"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
)

// How flat and sharp a sheet has to be, mm on the sheet: a sheet bent by 5 mm leaves 0.22 and
// an outline that is wrong by 0.3.
const (
	mostRMS   = 0.12
	mostWorst = 0.40
	mostSoft  = 0.45 // standard deviation of an edge's blur
	leastDots = 2.5  // a millimetre; below, a pencil's line is lost
	fewest    = 0.7  // of the frame's squares that have to be seen
	loose     = 0.12 // where Huber's loss turns straight
	searched  = 2000 // dots of the longer side of the picture in which marks are looked for
)

// seen is a sheet found in a picture.
type seen struct {
	sheet    frame.Sheet
	camera   *camera.Camera
	residual camera.Residual
	soft     float64 // mm
}

// findSheet finds the frame and the camera. The errors are *Refused.
func findSheet(ctx context.Context, p *raster.Picture, o Options) (seen, error) {
	o.stage(Find)
	n := max(1, int(math.Ceil(float64(max(p.Width, p.Height))/searched)))
	g := p.Reduced(n)
	v := find.Look(g)
	corners, err := find.Choose(v.Marks(), g.Width, g.Height)
	if err != nil {
		return seen{}, refuse("%v", err)
	}
	if err := ctx.Err(); err != nil {
		return seen{}, err
	}
	o.stage(CameraFit)
	s, err := locate(p, v, corners, n)
	if err == nil {
		return s, s.flat()
	}
	// the row stands on the other side of the dotted mark in a mirror
	if _, mirrored := locate(p, v, corners.Mirrored(), n); mirrored == nil {
		return seen{}, refuse("the picture is mirrored: turn its mirroring off and photograph the sheet again")
	}
	return seen{}, err
}

// locate takes the corners for true: it follows the frame, fits the camera and reads the row.
func locate(p *raster.Picture, v *find.View, corners find.Corners, n int) (seen, error) {
	sheet, places, err := v.Frame(corners)
	if err != nil {
		return seen{}, refuse("%v", err)
	}
	var rough []camera.Seen
	for _, q := range places {
		rough = append(rough, camera.Seen{Sheet: q.Sheet, Image: q.Image})
	}
	c, err := camera.Fit(rough, sheet, p.Width/n, p.Height/n, 0.5)
	if err != nil {
		return seen{}, refuse("%v", err)
	}
	c = c.Larger(float64(n))
	cells, ok := c.Row(p)
	if !ok {
		return seen{}, refuse("the code row beside the dotted corner is not in the picture: photograph the whole sheet")
	}
	said, err := frame.Parse(cells)
	switch {
	case errors.Is(err, frame.ErrVersion):
		return seen{}, refuse("%v", err)
	case err != nil:
		return seen{}, refuse("the code row beside the dotted corner can't be read: keep it clear, and photograph the sheet sharp and in better light")
	case said != sheet:
		return seen{}, refuse("the code row says %g × %g mm and the frame has %g × %g: nothing may lie on frame or row", said.Width, said.Height, sheet.Width, sheet.Height)
	}
	return exact(p, c, sheet)
}

// exact fits the camera to the squares' middles in the full picture, twice.
func exact(p *raster.Picture, c *camera.Camera, sheet frame.Sheet) (seen, error) {
	out := seen{sheet: sheet}
	var places []camera.Seen
	var err error
	for range 2 {
		places, out.soft = c.Centres(p, sheet)
		if float64(len(places)) < fewest*float64(len(sheet.Squares())) {
			return out, refuse("only %d of the frame's %d squares are clear to see: photograph the sheet sharp, with nothing on the frame", len(places), len(sheet.Squares()))
		}
		if c, err = c.Refit(places, loose); err != nil {
			return out, refuse("%v", err)
		}
	}
	out.camera, out.residual = c, c.Residual(places)
	return out, nil
}

// flat refuses a sheet that was bent or blurred.
func (s seen) flat() error {
	for _, m := range s.sheet.Marks() {
		if s.camera.Scale(m) < leastDots {
			return refuse("the sheet is too small in the picture, %.1f dots a millimetre: go nearer until it fills the picture", s.camera.Scale(m))
		}
	}
	if s.soft > mostSoft {
		return refuse("the picture is blurred, by about %.1f mm on the sheet: hold still, let the camera focus, and photograph it again", s.soft)
	}
	if r := s.residual; r.RMS > mostRMS || r.Worst > mostWorst {
		e := refuse("the sheet was not flat, or the picture is not sharp: %.2f mm off on the whole and %.2f %s; tape it down flat and photograph it again", r.RMS, r.Worst, s.place(r.At))
		e.At, e.Placed = r.At, true
		return e
	}
	return nil
}

// place says a place of the sheet in words.
func (s seen) place(at vec) string {
	return fmt.Sprintf("at %.0f mm across and %.0f along from the dotted corner", at.X, at.Y)
}
