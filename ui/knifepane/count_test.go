package knifepane

import "testing"

// From an empty project to the pattern of one's own knife it takes a hand 42 keys: eleven
// numbers, and an Enter for the bolster that is there already.
func TestKeysToAPattern(t *testing.T) {
	f := open(t, defaults())
	keys := 0
	for _, n := range []string{
		"142", "31.5", "3.8", // blade: length, depth, spine
		"",                 // a bolster, as it stands
		"14", "33", "19.5", // bolster: length, depth, thickness
		"112", "28", "18", // handle: length, depth, thickness
		"4.5", "24", // swell, butt
	} {
		f.keys(n, "enter")
		keys += len(n) + 1
	}
	o := f.project().Outline
	if o.Blade != 142 || o.Spine != 3.8 || o.FrontLength != 14 || o.FrontThick != 19.5 || o.Handle != 112 || o.Swell != 4.5 || o.Butt != 24 {
		t.Errorf("got %+v", o)
	}
	if plan := f.doc.Plan(); keys > 42 || plan == nil || plan.Input.Knife.Length() != 268 {
		t.Errorf("%d keys", keys)
	}
}
