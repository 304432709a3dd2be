package card

import (
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/report"
)

const figureSize, figureRow = 2.7, 3.7

// widths are where the columns of figures stand: the decimal point, the unit, the note.
func widths(fs report.Rows, indent float64) (point, unit, note float64) {
	name, whole, part := 0.0, 0.0, 0.0
	for _, g := range fs {
		w, p := report.SplitFigure(g.Value)
		name = max(name, letters.Width(g.Name, false)*figureSize)
		whole, part = max(whole, letters.Width(w, true)*figureSize), max(part, letters.Width(p, true)*figureSize)
	}
	point = indent + name + 2 + whole
	return point, point + part + 1, point + part + 7
}

// notes are the lines of a figure's note.
func notes(f *sheet.Flow, g report.Row, at float64) []string {
	return letters.Wrap(letters.Printable(g.Words()), figureSize, f.Width-at-1, false)
}

// figuresHigh is what figures take.
func figuresHigh(f *sheet.Flow, fs report.Rows, indent float64) float64 {
	_, _, note := widths(fs, indent)
	sum := 0
	for _, g := range fs {
		sum += len(notes(f, g, note))
	}
	return figureRow * float64(sum)
}

// under writes a heading with figures below it.
func under(f *sheet.Flow, heading string, fs report.Rows) {
	f.Need(sheet.HeadingHigh + figuresHigh(f, fs[:min(2, len(fs))], 0))
	f.Heading(heading)
	figures(f, fs, 0)
}

// figures writes names, figures aligned on the decimal point, and notes.
func figures(f *sheet.Flow, fs report.Rows, indent float64) {
	point, unit, note := widths(fs, indent)
	high := make([]float64, len(fs))
	for i, g := range fs {
		high[i] = figureRow * float64(len(notes(f, g, note)))
	}
	for i, g := range fs {
		w, p := report.SplitFigure(g.Value)
		lines := notes(f, g, note)
		f.Keep(i, high)
		f.Put(indent, g.Name, figureSize, false, sheet.Start)
		f.Put(point, w, figureSize, true, sheet.End)
		f.Put(point, p, figureSize, true, sheet.Start)
		f.Put(unit, g.Unit, figureSize, false, sheet.Start)
		for _, l := range lines {
			f.Put(note, l, figureSize, false, sheet.Start)
			f.Y += figureRow
		}
	}
}

// table writes a table flush right, in so many strips side by side.
func table(f *sheet.Flow, t report.Table, strips int) {
	const size, row = 2.5, 3.5
	if high := 16 + row*float64(1+(len(t.Rows)+strips-1)/strips); high < f.H-f.Top {
		f.Need(high) // not torn apart if a column can hold it
	}
	f.Heading(t.Name)
	f.Para(t.Note, size, 0)
	f.Gap(0.5)
	strip := f.Width / float64(strips)
	right := columns(t, size, strip-3)
	line := func(k int, cells []string, bold bool) {
		left := 0.0
		for i, c := range cells {
			at := float64(k) * strip
			if t.Columns[i] == "" {
				f.Put(at+left+2, c, size, bold, sheet.Start)
				continue
			}
			f.Put(at+right[i], letters.Fit(c, size, right[i]-left, bold), size, bold, sheet.End)
			left = right[i]
		}
	}
	for from := 0; from < len(t.Rows); {
		f.Need(4 * row)
		left := len(t.Rows) - from
		high := min((left+strips-1)/strips, int((f.H-1-f.Y)/row)-1)
		if rest := left - high*strips; rest > 0 && rest <= strips && high > 2 {
			high-- // no row alone at the head of the next column
		}
		for k := range min(strips, (left+high-1)/high) {
			line(k, t.Columns, true)
		}
		f.Y += row
		for i := range high {
			for k := range strips {
				if n := from + i + k*high; i+k*high < left {
					line(k, t.Rows[n], false)
				}
			}
			f.Y += row
		}
		from += min(left, high*strips)
	}
}

// columns gives the right end of each column: as wide as what stands in it,
// with the room that is left shared among them, up to a limit.
func columns(t report.Table, size, room float64) []float64 {
	widths, sum := make([]float64, len(t.Columns)), 0.0
	for i, c := range t.Columns {
		widths[i] = letters.Width(c, true) * size
		for _, r := range t.Rows {
			widths[i] = max(widths[i], letters.Width(r[i], false)*size)
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

// Table writes a table flush right, in so many strips side by side.
func Table(f *sheet.Flow, t report.Table, strips int) { table(f, t, strips) }
