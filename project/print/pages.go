package print

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/card"
	"chape/project/print/parts"
	"chape/project/print/pdf"
	"chape/project/print/sheet"
	"chape/project/report"
)

// PDF draws the sheets: how they go together, the pattern, the welt, added parts, the
// closed sheath to set out on, the work card and the care card. With a trial
// thickness there are no cards, and every sheet says that it is not for
// leather. Errors are those of the options, and of a trial that has no plan.
func PDF(p project.Project, plan *calc.Plan, o Options) ([]byte, error) {
	j, err := newJob(p, plan, o)
	if err != nil {
		return nil, err
	}
	return j.document(j.pages()).Bytes(true)
}

// document is pages as one file.
func (j *job) document(pages []sheet.Page) pdf.Document {
	return pdf.Document{Paper: j.o.Paper, Correction: j.o.Correction, Date: j.o.Date, Title: j.title(), Subject: fmt.Sprintf("sheath pattern %d", j.p.Revision), Pages: pages}
}

// pages lays out all pages in order.
func (j *job) pages() []sheet.Page {
	pattern := j.pattern()
	whole, words := j.bodyPiece()
	body, tiles := j.sheets(whole, &pattern, words, j.halves())

	j.o.begin("pattern, %s", SheetCount(len(body)))

	j.o.begin("welt")
	strips, stripZones := j.strips()
	weltWords := []string{"Every ply is the same" + j.sanding() + ". Skive the last " + j.skive() + " at the point.", j.scaleWords()}
	if j.trial() {
		weltWords = append(weltWords, j.looseWords())
	}
	weltPages, _ := j.sheets(piece{j.stripsName(), "W", true}, &strips, weltWords, stripZones)

	weltPages = append(weltPages, j.addedPages()...)

	j.o.begin("setting out")
	closed := j.settingOut()
	closedWords := []string{
		"Front of the closed sheath, at true size. Distances are along the stitch line from the mouth. " + j.dividers(),
		"Step the dividers along this line to check them; then measure the line on the real sheath.", j.scaleWords()}
	if j.trial() {
		closedWords = append(closedWords, j.looseWords())
	}
	closedPages, _ := j.sheets(piece{"Setting out", "S", false}, &closed, closedWords, j.closed())

	rest := append(append(body, weltPages...), closedPages...)
	if !j.trial() {
		j.o.begin("work card")
		rest = append(rest, card.Work(j.flow("Work card", 2), j.p, j.plan, j.title(), j.o.Offcut)...)
		j.o.begin("care card")
		rest = append(rest, card.Care(j.flow("Care card", 1), j.p, j.title(), j.o.Maker)...)
	}
	return append([]sheet.Page{j.overview(&pattern, tiles, rest)}, rest...)
}

// addedPages are the sheets of the parts that the maker added, small ones together.
func (j *job) addedPages() []sheet.Page {
	const joints = "ACDEFGHIJKLMNOPQRTUVXYZ" // not those of body, welt and setting out
	var out []sheet.Page
	room := j.tile(piece{name: "Added parts", cutBy: true}, []string{j.scaleWords()}, signs)
	for i, r := range parts.Runs(j.p, room.w, room.h, j.title(), j.trial()) {
		words := []string{j.scaleWords()}
		if r.Says != "" {
			words = append([]string{r.Says}, words...)
		}
		letter := strings.Repeat(joints[i%len(joints):][:1], 1+i/len(joints))
		pages, _ := j.sheets(piece{r.Name, letter, true}, &r.Drawing, words, r.Zones)
		out = append(out, pages...)
	}
	return out
}

// SheetCount is "1 sheet" or "2 sheets".
func SheetCount(n int) string {
	if n == 1 {
		return "1 sheet"
	}
	return fmt.Sprintf("%d sheets", n)
}

// sanding says what the cut lines hold for the sander.
func (j *job) sanding() string {
	if j.p.Sheath.Sanding == 0 {
		return "; nothing is allowed for sanding"
	}
	return "; " + j.exact(j.p.Sheath.Sanding.MM()) + " is to be sanded off the outer edge"
}

// skive is how much of the welt's end is thinned (common practice, no source).
func (j *job) skive() string {
	if j.p.Units == length.Inches {
		return "3/8 to 5/8 in"
	}
	return "10 to 15 mm"
}

// dividers says the setting, and what checks it.
func (j *job) dividers() string {
	set, ten := report.DividerRow(j.plan, j.p.Units), report.TenStepsRow(j.plan, j.p.Units)
	s := capital(set.Name) + " " + set.Said()
	if set.Note != "" {
		s += ", " + set.Note
	}
	return s + "; " + ten.Name + " " + ten.Said() + "."
}

// capital makes the first letter large.
func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}
