package report

import (
	"fmt"
	"math"

	"chape/calc"
	"chape/calc/bend"
	"chape/calc/length"
)

// Eased says how much the pouch gives at its tightest place when its leather stretches,
// and how tight it then is.
func Eased(plan *calc.Plan, st bend.Stretch, u length.Unit) string {
	before, at := plan.AfterStretch(0)
	formed, atFormed := plan.AfterStretch(st.Wet)
	dry, atDry := plan.AfterStretch(st.Kept)
	wet, kept, plus := st.Gives(plan.Across(at).Room)
	by := func(mm float64) string { return length.Length(mm).Format(u, length.Calliper) }
	text := fmt.Sprintf("At %s from the point, the tightest place, the pouch gives %s ± %s a side while wet",
		length.Length(at).Format(u, length.Ruler), by(wet), by(plus))
	was := spare(before, u)
	if st.Kept == 0 {
		return text + fmt.Sprintf(": %s as cut, %s once formed%s.", was, spare(formed, u), where(atFormed, at, u))
	}
	return text + fmt.Sprintf(", of which %s stays: %s as cut, %s while it is formed%s, %s once dry%s.",
		by(kept), was, spare(formed, u), where(atFormed, at, u), spare(dry, u), where(atDry, at, u))
}

// spare says how much is over or missing, a side.
func spare(over float64, u length.Unit) string {
	by := length.Length(math.Abs(over)).Format(u, length.Calliper)
	if over > 0 {
		return by + " a side tight"
	}
	return by + " a side to spare"
}

// where names the tightest place where that has moved.
func where(now, before float64, u length.Unit) string {
	if math.Abs(now-before) < 1 {
		return ""
	}
	return " (then tightest at " + length.Length(now).Format(u, length.Ruler) + ")"
}
