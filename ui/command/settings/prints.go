package settings

import (
	"os"
	"path/filepath"

	"github.com/adrg/xdg"

	"chape/project/config"
	"chape/project/print/sheet"
)

// keepPrints keeps the folder for printed sheets.
func (s Chosen) keepPrints() func(string) error {
	if s.Path == "" {
		return nil
	}
	return func(folder string) error {
		return s.keep(config.Change{Key: "prints", Value: folder})
	}
}

// keepPaper keeps the paper that lies in the printer.
func (s Chosen) keepPaper() func(sheet.Paper) error {
	if s.Path == "" {
		return nil
	}
	return func(p sheet.Paper) error { return s.keep(config.Change{Key: "paper", Value: p.Name}) }
}

// SheetsFolder is the folder for the sheets of a project that was not named by its path,
// as it is for P in the workbench: the one chosen, else the documents; "": there is neither.
func (s Chosen) SheetsFolder() string {
	if home, err := config.Home(); err == nil {
		if dir := s.PrintsFolder(home); dir != "" {
			return dir
		}
	}
	return documents()
}

// documents is the folder for what one makes, by the system's own rules, where it is there;
// else the home folder; "": none.
func documents() string {
	xdg.Reload() // the environment as it is now
	home, err := config.Home()
	if err != nil {
		return ""
	}
	if info, err := os.Stat(xdg.UserDirs.Documents); err == nil && info.IsDir() && filepath.IsAbs(xdg.UserDirs.Documents) {
		return xdg.UserDirs.Documents
	}
	return home
}
