package file

import (
	"fmt"
	"strconv"
)

// value passes one value, depth lists and tables deep.
func (s *scanner) value(path string, depth int) {
	if depth > maxNesting {
		s.fail(fmt.Sprintf("values nested over %d deep", maxNesting), "no value of a project is nested so deep")
	}
	s.count()
	switch c := s.peek(); c {
	case '"', '\'':
		s.text()
	case '[':
		s.next()
		s.list(path, depth)
	case '{':
		s.next()
		s.inline(path, depth)
	default:
		start := s.pos
		for c := s.peek(); c != 0 && c != ',' && c != ']' && c != '}' && c != '#' && c != '\n'; c = s.peek() {
			s.pos++
		}
		if s.pos == start {
			s.fail(s.glimpse(), "a value after the equals sign, as in leather = 3.2")
		}
	}
}

func (s *scanner) list(path string, depth int) {
	for i := 0; ; i++ {
		s.blank(true)
		if s.take("]") {
			return
		}
		item := path + "[" + strconv.Itoa(i) + "]"
		s.note(item, s.row)
		s.value(item, depth+1)
		s.blank(true)
		if s.take("]") {
			return
		}
		if !s.take(",") {
			s.fail(s.glimpse(), "a comma between the values of a list and ] at its end")
		}
	}
}

func (s *scanner) inline(path string, depth int) {
	for {
		s.blank(true)
		if s.take("}") {
			return
		}
		item, at := path, s.row
		for _, part := range s.key() {
			item += "." + part
			s.note(item, at)
		}
		if !s.take("=") {
			s.fail(s.glimpse(), `an equals sign after the key, as in { name = "A. Smith" }`)
		}
		s.blank(true)
		s.value(item, depth+1)
		s.blank(true)
		if s.take("}") {
			return
		}
		if !s.take(",") {
			s.fail(s.glimpse(), "a comma between the keys of a table and } at its end")
		}
	}
}

// text passes a string of any of the four kinds.
func (s *scanner) text() {
	quote := s.peek()
	start := s.row
	three := string([]byte{quote, quote, quote})
	if s.take(three) {
		for !s.take(three) {
			s.letter(quote, start, true)
		}
		for i := 0; i < 2 && s.peek() == quote; i++ { // up to two quotes may end the text itself
			s.pos++
		}
		return
	}
	s.next()
	for s.peek() != quote {
		s.letter(quote, start, false)
	}
	s.next()
}

// letter passes one character of a string, escaped or not.
func (s *scanner) letter(quote byte, start int, lines bool) {
	c := s.next()
	if c == '\\' && quote == '"' {
		c = s.next()
	}
	if s.pos > len(s.data) || c == '\n' && !lines {
		s.row = start
		s.fail("a text that does not end", "close it with the quote it began with")
	}
}
