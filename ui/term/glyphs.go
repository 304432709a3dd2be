package term

import "chape/ui/canvas"

// Glyphs chooses what drawings are made of: ASCII on the console that has nothing more
// (TERM is 'linux' or 'dumb'), whatever was answered in another terminal; else the
// configuration's word when it has one, else braille. With ask nobody has chosen
// and no rule has: show the user a sample and ask.
func Glyphs(configured, term string) (g canvas.Glyphs, ask bool, err error) {
	g = canvas.Braille
	if configured != "" {
		if g, err = canvas.ParseGlyphs(configured); err != nil {
			return g, false, err
		}
	}
	if term == "linux" || term == "dumb" {
		return canvas.ASCII, false, nil
	}
	return g, configured == "", nil
}
