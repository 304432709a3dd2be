package project

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

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
func Decode(name string, data []byte) (Project, Notices, error) {
	return reader{newest: Format, upgrades: upgrades}.decode(name, data)
}

// reader reads one file; tests give it formats of their own.
type reader struct {
	newest   int
	upgrades map[int]upgrade
}

func (r reader) decode(name string, data []byte) (Project, Notices, error) {
	p, n, problems := r.read(data)
	if len(problems) > 0 {
		inOrder(problems)
		return Project{}, Notices{}, &Refused{Name: name, Problems: problems}
	}
	return p, n, nil
}

// inOrder puts the problems in the order of the lines, unknown lines last.
func inOrder(ps Problems) {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		if a.Line == 0 || b.Line == 0 {
			return b.Line - a.Line
		}
		return a.Line - b.Line
	})
}

func (r reader) read(data []byte) (Project, Notices, Problems) {
	if bad := guard(data); bad != nil {
		return Project{}, Notices{}, Problems{*bad}
	}
	data = bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
	x, bad := scan(data)
	if bad != nil {
		return Project{}, Notices{}, Problems{*bad}
	}
	root := map[string]any{}
	if _, err := toml.Decode(string(data), &root); err != nil {
		return Project{}, Notices{}, Problems{notTOML(err)}
	}
	n := Notices{Comments: x.comments}
	old, bad := r.format(root, x)
	if bad != nil {
		return Project{}, n, Problems{*bad}
	}
	n.OldFormat = old
	p, refilled, problems := fill(root, x)
	n.Refilled = refilled
	return p, n, problems
}

// guard refuses what is no text of a bearable size.
func guard(data []byte) *Problem {
	switch {
	case len(data) > MaxSize:
		return &Problem{Index: -1, Found: fmt.Sprintf("over %d KiB", MaxSize/1024), Remedy: "open a project file, which is far smaller"}
	case bytes.IndexByte(data, 0) >= 0:
		i := bytes.IndexByte(data, 0)
		return &Problem{Index: -1, Line: 1 + bytes.Count(data[:i], []byte("\n")), Found: "a zero byte", Remedy: "open a project file, which is plain text"}
	case !utf8.Valid(data):
		return &Problem{Index: -1, Line: badLine(data), Found: "bytes that are not UTF-8", Remedy: "save the file as UTF-8"}
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
func notTOML(err error) Problem {
	p := Problem{Index: -1, Found: "what is not TOML", Remedy: "mend the line, or take a kept copy"}
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
func (r reader) format(root map[string]any, x index) (old bool, bad *Problem) {
	v, ok := root["format"]
	fail := func(found, remedy string) (bool, *Problem) {
		return false, &Problem{Key: "format", Index: -1, Line: x.line("format"), Found: found, Remedy: remedy}
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
