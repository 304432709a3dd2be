// Package form is how the form is divided: which page a value stands on, and which value
// a check of the plan is mended at. The pane that shows the form and the root, which
// leads to what warns, read the same table.
package form

import (
	"slices"
	"sync"

	"chape/project"
)

// Page is one of the form's pages.
type Page uint8

// The pages, in the order of the work.
const (
	Knife Page = iota
	Sheath
	Loop
	Stitches
	Trial
	Order
	Pages = 6
)

// Group is a part of a page: a group of fields, and what stands over it.
type Group struct{ Key, Heading string }

var pages = [Pages]struct {
	name, short string
	groups      []Group
}{
	Knife:    {"knife", "knife", []Group{{"outline", ""}, {"marks", ""}, {"knife", ""}}},
	Sheath:   {"sheath", "sheath", []Group{{"sheath", ""}}},
	Loop:     {"loop and strap", "loop", []Group{{"belt", "Belt loop"}, {"strap", "Strap"}}},
	Stitches: {"seam", "seam", []Group{{"stitches", ""}}},
	Trial:    {"trial", "trial", []Group{{"fits", "Corrections after a trial fit"}}},
	Order:    {"order", "order", []Group{{"customer", "Who it is for"}, {"project", "This project"}}},
}

// String is the page's name.
func (p Page) String() string { return pages[p%Pages].name }

// Short is its name where there is little room.
func (p Page) Short() string { return pages[p%Pages].short }

// Groups are the parts of the page.
func (p Page) Groups() []Group { return pages[p%Pages].groups }

// Next is the page so many further on, round the end.
func (p Page) Next(by int) Page { return Page(((int(p)+by)%Pages + Pages) % Pages) }

// Of is the page that a group of fields stands on; ok is false for those that have a pane
// of their own.
func Of(group string) (Page, bool) {
	for p := range Page(Pages) {
		if slices.ContainsFunc(p.Groups(), func(g Group) bool { return g.Key == group }) {
			return p, true
		}
	}
	return 0, false
}

// OfKey is the page of a field by its key in the file.
func OfKey(key string) (Page, bool) {
	p, ok := ofKeys()[key]
	return p, ok
}

var ofKeys = sync.OnceValue(func() map[string]Page {
	all := map[string]Page{}
	for _, f := range slices.Concat(project.Fields, project.MarkFields(0), project.FitFields(0)) {
		if p, ok := Of(f.Group); ok {
			all[f.Key] = p
		}
	}
	return all
})
