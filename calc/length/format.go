package length

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Fineness is how closely a figure is shown: no closer than the tool it
// will be laid out with can show.
type Fineness uint8

// The finenesses.
const (
	Ruler    Fineness = iota // to 0.5 mm or 1/32 in
	Calliper                 // to 0.05 mm or 1/64 in
)

// step is the finest length that is shown.
func (f Fineness) step(u Unit) Length {
	switch {
	case u == Inches && f == Calliper:
		return Inch / 64
	case u == Inches:
		return Inch / 32
	case f == Calliper:
		return 0.05
	}
	return 0.5
}

// Format shows l with its unit: "12.5 mm", "1 3/8 in". Halves round away
// from zero. Zeros after the decimal point are left out.
func (l Length) Format(u Unit, f Fineness) string {
	s := l.Figure(u, f)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s + " " + u.String()
}

// Figure shows l without its unit. Millimetres have one decimal by the
// ruler and two by the calliper, so that figures set flush right align on
// the decimal point; inches are whole numbers and reduced fractions.
func (l Length) Figure(u Unit, f Fineness) string {
	if u == Inches {
		den := 32
		if f == Calliper {
			den = 64
		}
		return fraction(roundUp(l.In()*float64(den)), den)
	}
	step, decimals := f.step(u).MM(), 1
	if f == Calliper {
		decimals = 2
	}
	return strconv.FormatFloat(roundUp(l.MM()/step)*step, 'f', decimals, 64)
}

// Typed shows what was typed, without its unit: as Figure, but as Short where that would
// round it.
func (l Length) Typed(u Unit, f Fineness) string {
	text := l.Figure(u, f)
	if shown, err := Parse(text, u); err != nil || math.Abs((shown-l).MM()) > sameTyped {
		return l.Short(u)
	}
	return text
}

// sameTyped is how far a figure may be from what was typed, after conversions, mm.
const sameTyped = 1e-6

// Exact shows l without its unit for editing: Parse(l.Exact(u), u) is l
// again if l was typed in u. Millimetres are the shortest decimal; inches a
// fraction if l is whole 64ths, the shortest decimal if not.
func (l Length) Exact(u Unit) string {
	if u == Millimetres {
		return strconv.FormatFloat(l.MM(), 'f', -1, 64)
	}
	n := math.Round(l.In() * 64)
	if sixtyFourths(n) == l {
		return fraction(n, 64)
	}
	for decimals := range 11 { // what was typed, not its last bit after two conversions
		s := strconv.FormatFloat(l.In(), 'f', decimals, 64)
		if v, err := parseNumber(s); err == nil && v.times(inchSize) == l {
			return s
		}
	}
	// A 64th that was reached through millimetres, or was read by an older program, may be
	// one bit off.
	if math.Abs(float64(sixtyFourths(n)-l)) <= 1e-15*math.Abs(float64(l)) {
		return fraction(n, 64)
	}
	return strconv.FormatFloat(l.In(), 'f', -1, 64)
}

// sixtyFourths is a length of n 64ths of an inch.
func sixtyFourths(n float64) Length { return number{num: n, den: 64}.times(inchSize) }

// near64th is how far from a 64th of an inch a length is still shown as one: a
// calliper shows no more.
const near64th = 0.05 * Millimetre

// Short shows l without its unit in at most four decimals, for a screen. Inches
// typed so are shown as they were typed; others, which came from millimetres,
// as the nearest 64th where that is within 0.05 mm. Only what would round to
// nothing has more decimals.
func (l Length) Short(u Unit) string {
	exact := l.Exact(u)
	_, part, _ := strings.Cut(exact, ".")
	if len(part) <= 4 {
		return exact
	}
	if u == Inches {
		n := math.Round(l.In() * 64)
		if n != 0 && math.Abs(float64(sixtyFourths(n)-l)) <= float64(near64th) {
			return fraction(n, 64)
		}
	}
	s := strings.TrimRight(strconv.FormatFloat(float64(l)*u.size().den/u.size().num, 'f', 4, 64), "0")
	if s = strings.TrimSuffix(s, "."); s == "0" || s == "-0" {
		return exact
	}
	return s
}

// roundUp rounds to a whole number, halves away from zero. A figure that is
// a half but for its last bits (12.525/0.05 is 250.49999999999997) counts
// as one. There is no negative zero.
func roundUp(x float64) float64 {
	return math.Copysign(math.Floor(math.Abs(x)+0.5+1e-9), x) + 0
}

// fraction writes n/den as a whole number and a reduced fraction.
func fraction(n float64, den int) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	if !(n < 1<<53) { // no fraction left in a float64, and int would overflow
		return sign + strconv.FormatFloat(n/float64(den), 'f', -1, 64)
	}
	whole, num := int64(n)/int64(den), int64(n)%int64(den)
	d := int64(den)
	for num > 0 && num%2 == 0 {
		num, d = num/2, d/2
	}
	switch {
	case num == 0:
		return fmt.Sprintf("%s%d", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, num, d)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, num, d)
}
