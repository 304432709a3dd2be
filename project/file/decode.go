package file

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"chape/project"
	"chape/project/plain"
)

// Notices is what a file holds that the next save would not keep, and what
// the reading changed.
type Notices struct {
	Comments  bool // there are comments, which a save leaves out
	OldFormat bool // it is of an older format: the next save writes the newest
	Refilled  bool // its marks differed from its outline, which stands
}

// Decode reads a project file. The name is for the error, a *Refused, which
// names file, line, key, what was found and what would do. Time and memory
// are bounded whatever the data.
func Decode(name string, data []byte) (project.Project, Notices, error) {
	return reader{newest: project.Format, upgrades: upgrades}.decode(name, data)
}

// reader reads one file; tests give it formats of their own.
type reader struct {
	newest   int
	upgrades map[int]upgrade
}

func (r reader) decode(name string, data []byte) (project.Project, Notices, error) {
	p, n, problems := r.read(data)
	if len(problems) > 0 {
		inOrder(problems)
		return project.Project{}, Notices{}, &Refused{Name: name, Problems: problems}
	}
	return p, n, nil
}

// inOrder puts the problems in the order of the lines, unknown lines last.
func inOrder(ps project.Problems) {
	slices.SortStableFunc(ps, func(a, b project.Problem) int {
		if a.Line == 0 || b.Line == 0 {
			return b.Line - a.Line
		}
		return a.Line - b.Line
	})
}

// tables gives what a file's tables hold, as the decoder does, and where it stands.
func tables(data []byte, of kind) (root map[string]any, x index, bad *project.Problem) {
	if bad := guard(data, of); bad != nil {
		return nil, index{}, bad
	}
	data = bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
	if x, bad = scan(data); bad != nil {
		return nil, index{}, bad
	}
	if _, err := toml.Decode(string(data), &root); err != nil {
		p := notTOML(err)
		return nil, index{}, &p
	}
	if root == nil {
		root = map[string]any{}
	}
	return root, x, nil
}

func (r reader) read(data []byte) (project.Project, Notices, project.Problems) {
	root, x, bad := tables(data, aProject)
	if bad != nil {
		return project.Project{}, Notices{}, project.Problems{*bad}
	}
	n := Notices{Comments: x.comments}
	old, bad := r.format(root, x)
	if bad != nil {
		return project.Project{}, n, project.Problems{*bad}
	}
	n.OldFormat = old
	p, refilled, problems := fill(root, x)
	n.Refilled = refilled
	return p, n, problems
}

// kind is what a file is to be, and so what would do in its place.
type kind struct{ smaller, text string }

var (
	aProject   = kind{smaller: "open a project file, which is far smaller", text: "open a project file, which is plain text"}
	ofSettings = kind{smaller: "settings are far smaller: take out what is none", text: "settings are plain text: chape settings --sample shows them"}
)

// guard refuses what is no text of a bearable size.
func guard(data []byte, of kind) *project.Problem {
	switch {
	case len(data) > MaxSize:
		return &project.Problem{Index: -1, Found: fmt.Sprintf("over %d KiB", MaxSize/1024), Remedy: of.smaller}
	case bytes.IndexByte(data, 0) >= 0:
		i := bytes.IndexByte(data, 0)
		return &project.Problem{Index: -1, Line: 1 + bytes.Count(data[:i], []byte("\n")), Found: "a zero byte", Remedy: of.text}
	case !utf8.Valid(data):
		return &project.Problem{Index: -1, Line: badLine(data), Found: "bytes that are not UTF-8", Remedy: "save the file as UTF-8"}
	}
	return nil
}

func badLine(data []byte) int {
	line := 1
	for len(data) > 0 {
		r, n := utf8.DecodeRune(data)
		if r == utf8.RuneError && n == 1 {
			return line
		}
		if r == '\n' {
			line++
		}
		data = data[n:]
	}
	return line
}

// notTOML puts the decoder's error into one line of ours.
func notTOML(err error) project.Problem {
	p := project.Problem{Index: -1, Found: "text that is not valid TOML", Remedy: "fix the line or restore a backup"}
	var pe toml.ParseError
	if errors.As(err, &pe) {
		p.Line = pe.Position.Line
		text := pe.Message
		if text == "" {
			_, text, _ = strings.Cut(pe.Error(), ": ")
		}
		p.Found += " (" + plain.Foreign(text) + ")"
	}
	return p
}

// format sees to the file's format and brings an older one up to the newest.
func (r reader) format(root map[string]any, x index) (old bool, bad *project.Problem) {
	v, ok := root["format"]
	fail := func(found, remedy string) (bool, *project.Problem) {
		return false, &project.Problem{Key: "format", Index: -1, Line: x.line("format"), Found: found, Remedy: remedy}
	}
	n, isInt := v.(int64)
	switch {
	case !ok:
		return fail("nothing", fmt.Sprintf("a project file has a format: begin it with format = %d", r.newest))
	case !isInt:
		return fail(foundRaw(v), fmt.Sprintf("write format = %d", r.newest))
	case n > int64(r.newest):
		return fail(fmt.Sprint(n), fmt.Sprintf("it was written by a newer chape and is left as it is: use that one; this one reads up to format %d", r.newest))
	}
	for f := n; f < int64(r.newest); f++ {
		up, ok := r.upgrades[int(f)]
		if !ok {
			return fail(fmt.Sprint(n), fmt.Sprintf("no such format was ever written: write format = %d", r.newest))
		}
		if err := up(root); err != nil {
			return fail(fmt.Sprint(n), err.Error())
		}
		old = true
	}
	delete(root, "format")
	return old, nil
}

// upgrade turns what a file of one format held into what the next one holds.
type upgrade func(root map[string]any) error

// upgrades has, for each older format, the step to the next. Format 1 is the
// first: there is none yet. The first change of format adds upgrades[1].
var upgrades = map[int]upgrade{}
