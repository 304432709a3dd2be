package steps

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"chape/project/plain"
)

// Add puts s after step i; -1 puts it first.
func Add(steps []Step, i int, s Step) ([]Step, error) {
	if i < -1 || i >= len(steps) {
		return nil, errNoStep
	}
	if len(steps) >= Most {
		return nil, fmt.Errorf("the list has %d steps, which is the most: remove one first", Most)
	}
	title, err := stepTitle(s.Title)
	if err != nil {
		return nil, err
	}
	s.Title, s.Short = title, s.ShortName()
	return slices.Insert(slices.Clone(steps), i+1, s), nil
}

// Remove takes step i out. One whose hold runs or waits is refused, so that no
// alarm is lost by a slip: its hold has to be ended, or the step skipped, first.
func Remove(steps []Step, i int) ([]Step, error) {
	if i < 0 || i >= len(steps) {
		return nil, errNoStep
	}
	if s := steps[i]; s.open() && !s.Started.IsZero() && s.Ended.IsZero() && s.HasHold() {
		return nil, errors.New("its hold is not over: end it or skip the step before removing it")
	}
	return slices.Delete(slices.Clone(steps), i, i+1), nil
}

// Move moves step i by places, down for positive, and returns where it went. At
// either end of the list it stays.
func Move(steps []Step, i, places int) ([]Step, int, error) {
	if i < 0 || i >= len(steps) {
		return nil, i, errNoStep
	}
	to := min(max(i+places, 0), len(steps)-1)
	out := slices.Delete(slices.Clone(steps), i, i+1)
	return slices.Insert(out, to, steps[i]), to, nil
}

// Rename gives step i another title and short name; an empty short name is
// made from the title.
func Rename(steps []Step, i int, title, short string) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		clean, err := stepTitle(title)
		if err != nil {
			return err
		}
		if short != "" && ShortFrom(short) != strings.ToUpper(short) {
			return fmt.Errorf("short name %q will not do: at most %d of A to Z, 0 to 9 and single spaces", short, MaxShort)
		}
		s.Title = clean
		s.Short = ShortFrom(short)
		s.Short = s.ShortName()
		return nil
	})
}

// SetNote gives step i a note of the maker's own.
func SetNote(steps []Step, i int, note string) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		s.Note = strings.TrimSpace(note)
		return nil
	})
}

func stepTitle(title string) (string, error) {
	title = strings.TrimSpace(plain.Safe(title))
	if title == "" {
		return "", errors.New("a step needs a title: type what is done in it")
	}
	if utf8.RuneCountInString(title) > LongestTitle {
		return "", fmt.Errorf("the title is longer than %d letters: put the rest into the step's note", LongestTitle)
	}
	return title, nil
}

// ShortName is the step's short name, made from its title when it has none.
func (s Step) ShortName() string {
	if short := ShortFrom(s.Short); short != "" {
		return short
	}
	for word := range strings.FieldsSeq(s.Title) {
		if short := ShortFrom(word); len(short) > 2 {
			return short
		}
	}
	if short := ShortFrom(s.Title); short != "" {
		return short
	}
	return "STEP"
}

// ShortFrom makes a short name of text: capitals A to Z, digits and single spaces
// between them, accents dropped, at most MaxShort of them. It is empty when nothing is
// left.
func ShortFrom(text string) string {
	var b strings.Builder
	space := false
	for _, r := range norm.NFD.String(strings.ReplaceAll(text, "ß", "ss")) {
		r = unicode.ToUpper(r)
		switch {
		case r == ' ':
			space = b.Len() > 0
		case ('A' <= r && r <= 'Z' || '0' <= r && r <= '9') && b.Len() < MaxShort:
			if space && b.Len()+1 < MaxShort {
				b.WriteByte(' ')
			} else if space {
				return b.String()
			}
			space = false
			b.WriteRune(r)
		}
	}
	return b.String()
}
