package print

import (
	"chape/calc"
	"chape/calc/curve"
	"chape/project/print/sheet"
)

// halves are the zones of the pattern: inside the glue lines.
func (j *job) halves() []sheet.Zone {
	f := j.facing(j.o.Up)
	wide := j.plan.Flat.Glue[len(j.plan.Flat.Glue)-1].Y
	mouth := j.plan.Input.Sheath.Mouth.MM()
	body := func(half string) []string {
		return j.pieceWords(half, j.plan.Input.Sheath.Leather.MM(), j.p.Sold.Body, 1)
	}
	zones := []sheet.Zone{{Area: zoneBox(f.at(curve.Vec{X: 0, Y: 3}), f.at(curve.Vec{X: mouth, Y: wide})), Words: body("back half")}}
	if !j.o.Half {
		zones = append(zones, sheet.Zone{Area: zoneBox(f.at(curve.Vec{X: 0, Y: -3}), f.at(curve.Vec{X: mouth, Y: -wide})), Words: body("front half")})
	}
	return zones
}

// closed is the zone of the setting-out sheet.
func (j *job) closed() []sheet.Zone {
	front := facing{-j.facing(calc.GrainUp).back}
	knife := j.plan.Plane.Knife
	return []sheet.Zone{{Area: zoneBox(front.at(curve.Vec{X: 0, Y: 3}), front.at(curve.Vec{X: j.plan.Input.Sheath.Mouth.MM(), Y: knife[len(knife)-1].Y})),
		Words: []string{"front", "sheath closed", "mouth up"}}}
}

func zoneBox(a, b curve.Vec) sheet.Box {
	lo, hi := curve.Line{a, b}.Bounds()
	return sheet.Box{Lo: lo, Hi: hi}
}
