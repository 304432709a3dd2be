package file

import (
	"strings"
	"testing"
)

// The bad files of the repository, which the commands are tried with as well.
func TestBadFilesAreRefused(t *testing.T) {
	for file, want := range map[string]string{
		"newer.toml":    ":2: format: found 7: it was written by a newer chape and is left as it is",
		"crossing.toml": ": knife.station.bottom of mark ",
		"misspelt.toml": ": sheath.lether: found a key this program does not know: did you mean leather?",
		"nested.toml":   ":2: found values nested over 8 deep: no value of a project is nested so deep",
	} {
		_, _, err := Decode(file, read(t, "../../testdata/bad/"+file))
		if err == nil || !strings.HasPrefix(err.Error(), file+":") || !strings.Contains(err.Error(), want) {
			t.Errorf("Decode(%s) = %v, want %s...%s", file, err, file, want)
		}
	}
}

func BenchmarkDecode(b *testing.B) {
	data := read(b, "../example/example.toml")
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := Decode("f.toml", data); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEncode(b *testing.B) {
	p, _, err := Decode("f.toml", read(b, "../example/example.toml"))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		Encode(p)
	}
}
