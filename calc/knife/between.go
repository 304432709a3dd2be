package knife

import "chape/calc/length"

// Between is a mark half way from mark i to the next, with the figures that lie between;
// behind the last mark it is 10 mm further on.
func Between(marks []Station, i int) Station {
	a := marks[i]
	if i+1 >= len(marks) {
		a.At += 10 * length.Millimetre
		return a
	}
	b := marks[i+1]
	// Rounded to what a rule shows, if that leaves room.
	mid := length.Length(float64(int(float64(a.At+b.At)/2 + 0.5)))
	if mid <= a.At || mid >= b.At {
		mid = (a.At + b.At) / 2
	}
	t := (mid - a.At) / max(b.At-a.At, 1e-9)
	mix := func(x, y length.Length) length.Length {
		return length.Length(float64(int(float64(x+(y-x)*t)*20+0.5)) / 20)
	}
	out := a
	out.At, out.Top, out.Bottom, out.Thick = mid, mix(a.Top, b.Top), mix(a.Bottom, b.Bottom), mix(a.Thick, b.Thick)
	return out
}
