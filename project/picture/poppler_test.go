package picture

import (
	"os"
	"path/filepath"
	"testing"

	"chape/project/picture/phototest"
	"chape/project/print/tracing"
)

// Where poppler is there, the tests' own reading of the page is held against it: inside the frame and on it they are the
// same, but for dots at edges. Words and pricks, which the own reading leaves out, stand right of it and below.
func TestPageAsPopplerHasIt(t *testing.T) {
	t.Parallel()
	data, err := tracing.PDF(tracing.Options{})
	if err != nil {
		t.Fatal(err)
	}
	own, err := phototest.Read(data, 6)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	theirs, ok := phototest.Poppler(path, 6)
	if !ok {
		theirs = own // nobody to ask: what follows then checks that the page holds black and white
	}
	far, black := 0, 0
	for y := range 284 * 6 {
		for x := range 194 * 6 {
			a, b := int(own.RGB[3*(y*own.W+x)]), int(theirs.RGB[3*(y*theirs.W+x)])
			if a-b > 130 || b-a > 130 {
				far++
			}
			if a < 20 {
				black++
			}
		}
	}
	if far > 600 || black < 60000 {
		t.Errorf("%d dots differ, %d are black", far, black)
	}
}
