package part

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

// Row is a key, what is said of it, and what it does.
type Row struct {
	act.Key
	Do func() []act.Msg
}

// Keys is the table of the keys of one state: dispatch, foot and help read the same
// rows. A pane makes it when it is asked for, so that its rows are of the pane itself.
type Keys []Row

// Key gives a row: the key's name and words in the help, what it does, and the keys as
// Bubble Tea names them. Name and words are empty where the same is said in another row.
func Key(name, does string, do func() []act.Msg, keys ...string) Row {
	return Row{Key: act.Key{Binding: key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, does))}, Do: do}
}

// Foot has the key named in the foot, in fewer words.
func (r Row) Foot(brief string) Row {
	r.Brief = brief
	return r
}

// Late has the key named in the foot behind the root's, where there is room.
func (r Row) Late(brief string) Row {
	r.Brief, r.Key.Late = brief, true
	return r
}

// Name is how the help writes one of the row's keys, which Bubble Tea calls k.
func (r Row) Name(k string) string {
	names := strings.Split(r.Help().Key, ", ")
	if i := slices.Index(r.Keys(), k); 0 <= i && i < len(names) {
		return names[i]
	}
	return r.Help().Key
}

// Quiet gives a row for something that is done in a method without an answer.
func Quiet(do func()) func() []act.Msg {
	return func() []act.Msg {
		do()
		return nil
	}
}

// Find gives the row of a key.
func (k Keys) Find(msg tea.KeyMsg) (Row, bool) {
	for _, r := range k {
		if key.Matches(msg, r.Binding) {
			return r, true
		}
	}
	return Row{}, false
}

// Take carries out a command; known is false where it is none of these, or not meant
// as a command (see Press.Command).
func (k Keys) Take(p Press) (out []act.Msg, known bool) {
	if !p.Command() {
		return nil, false
	}
	r, known := k.Find(p.KeyMsg)
	if !known || r.Do == nil {
		return nil, known
	}
	return r.Do(), true
}

// Section gives the rows to the root, under a title in the help.
func (k Keys) Section(title string, now bool) act.Section {
	s := act.Section{Title: title, Now: now, Keys: make([]act.Key, len(k))}
	for i, r := range k {
		s.Keys[i] = r.Key
	}
	return s
}
