package value

import (
	"errors"
	"fmt"
	"reflect"
	"testing"
	"time"

	"chape/calc/length"
)

// strop is an invented row with one column of every making.
type strop struct {
	name   string
	wide   length.Length
	thick  length.Length
	offset length.Length
	middle bool // offset was not given
	warmth float64
	felt   bool // warmth was given
	side   side
	made   time.Time
	dries  time.Duration
	old    bool
}

type side uint8

func (s side) String() string { return [...]string{"rough", "smooth", "split"}[s] }

var (
	nameColumn   = At(Spec{Key: "strop.name", Kind: Text, Max: 20}, "strop", func(s *strop) *string { return &s.name })
	wideColumn   = LengthAt(Spec{Key: "strop.wide", Max: 90}, 40, func(s *strop) *length.Length { return &s.wide })
	thickColumn  = LengthAt(Spec{Key: "strop.thick", Kind: Leather, Max: 9}, 3, func(s *strop) *length.Length { return &s.thick })
	offsetColumn = Optional(Spec{Key: "strop.offset", Auto: "centred"}, func(s *strop) *length.Length { return &s.offset }, func(s *strop) *bool { return &s.middle }, false)
	warmthColumn = OptionalNumber(Spec{Key: "strop.warmth"}, func(s *strop) *float64 { return &s.warmth }, func(s *strop) *bool { return &s.felt })
	sideColumn   = ChoiceAt(Spec{Key: "strop.side"}, func(s *strop) *side { return &s.side }, 1, 0, 2)
)

// What Set puts in Get gives back, and only its own key is touched.
func TestColumnsSetAndGet(t *testing.T) {
	var s strop
	s.middle = true
	for _, c := range []struct {
		column Column[strop]
		v      any
		want   strop
	}{
		{nameColumn, "long one", strop{name: "long one", middle: true}},
		{wideColumn, length.Length(52.5), strop{wide: 52.5, middle: true}},
		{thickColumn, length.Length(3.2), strop{thick: 3.2, middle: true}},
		{offsetColumn, length.Length(8), strop{offset: 8}},
		{offsetColumn, length.Length(0), strop{}}, // 0 is given as well
		{warmthColumn, -4.5, strop{warmth: -4.5, felt: true, middle: true}},
		{warmthColumn, 0.0, strop{felt: true, middle: true}},
		{sideColumn, "split", strop{side: 2, middle: true}},
		{sideColumn, "smooth", strop{side: 1, middle: true}},
	} {
		got := s
		c.column.Set(&got, c.v)
		if got != c.want || c.column.Get(&got) != c.v {
			t.Errorf("%s set to %v: %+v, and gives %v", c.column.Key, c.v, got, c.column.Get(&got))
		}
	}
}

// What is taken back leaves nothing behind: a figure that counts for nothing is 0.
func TestOptionalTakenBack(t *testing.T) {
	s := strop{offset: 8, warmth: 21, felt: true}
	offsetColumn.Set(&s, nil)
	warmthColumn.Set(&s, nil)
	if s != (strop{middle: true}) || offsetColumn.Get(&s) != nil || warmthColumn.Get(&s) != nil {
		t.Errorf("taken back: %+v", s)
	}
	if !offsetColumn.Skip(&s) || !warmthColumn.Skip(&s) {
		t.Error("what was not given is written")
	}
	offsetColumn.Set(&s, length.Length(0))
	warmthColumn.Set(&s, 0.0)
	if offsetColumn.Skip(&s) || warmthColumn.Skip(&s) {
		t.Error("a 0 that was given is not written")
	}
	sideColumn.Set(&s, "smooth")
	if sideColumn.Set(&s, "furry"); s.side != 1 {
		t.Errorf("a word that is none sets the side to %v", s.side)
	}
}

