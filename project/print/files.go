package print

import (
	"chape/calc"
	"chape/project"
	"chape/project/print/folder"
	"fmt"
	"slices"
)

// Files prints what is asked for, "pdf" or "svg", under a name without
// ending. The names carry the pattern's number, and a trial, half a pattern and one
// that lies flesh side up have names of their own, so that none replaces the
// pattern that leather is cut by. The same kind twice is printed once.
func Files(p project.Project, plan *calc.Plan, o Options, base string, kinds []string) ([]folder.File, error) {
	which := fmt.Sprintf(" pattern %d", p.Revision)
	if o.Half {
		which += " half"
	}
	if o.Up == calc.FleshUp {
		which += " flesh"
	}
	if o.Trial != 0 {
		which += " trial"
	}
	if err := CheckKinds(kinds); err != nil {
		return nil, err
	}
	var out []folder.File
	for i, kind := range kinds {
		if slices.Contains(kinds[:i], kind) {
			continue
		}
		draw := PDF
		if kind == "svg" {
			draw = SVG
		}
		data, err := draw(p, plan, o)
		if err != nil {
			return nil, err
		}
		out = append(out, folder.File{Name: folder.Name(base, which+"."+kind), Data: data})
	}
	return out, nil
}

// CheckKinds says which of the kinds can't be printed.
func CheckKinds(kinds []string) error {
	for _, kind := range kinds {
		if kind != "pdf" && kind != "svg" {
			return fmt.Errorf("%.40q is nothing to print as: try pdf, svg or pdf,svg", kind)
		}
	}
	return nil
}
