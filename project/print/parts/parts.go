// Package parts draws the parts that a maker adds, at true size: as many on a drawing as
// one sheet has room for, each with its name, how often it is cut, of what, and its size.
package parts

import (
	"chape/calc/curve"
	"chape/project"
	"chape/project/print/letters"
	"chape/project/print/sheet"
)

// Run is a drawing of parts, a sheet's worth of small ones or a single large one.
type Run struct {
	Name    string // "Added parts", or that of the part alone
	Drawing sheet.Drawing
	Zones   []sheet.Zone
	Says    string // of a part alone: it in a line
}

// What parts keep from each other and from their words, mm.
const (
	apart = 10.0
	below = 3.5 // from the cut to the first line of words
	row   = 3.6
	inset = 2.5  // from the ends of a part to its words
	words = 40.0 // that wide at most, below a part that is narrower
)

// cell is a part with the words below it, its upper left corner at the origin.
type cell struct {
	part sheet.Box
	d    sheet.Drawing
	zone sheet.Zone
	size curve.Vec
	name string
}

// Runs lays the parts of p out for sheets with room for w × h mm. Words don't count where a
// drawing is centred on its sheet: some room round it is theirs. title is what the pieces
// say of the knife, trial that they are not for leather. Parts without an outline are refused
// where they are typed, and left out here.
func Runs(p project.Project, w, h float64, title string, trial bool) []Run {
	w, h = w-words, h-2*(below+3*row)
	var runs []Run
	var at curve.Vec        // where the next one stands in the last run
	high, shared := 0.0, -1 // which run it is
	for _, a := range p.Added {
		outline, err := a.Outline()
		if err != nil {
			continue
		}
		c := newCell(a, outline, p, title, trial)
		if c.size.X > w || c.size.Y > h { // the words below it could lie on no sheet
			c.d.Texts = nil
			runs = append(runs, Run{Name: c.name, Says: a.Say(p.Sheath.Leather, p.Units)})
			runs[len(runs)-1].add(c, curve.Vec{})
			continue
		}
		if shared >= 0 && at.X+c.size.X > w { // the next row
			at, high = curve.Vec{Y: at.Y + high + apart}, 0
		}
		if shared < 0 || at.Y+c.size.Y > h {
			shared, at, high = len(runs), curve.Vec{}, 0
			runs = append(runs, Run{Name: "Added parts"})
		}
		runs[shared].add(c, at)
		at.X += c.size.X + apart
		high = max(high, c.size.Y)
	}
	return runs
}

// add puts a part into the run.
func (r *Run) add(c cell, at curve.Vec) {
	r.Drawing.Add(c.d, at)
	z := c.zone
	z.Area = sheet.Box{Lo: z.Area.Lo.Add(at), Hi: z.Area.Hi.Add(at)}
	z.Guides = nil
	for _, g := range c.zone.Guides {
		moved := make(curve.Line, len(g))
		for i, v := range g {
			moved[i] = v.Add(at)
		}
		z.Guides = append(z.Guides, moved)
	}
	r.Zones = append(r.Zones, z)
}

// newCell draws a part upright, its length along the paper's.
func newCell(a project.Part, outline curve.Line, p project.Project, title string, trial bool) cell {
	lo, hi := outline.Bounds()
	wide, long := hi.Y-lo.Y, hi.X-lo.X
	up := make(curve.Line, len(outline))
	for i, v := range outline {
		up[i] = curve.Vec{X: v.Y - lo.Y, Y: hi.X - v.X}
	}
	c := cell{name: letters.Printable(a.Name), size: curve.Vec{X: wide, Y: long},
		part: sheet.Box{Hi: curve.Vec{X: wide, Y: long}}}
	c.d.Path(sheet.Path{Layer: sheet.AddedLayer, Stroke: sheet.Wide, Pts: sheet.Thinned(up, true), Closed: true})
	says := []string{c.name, a.Cut(p.Sheath.Leather, p.Units), a.Size(p.Units)}
	if trial {
		says[1] = "TRIAL: not for leather"
	}
	for i, s := range says {
		s = letters.Fit(letters.Printable(s), sheet.WordSize, max(wide, words), i == 0)
		t := sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{Y: long + below + row*float64(i)}, Says: s, Size: sheet.WordSize, Bold: i == 0}
		c.d.Text(t)
		c.size.X = max(c.size.X, letters.Width(s, i == 0)*sheet.WordSize)
		c.size.Y = t.At.Y + 1
	}
	line := func(x float64) curve.Line { return curve.Line{{X: x, Y: long - inset}, {X: x, Y: inset}} }
	c.zone = sheet.Zone{Area: c.part, Words: append(says, title), Guides: []curve.Line{line(wide / 4), line(wide / 2), line(3 * wide / 4)}}
	return c
}

// Beside puts all parts right of what is drawn, for a cutter, upright and their feet level.
func Beside(d *sheet.Drawing, p project.Project, title string, trial bool) {
	const gap = 25
	for _, a := range p.Added {
		outline, err := a.Outline()
		if err != nil {
			continue
		}
		whole := d.Bounds()
		c := newCell(a, outline, p, title, trial)
		d.Add(c.d, curve.Vec{X: whole.Hi.X + gap, Y: whole.Hi.Y - c.part.Hi.Y})
	}
}
