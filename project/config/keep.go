package config

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"chape/project/file"
	"chape/project/money"
	"chape/project/store"
)

const heading = `# What chape does unless a project says otherwise. Lengths in millimetres, or as
# texts with their unit, such as "1/8 in". A key that is left out has its default.

`

// Encode writes every key with its hint. Decode reads it back as c.
func Encode(c Config) []byte { return file.EncodeSettings(heading, c.start, c.own()) }

// Sample is a whole file of the defaults with every key behind a comment sign: to
// be changed where wanted, and saying nothing until then. Tables have their names.
func Sample() []byte {
	var b strings.Builder
	for line := range strings.Lines(string(Encode(Defaults()))) {
		if line != "\n" && !strings.HasPrefix(line, "#") && !strings.HasPrefix(line, "[") {
			line = "#" + line
		}
		b.WriteString(line)
	}
	b.WriteString(stepSample)
	return []byte(b.String())
}

const stepSample = `
# Steps of your own, which new projects then start with: one of these for each, in
# their order. Hold times come from the data sheet of what you use.
#[[step]]
#title = "Cement both faces, close, press"
#short = "CEMENT"
#caution = "Open a window; no flame; gloves."
#hold = "15m"
#latest = "2h"
`

// Change is another value for a key that stands once: a text, a number or a
// flag.
type Change struct {
	Key   string // "glyphs", "printer.x"
	Value any    // string, float64 or bool
}

// Price is the change that gives a price its amount, as kind as the key is: a number, where
// 0 is not known, or a text. A key that there is not is refused by Keep.
func Price(key string, a money.Amount) Change {
	var c Config
	for _, o := range c.own() {
		if _, number := o.Get().(float64); o.Key == key && number {
			return Change{Key: key, Value: a.Decimal().InexactFloat64()}
		}
	}
	return Change{Key: key, Value: a.String()}
}

// Keep puts changes into the file at path, which is made where there is none. Only
// the values of these keys are changed: comments, order and spacing stay. A file that
// can't be loaded, or that would come to mean something else, is left as it is.
func Keep(fsys store.FS, path string, changes ...Change) error {
	data, stamp, err := store.Read(fsys, path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			return fmt.Errorf("the folder of %q can't be made: %w", path, err)
		}
		data = Sample()
	case err != nil:
		return ofSettings(err)
	}
	edited, err := edit(path, data, changes)
	if err != nil {
		return err
	}
	if _, err = store.Save(fsys, path, edited, stamp); err != nil {
		return ofSettings(err)
	}
	return nil
}

// edit changes the text and proves that nothing else has changed with it.
func edit(path string, data []byte, changes []Change) ([]byte, error) {
	want, err := Decode(path, data)
	if err != nil {
		return nil, fmt.Errorf("%s is left as it is until it is mended: %w", filepath.Base(path), err)
	}
	own := want.own()
	text := string(data)
	for _, ch := range changes {
		found := false
		for _, o := range own {
			if o.Key == ch.Key && reflect.TypeOf(o.Get()) == reflect.TypeOf(ch.Value) {
				o.Set(ch.Value)
				found = true
			}
		}
		if !found {
			return nil, fmt.Errorf("%q can't be set to %v: no such key, or not of that kind", ch.Key, ch.Value)
		}
		text = put(text, ch.Key, literal(ch.Value))
	}
	var refused *file.Refused
	if _, err := Decode(path, Encode(want)); errors.As(err, &refused) {
		return nil, refused.Problems[0] // the value is at fault, not a line of the file
	}
	if got, err := Decode(path, []byte(text)); err != nil || !reflect.DeepEqual(got, want) {
		return nil, fmt.Errorf("%q is written in a way that can't be changed without rewriting it: set %s there by hand", path, changes[0].Key)
	}
	return []byte(text), nil
}

func literal(v any) string {
	switch v := v.(type) {
	case string:
		return strconv.Quote(v)
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return fmt.Sprint(v)
}

// put gives a key of the text another value: in its line, in the line that has it
// as a comment, or in a new line of its table.
func put(text, key, value string) string {
	table, name := "", key
	if i := strings.LastIndexByte(key, '.'); i >= 0 {
		table, name = key[:i], key[i+1:]
	}
	end := "\n"
	if strings.Contains(text, "\r\n") {
		end = "\r\n"
	}
	lines := strings.SplitAfter(text, "\n")
	p := placeOf(lines, table, name)
	switch {
	case p.key >= 0:
		line := lines[p.key]
		_, rest, _ := strings.Cut(strings.TrimRight(line, "\r\n"), "=")
		lines[p.key] = line[:strings.Index(line, "=")+1] + " " + value + remark(rest) + eol(line)
	case p.comment >= 0:
		lines[p.comment] = name + " = " + value + eol(lines[p.comment])
	case p.end >= 0:
		lines = slices.Insert(lines, p.end, name+" = "+value+end)
	default:
		if last := lines[len(lines)-1]; last != "" {
			lines[len(lines)-1] += end
		}
		lines = append(lines, end, "["+table+"]"+end, name+" = "+value+end)
	}
	return strings.Join(lines, "")
}

// place is where in a file a key stands or could stand: numbers of lines, -1 for
// nowhere.
type place struct{ key, comment, end int }

func placeOf(lines []string, table, name string) place {
	p := place{-1, -1, -1}
	if table == "" {
		p.end = 0
	}
	in := ""
	for i, line := range lines {
		bare := strings.TrimSpace(strings.TrimPrefix(line, "\ufeff"))
		if strings.HasPrefix(bare, "[") {
			if in = header(bare); in == table && strings.HasSuffix(line, "\n") {
				p.end = i + 1
			}
			continue
		}
		k, _, ok := strings.Cut(bare, "=")
		k = strings.TrimSpace(k)
		switch {
		case in != table || !ok:
		case k == name:
			p.key = i
			return p
		case k == "#"+name && p.comment < 0:
			p.comment = i
		case !strings.HasPrefix(k, "#") && strings.HasSuffix(line, "\n"):
			p.end = i + 1
		}
	}
	return p
}

// header is the name in a table's line.
func header(line string) string {
	name, _, _ := strings.Cut(line, "#")
	if strings.HasPrefix(line, "[[") {
		return "[" + name // no table of single keys
	}
	return strings.Trim(strings.TrimSpace(name), "[] ")
}

// remark is the comment behind a value, with the space before it.
func remark(rest string) string {
	quoted := byte(0)
	for i := range len(rest) {
		switch c := rest[i]; {
		case quoted != 0:
			if c == quoted {
				quoted = 0
			}
		case c == '"' || c == '\'':
			quoted = c
		case c == '#':
			return rest[len(strings.TrimRight(rest[:i], " \t")):]
		}
	}
	return ""
}

func eol(line string) string { return line[len(strings.TrimRight(line, "\r\n")):] }
