package command

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
	"time"

	"chape/project"
	"chape/project/file"
	"chape/project/print"
	"chape/project/print/folder"
	"chape/project/report"
	"chape/project/store"
	"chape/project/versions"
	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/term"
)

// printFile prints a project's pattern into a folder, with "" where sheetsFolder says. What is printed first from these
// numbers is noted in the file with the day, which the sheets bear from then on; a trial,
// which nobody cuts by, is not.
func printFile(w call.World, set settings.Chosen, path, dir string, kinds []string, o print.Options, how printHow) error {
	f, err := planOf(set, path)
	if err != nil {
		return err
	}
	grown, err := outgrown(&f, o, how.raise)
	if err != nil {
		return err
	}
	if dir == "" {
		dir = sheetsFolder(set, path, f.path)
	}
	path = f.path
	p, isNews, unnoted := f.project, false, error(nil)
	if o.Trial == 0 {
		now := time.Now
		if w.Now != nil {
			now = w.Now
		}
		if p, isNews = file.Printed(p, now()); isNews {
			unnoted = store.OS().CanWrite(path)
		}
		if unnoted != nil {
			p, isNews = f.project, false // the sheets bear no date that no file knows
		}
	}
	o.Date = file.DateOf(p)
	base := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	files, err := print.Files(p, f.plan, o, base, kinds)
	if err != nil {
		return err
	}
	if err := writeSheets(w, dir, files, how.force); err != nil {
		return err
	}
	if grown != "" {
		fmt.Fprintln(w.Err, "chape: "+grown)
	}
	for _, s := range report.Warnings(f.plan, p.Units) {
		fmt.Fprintln(w.Err, "chape: "+term.Plain(s))
	}
	if isNews {
		unnoted = note(f, p)
	}
	if unnoted != nil {
		fmt.Fprintf(w.Err, "chape: printed, but that is not noted in %s: %s\n", term.Plain(path), term.Plain(refusal(unnoted)))
	}
	return nil
}

// refusal is why a file can't be written, without its path, which is said already.
func refusal(err error) string {
	var fault *fs.PathError
	if errors.As(err, &fault) {
		err = fault.Err
	}
	return store.Reason(err)
}

// sheetsFolder is where the sheets of a project go by themselves: beside one that was named
// by its path; where P puts them for one that was found by its title.
func sheetsFolder(set settings.Chosen, word, path string) string {
	if path != word {
		if dir := set.SheetsFolder(); dir != "" {
			return dir
		}
	}
	return filepath.Dir(path)
}

// printHow is how sheets are printed, beside what is on them.
type printHow struct {
	force bool // files that are not chape's are replaced
	raise bool // a pattern that is another than the one printed gets the next number
}

// outgrown gives a pattern that is another than the one printed under its number the next
// number, where that is asked for; else it says what is given up, and how both are kept.
func outgrown(f *planned, o print.Options, raise bool) (says string, err error) {
	q, is := versions.Outgrown(f.project)
	switch {
	case o.Trial != 0:
		return "", nil
	case !is && raise:
		return fmt.Sprintf("pattern %d keeps its number: no other was printed under it", f.project.Revision), nil
	case !is:
		return "", nil
	}
	next := f.project.Clone()
	versions.Raise(&next)
	if raise {
		if err := store.OS().CanWrite(f.path); err != nil { // no sheet bears a number that no file knows
			return "", fmt.Errorf("the number can't be raised in %q: %s: print without --raise, or make it writable", f.path, refusal(err))
		}
		f.project = next
		return fmt.Sprintf("printed as pattern %d; pattern %d, printed on %s, stays in the file: chape patterns %s", next.Revision, q.Number, q.Printed.Format("2 Jan 2006"), call.TypablePath(f.path)), nil
	}
	return fmt.Sprintf("pattern %d was printed on %s from other numbers, and this one takes its place: with --raise it is printed as pattern %d, and both are kept", q.Number, q.Printed.Format("2 Jan 2006"), next.Revision), nil
}

// writeSheets puts the files into their folder and says their paths.
func writeSheets(w call.World, dir string, files []folder.File, force bool) error {
	paths, err := folder.Write(dir, files, force, func(_, _ int, path string) {
		if w.Progress != nil && path != "" {
			w.Progress("writing " + filepath.Base(path))
		}
	})
	for _, name := range paths {
		if _, e := fmt.Fprintln(w.Out, term.Plain(name)); e != nil {
			return errors.Join(err, e)
		}
	}
	var foreign *folder.ErrForeign
	if errors.As(err, &foreign) {
		return fmt.Errorf("%w with --out; --force replaces it", err)
	}
	return err
}

// note saves a project that differs from its file by the last pattern. Comments stay
// where they can; else the file as it was is put beside it.
func note(f planned, p project.Project) error {
	fsys, data := store.OS(), file.Encode(p)
	label := ""
	switch {
	case f.notices.OldFormat:
		label = "older format"
	case f.notices.Comments:
		if text, ok := file.Appended(f.data, p); ok {
			data = text
		} else {
			label = "with comments"
		}
	}
	if label != "" {
		if _, err := store.SaveBeside(fsys, f.path, f.data, label, fsys.Now()); err != nil {
			return err
		}
	}
	_, err := store.Save(fsys, f.path, data, f.stamp)
	return err
}