// The spec that each making gives: kind, options, default, whether a row must have it.
func TestColumnsAreDescribed(t *testing.T) {
	rowed := func(def any) Column[strop] {
		return RowLength(Spec{Key: "strop.wide"}, def, func(s *strop) *length.Length { return &s.wide })
	}
	for _, c := range []struct {
		column Column[strop]
		kind   Kind
		def    any
		needed bool
	}{
		{nameColumn, Text, "strop", false}, {wideColumn, Length, length.Length(40), false}, {thickColumn, Leather, length.Length(3), false},
		{offsetColumn, Length, nil, false}, {warmthColumn, Number, nil, false}, {sideColumn, Choice, "smooth", false},
		{rowed(nil), Length, nil, true}, {rowed(length.Length(0)), Length, length.Length(0), false},
	} {
		if c.column.Kind != c.kind || c.column.Def != c.def || c.column.Needed != c.needed {
			t.Errorf("%s: kind %d, default %v, needed %v", c.column.Key, c.column.Kind, c.column.Def, c.column.Needed)
		}
	}
	if got := sideColumn.Options; !reflect.DeepEqual(got, []string{"smooth", "rough", "split"}) {
		t.Errorf("options %q", got)
	}
	if len(ChoiceAt(Spec{}, func(s *strop) *side { return &s.side }, 0, 1).Options) != 2 || len(sideColumn.Options) != 3 {
		t.Error("two choices share their options")
	}
}

// A key that says nothing is left out, one that says something is not.
func TestUnlessEmpty(t *testing.T) {
	columns := []Column[strop]{
		nameColumn.UnlessEmpty(),
		At(Spec{Key: "made", Kind: Date}, time.Time{}, func(s *strop) *time.Time { return &s.made }).UnlessEmpty(),
		At(Spec{Key: "dries", Kind: Span}, time.Duration(0), func(s *strop) *time.Duration { return &s.dries }).UnlessEmpty(),
		At(Spec{Key: "old", Kind: Flag}, false, func(s *strop) *bool { return &s.old }).UnlessEmpty(),
	}
	told := strop{name: " ", made: day(2026, 11, 25), dries: time.Second, old: true}
	for _, c := range columns {
		if !c.Skip(&strop{}) || c.Skip(&told) {
			t.Errorf("%s: left out empty: %v, told: %v", c.Key, c.Skip(&strop{}), c.Skip(&told))
		}
	}
	if wideColumn.UnlessEmpty().Skip(&strop{}) {
		t.Error("a length of 0 says something")
	}
	if nameColumn.Skip != nil {
		t.Error("the column it was made from leaves its key out as well")
	}
	wide := wideColumn.Only(func(s *strop) bool { return s.wide > 10 })
	if !wide.Skip(&strop{wide: 10}) || wide.Skip(&strop{wide: 11}) {
		t.Error("Only writes it where it need not, or does not where it must")
	}
}

// Where a word stands for 0 the screens show none and take none for 0; the file keeps 0.
func TestZeroAs(t *testing.T) {
	c := ZeroAs("full", wideColumn)
	s := strop{wide: 12}
	if c.Auto != "full" || c.Seen.Get(&s) != length.Length(12) || c.Get(&s) != length.Length(12) {
		t.Errorf("12 is shown as %v, and kept as %v", c.Seen.Get(&s), c.Get(&s))
	}
	if err := c.Seen.Set(&s, nil, length.Millimetres); err != nil || s.wide != 0 || c.Seen.Get(&s) != nil || c.Get(&s) != length.Length(0) {
		t.Errorf("none: %v, %v, shown as %v, kept as %v", err, s.wide, c.Seen.Get(&s), c.Get(&s))
	}
	if err := c.Seen.Set(&s, length.Length(7), length.Inches); err != nil || s.wide != 7 {
		t.Errorf("7: %v, %v", err, s.wide)
	}
}

// What is measured and what is kept are two things: here the diameter is measured and the
// radius is kept.
func TestShownAs(t *testing.T) {
	c := wideColumn.ShownAs(func(s *strop) any { return 2 * s.wide }, func(s *strop, v any, u length.Unit) error {
		if v.(length.Length) > 100 {
			return fmt.Errorf("too wide in %v", u)
		}
		s.wide = v.(length.Length) / 2
		return nil
	})
	s := strop{wide: 12}
	if c.Seen.Get(&s) != length.Length(24) || c.Get(&s) != length.Length(12) || wideColumn.Seen != nil {
		t.Errorf("shown %v, kept %v", c.Seen.Get(&s), c.Get(&s))
	}
	if err := c.Seen.Set(&s, length.Length(30), length.Millimetres); err != nil || s.wide != 15 {
		t.Errorf("set to 30: %v, %v", s.wide, err)
	}
	if err := c.Seen.Set(&s, length.Length(101), length.Inches); err == nil || errors.Unwrap(err) != nil || s.wide != 15 {
		t.Errorf("refused: %v, %v", s.wide, err)
	}
}
