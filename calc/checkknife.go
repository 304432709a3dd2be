package calc

import (
	"math"
	"slices"
	"strings"

	"chape/calc/knife"
)

// checkThickness asks about measures that look like a slip of the finger: a
// section thicker than it is deep, a depth or thickness far from what its
// neighbours say, a figure of the outline out of all proportion.
func (in Input) checkThickness() []Check {
	var all []Check
	if in.Outline == nil {
		for i := range in.Knife.Stations {
			for _, o := range in.oddMark(i) {
				all = append(all, o.ofMark(i, in.Knife.Stations[i].At.MM()))
			}
		}
	} else {
		for _, f := range in.Outline.Odd(in.Limits.Unlikely) {
			c := Check{Name: "thickness", Value: f.Value.MM() / f.Usual.MM(), Level: Note, Mend: "knife.outline." + f.Key}
			c.say("%s: %v where a knife of these proportions has about %v: is that right?", f.Name, inCalliper(f.Value.MM()), inCalliper(f.Usual.MM()))
			all = append(all, c)
		}
		for _, c := range in.oddOutline() {
			if !slices.ContainsFunc(all, func(o Check) bool { return o.Mend == c.Mend }) { // once is enough
				all = append(all, c)
			}
		}
	}
	if len(all) == 0 {
		c := Check{Name: "thickness", Mend: "knife.station.thick"}
		if in.Outline != nil {
			c.Mend = "knife.outline.handle_thick"
		}
		c.say("no measure of the knife stands out")
		all = append(all, c)
	}
	return all
}

// odd is a measure of a section that looks like a slip: has beside said.
type odd struct {
	name      string // "depth" or "thickness"
	has, said float64
	thicker   bool // said is the section's own depth
}

func (o odd) value() float64 { return o.has / math.Max(o.said, leastRoom) }

// ofMark is the check of a mark that was measured.
func (o odd) ofMark(i int, at float64) Check {
	c := Check{Name: "thickness", Value: o.value(), At: at, HasAt: true, Level: Note, Mend: "knife.station.thick", Mark: i}
	if o.name == "depth" {
		c.Mend = "knife.station.bottom"
	}
	if o.thicker {
		c.say("mark %d, %v: thicker (%v) than it is deep (%v): is that right?", i+1, inPlace(at), inCalliper(o.has), inCalliper(o.said))
		return c
	}
	c.say("mark %d, %v: its %s is %v where its neighbours say %v: is that right?", i+1, inPlace(at), o.name, inCalliper(o.has), inCalliper(o.said))
	return c
}

// oddOutline is the same for marks that an outline has filled, which nobody sees: one note
// for each of its figures that sections stand out by, where that is worst.
func (in Input) oddOutline() []Check {
	var all []Check
	known := map[string]int{} // place in all
	for i, st := range in.Knife.Stations {
		for _, o := range in.oddMark(i) {
			key, name := in.Outline.Makes(i, o.name)
			c := Check{Name: "thickness", Value: o.value(), At: st.At.MM(), HasAt: true, Level: Note, Mend: "knife.outline." + key}
			if o.thicker {
				c.say("%s: the knife is thicker (%v), %v, than it is deep (%v): is that right?", name, inCalliper(o.has), inPlace(c.At), inCalliper(o.said))
			} else {
				c.say("%s: the knife's %s, %v, is %v where beside it there is %v: is that right?", name, o.name, inPlace(c.At), inCalliper(o.has), inCalliper(o.said))
			}
			switch n, is := known[key]; {
			case !is:
				known[key] = len(all)
				all = append(all, c)
			case outOf(c.Value) > outOf(all[n].Value)+tie:
				all[n] = c
			}
		}
	}
	return all
}

// outOf is how far a share is from 1 in proportion: half is as far as double.
func outOf(share float64) float64 { return math.Abs(math.Log(share)) }

// oddMark is what stands out at the mark at index i. The point itself has no depth to
// speak of, nor has a butt where it rounds off.
func (in Input) oddMark(i int) (all []odd) {
	marks := in.Knife.Stations
	st := marks[i]
	if roundsOff(marks, i) {
		return nil
	}
	if st.At > 0 && st.Thick > st.Depth()+tie {
		all = append(all, odd{"thickness", st.Thick.MM(), st.Depth().MM(), true})
	}
	if i == 0 || i == len(marks)-1 || marks[i-1].At >= st.At || marks[i+1].At <= st.At {
		return all // at an end of its stretch nothing is said from both sides
	}
	a, b := marks[i-1], marks[i+1]
	share := ((st.At - a.At) / (b.At - a.At)).MM()
	for _, m := range []struct {
		name          string
		has, at0, at1 float64
	}{
		{"depth", st.Depth().MM(), a.Depth().MM(), b.Depth().MM()},
		{"thickness", st.Thick.MM(), a.Thick.MM(), b.Thick.MM()},
	} {
		said := m.at0 + share*(m.at1-m.at0)
		if k := in.Limits.Unlikely; m.has > k*said+tie || m.has < said/k-tie {
			all = append(all, odd{name: m.name, has: m.has, said: said})
		}
	}
	return all
}

// nearest is the index of the mark nearest to a place along the fold, mm.
func nearest(marks []knife.Station, x float64) int {
	best, least := 0, math.Inf(1)
	for i, s := range marks {
		if d := math.Abs(s.At.MM() - x); d < least {
			best, least = i, d
		}
	}
	return best
}

// roundsOff tells whether the mark at index i lies where the butt rounds off, as a traced
// outline has it: within half its depth of the knife's end, as is another mark, and ever less
// deep from there on to less than half of it.
func roundsOff(marks []knife.Station, i int) bool {
	end := len(marks) - 1
	begin, deepest := end, marks[end].Depth()
	for ; begin > 0 && marks[begin-1].At < marks[begin].At; begin-- {
		deepest = max(deepest, marks[begin-1].Depth())
	}
	for j := end; j > i; j-- {
		if marks[j-1].Depth() <= marks[j].Depth() {
			return false
		}
	}
	return i > begin && marks[end].At-marks[min(i, end-1)].At <= deepest/2 && marks[end].Depth() < deepest/2
}

// checkUntouched names the knife's numbers that still are a new project's: a
// sheath for a knife that nobody has measured.
func (in Input) checkUntouched() []Check {
	c := Check{Name: "untouched", Mend: "knife.outline.blade", Value: float64(len(in.Untouched))}
	switch n := len(in.Untouched); n {
	case 0:
		return nil
	case 1:
		c.say("1 number of the knife is still the new project's: %s; type it, or Enter on it if it is right", in.Untouched[0])
	default:
		c.say("%d numbers of the knife are still the new project's: %s; type each, or Enter on it if it is right",
			n, strings.Join(in.Untouched, ", "))
	}
	c.Level = Note
	return []Check{c}
}
