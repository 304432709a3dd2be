package knifepane

import (
	"fmt"
	"strings"
	"testing"

	"chape/calc"
	"chape/project"
	"chape/ui/form"
	"chape/ui/test/golden"
)

// Each page as it stands in windows of 80×24 and of 160×45, the marks too, and the trial
// page before a trial.
func TestGoldenPages(t *testing.T) {
	p := defaults()
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 110, By: 1.5, Reach: 20}, With: "paper", Note: "tight over the bolster"}}
	for _, size := range []struct{ w, h, inW, inH int }{{80, 24, 78, 20}, {160, 45, 46, 41}} {
		f := open(t, p)
		f.pane.SetSize(size.inW, size.inH)
		for page := range form.Page(form.Pages) {
			f.pane.show(page)
			name := strings.ReplaceAll(page.String(), " ", "-")
			golden.Screen(t, fmt.Sprintf("%s-%dx%d.txt", name, size.w, size.h), f.screen())
		}
		q := p
		q.Source = project.FromStations
		f = open(t, q)
		f.pane.SetSize(size.inW, size.inH)
		golden.Screen(t, fmt.Sprintf("marks-%dx%d.txt", size.w, size.h), f.screen())
		q.Fits = nil
		f = open(t, q)
		f.pane.SetSize(size.inW, size.inH)
		f.pane.show(form.Trial)
		golden.Screen(t, fmt.Sprintf("no-trial-%dx%d.txt", size.w, size.h), f.screen())
	}
}
