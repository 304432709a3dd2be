// Package trace reads a photograph of a tracing sheet: it takes red, green and blue samples
// and gives an outline in millimetres, true to a fifth of one, or refuses. No lens, no camera and
// no angle is presumed; all that is needed is printed on the sheet.
package trace

import (
	"chape/calc/curve"
	"chape/calc/trace/camera"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
	"fmt"
)

type vec = curve.Vec

// Picture is the samples; see raster.Picture.
type Picture = raster.Picture

// Of is what was traced.
type Of uint8

// What a sheet may show.
const (
	Knife   Of = iota // a line drawn round a knife
	Pattern           // an earlier pattern, or a sheath opened flat, laid on the sheet
	Leather           // a piece of leather laid on the sheet
)

// Ofs lists them in the order of the screens.
var Ofs = []Of{Knife, Pattern, Leather}

// String gives the word of commands and files.
func (o Of) String() string { return [...]string{"knife", "pattern", "leather"}[o] }

// Stage is what the reading is at.
type Stage uint8

// The stages, in order.
const (
	Find Stage = iota
	CameraFit
	Outline
	Marks
)

// String gives the word that screens show.
func (s Stage) String() string { return [...]string{"find", "camera", "outline", "marks"}[s] }

// Options say how to read. The zero value reads a knife, the stand-off half the line.
type Options struct {
	Of Of
	// Standoff is how far the middle of the drawn line lies from what was traced, mm; 0: half the line's width.
	Standoff float64
	// Rule is the width of a steel rule that was traced to calibrate the stand-off, mm; 0: none was.
	Rule float64
	// Measured is what the two distances of 100 mm on this very sheet measure, across and along, mm;
	// 0: they are true.
	MeasuredX, MeasuredY float64
	// Progress, unless nil, hears each stage as it begins.
	Progress func(Stage)
}

func (o Options) stage(s Stage) {
	if o.Progress != nil {
		o.Progress(s)
	}
}

// Residual is how far the frame is seen from where the camera has it, mm on the sheet.
type Residual = camera.Residual

// Sheet is a sheet's size inside its frame.
type Sheet = frame.Sheet

// Refused is a picture that can't be read true. Its text is one line that says what would do.
type Refused struct {
	Text   string
	At     curve.Vec  // where on the sheet, mm, if Placed
	Placed bool       // At says where
	Seen   curve.Line // of an open line: places on it, mm on the sheet, to be shown
}

func (r *Refused) Error() string { return r.Text }

func refuse(format string, args ...any) *Refused { return &Refused{Text: fmt.Sprintf(format, args...)} }
