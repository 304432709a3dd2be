package leather

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"github.com/BurntSushi/toml"

	"chape/calc/bend"
	"chape/calc/length"
	"chape/project/money"
	"chape/project/plain"
	"chape/project/store"
	"chape/project/value"
)

// Name is what the file is called, in the folder of the settings.
const Name = "leather.toml"

// mm is a length of the file: a number of millimetres, or a text with its unit.
type mm float64

// UnmarshalTOML reads a number or a text.
func (m *mm) UnmarshalTOML(v any) error {
	switch v := v.(type) {
	case int64:
		*m = mm(v)
	case float64:
		*m = mm(v)
	case string:
		l, err := length.ParseLeather(v, length.Millimetres)
		*m = mm(l)
		return err
	default:
		return fmt.Errorf("found %v: write a number of millimetres, or a text such as \"8 oz\"", v)
	}
	return nil
}

// MarshalTOML writes the number.
func (m mm) MarshalTOML() ([]byte, error) {
	return []byte(strconv.FormatFloat(float64(m), 'f', -1, 64)), nil
}

// rack and row are the file as TOML has it.
type rack struct {
	Gap     *mm      `toml:"gap"`
	With    []string `toml:"with,omitempty"`
	Leather []row    `toml:"leather"`
}

type row struct {
	Name      string   `toml:"name"`
	Thickness mm       `toml:"thickness"`
	Width     *mm      `toml:"width,omitempty"`
	Height    *mm      `toml:"height,omitempty"`
	Corners   string   `toml:"corners,omitempty"`
	Flaws     []string `toml:"flaws,omitempty"`
	Grain     *float64 `toml:"grain,omitempty"`
	Within    *float64 `toml:"within,omitempty"`
	Neutral   *float64 `toml:"neutral,omitempty"`
	Plus      *float64 `toml:"neutral_plus,omitempty"`
	Strips    *int     `toml:"strips,omitempty"`
	Wet       *float64 `toml:"stretch_wet,omitempty"`
	Kept      *float64 `toml:"stretch_kept,omitempty"`
	Off       *float64 `toml:"stretch_plus,omitempty"`
	PriceM2   string   `toml:"price_m2,omitempty"`
	PriceFt2  string   `toml:"price_ft2,omitempty"`
	Aside     bool     `toml:"aside,omitempty"`
}

const heading = `# The leather on the rack. Lengths in millimetres, or as texts with their unit.
# Places are "along up; along up; ..." from the piece's lower left corner, a round flaw is
# "along up across". grain: degrees from the lower edge, only where it counts.

`

// Encode writes what Decode reads.
func Encode(s Stock) []byte {
	var b bytes.Buffer
	b.WriteString(heading)
	gap := mm(s.Gap)
	r := rack{Gap: &gap, With: s.With}
	for _, l := range s.Pieces {
		r.Leather = append(r.Leather, rowOf(l))
	}
	e := toml.NewEncoder(&b)
	e.Indent = ""
	if err := e.Encode(r); err != nil {
		return nil // a buffer takes everything, and all of it can be written
	}
	return b.Bytes()
}

func rowOf(l Leather) row {
	r := row{Name: l.Name, Thickness: mm(l.Thickness)}
	if len(l.Corners) > 0 {
		r.Corners = value.SayPairs(l.Corners, length.Millimetres)
	} else {
		w, h := mm(l.Width), mm(l.Height)
		r.Width, r.Height = &w, &h
	}
	for _, f := range l.Flaws {
		r.Flaws = append(r.Flaws, f.Say(length.Millimetres))
	}
	if l.Fixed {
		r.Grain = &l.Grain
	}
	r.Within = &l.Within
	if l.Bent() {
		r.Neutral, r.Plus, r.Strips = &l.Neutral.K, &l.Neutral.Plus, &l.Neutral.Of
	}
	if l.Stretched {
		r.Wet, r.Kept, r.Off = &l.Stretch.Wet, &l.Stretch.Kept, &l.Stretch.Plus
	}
	r.PriceM2, r.PriceFt2, r.Aside = l.Price.M2, l.Price.Ft2, l.Aside
	return r
}

// notTOML is what the decoder says, and what would do.
func notTOML(bad toml.ParseError) string {
	said := bad.Message
	if said == "" { // some have none of their own
		_, said, _ = strings.Cut(bad.Error(), ": ")
	}
	if strings.Contains(said, "strings cannot contain newlines") || strings.Contains(said, `expected '"'`) {
		return "found a text that does not end: close it with the quote it began with"
	}
	return plain.Safe(said) + ": mend that line"
}

