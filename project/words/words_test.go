package words

import (
	"strings"
	"testing"

	"chape/project"
)

// Every word that names a field is one of the form's, under the name that the form has
// for it, and every word is a whole sentence.
func TestWordsAreThoseOfTheForm(t *testing.T) {
	names := map[string]string{}
	for _, f := range project.Fields {
		names[f.Key] = f.Name
	}
	for _, f := range append(project.MarkFields(0), project.FitFields(0)...) {
		names[f.Key] = f.Name
	}
	seen := map[string]bool{}
	for _, w := range table {
		if w.Key != "" && !strings.Contains(w.Name, names[w.Key]) || w.Key != "" && names[w.Key] == "" {
			t.Errorf("%s is %q here and %q on the form", w.Key, w.Name, names[w.Key])
		}
		if seen[w.Name] || w.Name == "" || !strings.HasSuffix(w.Text, ".") || strings.ToUpper(w.Text[:1]) != w.Text[:1] {
			t.Errorf("%q: once, and in sentences: %q", w.Name, w.Text)
		}
		seen[w.Name] = true
	}
}

// The words that cannot be guessed are all there.
func TestEveryHardWordIsThere(t *testing.T) {
	for _, key := range []string{"knife.outline.swell", "belt.lap", "sheath.blend", "sheath.neutral", "sheath.ease", "sheath.clearance"} {
		if _, ok := Of(key); !ok {
			t.Errorf("nothing is said of %s", key)
		}
	}
	all := All()
	for i := 1; i < len(all); i++ {
		if strings.ToLower(all[i-1].Name) > strings.ToLower(all[i].Name) {
			t.Errorf("%q stands before %q", all[i-1].Name, all[i].Name)
		}
	}
}
