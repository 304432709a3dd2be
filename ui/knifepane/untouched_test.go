package knifepane

import "testing"

// The figure that stands there counts as given once it was typed, or Enter was pressed on
// it; a look at it does not.
func TestEnterSaysThatItIsRight(t *testing.T) {
	f := open(t, defaults())
	n := len(f.project().Input(f.doc.Plan().Input.Limits).Untouched)
	left := func() int { return len(f.project().Input(f.doc.Plan().Input.Limits).Untouched) }
	f.keys("down", "up", "home", "down", "down")
	if left() != n {
		t.Error("a look at it counts")
	}
	f.goTo("knife.outline.blade", -1)
	f.keys("enter")
	if left() != n-1 || f.project().Outline.Blade != 110 {
		t.Errorf("Enter on it: %d of %d left", left(), n)
	}
	f.keys("30", "enter") // as it stood
	if left() != n-2 {
		t.Errorf("typed as it stood: %d of %d left", left(), n)
	}
	f.read("4")
	if left() != n-3 {
		t.Errorf("read as it stood: %d of %d left", left(), n)
	}
}
