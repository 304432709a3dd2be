package shelf

import (
	"path/filepath"
	"testing"

	"chape/calc"
	"chape/project"
	"chape/project/carry"
)

// Three finished sheaths of 3.2 mm had +1, +2 and nothing in leather at the mouth; one is
// not finished, one is of other leather, one was only folded of paper. By hand: the median
// of 0, 1, 2 and the paper one's 0 is 0.5, two of four had one.
func TestExperience(t *testing.T) {
	dir := t.TempDir()
	write := func(name string, leather float64, done bool, fits ...project.Fit) {
		n := 3
		if done {
			n = len(sheath("", 0).Steps)
		}
		p := sheath(name, n)
		p.Sheath.Leather = 3.2
		if leather != 0 {
			p.Sheath.Leather = 4
		}
		p.Fits = fits
		put(t, dir, name+".toml", p, now)
	}
	at := sheath("", 0).Sheath.Mouth - 10
	fit := func(by float64, with string) project.Fit {
		f := project.Fit{Fit: calc.Fit{At: at, Reach: 20}, With: with}
		f.By = 1
		if by == 2 {
			f.By = 2
		}
		return f
	}
	write("one", 0, true, fit(1, "leather"))
	write("two", 0, true, fit(2, "finished"))
	write("none", 0, true)
	write("paper", 0, true, fit(2, "paper"))
	write("unfinished", 0, false, fit(2, "leather"))
	write("thick", 4, true, fit(2, "leather"))
	putBytes(t, dir, "torn.toml", []byte("title ="), now)

	past, err := open(dir).Experience(3.2, "")
	if err != nil || len(past) != 4 {
		t.Fatalf("%d sheaths, %v", len(past), err)
	}
	next := sheath("Next", 0)
	next.Sheath.Leather = 3.2
	offers, err := carry.Experience(past, next)
	if err != nil || len(offers) != 1 {
		t.Fatalf("offers %+v, %v", offers, err)
	}
	if o := offers[0]; o.By != 0.5 || o.At != at || o.From != "from 4 finished sheaths of 3.2 mm" || o.Note != "median of 4, 2 had one, from the handle to the mouth" {
		t.Errorf("offered %+v", o)
	}
	next.Carried = offers
	if err := next.Validate(); err != nil {
		t.Error(err)
	}
	if past, _ := open(dir).Experience(3.2, filepath.Join(dir, "one.toml")); len(past) != 3 {
		t.Errorf("without itself %d", len(past))
	}
	if past, err := open(filepath.Join(dir, "none there")).Experience(3.2, ""); err != nil || len(past) != 0 {
		t.Errorf("of no shelf: %v, %v", past, err)
	}
}
