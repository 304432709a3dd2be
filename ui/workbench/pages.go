package workbench

import (
	"chape/ui/act"
	"chape/ui/backpage"
	benchview "chape/ui/bench"
	"chape/ui/book"
	"chape/ui/comparepage"
	"chape/ui/costpage"
	"chape/ui/drypane"
	"chape/ui/earlierpage"
	"chape/ui/knifepane"
	"chape/ui/layout"
	"chape/ui/leatherpage"
	"chape/ui/lookpage"
	"chape/ui/planpane"
	"chape/ui/shelfpane"
	"chape/ui/stepspane"
	"chape/ui/tracepage"
	"chape/ui/tracing"
	"chape/ui/trialpage"
)

// pages are all panes and pages, in the order of the help. This list is the only place
// that knows which there are: a new one is a line here.
func pages(o *Options) []act.Page {
	settings := func() tracing.Settings { return o.Tracing } // of the moment
	return []act.Page{
		knifepane.AsPage(o.Styles),
		planpane.AsPage(o.Styles),
		stepspane.AsPage(o.Clock, o.Styles),
		trialpage.AsPage(o.Styles, o.Shelf),
		earlierpage.AsPage(settings, o.Styles, o.Shelf),
		comparepage.AsPage(o.Styles),
		benchview.AsPage(o.Clock, o.wait, o.Styles),
		shelfpane.AsPage(shelfpane.Options{Shelf: o.Shelf, Begin: o.Begin, Clock: o.Clock, Styles: o.Styles}),
		tracepage.AsPage(o.Clock, settings, o.Styles),
		costpage.AsPage(costpage.Options{Shelf: o.Shelf, Clock: o.Clock, Keep: o.KeepPrice, KeepWeek: o.KeepWeek, Styles: o.Styles}),
		backpage.AsPage(backpage.Options{Shelf: o.Shelf, Styles: o.Styles}),
		leatherpage.AsPage(leatherpage.Options{Rack: o.Leather, Shelf: o.Shelf, Print: o.paper, Trace: func() tracing.Settings { return o.Tracing }, Styles: o.Styles}),
		drypane.AsPage(o.Clock, o.Styles),
		lookpage.AsPage(o.Styles),
	}
}

// makePages makes the pages anew, for a project that has just been opened.
func (m *Model) makePages() {
	if m.book.Leaves == nil {
		m.book = book.New(pages(&m.o))
	}
	m.book.Begin(m.snapshot())
	m.lay = layout.Layout{} // so that all hear their size
}
