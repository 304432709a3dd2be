package drying

import (
	"math"
	"strings"
	"testing"
	"time"
)

// CRC Handbook of Chemistry and Physics, 1992–93, vapour pressure of water.
func TestVapourPressure(t *testing.T) {
	for celsius, want := range map[float64]float64{0: 0.61129, 10: 1.2281, 20: 2.3388, 25: 3.1690, 30: 4.2455} {
		if got := VapourPressure(celsius); !approxEqual(got, want, 0.003*want) {
			t.Errorf("VapourPressure(%v) = %.5f, want %.5f within 0.3 %%", celsius, got, want)
		}
	}
}

func TestFirstGuess(t *testing.T) {
	tests := []struct {
		celsius, humidity float64
		earliest, latest  float64 // hours
	}{
		{20, 50, 24, 48}, // the usual hold (common practice, no source)
		// Scaled by hand with the CRC Handbook's pressures.
		{20, 75, 48, 96},
		{30, 50, 24 * 2.3388 / 4.2455, 48 * 2.3388 / 4.2455},
		{10, 80, 24 * 2.3388 * 0.5 / (1.2281 * 0.2), 48 * 2.3388 * 0.5 / (1.2281 * 0.2)},
	}
	for _, tt := range tests {
		got, err := FirstGuess(tt.celsius, tt.humidity)
		if err != nil || !approxEqual(got.Earliest.Hours(), tt.earliest, 0.005*tt.earliest) || !approxEqual(got.Latest.Hours(), tt.latest, 0.005*tt.latest) {
			t.Errorf("FirstGuess(%v, %v) = %+v, %v, want %.1f to %.1f h", tt.celsius, tt.humidity, got, err, tt.earliest, tt.latest)
		}
	}
	// ISO 4044: no more than 40 °C, which itself is allowed.
	if got, err := FirstGuess(40, 50); err != nil || got.Latest <= 0 || got.Latest >= 48*time.Hour {
		t.Errorf("FirstGuess(40, 50) = %+v, %v, want a guess below 48 h", got, err)
	}
}

func TestFirstGuessRefuses(t *testing.T) {
	tests := []struct {
		celsius, humidity float64
		want              string
	}{
		{40.5, 50, "40.5 °C is too hot for wet leather: dry it at room temperature, never above 40 °C"},
		{math.Inf(1), 50, "too hot for wet leather: dry it at room temperature, never above 40 °C"},
		{2, 50, "2 °C is too cold to dry leather: bring it into a room of 15 to 25 °C"},
		{math.NaN(), 50, "a temperature of NaN °C can't be: give 5 to 40"},
		{20, 100, "takes up next to no water: air the room or let a fan run, or the sheath will mould"},
		{20, 120, "a humidity of 120 % can't be: give 0 to 100"},
		{20, math.NaN(), "a humidity of NaN % can't be: give 0 to 100"},
	}
	for _, tt := range tests {
		got, err := FirstGuess(tt.celsius, tt.humidity)
		if err == nil || !strings.HasSuffix(err.Error(), tt.want) {
			t.Errorf("FirstGuess(%v, %v) = %+v, %v, want the error %q", tt.celsius, tt.humidity, got, err, tt.want)
		}
	}
}
