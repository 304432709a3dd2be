// Package words is the word list: what the words of the form and of the plan mean. The
// form shows it for the row in hand, the command line as a whole.
package words

import (
	"cmp"
	"slices"
	"strings"
)

// Word is one word and its meaning. Key is the field of a project that it names, as in
// the file; "": it is none.
type Word struct {
	Key, Name, Text string
}

// Of is the meaning of a field; ok is false for those whose line on the form says it all.
func Of(key string) (Word, bool) {
	i := slices.IndexFunc(table, func(w Word) bool { return w.Key == key })
	if i < 0 {
		return Word{}, false
	}
	return table[i], true
}

// All are the words in the order of the alphabet.
func All() []Word {
	all := slices.Clone(table)
	slices.SortFunc(all, func(a, b Word) int { return cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) })
	return all
}
