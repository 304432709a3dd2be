package call

import (
	"slices"

	"chape/project/plain"
)

// Verb is one command.
type Verb struct {
	Name string
	Args string
	Does string // one line
	More string // the rest of its help; may be empty
	// What completions offer: words in its place of a file, values of its options.
	Words  []string
	Values map[string][]string
	Run    func(w World, v Verb, args []string) error
}

// Verbs are the commands of the program, in the order of the help.
type Verbs []Verb

// All gives the commands: those of the program itself, and behind them completion and
// help, which tell about all of them.
func All(own ...Verb) Verbs {
	var all Verbs
	given := func() Verbs { return all }
	all = append(append(all, own...), completionVerb(given), helpVerb(given))
	return all
}

// Find gives the command of that name.
func (all Verbs) Find(name string) (v Verb, ok bool) {
	i := slices.IndexFunc(all, func(v Verb) bool { return v.Name == name })
	if i < 0 {
		return Verb{}, false
	}
	return all[i], true
}

// Unknown says that a word is no command, with the nearest command or file if one
// is near.
func (all Verbs) Unknown(word string) error {
	if best := plain.Near(word, all.Names()); best != "" {
		return Misuse("%q is not a command: did you mean chape %s? (\"chape help\" lists them)", word, best)
	}
	if file := NearFile(word); file != "" {
		return Misuse("%q is neither a command nor a file: did you mean %s?", word, TypablePath(file))
	}
	return Misuse("%q is neither a command nor a file: plain \"chape\" opens the shelf, \"chape help\" lists the commands", word)
}

// noHelp says that there is no help on a word: it is asked for commands, not for files.
func (all Verbs) noHelp(word string) error {
	if best := plain.Near(word, append(all.Names(), "words", "man")); best != "" {
		return Misuse("there is no help on %q: did you mean chape help %s?", word, best)
	}
	return Misuse("there is no help on %q: \"chape help\" lists the commands", word)
}

// Names lists the commands.
func (all Verbs) Names() []string {
	var out []string
	for _, v := range all {
		out = append(out, v.Name)
	}
	return out
}
