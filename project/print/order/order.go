// Package order writes the sheet that a customer gets: what was quoted, and the order
// when it is accepted. The shop's own figures are not on it.
package order

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"chape/project"
	"chape/project/print/folder"
	"chape/project/print/letters"
	"chape/project/print/pdf"
	"chape/project/print/sheet"
)

// Options say on what to print, and who quotes.
type Options struct {
	Paper      sheet.Paper // the zero one: A4
	Correction sheet.Correction
	Maker      []string // name, then the lines of the address; none: lines to write on
}

// File prints quote i of a project under a name without ending; once it is accepted it is
// an order, in a file of its own. The error is one line: there is no such quote, or that of
// paper and correction.
func File(p project.Project, i int, base string, o Options) (folder.File, error) {
	if i < 0 || i >= len(p.Quotes) {
		return folder.File{}, fmt.Errorf("%q has no quote to print: make one on its cost page (C)", p.Title)
	}
	if err := cmp.Or(o.Paper.OrFirst().Check(), o.Correction.Check()); err != nil {
		return folder.File{}, err
	}
	q := p.Quotes[i]
	pages, err := pages(p, q, o)
	if err != nil {
		return folder.File{}, err
	}
	d := pdf.Document{Paper: o.Paper.OrFirst(), Correction: o.Correction, Date: pdf.DateOr(dateOf(q)), Title: p.Title, Subject: name(q), Pages: pages}
	data, err := d.Bytes(true)
	if err != nil {
		return folder.File{}, err
	}
	return folder.File{Name: folder.Name(base, fmt.Sprintf(" %s %d.pdf", strings.ToLower(name(q)), i+1)), Data: data}, nil
}

// name is what the sheet is.
func name(q project.Quote) string {
	if q.Accepted.IsZero() {
		return "Quote"
	}
	return "Order"
}

// dateOf is the day of what the sheet is.
func dateOf(q project.Quote) time.Time {
	if q.Accepted.IsZero() {
		return q.Date
	}
	return q.Accepted
}

// pages lays the sheet out.
func pages(p project.Project, q project.Quote, o Options) ([]sheet.Page, error) {
	m, err := q.Money()
	if err != nil {
		return nil, err
	}
	const size, gap = 4.0, 5.0
	w, h := o.Paper.OrFirst().Area(o.Correction)
	f := sheet.NewFlow(w, h, name(q), 1, func(size, width float64) string { return day(dateOf(q)) })
	f.Width = min(f.Width, 150) // a longer line is hard to read
	f.Gap(4)
	maker(f, o.Maker, size)
	f.Gap(gap)
	f.Big(p.Title, 2)
	if c := p.Customer.Name; c != "" {
		f.Para("for "+c, size, 0)
	}
	f.Gap(gap)
	for _, line := range strings.Split(q.What, "\n") {
		f.Para(line, size, 0)
	}
	f.Gap(gap)
	f.Big("Price "+m.Bill.Say(), 1)
	f.Para("for what is described on this sheet, quoted on "+day(q.Date)+".", size, 0)
	if !q.Due.IsZero() {
		f.Para("It is promised for "+day(q.Due)+".", size, 0)
	}
	f.Gap(gap)
	if q.Accepted.IsZero() && !q.Until.IsZero() {
		f.Para("This offer holds until "+day(q.Until)+".", size, 0)
		f.Gap(gap)
	}
	if q.Accepted.IsZero() {
		f.Para("Accepted by ______________________     Date ______________", size, 0)
	} else {
		f.Para("Accepted on "+day(q.Accepted)+".", size, 0)
	}
	return f.Pages, nil
}

// maker writes who quotes, or lines to write it on.
func maker(f *sheet.Flow, lines []string, size float64) {
	if len(lines) == 0 {
		f.Para("From ______________________", size, 0)
		return
	}
	for _, l := range lines {
		f.Para(letters.Printable(l), size, 0)
	}
}

// day is "26 November 2026".
func day(t time.Time) string { return t.Format("2 January 2006") }
