// Package example holds the knife that the program shows while there is no
// other: invented, our own, and saying so.
package example

import (
	_ "embed"
	"time"

	"chape/project"
	"chape/project/file"
)

//go:embed example.toml
var data []byte

// told is the moment the example's times were written for: the sheath has been
// drying for three hours, and a hold fell due two minutes ago.
var told = time.Date(2026, time.November, 26, 19, 40, 0, 0, time.FixedZone("", 3600))

// Load gives the example as if now were the moment it was written for: its
// times are moved, in now's zone, so that the drying hold runs and another has
// just fallen due.
func Load(now time.Time) project.Project {
	p, _, err := file.Decode("example.toml", data)
	if err != nil {
		panic(err) // it is built in and tested
	}
	now = now.Truncate(time.Second)
	by := now.Sub(told)
	move := func(t time.Time) time.Time {
		if t.IsZero() {
			return t
		}
		return t.Add(by).In(now.Location())
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		s.Started, s.Ended, s.Done = move(s.Started), move(s.Ended), move(s.Done)
	}
	for i := range p.Weigh {
		p.Weigh[i].When = move(p.Weigh[i].When)
	}
	p.Customer.Due = p.Customer.Due.AddDate(0, 0, int(by/(24*time.Hour)))
	return p
}
