package entry

import (
	"fmt"
	"strings"

	"chape/project"
	"chape/ui/act"
	"chape/ui/form"
)

// Figures are those of a pasted text: one a line, or parted by tabs.
func Figures(text string) []string {
	var out []string
	for _, s := range strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' || r == '\t' || r == ';' }) {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}

// Several puts figures into as many fields, one or more, as one change. One that will not
// do leaves all as they were.
func Several(fields []project.Field, q project.Project, all []string) []act.Msg {
	for i, f := range fields {
		v, err := f.Parse(all[i], q)
		if err == nil {
			err = f.Set(&q, v)
		}
		if err != nil {
			return []act.Msg{act.Say{Text: fmt.Sprintf("nothing was pasted: %s: %s", f.NameIn(q), form.Words(err)), Warn: true}}
		}
	}
	texts := all[:len(fields)]
	said := fmt.Sprintf("%d numbers pasted, %s to %s", len(fields), fields[0].NameIn(q), fields[len(fields)-1].NameIn(q))
	if more := len(all) - len(fields); more > 0 {
		said += fmt.Sprintf("; %d more had no row", more)
	}
	return []act.Msg{act.Commit{Label: fmt.Sprintf("%d pasted numbers", len(fields)), Do: func(p *project.Project) error {
		for i, f := range fields {
			if !form.InReach(f, *p) {
				return ErrGone
			}
			v, err := f.Parse(texts[i], *p)
			if err == nil {
				err = f.Set(p, v)
			}
			if err != nil {
				return err
			}
		}
		return nil
	}}, act.Say{Text: said}}
}
