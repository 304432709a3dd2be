package call

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"chape/project/plain"
)

// NearFile is a project file that may have been meant by a path where there is
// none: with its ending put on, or in the same folder under nearly that name.
func NearFile(path string) string {
	if full := path + Ending; !IsProject(path) && isFile(full) {
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
		if IsProject(n) && n[0] != '.' {
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

// Ending is what a project file's name ends with.
const Ending = ".toml"

// IsProject tells whether a file is called as a project is.
func IsProject(name string) bool { return strings.HasSuffix(strings.ToLower(name), Ending) }

// Missing puts the error of a file that is not there into words that help.
func Missing(path string, err error) error {
	if !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if n := NearFile(path); n != "" {
		return fmt.Errorf("there is no file %q: did you mean %s?", path, TypablePath(n))
	}
	return fmt.Errorf("there is no file %q: look at its name, or begin it with: chape new %s", path, TypablePath(path))
}
