package session

import (
	"reflect"
	"testing"

	"chape/ui/act"
)

// TestPrintingSays what is drawn, as long as it is drawn.
func TestPrintingSays(t *testing.T) {
	s := New(&Options{Doc: opened(1)})
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
