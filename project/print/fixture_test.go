package print

import (
	"time"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
	"chape/project/plantest"
	"chape/project/steps"
)

// bar is the worked case of the design notes: a square bar 160 long.
func bar() project.Project {
	slab := func(at length.Length) knife.Station {
		return knife.Station{At: at, Bottom: 30, Thick: 6, Kind: knife.Slab}
	}
	return project.Project{
		Title: "Bar", Revision: 1,
		Knife: knife.Knife{Stations: []knife.Station{slab(0), slab(160)}},
		Sheath: calc.Sheath{Mouth: 120, Leather: 3, Welt: 4, Plies: 1, Clearance: 1.5, HandleClearance: 1, Gap: 5, Margin: 5,
			Blend: 12, Neutral: 0.5},
		Belt:   calc.Belt{Width: 40, Thickness: 4, Ease: 4, Tab: 20, Row: 12, Lap: 8, Centred: true},
		Stitch: calc.Stitch{Pitch: 4, Thread: 0.8, First: 4, Last: 4, Back: 2, Tail: 150, Waste: 0.05},
	}
}

// garden is an invented knife with a bolster and a swelling handle.
func garden() project.Project {
	p := bar()
	p.Title, p.Revision = "Garden knife, invented for the tests", 3
	p.Customer.Name = "Zoé"
	blade := func(at, top, bottom, thick length.Length) knife.Station {
		return knife.Station{At: at, Top: top, Bottom: bottom, Thick: thick, Kind: knife.Blade, Bevel: 1}
	}
	slab := func(at, top, bottom, thick length.Length) knife.Station {
		return knife.Station{At: at, Top: top, Bottom: bottom, Thick: thick, Kind: knife.Slab, Round: 3}
	}
	p.Knife.Stations = []knife.Station{
		blade(0, 7, 7, 0.8), blade(10, 5, 16, 1.6), blade(30, 3, 25, 2.4), blade(60, 2, 29, 2.9), blade(100, 2, 30, 3.4),
		slab(100, 1, 31, 12), slab(112, 1, 29, 15), slab(150, 0, 31, 19), slab(190, 1, 30, 17), slab(215, 0, 34, 18),
	}
	p.Sheath = calc.Sheath{Mouth: 140, Leather: 3.2, Welt: 3.2, Plies: 1, Clearance: 3, HandleClearance: 1, PointRoom: 3, Gap: 7.5, Margin: 5, Sanding: 1.5,
		Blend: 60, Neutral: 0.5, MouthRound: 6, MouthRise: 12, Drain: 4}
	p.Belt = calc.Belt{Width: 38, Thickness: 4, Ease: 4, Tab: 30, Row: 12, Lap: 20, Offset: 8}
	p.Steps = []steps.Step{
		{Title: "Tape the edge, measure", Caution: "Tape and wrap, never a palm under the point or along the seam.", Done: day},
		{Title: "Print, check the scale, trial fold with the welt in"},
		{Title: "Cement, first side of the welt", Hold: 15 * time.Minute, Caution: "Air, no flame, gloves."},
		{Title: "Dry away from heat", Hold: 24 * time.Hour, Latest: 48 * time.Hour},
	}
	return p
}

var day = time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC)

var compute = plantest.Of
