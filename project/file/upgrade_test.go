package file

import (
	"strings"
	"testing"

	"chape/project"
)

// A format before the first, made up for this test: leather was called
// thickness, and there was no key for the mouth.
func synthetic() reader {
	return reader{newest: project.Format, upgrades: map[int]upgrade{0: func(root map[string]any) error {
		sheath, _ := root["sheath"].(map[string]any)
		sheath["leather"] = sheath["thickness"]
		delete(sheath, "thickness")
		sheath["mouth"] = 80.0
		return nil
	}}}
}

func TestAnOlderFormatIsUpgradedAndSaidSo(t *testing.T) {
	old := strings.Replace(small, "mouth = 90", "thickness = 2.5", 1)
	old = strings.Replace(old, "format = 1", "format = 0", 1)
	p, n, err := synthetic().decode("old.toml", []byte(old))
	if err != nil {
		t.Fatal(err)
	}
	if !n.OldFormat {
		t.Error("the notices do not say that the format was older")
	}
	if p.Sheath.Leather != 2.5 || p.Sheath.Mouth != 80 {
		t.Errorf("leather, mouth = %v, %v, want 2.5, 80", p.Sheath.Leather, p.Sheath.Mouth)
	}
	again, n, err := Decode("old.toml", Encode(p))
	if err != nil || n.OldFormat || again.Sheath != p.Sheath {
		t.Errorf("after a save: %+v, %+v, %v", again.Sheath, n, err)
	}
}

func TestAFormatOnTheWayMustBeKnown(t *testing.T) {
	r := synthetic()
	r.newest = 2
	_, _, err := r.decode("old.toml", []byte(strings.Replace(small, "format = 1", "format = 0", 1)))
	if want := "old.toml:1: format: found 0: no such format was ever written: write format = 2"; err == nil || err.Error() != want {
		t.Errorf("decode = %v, want %s", err, want)
	}
}

func TestEveryFormatBeforeOursHasAnUpgrade(t *testing.T) {
	for f := 1; f < project.Format; f++ {
		if upgrades[f] == nil {
			t.Errorf("format %d can't be read any more", f)
		}
	}
}
