package panel

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
)

// Brief are the keys that the foot names, and those it names where there is room.
func Brief(keys []act.Key) (first, late []key.Binding) {
	for _, k := range keys {
		switch {
		case k.Brief == "":
		case k.Late:
			late = append(late, In(k.Binding, k.Brief))
		default:
			first = append(first, In(k.Binding, k.Brief))
		}
	}
	return first, late
}

// In is a key with fewer words than the help has.
func In(b key.Binding, words string) key.Binding {
	b.SetHelp(b.Help().Key, words)
	return b
}
