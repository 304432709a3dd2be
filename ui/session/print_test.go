package session

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/clock"
	"chape/project/file"
	"chape/project/print"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/document"
)

var start = time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)

// opened is the document of a.toml, which stands there as the defaults.
func opened() *document.Doc {
	return document.New(project.Defaults(), "a.toml", store.Stamp{}, document.Options{Make: calc.Compute, Limits: calc.DefaultLimits()})
}

// TestPrintingIsNoted: what was printed is in the project, past undo and redo; a trial is
// not, nor the same once more.
func TestPrintingIsNoted(t *testing.T) {
	now := start
	p := project.Defaults()
	path := filepath.Join(t.TempDir(), "a.toml")
	fsys := store.OSLockingIn("")
	stamp, err := store.SaveNew(fsys, path, file.Encode(p))
	if err != nil {
		t.Fatal(err)
	}
	doc := document.New(p, path, stamp, document.Options{Make: calc.Compute, Limits: calc.DefaultLimits()})
	s := New(&Options{Doc: doc, FS: fsys, Clock: func() time.Time { return now }})
	if err := doc.Commit("leather", func(p *project.Project) error { p.Sheath.Leather = 4; return nil }); err != nil {
		t.Fatal(err)
	}
	printed := func(o print.Options) (changed bool, patterns []project.Pattern) {
		t.Helper()
		var out []act.Msg
		for _, m := range s.Print(o) {
			if cmd, ok := m.(act.Do); ok && out == nil {
				more, _ := s.Take(cmd())
				out = append(out, more...)
			}
		}
		for _, m := range out {
			if say, ok := m.(act.Say); ok && say.Warn {
				t.Fatal(say.Text)
			}
			_, yes := m.(Changed)
			changed = changed || yes
		}
		return changed, doc.Committed().Patterns
	}
	if changed, ps := printed(print.Options{Trial: 0.3}); changed || len(ps) != 0 {
		t.Errorf("a trial: changed %v, %+v", changed, ps)
	}
	if changed, ps := printed(print.Options{}); !changed || len(ps) != 1 || !ps[0].Printed.Equal(clock.DayOf(start)) || !file.SameInputs(ps[0], doc.Committed()) {
		t.Errorf("the first print: changed %v, %+v", changed, ps)
	}
	now = now.AddDate(0, 0, 3)
	if changed, ps := printed(print.Options{Half: true}); changed || !ps[0].Printed.Equal(clock.DayOf(start)) {
		t.Errorf("the same once more: changed %v, %+v", changed, ps)
	}
	if label, _ := doc.Undo(); label != "leather" || len(doc.Committed().Patterns) != 1 {
		t.Errorf("undo takes back %q, and leaves %+v", label, doc.Committed().Patterns)
	}
	if label, _ := doc.Redo(); label != "leather" || len(doc.Committed().Patterns) != 1 {
		t.Errorf("redo makes %q, and leaves %+v", label, doc.Committed().Patterns)
	}
	if names, _ := filepath.Glob(filepath.Join(filepath.Dir(path), "a pattern 1*.pdf")); len(names) != 3 {
		t.Errorf("printed %q", names)
	}
}

// TestPrintingSays what is drawn, as long as it is drawn.
func TestPrintingSays(t *testing.T) {
	s := New(&Options{Doc: opened()})
	s.printing = true
	news := make(chan string, 2)
	news <- "work card"
	close(news)
	said := func(msg any) (texts []string) {
		out, ok := s.Take(msg)
		if !ok {
			t.Fatalf("%T is not known", msg)
		}
		for _, m := range out {
			if say, ok := m.(act.Say); ok {
				texts = append(texts, say.Text)
			}
		}
		return texts
	}
	if got := said(listen(news)()); !reflect.DeepEqual(got, []string{"printing: work card"}) {
		t.Errorf("while it is drawn: %q", got)
	}
	if why, ok := s.Printable(); ok || why.Text != "still printing: wait for it" {
		t.Errorf("a second time: %v, %q", ok, why.Text)
	}
	if got := said(printedMsg{paths: []string{"a.pdf"}}); !reflect.DeepEqual(got, []string{"written: a.pdf"}) {
		t.Errorf("at the end: %q", got)
	}
	if got := said(printingMsg{"late", news}); got != nil {
		t.Errorf("after the end: %q", got)
	}
}

