package file

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"chape/project"
	"chape/project/plain"
)

// Bounds on a file, guarded before any of it is decoded: a decoder that is
// handed anything may take hours or all memory over a single hostile line.
const (
	MaxSize    = 1 << 20 // bytes
	maxNesting = 8       // lists and tables within each other, and parts of a dotted key
	maxKey     = 64      // bytes of one part of a key: long keys multiply with what stands under them
	maxValues  = 20000   // keys and values; a full file has fewer
)

// index is where in a file things stand.
type index struct {
	lines    map[string]int // path ("knife.station[2].at") to line
	comments bool           // there are some besides our own heading
}

// line finds the line of a path, or of the table it would stand in.
func (x index) line(path string) int {
	for path != "" {
		if n, ok := x.lines[path]; ok {
			return n
		}
		path = path[:max(0, strings.LastIndexAny(path, ".["))]
	}
	return 0
}

// scanner walks over TOML once, without decoding it. It refuses what is nested
// too deep and what it can't follow; what it lets pass may still be wrong.
type scanner struct {
	data   []byte
	pos    int
	row    int            // line, from 1
	values int            //
	table  string         // path of the table the lines belong to
	rows   map[string]int // rows of each repeated table so far
	index  index
}

// unreadable is how the scanner gives up, by panic, caught in scan.
type unreadable project.Problem

// scan gives the index, or the one Problem that stopped it.
func scan(data []byte) (x index, bad *project.Problem) {
	s := scanner{data: data, row: 1, rows: map[string]int{}, index: index{lines: map[string]int{}}}
	defer func() {
		if r := recover(); r != nil {
			u, ok := r.(unreadable)
			if !ok {
				panic(r)
			}
			bad = (*project.Problem)(&u)
		}
	}()
	s.pos = len(data) - len(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")))
	for s.blank(true); s.pos < len(s.data); s.blank(true) {
		s.statement()
		s.blank(false)
		if c := s.peek(); c != '\n' && c != 0 {
			s.fail(s.glimpse(), s.behindValue())
		}
	}
	return s.index, nil
}

func (s *scanner) fail(found, remedy string) {
	panic(unreadable{Index: -1, Line: s.row, Found: found, Remedy: remedy})
}

func (s *scanner) peek() byte {
	if s.pos >= len(s.data) {
		return 0
	}
	return s.data[s.pos]
}

func (s *scanner) next() byte {
	c := s.peek()
	if c == '\n' {
		s.row++
	}
	s.pos++
	return c
}

func (s *scanner) take(prefix string) bool {
	if !bytes.HasPrefix(s.data[min(s.pos, len(s.data)):], []byte(prefix)) {
		return false
	}
	s.pos += len(prefix)
	return true
}

// behindValue is what would do where something stands behind a value: after a number with a
// comma, as much of the world writes it, the same with a point.
func (s *scanner) behindValue() string {
	digits := func(b []byte) bool {
		return len(b) > 0 && bytes.IndexFunc(b, func(r rune) bool { return r < '0' || r > '9' }) < 0
	}
	start := bytes.LastIndexByte(s.data[:s.pos], '\n') + 1
	line, _, _ := bytes.Cut(s.data[start:], []byte("\n"))
	_, value, _ := bytes.Cut(line, []byte("="))
	value, _, _ = bytes.Cut(value, []byte("#"))
	whole, part, comma := bytes.Cut(bytes.TrimSpace(value), []byte(","))
	if comma && digits(bytes.TrimLeft(whole, "+-")) && digits(part) && len(value) < maxKey {
		return fmt.Sprintf("write a point: %s.%s", whole, part)
	}
	return "one key = value on each line"
}

// glimpse is the next few characters, for a message.
func (s *scanner) glimpse() string {
	rest := s.data[min(s.pos, len(s.data)):]
	rest, _, _ = bytes.Cut(rest[:min(len(rest), 200)], []byte("\n"))
	if len(rest) == 0 {
		return "nothing more"
	}
	return plain.Quote(strings.TrimSpace(string(rest)))
}

// blank passes spaces, comments and, over several lines, the ends of lines.
func (s *scanner) blank(lines bool) {
	for {
		switch c := s.peek(); {
		case c == ' ' || c == '\t' || c == '\r' || c == '\n' && lines:
			s.next()
		case c == '#':
			end := bytes.IndexByte(s.data[s.pos:], '\n')
			if end < 0 {
				end = len(s.data) - s.pos
			}
			if strings.TrimSpace(string(s.data[s.pos:s.pos+end])) != heading {
				s.index.comments = true
			}
			s.pos += end
		default:
			return
		}
	}
}

func (s *scanner) statement() {
	if s.peek() != '[' {
		s.pair(s.table)
		return
	}
	repeated := s.take("[[")
	if !repeated {
		s.take("[")
	}
	at := s.row
	parts := s.key()
	if repeated && !s.take("]]") || !repeated && !s.take("]") {
		s.fail(s.glimpse(), "close the table's name as in [sheath] or [[step]]")
	}
	path := parts[0]
	for i := range parts {
		if i > 0 {
			path += "." + parts[i]
		}
		if n := s.rows[path]; n > 0 && (i < len(parts)-1 || !repeated) {
			path += "[" + strconv.Itoa(n-1) + "]"
		}
	}
	if repeated {
		s.note(path, at)
		s.rows[path]++
		path += "[" + strconv.Itoa(s.rows[path]-1) + "]"
	}
	s.table = path
	s.note(path, at)
}

func (s *scanner) note(path string, row int) {
	if _, ok := s.index.lines[path]; !ok {
		s.index.lines[path] = row
	}
}

func (s *scanner) count() {
	if s.values++; s.values > maxValues {
		s.fail(fmt.Sprintf("more than %d values", maxValues), "the files of chape have far fewer: take out what it does not know")
	}
}

// pair passes key = value within the table at path.
func (s *scanner) pair(path string) {
	at := s.row
	for _, part := range s.key() {
		if path != "" {
			path += "."
		}
		path += part
		s.note(path, at)
	}
	if !s.take("=") {
		s.fail(s.glimpse(), "an equals sign after the key, as in leather = 3.2")
	}
	s.blank(false)
	s.value(path, 1)
}

// key passes a dotted key with the space after it and gives its parts.
func (s *scanner) key() []string {
	s.count()
	var parts []string
	for {
		s.blankInline()
		parts = append(parts, s.keyPart())
		if len(parts[len(parts)-1]) > maxKey {
			s.fail(fmt.Sprintf("a key of over %d letters", maxKey), "no key of a project is so long")
		}
		if len(parts) > maxNesting {
			s.fail(fmt.Sprintf("a key of more than %d parts", maxNesting), "no key of a project has more than 3")
		}
		s.blankInline()
		if !s.take(".") {
			return parts
		}
	}
}

func (s *scanner) blankInline() {
	for s.peek() == ' ' || s.peek() == '\t' {
		s.pos++
	}
}

func (s *scanner) keyPart() string {
	start := s.pos
	if c := s.peek(); c == '"' || c == '\'' {
		s.text()
		raw := string(s.data[start+1 : s.pos-1])
		if c == '"' {
			if bare, err := strconv.Unquote(`"` + raw + `"`); err == nil {
				return bare
			}
		}
		return raw
	}
	for c := s.peek(); c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'; c = s.peek() {
		s.pos++
	}
	if s.pos == start {
		s.fail(s.glimpse(), "a key of letters, digits, _ and -, as in leather = 3.2")
	}
	return string(s.data[start:s.pos])
}
