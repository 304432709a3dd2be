package planpane

import (
	"testing"
	"time"

	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

func TestKeyTable(t *testing.T) { rig.CheckKeys(t, shown(t, 78, 24, nil)) }

// What a measuring tool types must change nothing.
func TestReadingDoesNothing(t *testing.T) {
	r := rig.New(t, orchard(), 78, 24, func(func() time.Time) *Model { return New(ink.New(ink.Dark, ink.TrueColour)) })
	r.Plan = true
	before := r.Show().Screen()
	r.Tool("+003.20,- mm/\"", time.Millisecond, "enter").Tool("12.7", 150*time.Millisecond, "ctrl+j", "enter")
	if len(r.Sent) > 0 || r.Screen() != before {
		t.Errorf("a reading changes what is shown, or sends %v", r.Sent)
	}
}

// The words of the keys that look closer and further say which is which.
func TestKeyWords(t *testing.T) {
	words := map[string]string{}
	for _, s := range shown(t, 78, 24, nil).Keys() {
		for _, k := range s.Keys {
			words[k.Help().Key] = k.Help().Desc
		}
	}
	for key, want := range map[string]string{
		"z": "closer, at the chosen mark", "Z": "further away", "]": "next mark, towards the handle",
		"[": "mark before, towards the point", "v": "draw the whole, the half, the closed sheath",
	} {
		if words[key] != want {
			t.Errorf("%s does %q, want %q", key, words[key], want)
		}
	}
}
