package file

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"chape/calc/length"
	"chape/project"
	"chape/project/clock"
)

// heading is the first line of every file, the one comment that is ours.
const heading = "# A sheath project of chape. Lengths in millimetres. Comments are not kept."

// Encode writes a project file that Decode reads back as the same. The
// same project gives the same bytes. Marks that come from the outline are not
// written, so that nobody edits what would be filled over.
//
// Keys beyond those of format 1 as it was first laid down: step.caution,
// step.note, step.ended, step.spent; room.temperature, room.humidity; and the keys of [knife.outline]: point,
// blade, depth, spine, grind, front, front_length, front_depth, front_thick,
// handle, handle_depth, handle_thick, swell, butt, section.
//
// [[pattern]] holds a file of this kind as a text.
func Encode(p project.Project) []byte {
	var b strings.Builder
	b.WriteString(heading + "\nformat = " + strconv.Itoa(project.Format) + "\n")
	marks, rest := project.Lists[0], project.Lists[1:]
	sheath := slices.IndexFunc(project.Fields, func(f project.Field) bool { return f.Group == "sheath" })
	writeFields(&b, &p, project.Fields[:sheath])
	if p.Source != project.FromOutline {
		writeRows(&b, &p, marks)
	}
	writeFields(&b, &p, project.Fields[sheath:])
	for _, l := range rest {
		writeRows(&b, &p, l)
	}
	return []byte(b.String())
}

func writeFields(b *strings.Builder, p *project.Project, fs []project.Field) {
	table, plain := "", plainOutline(p)
	for _, f := range fs {
		t := parent(f.Key)
		if !f.Written(p) || plain && t == "knife.outline" {
			continue
		}
		if t != table {
			table = t
			b.WriteString("\n[" + table + "]\n")
		}
		writePair(b, f.Spec, f.Kept(p))
	}
}

// plainOutline tells that the outline says nothing: it is not in use and as in
// an empty file.
func plainOutline(p *project.Project) bool {
	return p.Source != project.FromOutline && p.Outline == project.Blank().Outline
}

func writeRows(b *strings.Builder, p *project.Project, l project.List) {
	for i := range l.Rows(p) {
		b.WriteString("\n[[" + l.Key + "]]\n")
		for _, f := range l.Columns {
			if f = f.At(i); f.Written(p) {
				writePair(b, f.Spec, f.Kept(p))
			}
		}
	}
}

func writePair(b *strings.Builder, s project.Spec, v any) {
	b.WriteString(last(s.Key) + " = " + toTOML(s, v) + "\n")
}

func toTOML(s project.Spec, v any) string {
	switch v := v.(type) {
	case length.Length:
		return decimal(float64(v))
	case length.Sold:
		return `"` + escape(v.As) + `"`
	case float64:
		return decimal(v)
	case string:
		if strings.Contains(v, "\n") {
			return manyLines(v)
		}
		return `"` + escape(v) + `"`
	case []string:
		var quoted []string
		for _, w := range v {
			quoted = append(quoted, `"`+escape(w)+`"`)
		}
		return "[" + strings.Join(quoted, ", ") + "]"
	case time.Time:
		if s.Kind == project.Date {
			return v.Format(time.DateOnly)
		}
		return clock.Whole(v).Format(time.RFC3339)
	case time.Duration:
		return `"` + clock.Short(v) + `"`
	}
	return fmt.Sprint(v) // an int or a bool
}

// decimal is the shortest figure that reads back the same, with a point and
// without an exponent.
func decimal(f float64) string {
	s := strconv.FormatFloat(f, 'f', -1, 64)
	if !strings.Contains(s, ".") {
		s += ".0"
	}
	return s
}

// manyLines writes a text over several lines. The first line end belongs to
// the opening quotes and is not part of the text. Quotes stand as they are, but for
// those that together could end it.
func manyLines(v string) string {
	var b strings.Builder
	lines := strings.Split(v, "\n")
	for n, line := range lines {
		parts := strings.Split(line, `"`)
		b.WriteByte('\n')
		for i, part := range parts {
			atEnd := i == len(parts)-1 && n < len(lines)-1 // of a line, not of the text
			switch {
			case i == 0:
			case part == "" && !atEnd: // another quote follows
				b.WriteString(`\"`)
			default:
				b.WriteByte('"')
			}
			b.WriteString(escape(part))
		}
	}
	return `"""` + b.String() + `"""`
}

// escape writes a text so that it holds nothing that could end it or that a
// terminal would obey.
func escape(v string) string {
	var b strings.Builder
	for i := 0; i < len(v); {
		r, n := utf8.DecodeRuneInString(v[i:])
		i += n
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\t':
			b.WriteString(`\t`)
		case r == '\r':
			b.WriteString(`\r`)
		case unicode.IsPrint(r):
			b.WriteRune(r)
		case r <= 0xffff:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			fmt.Fprintf(&b, `\U%08X`, r)
		}
	}
	return b.String()
}
