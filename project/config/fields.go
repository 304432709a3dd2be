package config

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/print/sheet"
)

// own lists the keys of the file beside those of a project's tables, bound to c.
func (c *Config) own() []file.Setting {
	l := &c.limits
	return slices.Concat([]file.Setting{
		choice("units", "what new projects measure in", []string{"mm", "in"},
			func() string { return c.Units.String() },
			func(s string) { c.Units, _ = length.ParseUnit(s) }),
		text("paper", "a4, a3, letter, legal, or width by height as in 210x297 or 8.5x11in", 40, &c.Paper),
		text("shelf", "the folder of project files, as a full path or from ~/ on; empty: the system's data folder", 1000, &c.Shelf),
		text("prints", "the folder that P and chape print put sheets into, as a full path or from ~/ on; empty: your documents; of a project named by its path they go beside it", 1000, &c.Prints),
		word("glyphs", "what drawings are made of: braille, blocks or ascii; empty: braille where the locale is UTF-8, else ascii", []string{"", "braille", "blocks", "ascii"}, &c.Glyphs),
		number("cell", "height of a character cell over its width", 1, 4, &c.Cell),
		word("colours", "for which background: auto, dark, light; none: no colours", []string{"auto", "dark", "light", "none"}, &c.Colours),
		flag("bell", "ring when a hold falls due", &c.Bell),
		word("notice", "how the terminal is asked to tell the desktop: none, osc 9 or osc 777", []string{"none", "osc 9", "osc 777"}, &c.Notice),
		words("on_due", `a command run when a hold falls due, without a shell, as in ["command", "word"]`, 50, &c.OnDue),
		number("scale_step", "one step of your kitchen scale, in grams; 0: as the digits of the weighings tell", 0, 10, &c.Scale),
		word("list", "the steps of new projects: form then sew, sew then form, or own, which are those of [[step]] below",
			[]string{FormThenSew, SewThenForm, OwnSteps}, &c.list),

		number("printer.x", "what the pricks 100 mm apart across the paper measured, in mm; 0: not measured", 0, 105, &c.Printer.X),
		number("printer.y", "the same along the paper", 0, 105, &c.Printer.Y),
	}, c.cutterSettings(), []file.Setting{
		number("tracing.standoff", "from the middle of a line drawn round a knife to the knife, in mm; 0: half the line's width", 0, 2, &c.Standoff),
		text("tracing.pictures", "the folder where pictures of tracings arrive, as a full path or from ~/ on; empty: none", 1000, &c.Pictures),

		limit("loose", "the tightest place, mm a side: below this the knife is loose", -50, 50, &l.Loose),
		limit("snug", "up to this the moulding grips it", -50, 50, &l.Snug),
		limit("tight", "above this it will not go in", -50, 50, &l.Tight),
		number("limits.longer", "seam longer than the welt, as a share: up to this there is nothing to do", 0, 1, &l.GatherEasy),
		number("limits.longest", "above this it can't be eased in", 0, 1, &l.GatherMost),
		limit("longer_over", "the stretch over which that is taken, mm", 1, 500, &l.GatherReach),
		limit("near", "edge to the rim of a hole, mm: below this a note", 0, 50, &l.GuardNote),
		limit("too_near", "below this a warning", 0, 50, &l.GuardWarn),
		limit("drum", "diameter of your smallest sanding drum, mm", 1, 500, &l.Drum),
		limit("thread", "the longest thread that is handy, mm: two arm spans", 300, 20000, &l.ArmSpans),
		limit("handle", "handle to be left past the highest leather, mm", 0, 300, &l.HandleLeft),
		number("limits.fold", "least radius inside the fold, as a share of the leather's thickness", 0, 5, &l.FoldShare),
		limit("held_off", "the back may lie this far off the fold, mm", 0, 50, &l.HeldOff),
		limit("strap_clear", "a strap's edge keeps this far from a step of the handle, mm", 0, 50, &l.StrapClear),
		number("limits.unlikely", "a measure so many times what its neighbours say, or so small a part of it, is asked about", 1.1, 100, &l.Unlikely),
	}, c.priceSettings(), c.shopSettings())
}

