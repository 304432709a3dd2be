package file

import (
	"bytes"
	"runtime"
	"strings"
	"testing"
	"unicode"
)

// hostile files: each is to be refused in one clear line, soon and in little
// memory, or taken.
func hostile() map[string]string {
	full := func(s string) string { return strings.Repeat(s, MaxSize/len(s)) }
	return map[string]string{
		"empty":                 "",
		"open brackets":         full("["),
		"open braces":           full("{"),
		"quotes":                full(`"`),
		"triple quotes":         full(`"""`),
		"hashes":                full("#"),
		"line ends":             full("\n"),
		"dots":                  full("."),
		"spaces":                full(" "),
		"letters":               full("a"),
		"backslashes in a text": `a = "` + full(`\`)[:MaxSize-6],
		"zero bytes":            full("\x00"),
		"high bytes":            full("\xff"),
		"nested lists":          "a = " + strings.Repeat("[", 10000) + strings.Repeat("]", 10000),
		"nested tables":         "a = " + strings.Repeat("{a=", 100000) + "1" + strings.Repeat("}", 100000),
		"dotted key":            strings.Repeat("a.", 10000) + "a = 1",
		"dotted table":          "[" + strings.Repeat("a.", 10000) + "a]",
		"dotted, quoted":        strings.Repeat(`"".`, 10000) + `"" = 1`,
		"deep in a list":        "a = [" + strings.Repeat("a.", 10) + "a]",
		"long key":              "[" + strings.Repeat("k", 1<<19) + "]\n" + strings.Repeat("a.b=1\n", 50000),
		"many rows":             "format = 1\n" + full("[[knife.station]]\n")[:MaxSize-100],
		"many values":           "a = [" + full("1,")[:MaxSize-10] + "1]",
		"many tables":           full("[a]\n"),
		"marks over the most":   "format = 1\n" + strings.Repeat("[[knife.station]]\nat=1\nbottom=1\nthick=1\n", 4000),
		"huge number":           "format = 1\nsheath.mouth = " + strings.Repeat("9", 1<<19),
		"huge decimal":          "format = 1\nsheath.mouth = 1." + strings.Repeat("9", 1<<19),
		"huge length text":      "format = 1\nsheath.mouth = \"" + strings.Repeat("9", 1<<19) + " mm\"",
		"exponent":              "format = 1\nsheath.mouth = 1e308",
		"long notes":            "format = 1\nnotes = \"" + strings.Repeat("x", 1<<19) + "\"",
		"escape sequences":      "format = 1\n\"\x1b]0;x\x07\" = 1",
		"escaped title":         "format = 1\ntitle = 3\n\"\\u001b[2J\\u009b\" = 1",
		"format of a list":      "format = [1]",
		"too large":             full("# x\n") + "# y\n",
	}
}

func TestHostileFilesAreRefusedInOneLine(t *testing.T) {
	for name, data := range hostile() {
		_, _, err := Decode("f.toml", []byte(data))
		if err == nil {
			t.Errorf("%s: Decode takes it", name)
			continue
		}
		line := err.Error()
		if strings.ContainsFunc(line, func(r rune) bool { return !unicode.IsPrint(r) }) {
			t.Errorf("%s: the error would not print: %q", name, line)
		}
		if len(line) > 600 {
			t.Errorf("%s: the error is %d bytes long: %s", name, len(line), line)
		}
	}
}

// A file as large as any costs no more memory than 64 MiB.
func TestHostileFilesCostLittleMemory(t *testing.T) {
	for name, data := range hostile() {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, _, err := Decode("f.toml", []byte(data))
		runtime.ReadMemStats(&after)
		if got := (after.TotalAlloc - before.TotalAlloc) >> 20; got > 64 {
			t.Errorf("%s: %d MiB allocated in all, want 64 at most (%v)", name, got, err)
		}
	}
}

func BenchmarkDecodeHostile(b *testing.B) {
	for name, data := range hostile() {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _, _ = Decode("f.toml", []byte(data))
			}
		})
	}
}

func TestANameThatWouldNotPrintIsQuoted(t *testing.T) {
	_, _, err := Decode("a\x1b[2J\nb.toml", nil)
	if got, want := err.Error(), `"a\x1b[2J\nb.toml": format: found nothing`; !strings.HasPrefix(got, want) {
		t.Errorf("Decode: %q, want it to begin with %q", got, want)
	}
}

// What must be taken, however odd it looks.
func TestDecodeTakes(t *testing.T) {
	for name, c := range map[string]struct {
		data string
		want Notices
	}{
		"a byte order mark":  {"\ufeff" + small, Notices{}},
		"Windows line ends":  {strings.ReplaceAll(small, "\n", "\r\n"), Notices{}},
		"no last line end":   {strings.TrimSpace(small), Notices{}},
		"a comment":          {small + "# mine", Notices{Comments: true}},
		"one behind a value": {strings.Replace(small, "mouth = 90", "mouth = 90 # mine", 1), Notices{Comments: true}},
		"our own heading":    {heading + "\n" + small, Notices{}},
		"a # in a text":      {"title = 'a # b'\n" + small, Notices{}},
		"inline tables":      {"customer = { name = \"A\", hand = \"left\" }\nfit = [{ at = 1, by = 1 }, \n{ at = 2, by = -1, note = \"#\" }]\n" + small, Notices{}},
		"quoted keys":        {"\"tit\\u006ce\" = 'x'\n'units' = \"in\"\n" + small, Notices{}},
		"spaced keys":        {"customer . name = \"x\"\n" + small, Notices{}},
		"quotes in quotes":   {"notes = \"\"\"\n\\\"\"\" \"\"\\\"\n\"\"\"\"\"\n" + small, Notices{}},
		"literal lines":      {"notes = '''\n'' \\ ''''\n" + small, Notices{}},
		"continued line":     {"notes = \"\"\"a\\\n   b\"\"\"\n" + small, Notices{}},
		"marks refilled":     {"knife.source = \"outline\"\n" + small, Notices{Refilled: true}},
		"lengths with units": {strings.Replace(small, "mouth = 90", "mouth = '3 1/2 in'\nleather = '8 oz'\nwelt = '1/8'\nmargin = '5 mm'", 1), Notices{}},
	} {
		p, n, err := Decode("f.toml", []byte(c.data))
		if err != nil {
			t.Errorf("%s: Decode = %v", name, err)
			continue
		}
		if n != c.want {
			t.Errorf("%s: Decode notices %+v, want %+v", name, n, c.want)
		}
		if again, _, err := Decode("f.toml", Encode(p)); err != nil || !bytes.Equal(Encode(again), Encode(p)) {
			t.Errorf("%s: not the same after a save: %v", name, err)
		}
	}
}
