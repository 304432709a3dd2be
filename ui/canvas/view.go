package canvas

import "math"

// View turns millimetres, x to the right and y down, into dots, at one scale
// both ways as the eye sees it.
type View struct {
	scale  float64 // dot widths a mm
	tall   float64 // height of a dot in dot widths
	x0, y0 float64 // the place in mm that lies at dot (0, 0)
	dx, dy float64 // dots by which that place is moved
}

// Box is an upright box in millimetres.
type Box struct{ MinX, MinY, MaxX, MaxY float64 }

// Join returns the smallest box round both.
func (b Box) Join(o Box) Box {
	return Box{min(b.MinX, o.MinX), min(b.MinY, o.MinY), max(b.MaxX, o.MaxX), max(b.MaxY, o.MaxY)}
}

// Grow returns the box with mm more on every side.
func (b Box) Grow(mm float64) Box {
	return Box{b.MinX - mm, b.MinY - mm, b.MaxX + mm, b.MaxY + mm}
}

// Fit returns the view that shows the box in the middle of the canvas as large
// as it will go. An empty box, or one that is not finite, is shown at one
// millimetre a dot.
func (c *Canvas) Fit(b Box) View {
	w, h := c.Dots()
	// One dot stays free right and below for the second dot of wide lines.
	wide, high := float64(w-1), float64(h-1)*c.tall
	scale := min(wide/(b.MaxX-b.MinX), high/(b.MaxY-b.MinY))
	if !(scale > 0) || math.IsInf(scale, 0) {
		scale = 1
	}
	return c.About((b.MinX+b.MaxX)/2, (b.MinY+b.MaxY)/2, scale)
}

// About returns the view with the place x, y (mm) in the middle of the canvas,
// at a scale in dot widths a millimetre.
func (c *Canvas) About(x, y, scale float64) View {
	w, h := c.Dots()
	if !finite(x) || !finite(y) {
		x, y = 0, 0
	}
	if !(scale > 0) || math.IsInf(scale, 0) {
		scale = 1
	}
	return View{scale: scale, tall: c.tall, x0: x, y0: y, dx: float64(w) / 2, dy: float64(h) / 2}
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// Dot returns the place x, y (mm) in dots.
func (v View) Dot(x, y float64) Point {
	return Point{(x-v.x0)*v.scale + v.dx, (y-v.y0)*v.scale/v.tall + v.dy}
}

// MM returns the place in millimetres of a place in dots.
func (v View) MM(p Point) (x, y float64) {
	return (p.X-v.dx)/v.scale + v.x0, (p.Y-v.dy)*v.tall/v.scale + v.y0
}

// Scale is the number of dot widths a millimetre, as Circle takes it.
func (v View) Scale() float64 { return v.scale }
