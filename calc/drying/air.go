package drying

import (
	"fmt"
	"math"
	"time"
)

// Warmest is the highest temperature, in °C, at which wet leather may dry:
// ISO 4044 dries it for testing at no more than 40 °C. Wet vegetable-tanned
// leather starts to shrink from about 65 °C (Heritage Science, 2019).
const Warmest = 40.0

// Caution goes wherever a drying time is shown.
const Caution = "dry away from heat and sun, never above 40 °C: wet leather shrinks and hardens"

// VapourPressure is the pressure of saturated water vapour in kPa over
// water at a temperature in °C, by the Magnus formula of the WMO guide to
// instruments (annex 4.B, from memory), made for −45 to 60 °C.
func VapourPressure(celsius float64) float64 {
	return 0.6112 * math.Exp(17.62*celsius/(243.12+celsius))
}

// Guess is how long a sheath takes to dry, before anything is weighed.
type Guess struct {
	Earliest, Latest time.Duration
}

// The room that the usual hold is meant for: 24 to 48 h at room temperature
// (common practice, no source), which is taken as 20 °C and half saturated.
const (
	usualEarliest = 24 * time.Hour
	usualLatest   = 48 * time.Hour
	usualCelsius  = 20.0
	usualHumidity = 50.0
	longestGuess  = 14 * 24 * time.Hour
	coldest       = 5.0
)

// FirstGuess scales the usual drying time by how much more or less water
// the air takes up: Dalton's law, evaporation goes with the difference
// between saturated and actual vapour pressure. It is a guess and to be
// shown as one: thickness, draught and how wet the leather is count as much.
//
// The room's temperature is in °C, its relative humidity in percent. Above
// Warmest, and where air dries nothing, there is an error with a remedy.
func FirstGuess(celsius, humidity float64) (Guess, error) {
	switch {
	case !(humidity >= 0 && humidity <= 100):
		return Guess{}, fmt.Errorf("a humidity of %v %% can't be: give 0 to 100", humidity)
	case math.IsNaN(celsius):
		return Guess{}, fmt.Errorf("a temperature of %v °C can't be: give %v to %v", celsius, coldest, Warmest)
	case celsius > Warmest:
		return Guess{}, fmt.Errorf("%v °C is too hot for wet leather: dry it at room temperature, never above %v °C", celsius, Warmest)
	case celsius < coldest:
		return Guess{}, fmt.Errorf("%v °C is too cold to dry leather: bring it into a room of 15 to 25 °C", celsius)
	}
	scale := deficit(usualCelsius, usualHumidity) / deficit(celsius, humidity)
	if scale*float64(usualLatest) > float64(longestGuess) {
		return Guess{}, fmt.Errorf("air at %v °C and %v %% takes up next to no water: air the room or let a fan run, or the sheath will mould", celsius, humidity)
	}
	return Guess{
		Earliest: time.Duration(scale * float64(usualEarliest)).Round(time.Minute),
		Latest:   time.Duration(scale * float64(usualLatest)).Round(time.Minute),
	}, nil
}

// deficit is what the vapour pressure lacks of saturation, in kPa.
func deficit(celsius, humidity float64) float64 {
	return VapourPressure(celsius) * (1 - humidity/100)
}
