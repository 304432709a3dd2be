package knifepane

import (
	"slices"
	"strings"
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/ui/form"
)

// What was typed stands in the tables as it was typed, in either unit; a figure that the tool
// shows as well stands as the tool shows it.
func TestTablesShowWhatWasTyped(t *testing.T) {
	for _, c := range []struct {
		unit             length.Unit
		key, typed, want string
	}{
		{length.Millimetres, "knife.station.top", "2.2", "2.2"},
		{length.Millimetres, "knife.station.at", "12.3", "12.3"},
		{length.Millimetres, "knife.station.at", "12", "12.0"},
		{length.Millimetres, "fit.by", "0.53", "0.53"},
		{length.Millimetres, "fit.at", "62.25", "62.25"},
		{length.Millimetres, "knife.station.thick", "1.73", "1.73"},
		{length.Millimetres, "knife.station.thick", "1.7", "1.70"},
		{length.Millimetres, "knife.station.top", "3/32", "2.3813"},
		{length.Inches, "knife.station.at", "7/16", "7/16"},
		{length.Inches, "knife.station.at", "57/128", "0.4453"},
		{length.Inches, "knife.station.top", "5/64", "5/64"},
		{length.Inches, "knife.station.top", "2.2 mm", "0.0866"},
		{length.Inches, "knife.station.thick", "0.07", "0.07"},
	} {
		p := withRows()
		p.Units, p.Knife.Stations = c.unit, slices.DeleteFunc(p.Knife.Stations, func(s knife.Station) bool { return s.At > 0 && s.At < 30 })
		f := open(t, p)
		row := 1
		if strings.HasPrefix(c.key, "fit.") {
			row = 0
		}
		f.goTo(c.key, row)
		line, column := f.pane.line, f.pane.column
		f.keys(c.typed, "enter")
		if f.pane.edit != nil && f.pane.edit.Asking {
			f.keys("enter")
		}
		if got := strings.TrimSpace(form.Rows(f.pane.page, f.project())[line].Texts[column]); got != c.want {
			t.Errorf("%s, %s: %q stands as %q, want %q; said %q", c.unit, c.key, c.typed, got, c.want, f.said)
		}
	}
}

// A fraction in a project in millimetres was read as inches, and that is said, not asked.
func TestAFractionInMillimetres(t *testing.T) {
	f := open(t, defaults())
	f.goTo("knife.outline.depth", -1)
	f.keys("7", "/", "8")
	f.warned("read as inches: 22.225 mm")
	f.keys("enter")
	if want := "blade depth: 7/8, read as inches: 22.225 mm"; len(f.said) != 1 || f.said[0] != want || f.project().Outline.Depth != 22.225 {
		t.Errorf("%v, said %q, want %q", f.project().Outline.Depth, f.said, want)
	}
	f.goTo("sheath.leather", -1)
	f.keys("1/8", "enter")
	if want := "leather: 1/8, read as inches: 3.175 mm"; f.said[len(f.said)-1] != want {
		t.Errorf("said %q, want %q", f.said, want)
	}
	n := len(f.said)
	for _, plain := range []string{"22", "7/8 in", "7/8\""} {
		f.goTo("knife.outline.depth", -1)
		f.keys(plain, "enter")
	}
	if len(f.said) != n {
		t.Errorf("said %q", f.said[n:])
	}
}
