package print

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

func TestWrite(t *testing.T) {
	plan := compute(t, bar())
	pdf, err1 := PDF(bar(), plan, Options{})
	svg, err2 := SVG(bar(), plan, Options{})
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	if !Ours(pdf) || !Ours(svg) {
		t.Errorf("own files known: PDF %v, SVG %v", Ours(pdf), Ours(svg))
	}
	dir := filepath.Join(t.TempDir(), "new", "folder")
	files := []File{{"bar.pdf", pdf}, {"bar.svg", svg}}
	var said int
	paths, err := Write(dir, files, false, func(done, all int, _ string) { said += done + all })
	if err != nil || len(paths) != 2 || said != 0+2+1+2+2+2 {
		t.Fatalf("Write = %v, %v, progress %d", paths, err, said)
	}
	if info, err := os.Stat(paths[0]); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode of a new file: %v, %v, want 0600", info.Mode(), err)
	}
	if _, err := Write(dir, files, false, nil); err != nil {
		t.Errorf("own files are not replaced: %v", err)
	}

	// The second is someone else's: neither is touched.
	foreign := []byte("%PDF-1.3 someone else's")
	os.WriteFile(paths[1], foreign, 0o640)
	os.Chmod(paths[1], 0o640)
	os.WriteFile(paths[0], append(pdf, "\n% marked"...), 0o644)
	var want *ErrForeign
	if _, err := Write(dir, files, false, nil); !errors.As(err, &want) || want.Path != paths[1] {
		t.Errorf("Write over a foreign file: %v", err)
	}
	if got, _ := os.ReadFile(paths[0]); len(got) == len(pdf) {
		t.Error("one file was written although the other was refused")
	}
	if got, _ := os.ReadFile(paths[1]); string(got) != string(foreign) {
		t.Error("a foreign file was changed")
	}
	if _, err := Write(dir, files, true, nil); err != nil {
		t.Errorf("Write when told to replace: %v", err)
	}
	if info, err := os.Stat(paths[1]); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("mode of a replaced file: %v, %v, want it kept", info.Mode(), err)
	}
	if left, _ := os.ReadDir(dir); len(left) != 2 {
		t.Errorf("%d names in the folder, want 2: %v", len(left), left)
	}
}

func TestWriteNowhere(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	os.WriteFile(file, nil, 0o644)
	os.Mkdir(filepath.Join(dir, "x.pdf"), 0o755)
	os.Symlink("x.pdf", filepath.Join(dir, "to folder.pdf"))
	for _, c := range []struct{ dir, name string }{{file, "a.pdf"}, {dir, "x.pdf"}, {dir, "to folder.pdf"}} {
		if _, err := Write(c.dir, []File{{c.name, []byte("x")}}, true, nil); err == nil {
			t.Errorf("Write(%q, %q): want an error", c.dir, c.name)
		} else {
			t.Log(err)
		}
	}
}

func TestFiles(t *testing.T) {
	plan := compute(t, bar())
	for _, c := range []struct {
		o    Options
		want []string
	}{
		{Options{}, []string{"bar.svg", "bar.pdf"}},
		{Options{Half: true}, []string{"bar half.svg", "bar half.pdf"}},
		{Options{Trial: 0.1}, []string{"bar trial.svg", "bar trial.pdf"}},
	} {
		files, err := Files(bar(), plan, c.o, "bar", []string{"svg", "pdf", "svg"})
		if err != nil || len(files) != 2 {
			t.Fatalf("Files: %d, %v", len(files), err)
		}
		for i, f := range files {
			if f.Name != c.want[i] || !Ours(f.Data) {
				t.Errorf("file %q, want %q, marked as ours: %v", f.Name, c.want[i], Ours(f.Data))
			}
		}
	}
	for _, kinds := range [][]string{{"dxf"}, {""}} {
		if _, err := Files(bar(), plan, Options{}, "bar", kinds); err == nil {
			t.Errorf("Files as %q: want an error", kinds)
		}
	}
}
