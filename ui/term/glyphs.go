package term

import "chape/ui/canvas"

// Glyphs chooses what drawings are made of: the configuration's word when it
// has one, else ASCII on the console that has nothing more (TERM is 'linux' or
// 'dumb'), else braille. With ask nobody has chosen and no rule has: show the user
// a sample and ask.
func Glyphs(configured, term string) (g canvas.Glyphs, ask bool, err error) {
	if configured != "" {
		g, err = canvas.ParseGlyphs(configured)
		return g, false, err
	}
	if term == "linux" || term == "dumb" {
		return canvas.ASCII, false, nil
	}
	return canvas.Braille, true, nil
}