// Decode reads the file. The error is one line with the file, and what would do.
func Decode(name string, data []byte) (Stock, error) {
	var r rack
	meta, err := toml.Decode(string(data), &r)
	var bad toml.ParseError
	switch {
	case errors.As(err, &bad):
		return Stock{}, fmt.Errorf("%s:%d: %s", name, bad.Position.Line, notTOML(bad))
	case err != nil:
		return Stock{}, fmt.Errorf("%s: %s", name, plain.Safe(err.Error()))
	}
	if un := meta.Undecoded(); len(un) > 0 {
		return Stock{}, fmt.Errorf("%s: %s: found a key this program does not know: take it out", name, plain.Quote(un[0].String()))
	}
	s := Empty()
	s.With = r.With
	if r.Gap != nil {
		s.Gap = length.Length(*r.Gap)
	}
	for i, row := range r.Leather {
		l, err := row.leather()
		if err != nil {
			return Stock{}, fmt.Errorf("%s: leather %d, %s: %w", name, i+1, plain.Quote(row.Name), err)
		}
		s.Pieces = append(s.Pieces, l)
	}
	if err := s.Validate(); err != nil {
		return Stock{}, fmt.Errorf("%s: %w", name, err)
	}
	return s, nil
}

// or is what a key holds, or what holds without it.
func or[T any](p *T, otherwise T) T {
	if p == nil {
		return otherwise
	}
	return *p
}

func (r row) leather() (Leather, error) {
	l := New(r.Name)
	l.Thickness = length.Length(r.Thickness)
	l.Width, l.Height = length.Length(or(r.Width, 0)), length.Length(or(r.Height, 0))
	corners, err := value.Pairs(r.Corners, length.Millimetres)
	if err != nil {
		return l, fmt.Errorf("corners: %w", err)
	}
	if l.Corners = corners; len(corners) > 0 && (r.Width != nil || r.Height != nil) {
		return l, fmt.Errorf("corners: found width or height as well: give one of the two")
	}
	for i, text := range r.Flaws {
		f, err := ReadFlaw(text, length.Millimetres)
		if err != nil {
			return l, fmt.Errorf("flaw %d: %w", i+1, err)
		}
		l.Flaws = append(l.Flaws, f)
	}
	l.Price = money.ByArea{M2: r.PriceM2, Ft2: r.PriceFt2}
	l.Aside = r.Aside
	l.Fixed, l.Grain, l.Within = r.Grain != nil, or(r.Grain, 0), or(r.Within, l.Within)
	if r.Neutral != nil {
		l.Neutral = bend.Neutral{K: *r.Neutral, Plus: or(r.Plus, 0), Of: max(1, or(r.Strips, 1))}
	}
	if r.Wet != nil {
		l.Stretch, l.Stretched = bend.Stretch{Wet: *r.Wet, Kept: or(r.Kept, 0), Plus: or(r.Off, 0)}, true
	}
	return l, nil
}

// File is the stock on the disk. Its methods may be called from anywhere.
type File struct {
	FS   store.FS
	Path string // "": nowhere, for this time only

	mu    sync.Mutex
	stamp store.Stamp
}

// Read reads it. Without a file there is no leather.
func (f *File) Read() (Stock, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.Path == "" {
		return Empty(), nil
	}
	data, stamp, err := store.Read(f.FS, f.Path)
	if f.stamp = stamp; errors.Is(err, fs.ErrNotExist) {
		f.stamp = store.Stamp{}
		return Empty(), nil
	}
	if err != nil {
		return Empty(), err
	}
	s, err := Decode(f.Path, data)
	if err != nil {
		f.stamp = store.Stamp{} // nothing is put over what can't be read
	}
	return s, err
}

// Keep writes it. A file that another program has changed meanwhile, or that will not
// do, is left as it is.
func (f *File) Keep(s Stock) error {
	if err := s.Validate(); err != nil {
		return err
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.Path == "" {
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(f.Path), 0o700); err != nil {
		return fmt.Errorf("the folder of %q can't be made: %w", f.Path, err)
	}
	stamp, err := store.Save(f.FS, f.Path, Encode(s), f.stamp)
	var changed *store.ErrChanged
	var there *store.ErrExists
	if errors.As(err, &changed) || errors.As(err, &there) {
		return fmt.Errorf("%q was changed by another program: leave this page, come back and change it again", f.Path)
	}
	if err == nil {
		f.stamp = stamp
	}
	return err
}