// TestRefusedNamesTheKey: where the folder takes nothing, the key is named that takes another.
func TestRefusedNamesTheKey(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a file")
	if err := os.WriteFile(dir, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	s := New(&Options{Doc: opened(), Prints: dir, Clock: func() time.Time { return start }})
	for name, out := range map[string][]act.Msg{"pattern": s.Print(print.Options{}), "tracing": s.PrintTracing(print.Options{})} {
		for _, m := range out {
			cmd, ok := m.(act.Do)
			if !ok {
				continue
			}
			answer, _ := s.Take(cmd())
			if say, ok := answer[0].(act.Say); !ok || !say.Warn || !strings.HasSuffix(say.Text, "choose another folder: P, then d") {
				t.Errorf("%s: %+v", name, answer)
			}
			break
		}
	}
}

// TestPrintFolder: beside the project that was named by its path, else where the settings
// say, else among the documents; what is chosen at work holds till the end.
func TestPrintFolder(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.toml")
	doc := func() *document.Doc {
		return document.New(project.Defaults(), path, store.Stamp{}, document.Options{Make: calc.Compute, Limits: calc.DefaultLimits()})
	}
	kept, fails := "unset", error(nil)
	s := New(&Options{Doc: doc(), KeepPrints: func(folder string) error { kept = folder; return fails }})
	for _, c := range []struct{ prints, documents, named, want string }{
		{"", "", "", dir},
		{"", "/docs", "", "/docs"},
		{"", "/docs", "elsewhere.toml", "/docs"},
		{"", "/docs", path, dir},
		{"/mine", "/docs", path, dir},
		{"/mine", "/docs", "", "/mine"},
	} {
		s.o.Prints, s.o.Documents, s.o.Named = c.prints, c.documents, c.named
		if got := s.PrintFolder(); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
	said := func(out []act.Msg) act.Say {
		say, ok := out[0].(act.Do)().(act.Say)
		if !ok {
			t.Fatalf("%v", out)
		}
		return say
	}
	if say := said(s.SetPrints("/first")); say.Warn || !strings.Contains(say.Text, "of all projects") || s.PrintFolder() != "/first" {
		t.Errorf("set: %+v, goes to %q", say, s.PrintFolder())
	}
	s.o.Named = path
	if say := said(s.SetPrints("/other")); say.Warn || !strings.Contains(say.Text, "till you quit") || kept != "/other" || s.PrintFolder() != "/other" {
		t.Errorf("set: %+v, kept %q, goes to %q", say, kept, s.PrintFolder())
	}
	fails = errors.New("no room")
	if say := said(s.SetPrints("")); !say.Warn || s.PrintFolder() != dir {
		t.Errorf("not kept: %+v, goes to %q", say, s.PrintFolder())
	}
}

// The sheets of the moment are said, and a lap that would save one where there is such.
func TestSheetsTaken(t *testing.T) {
	said := func(mouth float64) string {
		p := project.Defaults()
		p.Belt.Lap, p.Sheath.Mouth = 40, length.Length(mouth)
		doc := document.New(p, "a.toml", store.Stamp{}, document.Options{Make: calc.Compute, Limits: calc.DefaultLimits()})
		s := New(&Options{Doc: doc, Clock: func() time.Time { return start }})
		return s.SheetsTaken(print.Options{})
	}
	found := map[bool]int{}
	for mouth := 60.0; mouth < 150; mouth += 5 {
		text := said(mouth)
		if !regexp.MustCompile(`^: (1 sheet|\d sheets)(; lap \d+ mm shorter: \d)?$`).MatchString(text) {
			t.Errorf("mouth at %v: %q", mouth, text)
		}
		found[strings.Contains(text, "shorter")]++
	}
	if found[true] == 0 || found[false] == 0 {
		t.Errorf("%v: this shows nothing", found)
	}
}
