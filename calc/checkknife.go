package calc

import (
	"math"
	"strings"

	"chape/calc/knife"
)

// checkThickness asks about measures that look like a slip of the finger: a
// section thicker than it is deep, a depth or thickness far from what its
// neighbours say, a figure of the outline out of all proportion.
func (in Input) checkThickness() []Check {
	var all []Check
	for i, st := range in.Knife.Stations {
		all = append(all, in.oddMark(i, st)...)
	}
	if in.Outline != nil {
		for _, f := range in.Outline.Odd(in.Limits.Unlikely) {
			c := Check{Name: "thickness", Value: f.Value.MM() / f.Usual.MM(), Level: Note}
			c.say("%s: %v where a knife of these proportions has about %v: is that right?", f.Name, inCalliper(f.Value.MM()), inCalliper(f.Usual.MM()))
			all = append(all, c)
		}
	}
	if len(all) == 0 {
		c := Check{Name: "thickness"}
		c.say("no measure of the knife stands out")
		all = append(all, c)
	}
	return all
}

// oddMark asks about the mark at index i. The point itself has no depth to
// speak of, nor has a butt where it rounds off.
func (in Input) oddMark(i int, st knife.Station) (odd []Check) {
	add := func(value float64, form string, args ...any) {
		c := Check{Name: "thickness", Value: value, At: st.At.MM(), HasAt: true, Level: Note}
		c.say(form+": is that right?", append([]any{i + 1, inPlace(c.At)}, args...)...)
		odd = append(odd, c)
	}
	if roundsOff(in.Knife.Stations, i) {
		return nil
	}
	if st.At > 0 && st.Thick > st.Depth()+tie {
		add(st.Thick.MM()/math.Max(st.Depth().MM(), leastRoom), "mark %d, %v: thicker (%v) than it is deep (%v)",
			inCalliper(st.Thick.MM()), inCalliper(st.Depth().MM()))
	}
	all := in.Knife.Stations
	if i == 0 || i == len(all)-1 || all[i-1].At >= st.At || all[i+1].At <= st.At {
		return odd // at an end of its stretch nothing is said from both sides
	}
	a, b := all[i-1], all[i+1]
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
			add(m.has/math.Max(said, leastRoom), "mark %d, %v: its "+m.name+" is %v where its neighbours say %v",
				inCalliper(m.has), inCalliper(said))
		}
	}
	return odd
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
	c := Check{Name: "untouched", Value: float64(len(in.Untouched))}
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
