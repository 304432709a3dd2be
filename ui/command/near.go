package command

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"chape/project/plain"
)

// nearFile is a project file that may have been meant by a path where there is
// none: with its ending put on, or in the same folder under nearly that name.
func nearFile(path string) string {
	if full := path + ending; !isProject(path) && isFile(full) {
		return full
	}
	dir, name := filepath.Split(path)
	f, err := os.Open(filepath.Clean(dir))
	if err != nil {
		return ""
	}
	defer f.Close()
	const most = 2000
	all, _ := f.Readdirnames(most) // what can't be listed is not suggested
	var ours []string
	for _, n := range all {
		if isProject(n) && n[0] != '.' {
			ours = append(ours, n)
		}
	}
	if n := plain.Near(name, ours); n != "" {
		return dir + n
	}
	return ""
}

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular()
}

// ending is what a project file's name ends with.
const ending = ".toml"

func isProject(name string) bool { return strings.HasSuffix(strings.ToLower(name), ending) }

// missing puts the error of a file that is not there into words that help.
func missing(path string, err error) error {
	if !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if n := nearFile(path); n != "" {
		return fmt.Errorf("there is no file %q: did you mean %s?", path, typablePath(n))
	}
	return fmt.Errorf("there is no file %q: look at its name, or begin it with: chape new %s", path, typablePath(path))
}
