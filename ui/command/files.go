package command

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/report"
	"chape/project/store"
	"chape/project/weigh"
	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/term"
)

var newVerb = call.Verb{
	Name: "new", Args: "FILE", Does: "start a project in a file of its own",
	Values: map[string][]string{"units": {"mm", "in"}},
	More: `  --title TEXT   what you call the knife; the file's name, if it is not given
  --units UNIT   what you measure in: mm or in

FILE gets the ending .toml if it has none, and must not exist yet. It starts
with our own middling knife and your usual sheath (see the settings in
config.toml), to be typed over in the workbench: chape FILE.`,
	Run: func(w call.World, v call.Verb, args []string) error {
		fs := call.Flags(v.Name)
		title := fs.String("title", "", "")
		units := fs.String("units", "", "")
		path, done, err := call.File(w, v, fs, args)
		if done || err != nil {
			return err
		}
		if path, err = newPath(path); err != nil {
			return err
		}
		set := settings.For(w)
		if *title == "" {
			*title = titleFrom(path)
		}
		p := set.NewProject(*title)
		if *units != "" {
			u, err := length.ParseUnit(*units)
			if err != nil {
				return call.Misuse("%v", err)
			}
			p.BeginIn(u)
		}
		if err := p.Validate(); err != nil {
			return call.Misuse("%v", err)
		}
		if _, err := store.SaveNew(store.OS(), path, file.Encode(p)); err != nil {
			return err
		}
		_, err = fmt.Fprintf(w.Out, "%s is there; type the knife with: chape %s\n", term.Plain(path), term.Plain(call.TypablePath(path)))
		return err
	},
}

// newPath puts the ending of a project file on a path that has none, and refuses a
// name that the shelf would not list.
func newPath(path string) (string, error) {
	if !call.IsProject(path) {
		path += call.Ending
	}
	dir, name := filepath.Split(path)
	switch {
	case strings.EqualFold(name, call.Ending):
		return "", call.Misuse("%q has no name before its ending: try \"chape new %sorchard.toml\"", path, dir)
	case name[0] == '.':
		return "", call.Misuse("%q begins with a dot, and the shelf does not list such files: try %q", path, dir+strings.TrimLeft(name, "."))
	}
	if _, err := os.Stat(dir); dir != "" && errors.Is(err, fs.ErrNotExist) {
		return "", fmt.Errorf("there is no folder %q: make it first, or name another one", filepath.Clean(dir))
	}
	return path, nil
}

// titleFrom makes a title of a file's name.
func titleFrom(path string) string {
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	name = strings.TrimSpace(strings.NewReplacer("-", " ", "_", " ").Replace(name))
	if name == "" || !utf8.ValidString(name) {
		return "New knife"
	}
	return call.Sentence(name)
}

var planVerb = call.Verb{
	Name: "plan", Args: "[--json] FILE", Does: "print the plan: figures, half-widths, checks",
	More: `  --json         for other programs, all figures in mm

The page is enough to mark the leather with a ruler and dividers.`,
	Run: func(w call.World, v call.Verb, args []string) error {
		fs := call.Flags(v.Name)
		asJSON := fs.Bool("json", false, "")
		path, done, err := call.File(w, v, fs, args)
		if done || err != nil {
			return err
		}
		set := settings.For(w)
		f, err := planOf(set, path)
		if err != nil {
			return err
		}
		if !*asJSON {
			_, err = fmt.Fprint(w.Out, report.Page(f.project, f.plan, f.project.Units, set.Shop().Offcut))
			return err
		}
		data, err := report.JSON(f.project, f.plan, weigh.DryingOf(f.project.Weigh, set.Scale))
		if err == nil {
			_, err = w.Out.Write(data)
		}
		return err
	},
}

// planned is a project as its file has it, and its plan.
type planned struct {
	path    string
	data    []byte
	stamp   store.Stamp
	project project.Project
	notices file.Notices
	plan    *calc.Plan
}

// planOf reads a project and works its plan out by the user's thresholds.
func planOf(set settings.Chosen, path string) (f planned, err error) {
	if path, err = locate(set, path); err != nil {
		return planned{}, err
	}
	f.path = path
	if f.data, f.stamp, err = store.Read(store.OS(), path); err != nil {
		return planned{}, call.Missing(path, err)
	}
	if f.project, f.notices, err = file.Decode(path, f.data); err != nil {
		return planned{}, err
	}
	if f.plan, err = calc.Compute(f.project.Input(set.Limits())); err != nil {
		return planned{}, fmt.Errorf("%q can't be planned: %w", path, err)
	}
	return f, nil
}
