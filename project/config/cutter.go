package config

import (
	"fmt"

	"chape/project/file"
	"chape/project/print/svg"
)

// cutterColours are the keys of the colours, with what each group holds.
func (c *Config) cutterColours() []struct {
	key, hint string
	colour    *string
} {
	k := &c.Cutter.Colours
	return []struct {
		key, hint string
		colour    *string
	}{
		{"cutter.cut", `the body's cut line, as in "#7a2e21"; these colours are of no known cutter program's palette`, &k.Cut},
		{"cutter.welt", "the welt's", &k.Welt},
		{"cutter.strap", "the strap's", &k.Strap},
		{"cutter.parts", "the parts that you added", &k.Parts},
		{"cutter.relief", "relief holes and drain", &k.Relief},
		{"cutter.holes", "the holes of the seam", &k.Holes},
		{"cutter.stitch", "the stitch line, not cut", &k.Stitch},
		{"cutter.fold", "the fold, not cut", &k.Fold},
		{"cutter.glue", "the glue line, not cut", &k.Glue},
		{"cutter.marks", "ticks, arrows and the knife, not cut", &k.Marks},
		{"cutter.words", "words, not cut", &k.Words},
	}
}

// cutterSettings are the keys of the SVG for a cutter, which tells by a line's colour what
// to do with it.
func (c *Config) cutterSettings() []file.Setting {
	var out []file.Setting
	for _, k := range c.cutterColours() {
		out = append(out, text(k.key, k.hint, 7, k.colour))
	}
	return append(out, flag("cutter.bare", "leave out of the SVG what is not cut", &c.Cutter.Bare))
}

// checkCutter finds what is no colour, and two groups that a cutter can't tell apart.
func (c *Config) checkCutter(add func(key, found, remedy string)) {
	by := map[string]string{}
	for _, k := range c.cutterColours() {
		colour := *k.colour
		if err := svg.Check(colour); err != nil || colour == "" {
			add(k.key, fmt.Sprintf("%q", colour), `give it as "#7a2e21", two digits each for red, green and blue`)
			continue
		}
		if other, twice := by[colour]; twice {
			add(k.key, fmt.Sprintf("%q", colour), "give another colour than "+other+" has, or a cutter can't tell them apart")
		}
		by[colour] = k.key
	}
}
