package value

import (
	"slices"
	"testing"

	"chape/calc/length"
)

func TestPlacesText(t *testing.T) {
	if got := Places(" 12.5 x 3 -1 1e9 NaN 3", 2000); !slices.Equal(got, []length.Length{3, 3, 12.5}) || SayPlaces(got) != "3 3 12.5" {
		t.Errorf("%v, %q", got, SayPlaces(got))
	}
}
