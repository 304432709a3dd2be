package settings

import (
	"os"
	"strings"
	"testing"

	"chape/project/config/configtest"
	"chape/ui/workbench"
)

// Settings that change on the disk are put into the workbench that is open; broken ones
// leave those of before.
func TestReread(t *testing.T) {
	configtest.Write(t, "bell = true\n")
	set := Load()
	look := set.reread()
	if news := look(); news != nil {
		t.Fatalf("nothing has changed: %+v", news)
	}
	o := set.Workbench()
	write := func(text string) {
		t.Helper()
		if err := os.WriteFile(set.Path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("bell = false\n[limits]\ndrum = 31.0\n[price]\nhour = 41\n")
	news := look()
	if news == nil || news.Put == nil || news.Say.Warn || news.Limits.Drum != 31 {
		t.Fatalf("changed: %+v", news)
	}
	news.Put(&o)
	if !o.Alarm.NoBell || o.Shop.Prices.Hour.String() != "41" {
		t.Errorf("put in: %+v, %+v", o.Alarm, o.Shop)
	}
	if again := look(); again != nil {
		t.Errorf("said twice: %+v", again)
	}
	write("bell = 3\n")
	if news = look(); news == nil || news.Put != nil || !news.Say.Warn || !strings.Contains(news.Say.Text, "those of before hold") {
		t.Errorf("broken: %+v", news)
	}
	if err := os.Remove(set.Path); err != nil {
		t.Fatal(err)
	}
	if news = look(); news == nil || news.Limits == (workbench.Settings{}).Limits || news.Limits.Drum == 31 {
		t.Errorf("taken away: %+v", news)
	}
}

// What another program has changed is read again although something was kept meanwhile; what
// was kept here alone is no news.
func TestRereadAfterKeeping(t *testing.T) {
	configtest.Write(t, "bell = true\n")
	set := Load()
	look, keep := set.reread(), set.keepPrints()
	if err := os.WriteFile(set.Path, []byte("bell = false\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := keep("~/sheets"); err != nil {
		t.Fatal(err)
	}
	news := look()
	if news == nil || news.Put == nil {
		t.Fatalf("the change of another program is never read: %+v", news)
	}
	o := set.Workbench()
	if news.Put(&o); !o.Alarm.NoBell {
		t.Error("the bell rings still")
	}
	if err := keep("~/prints"); err != nil {
		t.Fatal(err)
	}
	if news := look(); news != nil {
		t.Errorf("what was kept here is news: %+v", news)
	}
}
