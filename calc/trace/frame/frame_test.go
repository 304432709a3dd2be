package frame

import (
	"math/bits"
	"testing"

	"chape/calc/curve"
)

// A4, as its definition gives it: 175 by 265 inside the frame.
func TestA4(t *testing.T) {
	s, err := On(210-2*Rim, 297-2*Rim)
	if err != nil || s != (Sheet{175, 265, 1}) {
		t.Fatalf("On(A4) = %v, %v; want 175 × 265", s, err)
	}
	for _, c := range []struct{ w, h float64 }{{100, 281}, {194, 100}, {1400, 281}} {
		if s, err := On(c.w, c.h); err == nil {
			t.Errorf("On(%g, %g) = %v, want an error", c.w, c.h, s)
		}
	}
	if got, want := s.Marks()[2], (curve.Vec{X: 172.5, Y: 262.5}); got != want {
		t.Errorf("Marks()[2] = %v, want %v", got, want)
	}
}

// The squares beside a mark are white, whether a side has an odd or an even number.
func TestSquaresBesideMarks(t *testing.T) {
	for _, s := range []Sheet{{105, 110, 1}, {175, 265, 1}, {180, 260, 1}} {
		for _, q := range s.Squares() {
			for _, m := range s.Marks() {
				d := q.Mid().Sub(m)
				if max(abs(d.X), abs(d.Y)) < MarkHalf+Band+Band/2 {
					t.Errorf("sheet %v: square %v stands beside the mark at %v", s, q.Box, m)
				}
			}
		}
	}
	if got := (Sheet{175, 265, 1}).Squares()[0].Box; got != box(15, -5, 5, 5) {
		t.Errorf("first square %v, want from 15 to 20 above the origin", got)
	}
}

func abs(x float64) float64 { return max(x, -x) }

// The check word of "123456789" is 0xF4 for CRC-8 with polynomial 0x07 and start 0: the check value
// that catalogues of such codes give (from memory). Its own bits after 20 of data leave nothing.
func TestCheckWord(t *testing.T) {
	var c uint8
	for _, b := range []byte("123456789") {
		c ^= b
		for range 8 {
			top := c >> 7
			c = c<<1 ^ top*0x07
		}
	}
	if c != 0xF4 {
		t.Fatalf("the test's own division gives %#x", c)
	}
	for _, data := range []uint{0, 1, 0x23351, 0xfffff} {
		if got, want := crc(data), byBytes(data); got != want {
			t.Errorf("crc(%#x) = %#x, want %#x", data, got, want)
		}
	}
}

// byBytes divides in the usual way: four zero bits before the 20 change nothing with start 0.
func byBytes(data uint) uint8 {
	var c uint8
	for i := 2; i >= 0; i-- {
		c ^= uint8(data >> (8 * i))
		for range 8 {
			top := c >> 7
			c = c<<1 ^ top*0x07
		}
	}
	return c
}

func TestCodeRoundTrip(t *testing.T) {
	for w := Least; w <= most; w += 5 {
		s := Sheet{w, most + Least - w, 1}
		got, err := Parse(s.Code())
		if err != nil || got != s {
			t.Fatalf("Parse(%v.Code()) = %v, %v", s, got, err)
		}
	}
	newer := Sheet{175, 265, 2}
	if _, err := Parse(newer.Code()); err != ErrVersion {
		t.Errorf("version 2: %v, want ErrVersion", err)
	}
}

// Every row that differs in one to three cells from a sound one is refused: CRC-8 with this polynomial
// has distance 4 up to 119 bits of data.
func TestCodeFaults(t *testing.T) {
	whole := Sheet{175, 265, 1}.Code()
	for mask := uint(1); mask < 1<<Cells; mask++ {
		if bits.OnesCount(mask) > 3 {
			mask |= mask - 1 // on to the next with fewer
			continue
		}
		bad := whole
		for i := range bad {
			bad[i] = bad[i] != (mask>>i&1 == 1)
		}
		if s, err := Parse(bad); err == nil || err == ErrVersion {
			t.Fatalf("a row with faults %b is read as %v (%v)", mask, s, err)
		}
	}
}

func FuzzParse(f *testing.F) {
	f.Add(uint32(0))
	f.Add(uint32(1<<30 - 1))
	f.Fuzz(func(t *testing.T, v uint32) {
		var cells [Cells]bool
		for i := range cells {
			cells[i] = v>>i&1 == 1
		}
		if s, err := Parse(cells); err == nil && s.Code() != cells {
			t.Errorf("Parse(%v) = %v, whose own code is %v", cells, s, s.Code())
		}
	})
}
