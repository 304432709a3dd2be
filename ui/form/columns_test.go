package form

import (
	"reflect"
	"testing"
)

// Columns of 4, 5 and 6 cells, the last of words of 9: worked by hand for each room.
func TestColumnsInARoom(t *testing.T) {
	c := Columns{least: []int{4, 5, 6}, whole: []int{3, 5, 9}}
	if c.Least() != 18 {
		t.Errorf("they take %d cells", c.Least())
	}
	for _, k := range []struct {
		room, inHand  int
		shown, widths []int
	}{
		{30, 0, []int{0, 1, 2}, []int{4, 5, 9}}, // more than words and gaps take
		{18, 0, []int{0, 1, 2}, []int{4, 5, 7}}, // 4+1+5+1+6 = 17, one cell over
		{17, 2, []int{0, 1, 2}, []int{4, 5, 6}},
		{16, 0, []int{0, 1}, []int{4, 5}},
		{16, 2, []int{0, 2}, []int{4, 9}}, // the one in hand instead of the one before it
		{9, 1, []int{0}, []int{4}},
		{3, 0, []int{0}, []int{4}},
	} {
		shown, widths := c.In(k.room, k.inHand)
		if !reflect.DeepEqual(shown, k.shown) || !reflect.DeepEqual(widths, k.widths) {
			t.Errorf("in %d cells, %d in hand: %v of %v wide; want %v of %v", k.room, k.inHand, shown, widths, k.shown, k.widths)
		}
	}
	if shown, _ := (Columns{}).In(10, 0); shown != nil {
		t.Errorf("of no columns %v are shown", shown)
	}
}