func bound[V any](s project.Spec, p *V) file.Setting {
	return file.Setting{Spec: s, Get: func() any { return *p }, Set: func(v any) { *p = v.(V) }}
}

func text(key, hint string, most float64, p *string) file.Setting {
	return bound(project.Spec{Key: key, Hint: hint, Kind: project.Text, Max: most}, p)
}

func word(key, hint string, options []string, p *string) file.Setting {
	return bound(project.Spec{Key: key, Hint: hint, Kind: project.Choice, Options: options}, p)
}

func choice(key, hint string, options []string, get func() string, set func(string)) file.Setting {
	return file.Setting{Spec: project.Spec{Key: key, Hint: hint, Kind: project.Choice, Options: options},
		Get: func() any { return get() }, Set: func(v any) { set(v.(string)) }}
}

func number(key, hint string, least, most float64, p *float64) file.Setting {
	return bound(project.Spec{Key: key, Hint: hint, Kind: project.Number, Min: least, Max: most}, p)
}

func limit(key, hint string, least, most float64, p *length.Length) file.Setting {
	return bound(project.Spec{Key: "limits." + key, Hint: hint, Kind: project.Length, Min: least, Max: most}, p)
}

func flag(key, hint string, p *bool) file.Setting {
	return bound(project.Spec{Key: key, Hint: hint, Kind: project.Flag}, p)
}

func words(key, hint string, most float64, p *[]string) file.Setting {
	return bound(project.Spec{Key: key, Hint: hint, Kind: project.Words, Max: most}, p)
}

// check looks at what only several keys together show, and at what other
// packages know.
func (c *Config) check(start project.Project) (ps project.Problems) {
	add := func(key, found, remedy string) {
		ps = append(ps, project.Problem{Key: key, Index: -1, Found: found, Remedy: remedy})
	}
	c.checkCutter(add)
	if _, err := sheet.ParsePaper(c.Paper); err != nil {
		add("paper", fmt.Sprintf("%q", c.Paper), remedyOf(err))
	}
	for _, f := range []struct{ key, path string }{{"shelf", c.Shelf}, {"prints", c.Prints}, {"tracing.pictures", c.Pictures}} {
		if s := filepath.ToSlash(f.path); s != "" && s != "~" && !strings.HasPrefix(s, "~/") && !filepath.IsAbs(f.path) {
			add(f.key, fmt.Sprintf("%q", f.path), `give a full path, or one from the home folder on, as in "~/sheaths"`)
		}
	}
	if len(c.OnDue) > 0 && strings.TrimSpace(c.OnDue[0]) == "" {
		add("on_due", "no command before its words", `give it, as in ["command", "word"], or [] for none`)
	}
	if c.list == OwnSteps && len(start.Steps) == 0 {
		add("list", `"own"`, "give your steps in [[step]], or take form then sew or sew then form")
	}
	c.checkPrices(add)
	for _, v := range []struct {
		key      string
		measured float64
	}{{"printer.x", c.Printer.X}, {"printer.y", c.Printer.Y}} {
		if v.measured != 0 && v.measured < 95 {
			add(v.key, fmt.Sprintf("%v", v.measured), "give 95 to 105, or 0: print at 100 %, without fitting to the page, and measure again")
		}
	}
	l := c.limits
	inOrder := func(key, before string, low, high length.Length) {
		if high < low {
			add("limits."+key, high.Format(length.Millimetres, length.Calliper), "give at least limits."+before+", "+low.Format(length.Millimetres, length.Calliper))
		}
	}
	inOrder("snug", "loose", l.Loose, l.Snug)
	inOrder("tight", "snug", l.Snug, l.Tight)
	inOrder("near", "too_near", l.GuardWarn, l.GuardNote)
	if l.GatherMost < l.GatherEasy {
		add("limits.longest", fmt.Sprint(l.GatherMost), fmt.Sprintf("give at least limits.longer, %v", l.GatherEasy))
	}
	return ps
}

// remedyOf is what an error of another package says would do.
func remedyOf(err error) string {
	if _, remedy, ok := strings.Cut(err.Error(), ": "); ok {
		return remedy
	}
	return err.Error()
}
