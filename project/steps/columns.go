package steps

import (
	"time"

	"chape/project/clock"
	"chape/project/plain"
	"chape/project/value"
)

func textColumn(key, name, hint string, most float64, p func(*Step) *string) value.Column[Step] {
	return value.At(value.Spec{Key: "step." + key, Group: "steps", Name: name, Hint: hint, Kind: value.Text, Max: most}, "", p).UnlessEmpty()
}

func spanColumn(key, name, hint string, most time.Duration, p func(*Step) *time.Duration) value.Column[Step] {
	s := value.Spec{Key: "step." + key, Group: "steps", Name: name, Hint: hint, Kind: value.Span, Max: float64(most)}
	return value.At(s, time.Duration(0), p).UnlessEmpty()
}

func momentColumn(key, name string, p func(*Step) *time.Time) value.Column[Step] {
	return value.At(value.Spec{Key: "step." + key, Group: "steps", Name: name, Kind: value.Moment}, time.Time{}, p).UnlessEmpty()
}

// Columns are the keys of a step in a file.
var Columns = []value.Column[Step]{
	needed(textColumn("title", "step", "what is to be done", value.LongestLine, func(s *Step) *string { return &s.Title })),
	textColumn("short", "short name", "at most 9 letters, for the bench", MaxShort, func(s *Step) *string { return &s.Short }),
	textColumn("caution", "caution", "what can hurt, and what keeps it from you", 2000, func(s *Step) *string { return &s.Caution }),
	textColumn("note", "note", "your own", 2000, func(s *Step) *string { return &s.Note }),
	spanColumn("hold", "not before", "how long it must stand: 24h, 15m", clock.Longest, func(s *Step) *time.Duration { return &s.Hold }),
	spanColumn("latest", "look by", "when to look at the latest: 48h", clock.Longest, func(s *Step) *time.Duration { return &s.Latest }),
	textColumn("from", "counts from", "short name of the step whose tick starts the hold", MaxShort, func(s *Step) *string { return &s.From }),
	value.At(value.Spec{Key: "step.sheet", Group: "steps", Name: "by data sheet", Kind: value.Flag, Hint: "how long is for the data sheet to say"},
		false, func(s *Step) *bool { return &s.Sheet }).UnlessEmpty(),
	momentColumn("started", "started", func(s *Step) *time.Time { return &s.Started }),
	momentColumn("first", "first started", func(s *Step) *time.Time { return &s.First }),
	momentColumn("ended", "ended early", func(s *Step) *time.Time { return &s.Ended }),
	momentColumn("done", "done", func(s *Step) *time.Time { return &s.Done }),
	value.At(value.Spec{Key: "step.skipped", Group: "steps", Name: "skipped", Kind: value.Flag}, false, func(s *Step) *bool { return &s.Skipped }).UnlessEmpty(),
	spanColumn("expected", "time expected", "for the work at the bench: 20m", MaxSpent, func(s *Step) *time.Duration { return &s.Expect }),
	spanColumn("spent", "time spent", "at the bench so far: 45m", MaxSpent, func(s *Step) *time.Duration { return &s.Spent }),
}

func needed(c value.Column[Step]) value.Column[Step] {
	c.Needed, c.Skip = true, nil
	return c
}

// Check looks at what the ranges of its columns do not tell: a step is not to be looked at
// before its hold is over.
func (s Step) Check(add func(key, found, remedy string)) {
	if s.Latest > 0 && s.Latest < s.Hold {
		add("step.latest", plain.Quote(clock.Short(s.Latest)), "give at least hold, "+clock.Short(s.Hold)+", or take it out: a step is not looked at before its hold is over")
	}
}
