package settings

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chape/project/config"
	"chape/ui/workbench"
)

// configure writes the user's settings.
func configure(t *testing.T, text string) {
	t.Helper()
	home := t.TempDir()
	for _, name := range []string{"HOME", "XDG_CONFIG_HOME", "AppData"} {
		t.Setenv(name, home)
	}
	path, err := config.Path()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

// Settings that change on the disk are put into the workbench that is open; broken ones
// leave those of before.
func TestReread(t *testing.T) {
	configure(t, "bell = true\n")
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
