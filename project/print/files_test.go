package print

import (
	"testing"

	"chape/calc"
	"chape/project/print/folder"
)

func TestFiles(t *testing.T) {
	plan := compute(t, bar())
	for _, c := range []struct {
		o    Options
		want []string
	}{
		{Options{}, []string{"bar pattern 1.svg", "bar pattern 1.pdf"}},
		{Options{Half: true}, []string{"bar pattern 1 half.svg", "bar pattern 1 half.pdf"}},
		{Options{Up: calc.FleshUp}, []string{"bar pattern 1 flesh.svg", "bar pattern 1 flesh.pdf"}},
		{Options{Trial: 0.1, Half: true}, []string{"bar pattern 1 half trial.svg", "bar pattern 1 half trial.pdf"}},
	} {
		files, err := Files(bar(), plan, c.o, "bar", []string{"svg", "pdf", "svg"})
		if err != nil || len(files) != 2 {
			t.Fatalf("Files: %d, %v", len(files), err)
		}
		for i, f := range files {
			if f.Name != c.want[i] {
				t.Errorf("file %q, want %q", f.Name, c.want[i])
			}
		}
	}
	dir := t.TempDir() // what was printed is known again, and replaced
	for range 2 {
		files, err := Files(bar(), plan, Options{}, "bar", []string{"svg", "pdf"})
		if err == nil {
			_, err = folder.Write(dir, files, false, nil)
		}
		if err != nil {
			t.Errorf("printed twice: %v", err)
		}
	}
	for _, kinds := range [][]string{{"dxf"}, {""}} {
		if _, err := Files(bar(), plan, Options{}, "bar", kinds); err == nil {
			t.Errorf("Files as %q: want an error", kinds)
		}
	}
}
