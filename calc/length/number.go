package length

import (
	"math"
	"strconv"
	"strings"
)

// number is a signed figure without its unit: num/den. Both are whole where that is exact,
// so that what is read is rounded once: 3/8 in is 3·254/(8·10) mm, which is 9.525, while
// 0.375 times 25.4 is a last bit less.
type number struct {
	num, den float64
	fraction bool // written with a slash
	mixed    bool // a whole number and a fraction
}

// times is the number of sizes as a length.
func (n number) times(size ratio) Length {
	return Length(n.num * size.num / (n.den * size.den))
}

// ratio is the size of a unit in millimetres, as two whole numbers.
type ratio struct{ num, den float64 }

// The sizes.
var (
	mmSize    = ratio{1, 1}
	cmSize    = ratio{10, 1}
	inchSize  = ratio{254, 10}
	ounceSize = ratio{254, 640}
)

// parseNumber reads [sign] (decimal | n/d | whole n/d | whole-n/d). What it
// lets through is digits with one mark at most, so no exponents, hexadecimal
// figures, underscores, infinities or NaN reach strconv.
func parseNumber(s string) (number, error) {
	sign := 1.0
	if rest, ok := strings.CutPrefix(s, "-"); ok {
		sign, s = -1, rest
	} else {
		s = strings.TrimPrefix(s, "+")
	}
	s = strings.TrimSpace(s)
	if !strings.Contains(s, "/") {
		n, err := parseDecimal(s)
		n.num *= sign
		return n, err
	}
	n, err := parseFraction(s)
	n.num *= sign
	return n, err
}

// parseFraction reads n/d with or without a whole number before it.
func parseFraction(s string) (number, error) {
	n := number{den: 1, fraction: true}
	over, under, _ := strings.Cut(s, "/")
	over, under = strings.TrimSpace(over), strings.TrimSpace(under)
	whole := ""
	if i := strings.IndexAny(over, " -"); i >= 0 {
		n.mixed = true
		whole, over = over[:i], strings.TrimSpace(over[i+1:])
	}
	den, ok1 := parseDigits(under)
	num, ok2 := parseDigits(over)
	if !ok1 || !ok2 {
		return number{}, errSyntax
	}
	if den == 0 {
		return n, errZero
	}
	if n.den = den; !n.mixed {
		n.num = num
		return n, nil
	}
	w, ok := parseDigits(whole)
	if !ok {
		return number{}, errSyntax
	}
	if num >= den {
		return n, errProper
	}
	n.num = w*den + num
	return n, nil
}

// exactDigits is how many digits a float64 holds with room for a factor of 254.
const exactDigits = 13

// parseDecimal reads digits with at most one point or comma among them.
func parseDecimal(s string) (number, error) {
	if manyMarks(s) {
		return number{}, errMarks
	}
	s = strings.Replace(s, ",", ".", 1)
	before, after, _ := strings.Cut(s, ".")
	if before+after == "" || !allDigits(before) || !allDigits(after) {
		return number{}, errSyntax
	}
	n := number{den: 1}
	text := before + "." + after
	if len(after) <= exactDigits && len(strings.TrimLeft(before+after, "0")) <= exactDigits {
		text, n.den = before+after, math.Pow10(len(after))
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return number{}, errSyntax
	}
	n.num = v
	return n, nil
}

// manyMarks tells whether s is digits in groups, as 1,234.5 or 1.234.567:
// nobody can tell which mark is the decimal one.
func manyMarks(s string) bool {
	groups := strings.FieldsFunc(s, func(r rune) bool { return r == '.' || r == ',' })
	marks := strings.Count(s, ".") + strings.Count(s, ",")
	return marks > 1 && len(groups) == marks+1 && allDigits(strings.Join(groups, ""))
}

// parseDigits reads a whole number.
func parseDigits(s string) (float64, bool) {
	if s == "" || !allDigits(s) {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}

func allDigits(s string) bool {
	return strings.Trim(s, "0123456789") == ""
}

// isRange tells whether s looks like two figures with a dash or "to"
// between them.
func isRange(s string) bool {
	a, b, ok := strings.Cut(s, "-")
	if !ok {
		a, b, ok = strings.Cut(s, "to")
	}
	if !ok {
		return false
	}
	_, err1 := parseDecimal(strings.TrimSpace(a))
	_, err2 := parseDecimal(strings.TrimSpace(b))
	return err1 == nil && err2 == nil
}
