package knife

import (
	"math"

	"chape/calc/length"
)

// Between is a mark half way from mark i to the next, with the figures that lie between, as
// rule and calliper of the unit show them; behind the last mark it is 10 mm, or 3/8 in,
// further on.
func Between(marks []Station, i int, u length.Unit) Station {
	a := marks[i]
	if i+1 >= len(marks) {
		a.At += (10 * length.Millimetre).Roundest(u)
		return a
	}
	b := marks[i+1]
	rule, calliper := length.Millimetre, length.Millimetre/20
	if u == length.Inches {
		rule, calliper = length.Inch/32, length.Inch/64
	}
	mid := nearestTo((a.At+b.At)/2, rule)
	if mid <= a.At || mid >= b.At { // no room for a round place
		mid = (a.At + b.At) / 2
	}
	t := (mid - a.At) / max(b.At-a.At, 1e-9)
	mix := func(x, y length.Length) length.Length { return nearestTo(x+(y-x)*t, calliper) }
	out := a
	out.At, out.Top, out.Bottom, out.Thick = mid, mix(a.Top, b.Top), mix(a.Bottom, b.Bottom), mix(a.Thick, b.Thick)
	return out
}

// nearestTo is the multiple of a step that is nearest to l, halves up; 1/20 mm is written
// with two decimals.
func nearestTo(l, step length.Length) length.Length {
	n := length.Length(math.Floor(float64(l/step) + 0.5))
	if step == length.Millimetre/20 {
		return n / 20
	}
	return n * step
}
