package call

import (
	"os/exec"
	"testing"
)

func TestTypable(t *testing.T) {
	for _, c := range []struct {
		windows    bool
		word, want string
	}{
		{false, "orchard.toml", "orchard.toml"},
		{false, "drop point.toml", "'drop point.toml'"},
		{false, "it's $HOME.toml", `'it'\''s $HOME.toml'`},
		{false, "", "''"},
		{false, "Jäger.toml", "Jäger.toml"},
		{false, "~/x", "'~/x'"},
		{true, `C:\sheaths\a.toml`, `C:\sheaths\a.toml`},
		{true, `C:\my sheaths\a.toml`, `"C:\my sheaths\a.toml"`},
	} {
		if got := quotedFor(c.windows, c.word); got != c.want {
			t.Errorf("quotedFor(%v, %q) = %s, want %s", c.windows, c.word, got, c.want)
		}
	}
}

// A shell gives the very word back.
func TestTypableInAShell(t *testing.T) {
	sh, err := exec.LookPath("sh")
	if err != nil {
		return // the table above stands for it
	}
	for _, word := range []string{"a b", "it's", "$HOME `x` \\ !", "*?[a]", "a\nb", "-x", "%s", "\"", "#a", "a;b&c|d<e>f(g)"} {
		out, err := exec.Command(sh, "-c", "printf %s "+quotedFor(false, word)).Output()
		if err != nil || string(out) != word {
			t.Errorf("%q comes back as %q, %v", word, out, err)
		}
	}
}
