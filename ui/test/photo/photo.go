// Package photo has photographs of a traced knife, taken by the tests' own camera of the
// sheet as it is printed (see make_test.go). Tests only.
package photo

import (
	_ "embed" // the pictures
	"os"
	"path/filepath"
	"testing"

	"chape/calc/knife"
)

// Knife is what was traced: a blade of 95 mm, a bolster of 14 mm and a handle; invented.
var Knife = knife.Knife{Stations: []knife.Station{
	{At: 0, Top: 6, Bottom: 6.4, Thick: 1, Bevel: 1},
	{At: 12, Top: 3.6, Bottom: 13, Thick: 2.5, Bevel: 1},
	{At: 30, Top: 1.2, Bottom: 21, Thick: 3, Bevel: 1},
	{At: 60, Top: 0, Bottom: 25, Thick: 3, Bevel: 1},
	{At: 95, Top: 0, Bottom: 24, Thick: 3, Bevel: 1},
	{At: 95, Top: 0, Bottom: 27, Thick: 9, Kind: knife.Slab},
	{At: 109, Top: 0, Bottom: 27, Thick: 9, Kind: knife.Slab},
	{At: 109, Top: 0, Bottom: 25, Thick: 16, Kind: knife.Oval},
	{At: 150, Top: 1, Bottom: 29, Thick: 19, Kind: knife.Oval},
	{At: 200, Top: 0.5, Bottom: 31, Thick: 16, Kind: knife.Oval},
}}

//go:embed testdata/traced.jpg
var traced []byte

//go:embed testdata/open.jpg
var open []byte

// Traced puts the picture of the traced knife into a folder, under a name, and gives its path.
// Its line has a gap of 1.2 mm.
func Traced(t testing.TB, folder, name string) string { return put(t, folder, name, traced) }

// Open puts a picture there whose line is open by 6 mm.
func Open(t testing.TB, folder, name string) string { return put(t, folder, name, open) }

func put(t testing.TB, folder, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(folder, name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}
