package print

import (
	"fmt"

	"chape/calc/curve"
	"chape/project/report"
)

// flow writes words and tables down columns and over pages.
type flow struct {
	j      *job
	name   string
	pages  []page
	cols   int
	col    int
	width  float64 // of a column
	top, h float64
	y      float64
}

const (
	gutter     = 8.0 // between columns, mm
	pageNumber = 3.0 // what it takes at the foot
)

// newFlow starts a run of pages of one name, with up to so many columns.
func newFlow(j *job, name string, cols int) *flow {
	w, h := j.o.Paper.area(j.o.Correction)
	for cols > 1 && (w-gutter*float64(cols-1))/float64(cols) < 85 {
		cols--
	}
	f := &flow{j: j, name: name, cols: cols, h: h - pageNumber, width: (w - gutter*float64(cols-1)) / float64(cols)}
	f.newPage()
	return f
}

func (f *flow) newPage() {
	p := page{name: f.name}
	if len(f.pages) > 0 {
		p.name = fmt.Sprintf("%s, page %d", f.name, len(f.pages)+1)
	}
	w, _ := f.j.o.Paper.area(f.j.o.Correction)
	p.d.text(text{layer: wordLayer, at: curve.Vec{Y: 3.4}, s: fit(p.name, 3.4, w*0.45, true), size: 3.4, bold: true})
	head := f.j.heading(2.6, w*0.52)
	p.d.text(text{layer: wordLayer, at: curve.Vec{X: w, Y: 3.4}, s: head, size: 2.6, anchor: end})
	p.d.line(wordLayer, thin, curve.Vec{Y: 5.2}, curve.Vec{X: w, Y: 5.2})
	f.pages = append(f.pages, p)
	f.col, f.top = 0, 8
	f.y = f.top
}

func (f *flow) page() *drawing { return &f.pages[len(f.pages)-1].d }

func (f *flow) x() float64 { return float64(f.col) * (f.width + gutter) }

// need makes room for so much, in the next column or on the next page.
func (f *flow) need(high float64) {
	if f.y+high <= f.h-1 {
		return
	}
	if f.col+1 < f.cols {
		f.col++
		f.y = f.top
		return
	}
	f.newPage()
}

func (f *flow) gap(high float64) { f.y += high }

// put writes one line of words at an indent; y stays.
func (f *flow) put(indent float64, s string, size float64, bold bool, a anchor) {
	f.page().text(text{layer: wordLayer, at: curve.Vec{X: f.x() + indent, Y: f.y + size}, s: s, size: size, bold: bold, anchor: a})
}

func (f *flow) heading(s string) {
	f.need(16)
	if f.y > f.top {
		f.gap(3)
	}
	f.put(0, fit(printable(s), 3.2, f.width, true), 3.2, true, start)
	f.y += 4.2
	f.page().line(wordLayer, hair, curve.Vec{X: f.x(), Y: f.y}, curve.Vec{X: f.x() + f.width, Y: f.y})
	f.gap(1)
}

// big writes a title on at most so many lines.
func (f *flow) big(s string, most int) {
	const size = 6
	lines := wrap(s, size, f.width, true)
	for i, l := range lines {
		if i == most-1 && len(lines) > most {
			l = fit(l+" "+lines[i+1], size, f.width, true)
		}
		if i < most {
			f.put(0, l, size, true, start)
			f.y += size * 1.25
		}
	}
}

// para writes words as wide as the column.
func (f *flow) para(s string, size, indent float64) {
	for _, l := range wrap(printable(s), size, f.width-indent, false) {
		f.need(size * 1.35)
		f.put(indent, l, size, false, start)
		f.y += size * 1.35
	}
}

// item is a paragraph with a mark before it.
func (f *flow) item(mark, s string) {
	const size, indent = 2.7, 5.0
	lines := wrap(printable(s), size, f.width-indent, false)
	f.need(size * 1.35 * float64(min(len(lines), 3)))
	f.put(0, mark, size, false, start)
	for _, l := range lines {
		f.need(size * 1.35)
		f.put(indent, l, size, false, start)
		f.y += size * 1.35
	}
}

// figures writes names, figures aligned on the decimal point, and notes.
func (f *flow) figures(fs []report.Figure) {
	const size, row = 2.7, 3.7
	name, whole, part := 0.0, 0.0, 0.0
	for _, g := range fs {
		w, p := report.SplitFigure(g.Value)
		name = max(name, textWidth(g.Name, false)*size)
		whole, part = max(whole, textWidth(w, true)*size), max(part, textWidth(p, true)*size)
	}
	point := name + 2 + whole
	note := point + part + 7
	for _, g := range fs {
		w, p := report.SplitFigure(g.Value)
		lines := wrap(printable(g.Note), size, f.width-note, false)
		f.need(row * float64(len(lines)))
		f.put(0, g.Name, size, false, start)
		f.put(point, w, size, true, end)
		f.put(point, p, size, true, start)
		f.put(point+part+1, g.Unit, size, false, start)
		for _, l := range lines {
			f.put(note, l, size, false, start)
			f.y += row
		}
	}
}

// table writes a table flush right, in so many strips side by side.
func (f *flow) table(t report.Table, strips int) {
	const size, row = 2.5, 3.5
	if high := 16 + row*float64(1+(len(t.Rows)+strips-1)/strips); high < f.h-f.top {
		f.need(high) // not torn apart if a column can hold it
	}
	f.heading(t.Name)
	f.para(t.Note, size, 0)
	f.gap(0.5)
	strip := f.width / float64(strips)
	right := columns(t, size, strip-3)
	line := func(k int, cells []string, bold bool) {
		left := 0.0
		for i, c := range cells {
			at := float64(k) * strip
			if t.Columns[i] == "" {
				f.put(at+left+2, c, size, bold, start)
				continue
			}
			f.put(at+right[i], fit(c, size, right[i]-left, bold), size, bold, end)
			left = right[i]
		}
	}
	for from := 0; from < len(t.Rows); {
		f.need(4 * row)
		left := len(t.Rows) - from
		high := min((left+strips-1)/strips, int((f.h-1-f.y)/row)-1)
		for k := range min(strips, (left+high-1)/high) {
			line(k, t.Columns, true)
		}
		f.y += row
		for i := range high {
			for k := range strips {
				if n := from + i + k*high; i+k*high < left {
					line(k, t.Rows[n], false)
				}
			}
			f.y += row
		}
		from += min(left, high*strips)
	}
}

// columns gives the right end of each column: as wide as what stands in it,
// with the room that is left shared among them, up to a limit.
func columns(t report.Table, size, room float64) []float64 {
	widths, sum := make([]float64, len(t.Columns)), 0.0
	for i, c := range t.Columns {
		widths[i] = textWidth(c, true) * size
		for _, r := range t.Rows {
			widths[i] = max(widths[i], textWidth(r[i], false)*size)
		}
		sum += widths[i]
	}
	const most = 8 // mm between columns
	extra := min((room-sum)/float64(len(widths)), most)
	ends, at := make([]float64, len(widths)), 0.0
	for i, w := range widths {
		at += w + extra
		ends[i] = at
	}
	return ends
}
