package calc

import (
	"fmt"
	"strings"
)

// checkUnmeasured names the marks of a traced knife that no calliper was on: their
// thickness, and with it the grind height, is a guess that every figure of the plan
// rests on.
func (in Input) checkUnmeasured() []Check {
	n := len(in.Unmeasured)
	if n == 0 || in.Unmeasured[n-1] >= len(in.Knife.Stations) {
		return nil
	}
	first := in.Unmeasured[0]
	c := Check{Name: "unmeasured", Mend: "knife.station.thick", Mark: first, Level: Note, Value: float64(n),
		At: in.Knife.Stations[first].At.MM(), HasAt: true}
	if n == 1 {
		c.say("mark %d, %v: thickness not measured, nor grind height: it stands as proposed; type it, or Enter on it if it is right",
			first+1, inPlace(c.At))
		return []Check{c}
	}
	c.say("%d of %d marks: thickness not measured, nor grind height: they stand as proposed, at mark %s; type each, or Enter on it if it is right",
		n, len(in.Knife.Stations), runs(in.Unmeasured))
	return []Check{c}
}

// runs says places of a list, ascending from 0, as people count: "1, 4 to 6".
func runs(at []int) string {
	var parts []string
	for i := 0; i < len(at); {
		j := i
		for j+1 < len(at) && at[j+1] == at[j]+1 {
			j++
		}
		switch {
		case j == i:
			parts = append(parts, fmt.Sprint(at[i]+1))
		case j == i+1:
			parts = append(parts, fmt.Sprint(at[i]+1), fmt.Sprint(at[j]+1))
		default:
			parts = append(parts, fmt.Sprintf("%d to %d", at[i]+1, at[j]+1))
		}
		i = j + 1
	}
	return strings.Join(parts, ", ")
}
