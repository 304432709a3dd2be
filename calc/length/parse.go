package length

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Bounds on what is read. Nothing on a workbench is a kilometre long, and
// no reading has sixty characters.
const (
	longestInput        = 60 // bytes
	longest      Length = 1e6
)

// Parse reads a length as people write it:
//
//	3.2   3,2   3.2 mm   +003.20   0.32 cm   -1.5
//	1/8   1/8 in   1 3/8"   1-3/8   ⅛   1⅜″   0.125 in
//
// A number without a unit is in bare, except a fraction: that is always of
// an inch, for nobody writes 1/8 when they mean millimetres. A comma is a
// decimal comma, so 1,234 is a little over one; commas and points together
// are refused. The error is one line, quotes the input and says what would
// do. Time is bounded whatever the input.
func Parse(s string, bare Unit) (Length, error) {
	num, unit, err := split(s)
	if err != nil {
		return 0, err
	}
	if isOunce(unit) {
		return 0, fmt.Errorf("%s is a leather weight: here try 3.2, 3.2 mm, 1/8 in", quote(s))
	}
	return measure(s, num, unit, bare)
}

// ParseLeather reads the thickness of leather: all that Parse reads, and
// leather weights such as 8 oz (see Ounce). A weight as sold may be a range: 8-9
// oz, 8/9 oz, 8–9 oz; it counts as its thicker end, for that has to fit.
func ParseLeather(s string, bare Unit) (Length, error) {
	sold, err := ParseSold(s, bare)
	return sold.Thick, err
}

// Sold is leather as it is bought. The zero value is no leather.
type Sold struct {
	Thick Length // what counts: of a range the thicker end
	As    string // a range as it was typed; "" where one figure was
}

// ParseSold is ParseLeather that keeps a range as it was typed.
func ParseSold(s string, bare Unit) (Sold, error) {
	num, unit, err := split(s)
	if err != nil {
		return Sold{}, err
	}
	if !isOunce(unit) {
		l, err := measure(s, num, unit, bare)
		return Sold{Thick: l}, err
	}
	if end, ok := thicker(num); ok {
		l, err := bounded(s, end, ounceSize)
		return Sold{l, strings.TrimSpace(s)}, err
	}
	n, err := parseNumber(num)
	if err != nil {
		return Sold{}, fmt.Errorf("%s is not a thickness: try 8 oz, 8-9 oz, 3.2 mm, 1/8 in", quote(s))
	}
	l, err := bounded(s, n, ounceSize)
	return Sold{Thick: l}, err
}

// thicker is the thicker end of a range of weights: two figures with a dash, a
// slash or "to" in between.
func thicker(num string) (number, bool) {
	for _, mark := range []string{"-", "/", "to"} {
		a, b, ok := strings.Cut(num, mark)
		if !ok {
			continue
		}
		v, err1 := parseDecimal(strings.TrimSpace(a))
		w, err2 := parseDecimal(strings.TrimSpace(b))
		if err1 != nil || err2 != nil || mark == "/" && v.num <= v.den { // 1/2 oz is a half
			continue
		}
		if v.num*w.den > w.num*v.den {
			return v, true
		}
		return w, true
	}
	return number{}, false
}

// measure turns the two parts of s into a length.
func measure(s, num, unit string, bare Unit) (Length, error) {
	n, err := parseNumber(num)
	if err != nil {
		if isRange(num) {
			err = errRange
		}
		return 0, fmt.Errorf("%s is not a length: %w", quote(s), err)
	}
	if unit == "" {
		if n.fraction {
			bare = Inches
		}
		return bounded(s, n, bare.size())
	}
	size, ok := units[unit]
	switch {
	case unit == "'" || unit == "ft":
		return 0, fmt.Errorf("%s is in feet: %w", quote(s), errFeet)
	case !ok:
		return 0, fmt.Errorf("%s is not a length: %w", quote(s), errSyntax)
	}
	return bounded(s, n, size)
}

// What would do instead.
var (
	errSyntax = errors.New("try 3.2, 3.2 mm, 1/8 in")
	errEmpty  = errors.New("nothing typed: try 3.2, 3.2 mm, 1/8 in")
	errMarks  = errors.New("write it with one decimal point and no thousands mark, as 1234.5")
	errRange  = errors.New("a range will not do, write one figure")
	errFeet   = errors.New("write it in inches, a foot is 12 in")
	errZero   = errors.New("nothing can be divided by 0, try 1/8 in")
	errProper = errors.New("the fraction after a whole number must be less than 1, try 1 3/8 in")
)

// units are the words and signs after a number, folded by split.
var units = map[string]ratio{
	"mm": mmSize, "millimetre": mmSize, "millimetres": mmSize,
	"millimeter": mmSize, "millimeters": mmSize,
	"cm": cmSize,
	"in": inchSize, "inch": inchSize, "inches": inchSize, `"`: inchSize,
}

func isOunce(unit string) bool {
	return unit == "oz" || unit == "ounce" || unit == "ounces"
}

// fold brings the many ways to write a sign to one.
var fold = strings.NewReplacer(
	"\u2212", "-", "\u2010", "-", "\u2011", "-", "\u2013", "-", // minus, hyphens, en dash
	"\u2044", "/", "\u2215", "/", // fraction slash, division slash
	"''", `"`, "\u2032\u2032", `"`, "\u2019\u2019", `"`, "\u2033", `"`, "\u201d", `"`, "\u201c", `"`,
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ",
	"¼", " 1/4 ", "½", " 1/2 ", "¾", " 3/4 ",
	"⅐", " 1/7 ", "⅑", " 1/9 ", "⅒", " 1/10 ", "⅓", " 1/3 ", "⅔", " 2/3 ",
	"⅕", " 1/5 ", "⅖", " 2/5 ", "⅗", " 3/5 ", "⅘", " 4/5 ", "⅙", " 1/6 ", "⅚", " 5/6 ",
	"⅛", " 1/8 ", "⅜", " 3/8 ", "⅝", " 5/8 ", "⅞", " 7/8 ", "⅟", " 1/",
)

// split folds s and cuts it into number and unit.
func split(s string) (num, unit string, err error) {
	if len(s) > longestInput {
		return "", "", fmt.Errorf("%s is too long for a length: %w", quote(s), errSyntax)
	}
	t := strings.ToLower(strings.TrimSpace(fold.Replace(s)))
	if t == "" {
		return "", "", errEmpty
	}
	if n := len(t) - 1; n > 0 && t[n] == '.' && 'a' <= t[n-1] && t[n-1] <= 'z' {
		t = t[:n] // an abbreviation's point: 1/8 in.
	}
	i := strings.LastIndexAny(t, "0123456789.,") + 1
	return strings.TrimSpace(t[:i]), strings.TrimSpace(t[i:]), nil
}

// bounded gives n times size if that is a length of this world.
func bounded(s string, n number, size ratio) (Length, error) {
	l := n.times(size)
	if math.Abs(float64(l)) > float64(longest) {
		return 0, fmt.Errorf("%s is more than a kilometre: try 3.2, 3.2 mm, 1/8 in", quote(s))
	}
	return l + 0, nil
}

// quote quotes input for an error line: control characters escaped, cut
// after some 24 characters.
func quote(s string) string {
	const most = 24
	head := []rune(s[:min(len(s), utf8.UTFMax*most)])
	if len(head) <= most && len(s) <= utf8.UTFMax*most {
		return strconv.Quote(s)
	}
	return strconv.Quote(string(head[:min(len(head), most)]) + "…")
}
