package panel

import (
	"math"

	"chape/ui/act"
	"chape/ui/canvas"
)

// FontMsg tells what the font can show.
type FontMsg struct{ Font act.Font }

// FontQuestion asks what the font can show: no program can tell.
func FontQuestion(f act.Font) act.Question {
	pick := func(key, does string, g canvas.Glyphs) act.Choice {
		return act.Choice{Key: key, Does: does, Do: func() []act.Msg {
			f.Glyphs = g
			return []act.Msg{FontMsg{f}}
		}}
	}
	stretch := func(key, does string, by float64) act.Choice {
		return act.Choice{Key: key, Does: does, Do: func() []act.Msg {
			f.Aspect = max(1, min(4, f.Aspect*by))
			return []act.Msg{FontQuestion(f)}
		}}
	}
	return act.Question{
		Title: "Before the first drawing",
		Font:  true,
		Text: append([]string{
			"Is this a ring of dots, whole and round? Some fonts lack them.", "",
		}, ring(f)...),
		Choices: []act.Choice{
			pick("y", "yes, a ring of dots", canvas.Braille),
			pick("n", "no: make drawings of blocks", canvas.Blocks),
			pick("x", "neither: plain characters only", canvas.ASCII),
			stretch("t", "it stands too tall", 1.05),
			stretch("f", "it lies too flat", 1/1.05),
		},
	}
}

// ring is the sample: a circle of dots as the font would show it.
func ring(f act.Font) []string {
	const w, h = 24, 8
	c := canvas.New(w, h, canvas.Braille)
	c.SetAspect(f.Aspect)
	across, down := canvas.Braille.Dots()
	tall := f.Aspect * float64(across) / float64(down) // height of a dot in dot widths
	for i := range 360 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 180)
		const r = 14.0
		c.Dot(w*float64(across)/2+r*cos, h*float64(down)/2+r*sin/tall, 0)
	}
	return c.Rows()
}
