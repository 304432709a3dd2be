package file

import (
	"strconv"

	"chape/project"
	"chape/project/plain"
)

// Refused is a file that can't be loaded. The file is as it was.
type Refused struct {
	Name     string // of the file
	Problems project.Problems
}

// Error gives the first problem in the file, with file, line, key, what was
// found and what would do.
func (r *Refused) Error() string {
	s := plain.Printable(r.Name)
	if n := r.Problems[0].Line; n > 0 {
		s += ":" + strconv.Itoa(n)
	}
	return s + ": " + r.Problems.Error()
}
