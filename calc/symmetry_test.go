package calc

import (
	"math"
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
)

// times is the same sheath for the same knife at another scale: every length but those
// that the definitions fix.
func times(in Input, f length.Length) Input {
	in.Knife.Stations = append([]knife.Station(nil), in.Knife.Stations...)
	for i := range in.Knife.Stations {
		s := &in.Knife.Stations[i]
		for _, l := range []*length.Length{&s.At, &s.Top, &s.Bottom, &s.Thick, &s.Round} {
			*l *= f
		}
	}
	in.Fits = append([]Fit(nil), in.Fits...)
	for i := range in.Fits {
		c := &in.Fits[i]
		c.At, c.By, c.Reach, c.Paper = c.At*f, c.By*f, c.Reach*f, false
	}
	s, b, st := &in.Sheath, &in.Belt, &in.Stitch
	for _, l := range []*length.Length{&s.Mouth, &s.Leather, &s.Welt, &s.Clearance, &s.HandleClearance, &s.PointRoom, &s.Gap, &s.Margin,
		&s.Sanding, &s.Blend, &s.Ease, &s.MouthRise, &b.Width, &b.Thickness, &b.Ease, &b.Tab, &b.Row, &b.Lap, &b.Offset,
		&st.Pitch, &st.Thread, &st.Needle, &st.First, &st.Last, &st.Tail, &st.Measured, &in.Strap.Thickness, &in.Strap.Width, &in.Strap.Overlap, &in.Strap.At} {
		*l *= f
	}
	return in
}

// Everything twice as large makes a plan twice as large: lengths twice, areas four
// times, shares and counts as they were. The samples do not scale, so to their width.
func TestTwiceTheKnife(t *testing.T) {
	planned(t, 4, 8, func(in Input, _ *Plan) {
		in.Belt.Lap, in.Strap.Kind = 7, NoStrap // where a second row begins, and a strap lies, is fixed
		for i := range in.Fits {
			in.Fits[i].Paper = false
		}
		p := mustPlan(t, in)
		q := mustPlan(t, times(in, 2))
		for _, c := range []struct {
			what string
			a, b float64
		}{
			{"length", p.Body.Length, q.Body.Length}, {"width", p.Body.Width, q.Body.Width}, {"tab", p.Body.TabLength, q.Body.TabLength},
			{"bend", p.Body.Bend, q.Body.Bend}, {"stitch line", p.Stitch.Line, q.Stitch.Line}, {"plane line", p.Stitch.PlaneLine, q.Stitch.PlaneLine},
			{"pitch", p.Stitch.Pitch, q.Stitch.Pitch}, {"setting", p.Stitch.Walk, q.Stitch.Walk}, {"thread", p.Thread.Length, q.Thread.Length},
			{"loop thread", p.Loop.Thread, q.Loop.Thread}, {"end of the seam", p.Flat.EndY, q.Flat.EndY},
			{"gap of the fold line", p.Fold.Gap, q.Fold.Gap}, {"mouth", p.Body.MouthCut, q.Body.MouthCut},
		} {
			within(t, c.what+" of twice the knife", c.b, 2*c.a, 0.06+0.0002*math.Abs(c.a))
		}
		within(t, "area of twice the knife", q.Body.Area, 4*p.Body.Area, 0.001*4*p.Body.Area)
		within(t, "welt of twice the knife", q.Welt.Area, 4*p.Welt.Area, 0.001*4*p.Welt.Area)
		within(t, "ratio of twice the knife", q.Thread.Ratio, p.Thread.Ratio, 1e-3)
		within(t, "squeeze of twice the knife", q.Checks[0].Value, p.Checks[0].Value, 2e-3)
		within(t, "slope of the fold line", q.Fold.Slope, p.Fold.Slope, 1e-6)
		if p.Stitch.Stitches != q.Stitch.Stitches {
			t.Errorf("%d stitches, twice as large %d", p.Stitch.Stitches, q.Stitch.Stitches)
		}
	})
}

// A knife measured from a rule that lies lower, or aslant, is the same knife: the fold
// lies on its back.
func TestAnyRuleWillDo(t *testing.T) {
	planned(t, 5, 8, func(in Input, p *Plan) {
		lower := in
		lower.Knife.Stations = append([]knife.Station(nil), in.Knife.Stations...)
		for i := range lower.Knife.Stations {
			s := &lower.Knife.Stations[i]
			s.Top, s.Bottom = s.Top+3.5, s.Bottom+3.5
		}
		q := mustPlan(t, lower)
		within(t, "fold line under a lower rule", q.Fold.Gap, p.Fold.Gap+3.5, 1e-4)
		within(t, "width under a lower rule", q.Body.Width, p.Body.Width, 0.01)
		within(t, "stitch line under a lower rule", q.Stitch.Line, p.Stitch.Line, 0.02)
		within(t, "squeeze under a lower rule", q.Checks[0].Value, p.Checks[0].Value, 1e-3)
	})
}

// Marks more on straight stretches of a knife say nothing new: the same plan, but for
// where the curves are sampled.
func TestMarksThatSayNothing(t *testing.T) {
	in := bar()
	p := mustPlan(t, in)
	mark := in.Knife.Stations[0]
	more := in
	more.Knife.Stations = nil
	for _, x := range []length.Length{0, 7, 33.3, 50, 90, 119.9, 120, 141, 160} {
		mark.At = x
		more.Knife.Stations = append(more.Knife.Stations, mark)
	}
	if d, what := farthest(p, mustPlan(t, more)); d > 0.005 {
		t.Errorf("marks more on a bar move the %s by %v", what, d)
	}
	in = bladed()
	more = bladed()
	st := more.Knife.Stations
	at := func(s knife.Station, x length.Length) knife.Station { s.At = x; return s }
	more.Knife.Stations = []knife.Station{st[0], at(st[0], 20), at(st[0], 44), st[1], st[2], at(st[2], 100), st[3]}
	if d, what := farthest(mustPlan(t, in), mustPlan(t, more)); d > 0.005 {
		t.Errorf("marks more on a blade and its handle move the %s by %v", what, d)
	}
}

// Which half is the back, for every hand, edge and side up, by the definition: right
// hand, edge to the rear, grain up, the back lies right; each of the three mirrors it.
func TestWhichHalfIsTheBack(t *testing.T) {
	for _, c := range []struct {
		hand  Hand
		edge  Edge
		up    Up
		right bool
	}{
		{RightHand, EdgeRear, GrainUp, true}, {LeftHand, EdgeRear, GrainUp, false}, {RightHand, EdgeFront, GrainUp, false}, {RightHand, EdgeRear, FleshUp, false},
		{LeftHand, EdgeFront, GrainUp, true}, {LeftHand, EdgeRear, FleshUp, true}, {RightHand, EdgeFront, FleshUp, true}, {LeftHand, EdgeFront, FleshUp, false},
	} {
		if got := BackIsRight(c.hand, c.edge, c.up); got != c.right {
			t.Errorf("%v hand, edge to the %v, %v: the back lies right %v, want %v", c.hand, c.edge, c.up, got, c.right)
		}
	}
	if RightHand.String()+LeftHand.String()+EdgeRear.String()+EdgeFront.String() != "rightleftrearfront" ||
		GrainUp.String() != "grain side up" || FleshUp.String() != "flesh side up" {
		t.Error("a hand, an edge or a side has another word")
	}
}
