package clock

import (
	"reflect"
	"testing"
	"time"
)

func TestShort(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0s", 24 * time.Hour: "24h", 15 * time.Minute: "15m", 90 * time.Minute: "1h30m", 20 * time.Second: "20s",
		10 * time.Minute: "10m", time.Hour + time.Second: "1h0m1s", 100 * time.Hour: "100h", -time.Hour: "-1h",
	} {
		if got := Short(d); got != want {
			t.Errorf("Short(%v) = %q, want %q", d, got, want)
		}
		if back, err := time.ParseDuration(Short(d)); err != nil || back != d {
			t.Errorf("ParseDuration(%q) = %v, %v", Short(d), back, err)
		}
	}
}

func TestWhole(t *testing.T) {
	at := time.Date(2026, 11, 25, 9, 30, 15, 999, time.FixedZone("CET", 3600))
	if got, want := Whole(at), time.Date(2026, 11, 25, 9, 30, 15, 0, time.FixedZone("", 3600)); !reflect.DeepEqual(got, want) {
		t.Errorf("Whole(%v) = %#v, want %#v", at, got, want)
	}
	odd := time.Date(1975, 1, 1, 0, 0, 0, 0, time.FixedZone("LMT", 1172))
	if got := Whole(odd); !got.Equal(odd) || got.Location() != time.UTC {
		t.Errorf("an offset of odd seconds can't be written: Whole(%v) = %v, want UTC", odd, got)
	}
	if !Whole(time.Time{}).IsZero() {
		t.Error("Whole(none) is some time")
	}
}
