package config

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/print/sheet"
	"chape/project/print/svg"
	"chape/project/steps"
	"chape/project/store"
)

// Config is what config.toml holds. Defaults gives one; the zero value is not
// of use.
type Config struct {
	Units    length.Unit      // of new projects
	Paper    string           // what sheet.ParsePaper reads
	Shelf    string           // the folder of project files; "": the system's data folder
	Prints   string           // the folder for printed sheets; "": none chosen
	Glyphs   string           // "braille", "blocks", "ascii"; "": as the terminal tells
	Cell     float64          // height of a character cell over its width
	Colours  string           // "auto", "dark", "light", "none"
	Bell     bool             // whether a hold that falls due rings
	Notice   string           // "none", "osc 9", "osc 777"
	OnDue    []string         // command and its words, run without a shell; none: empty
	Cutter   svg.Look         // how the SVG for a cutter is to be
	Printer  sheet.Correction // what the pricks 100 mm apart measured
	Pictures string           // the folder where pictures of tracings arrive; "": none
	Standoff float64          // mm, from the middle of a drawn line to the knife; 0: half the line
	Scale    float64          // grams, one step of the kitchen scale; 0: as the digits of the weighings tell

	list     string          // which checklist new projects start with
	limits   calc.Limits     //
	price    price           //
	asked    asked           //
	hours    string          // as calendar.ParseWeek reads them
	currency string          //
	maker    string          // name and address, for the customer's papers
	address  []string        //
	start    project.Project // the defaults of sheath, belt and stitch, and the user's own steps
}

// The checklists that new projects can start with.
const (
	FormThenSew = "form then sew"
	SewThenForm = "sew then form"
	OwnSteps    = "own" // the file's [[step]]
)

// price is what the user pays. Leather is sold by either measure.
type price struct {
	leatherM2, leatherFt2, thread, sundries, hour, offcut float64
}

// Defaults is what holds without a file.
func Defaults() Config {
	return Config{
		Paper: "a4", Cell: 2, Colours: "auto", Bell: true, Notice: "none", list: FormThenSew,
		Cutter: svg.Look{Colours: svg.DefaultColours},
		limits: calc.DefaultLimits(), price: price{offcut: calc.DefaultOffcut}, asked: asked{holds: 30}, start: project.Defaults(),
	}
}

// Path is where the file is: in the user's configuration folder. The error is one
// line that says which variable of the environment is at fault, and what would do.
func Path() (string, error) {
	dir, err := os.UserConfigDir()
	if xdg := os.Getenv("XDG_CONFIG_HOME"); err != nil && xdg != "" {
		return "", fmt.Errorf("XDG_CONFIG_HOME is %q, not a full path: set it to one, or not at all", xdg)
	}
	if err != nil || !filepath.IsAbs(dir) {
		if _, err := Home(); err != nil {
			return "", err
		}
		return "", fmt.Errorf("there is no folder for settings: %w", err)
	}
	return filepath.Join(dir, "chape", "config.toml"), nil
}

// Home is the user's own folder, as a full path. There is no other to fall back on: a
// folder that all share would show them each other's customers.
func Home() (string, error) {
	name := "HOME"
	if runtime.GOOS == "windows" {
		name = "USERPROFILE"
	}
	dir, err := os.UserHomeDir()
	if err != nil || dir == "" {
		return "", fmt.Errorf("%s is not set: set it to your own folder", name)
	}
	if !filepath.IsAbs(dir) {
		return "", fmt.Errorf("%s is %q, not a full path: set it to your own folder", name, dir)
	}
	return dir, nil
}

// Load reads the file at path. Without one the defaults hold. One that will not
// do is left as it is: the defaults hold, and the error says in one line where it
// is wrong and what would do.
func Load(fsys store.FS, path string) (Config, error) {
	data, _, err := store.Read(fsys, path)
	if errors.Is(err, fs.ErrNotExist) {
		return Defaults(), nil
	}
	if err != nil {
		return Defaults(), ofSettings(err)
	}
	return Decode(path, data)
}

// ofSettings puts what package store says of a project's file into what holds for the
// settings: they have one place, and one version.
func ofSettings(err error) error {
	var f *store.Failure
	var c *store.ErrChanged
	switch {
	case errors.As(err, &c):
		return fmt.Errorf("%q was changed by another program just now: try again", c.Path)
	case errors.As(err, &f) && f.Doing == "saved":
		g := *f
		g.Try = "see to it and to its folder, then try again"
		return &g
	case errors.As(err, &f):
		g := *f
		g.Try = "settings are a plain file: chape settings --sample shows one"
		return &g
	}
	return err
}

// Decode reads what the file holds; the name is for the error, a
// *project.Refused. With an error the Config is Defaults.
func Decode(name string, data []byte) (Config, error) {
	c := Defaults()
	c.list = ""
	start, err := file.DecodeSettings(name, data, c.own(), c.check)
	if err != nil {
		return Defaults(), err
	}
	c.start = start
	c.start.Sheath.Mouth = start.ProposedMouth()
	if c.list == "" && len(start.Steps) > 0 {
		c.list = OwnSteps
	}
	if c.list == "" {
		c.list = FormThenSew
	}
	return c, nil
}

// NewProject is a project that starts from the user's defaults.
func (c Config) NewProject(title string) project.Project {
	p := project.New(title, c.Units, c.start)
	p.Steps = c.Steps()
	return p
}

// Steps is the checklist that new projects start with, a list of its own at
// each call.
func (c Config) Steps() []steps.Step {
	switch c.list {
	case OwnSteps:
		return slices.Clone(c.start.Steps)
	case SewThenForm:
		return steps.SewThenForm(c.start.Parts())
	}
	return steps.FormThenSew(c.start.Parts())
}

// Limits are the thresholds of the checks.
func (c Config) Limits() calc.Limits { return c.limits }

// Sheet is the paper to print on.
func (c Config) Sheet() sheet.Paper {
	p, err := sheet.ParsePaper(c.Paper)
	if err != nil { // Decode refuses such a paper
		p, _ = sheet.ParsePaper(Defaults().Paper)
	}
	return p
}

// ShelfFolder is the shelf's folder: that of the file, where "~" stands for home, else
// the one given.
func (c Config) ShelfFolder(home, otherwise string) string { return folder(c.Shelf, home, otherwise) }

// PrintsFolder is the folder for printed sheets in the same way; "": none was chosen.
func (c Config) PrintsFolder(home string) string { return folder(c.Prints, home, "") }

func folder(path, home, otherwise string) string {
	rest, inHome := strings.CutPrefix(filepath.ToSlash(path), "~")
	switch {
	case path == "":
		return otherwise
	case inHome:
		return filepath.Join(home, filepath.FromSlash(rest))
	}
	return filepath.Clean(path)
}
