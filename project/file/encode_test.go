package file

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"chape/calc/length"
	"chape/project"
	"chape/project/clock"
	"chape/project/steps"
	"chape/project/weigh"
)

// full is a project with one row of everything.
func full() project.Project {
	p := project.Defaults()
	p.Source = project.FromStations
	p.Fits = []project.Fit{{With: "paper"}}
	p.Fits[0].Reach = 20
	p.Steps = []steps.Step{{Title: "x"}}
	p.Patterns = []project.Pattern{{Number: 1, Printed: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), Inputs: "format = 1\ntitle = \"\"\n"}}
	p.Weigh = []weigh.Weighing{{When: time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC), Grams: 100, State: "drying"}}
	return p
}

func TestEncodeIsReadable(t *testing.T) {
	p := full()
	p.Title = "say \"hi\" \\ \t\x1b[2J\u009b\u202e é ½"
	p.Notes = "one \"two\"\n\n\"\"\"three\"\"\" \\ \rfour\n"
	p.Sheath.Leather = length.Inch / 64
	p.Sheath.Mouth = 150
	p.Customer.Due = time.Date(2026, 12, 18, 0, 0, 0, 0, time.UTC)
	p.Steps = []steps.Step{{
		Title: "dry", Hold: 24 * time.Hour, Latest: 49*time.Hour + 30*time.Minute, Spent: 90*time.Second + 500*time.Millisecond, Skipped: true,
		Started: time.Date(2026, 11, 25, 9, 30, 0, 0, time.FixedZone("X", 3600)),
	}}
	p.Room = weigh.Room{Temperature: 18.5, HasTemperature: true}
	text := string(Encode(p))
	for _, want := range []string{
		"format = 1\n", `title = "say \"hi\" \\ \t\u001B[2J\u009B\u202E é ½"` + "\n",
		"notes = \"\"\"\none \"two\"\n\n\\\"\\\"\"three\\\"\\\"\" \\\\ \\rfour\n\"\"\"\n",
		"leather = 0.396875\n", "mouth = 150.0\n", "due = 2026-12-18\n", `hold = "24h"` + "\n", `latest = "49h30m"` + "\n",
		`spent = "1m30.5s"` + "\n", "started = 2026-11-25T09:30:00+01:00\n", "skipped = true\n", "\n[room]\ntemperature = 18.5\n\n",
		"\n[[pattern]]\nnumber = 1\nprinted = 2026-11-25\ninputs = \"\"\"\nformat = 1\ntitle = \\\"\"\n\"\"\"\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("Encode lacks %q in\n%s", want, text)
		}
	}
	for _, no := range []string{"offset", "needle", "ended", "note =", "humidity", "[knife.outline]", "\x1b"} {
		if strings.Contains(text, no) {
			t.Errorf("Encode has %q in\n%s", no, text)
		}
	}
	if again := string(Encode(p)); again != text {
		t.Error("Encode is not the same twice")
	}
	q, _, err := Decode("f.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p.Steps[0].Started = clock.Whole(p.Steps[0].Started) // its zone has no name in the file
	if !reflect.DeepEqual(p, q) {
		t.Errorf("Decode(Encode(p)) =\n%+v, want\n%+v", q, p)
	}
}
