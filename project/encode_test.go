package project

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"chape/calc/length"
	"chape/project/clock"
	"chape/project/steps"
	"chape/project/weigh"
)

func TestEncodeIsReadable(t *testing.T) {
	p := full()
	p.Title = "say \"hi\" \\ \t\x1b[2J\u009b\u202e é ½"
	p.Notes = "one\n\n\"\"\"three\"\"\" \\ \rfour\n"
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
		"notes = \"\"\"\none\n\n\\\"\\\"\\\"three\\\"\\\"\\\" \\\\ \\rfour\n\"\"\"\n",
		"leather = 0.396875\n", "mouth = 150.0\n", "due = 2026-12-18\n", `hold = "24h"` + "\n", `latest = "49h30m"` + "\n",
		`spent = "1m30.5s"` + "\n", "started = 2026-11-25T09:30:00+01:00\n", "skipped = true\n", "\n[room]\ntemperature = 18.5\n\n",
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

func TestShortSpan(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0s", 24 * time.Hour: "24h", 15 * time.Minute: "15m", 90 * time.Minute: "1h30m", 20 * time.Second: "20s",
		10 * time.Minute: "10m", time.Hour + time.Second: "1h0m1s", 100 * time.Hour: "100h", -time.Hour: "-1h",
	} {
		if got := clock.Short(d); got != want {
			t.Errorf("shortSpan(%v) = %q, want %q", d, got, want)
		}
		if back, err := parseSpan(clock.Short(d)); err != nil || back != d {
			t.Errorf("parseSpan(%q) = %v, %v", clock.Short(d), back, err)
		}
	}
}

func TestWhole(t *testing.T) {
	at := time.Date(2026, 11, 25, 9, 30, 15, 999, time.FixedZone("CET", 3600))
	if got, want := clock.Whole(at), time.Date(2026, 11, 25, 9, 30, 15, 0, time.FixedZone("", 3600)); !reflect.DeepEqual(got, want) {
		t.Errorf("whole(%v) = %#v, want %#v", at, got, want)
	}
	odd := time.Date(1975, 1, 1, 0, 0, 0, 0, time.FixedZone("LMT", 1172))
	if got := clock.Whole(odd); !got.Equal(odd) || got.Location() != time.UTC {
		t.Errorf("an offset of odd seconds can't be written: whole(%v) = %v, want UTC", odd, got)
	}
	if !clock.Whole(time.Time{}).IsZero() {
		t.Error("whole(none) is some time")
	}
}

func TestProblemsSayWhere(t *testing.T) {
	ps := Problems{
		{Key: "knife.station.at", Index: 2, Found: "1 mm", Remedy: "give 2"},
		{Key: "knife.station", Index: 0, Found: "a", Remedy: "b"},
		{Key: "sheath.gap", Index: -1, Found: "3 mm", Remedy: "give more"},
	}
	for i, want := range []string{"knife.station.at of mark 3: found 1 mm: give 2", "knife.station of mark 1: found a: b", "sheath.gap: found 3 mm: give more"} {
		if got := ps[i].Error(); got != want {
			t.Errorf("Error() = %q, want %q", got, want)
		}
	}
	if got, want := ps.Error(), "knife.station.at of mark 3: found 1 mm: give 2 (and 2 more)"; got != want {
		t.Errorf("Problems.Error() = %q, want %q", got, want)
	}
	if p, ok := ps.For("sheath.gap", -1); !ok || p.Beside() != "found 3 mm: give more" {
		t.Errorf("For(sheath.gap) = %+v, %v", p, ok)
	}
	if err := (Problems)(nil).err(); err != nil {
		t.Errorf("no problems are an error: %v", err)
	}
}
