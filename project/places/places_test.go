package places

import (
	"testing"

	"chape/calc/length"
	"chape/project"
)

// The new project's knife by hand: a blade of 110 mm, a bolster of 12, the mouth of the
// sheath over both.
func TestOf(t *testing.T) {
	p := project.Defaults()
	all := Of(p)
	if len(all) < 6 || all[0].At != 0 || all[0].Name != "point" {
		t.Fatalf("places %+v", all)
	}
	for i := 1; i < len(all); i++ {
		if all[i].At-all[i-1].At <= one {
			t.Errorf("places %v and %v are two", all[i-1], all[i])
		}
	}
	if last := all[len(all)-1].At; last > p.Sheath.Mouth.MM()+one {
		t.Errorf("a place at %v, past the mouth", last)
	}
	for x, want := range map[float64]string{
		0: "point (mark 1)", 110: "bolster, front face (marks 9, 10)", 122: "bolster, back face (marks 11, 12)",
		-5: "before the point (mark 1)", 999: "past the mouth",
	} {
		if got := At(all, x); got != want && !(x == 999 && got[:8] == "past the") {
			t.Errorf("at %v: %q, want %q", x, got, want)
		}
	}
	for x, want := range map[float64]string{109.9: "over the bolster", 115: "over the bolster", 122: "over the bolster", 0: "at the point"} {
		if got := On(all, x); got != want {
			t.Errorf("on %v: %q, want %q", x, got, want)
		}
	}
	if got := On(all, 123); got != At(all, 123) {
		t.Errorf("on 123: %q", got)
	}
	if got := At(all, 115); got != "between bolster, front face (marks 9, 10) and bolster, back face (marks 11, 12)" {
		t.Errorf("at 115: %q", got)
	}
	if At(nil, 3) != "" || Of(project.Blank()) != nil {
		t.Error("places without a knife")
	}
	p.Source = project.FromStations // who measured it has not said what stands there
	if got := At(Of(p), 110); got != "front of the handle (marks 9, 10)" {
		t.Errorf("measured: %q", got)
	}
}

func TestFigure(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		u    length.Unit
		want string
	}{{110, length.Millimetres, "110"}, {138.5106, length.Millimetres, "138.5"}, {110, length.Inches, "4 11/32"}, {0, length.Inches, "0"}} { // 110 mm are 138.6 thirty-seconds of an inch
		if got := Figure(c.mm, c.u); got != c.want {
			t.Errorf("Figure(%v) = %q, want %q", c.mm, got, c.want)
		}
	}
}

func TestNext(t *testing.T) {
	all := []Place{{At: 0}, {At: 30}, {At: 31}}
	for _, c := range []struct {
		x    float64
		by   int
		want float64
	}{{0, 1, 30}, {10, 1, 30}, {30.1, 1, 31}, {31, 1, 31}, {31, -1, 30}, {29, -1, 0}, {0, -1, 0}} {
		if got := Next(all, c.x, c.by); got != c.want {
			t.Errorf("from %v by %d: %v, want %v", c.x, c.by, got, c.want)
		}
	}
}
