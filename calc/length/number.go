package length

import (
	"strconv"
	"strings"
)

// number is a signed figure without its unit.
type number struct {
	value    float64
	fraction bool // written with a slash
	mixed    bool // a whole number and a fraction
}

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
		v, err := parseDecimal(s)
		return number{value: sign * v}, err
	}
	n, err := parseFraction(s)
	n.value *= sign
	return n, err
}

// parseFraction reads n/d with or without a whole number before it.
func parseFraction(s string) (number, error) {
	n := number{fraction: true}
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
	if !n.mixed {
		n.value = num / den
		return n, nil
	}
	w, ok := parseDigits(whole)
	if !ok {
		return number{}, errSyntax
	}
	if num >= den {
		return n, errProper
	}
	n.value = (w*den + num) / den
	return n, nil
}

// parseDecimal reads digits with at most one point or comma among them.
func parseDecimal(s string) (float64, error) {
	if manyMarks(s) {
		return 0, errMarks
	}
	s = strings.Replace(s, ",", ".", 1)
	before, after, _ := strings.Cut(s, ".")
	if before+after == "" || !allDigits(before) || !allDigits(after) {
		return 0, errSyntax
	}
	v, err := strconv.ParseFloat(before+"."+after, 64)
	if err != nil {
		return 0, errSyntax
	}
	return v, nil
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
