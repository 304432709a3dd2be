// Package report puts a plan into words and figures: JSON for other
// programs, a plain page for a person, and the parts of that page for other
// kinds of paper. It neither reads nor writes files.
package report

import (
	"fmt"
	"strconv"
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
)

// Figure is one line of the plan's figures. Value has no unit, so that a row
// of figures can be aligned on the decimal point.
type Figure struct {
	Name  string
	Value string
	Unit  string
	Note  string
}

// Figures gives what a maker sets dividers, drill and thread by, in unit u.
// Figures taken off with a ruler are shown to 0.5 mm or 1/32 in, those taken
// off with dividers or a calliper to 0.05 mm or 1/64 in. offcut is the share of
// leather bought on top of what is used.
func Figures(p project.Project, plan *calc.Plan, u length.Unit, offcut float64) []Figure {
	s := plan.Stitch
	out := []Figure{
		{Name: "stitches", Value: strconv.Itoa(s.Stitches), Note: fmt.Sprintf("%d holes", s.Holes)},
		calliper("divider setting", s.Walk, u, dividerNote(s.Walk, u)),
		calliper("pitch along the line", s.Pitch, u, ""),
		ruler("mouth to first hole", p.Stitch.First.MM(), u, "along the line"),
		drill(s),
		calliper("thickness to sew through", s.Stack, u, "two of leather and the welt"),
		ruler("stitch line, sheath closed", s.PlaneLine, u, measured(p, u)),
		ruler("stitch line, in the flat", s.Line, u, ""),
		ruler("thread for the seam", plan.Thread.Length, u, threadNote(p, plan)),
	}
	if plan.Loop.Rows > 0 {
		out = append(out, ruler("thread for the loop", plan.Loop.Thread, u, ""))
	}
	out = append(out, Leather(plan, u, offcut)...)
	return append(out, parts(p, plan, u)...)
}

// dividerNote gives inch makers the setting as a calliper shows it: a 64th is
// too coarse, for each step carries its error on.
func dividerNote(walk float64, u length.Unit) string {
	const how = "straight from hole to hole"
	if u == length.Millimetres {
		return how
	}
	return fmt.Sprintf("exactly %.3f in, %.2f mm; %s", length.Length(walk).In(), walk, how)
}

// Leather is what a sheath takes of it: the area used, the area to buy with a
// share for offcuts, and the smallest piece that the body with its tab is cut from.
// Screens, page and cards all use these words.
func Leather(plan *calc.Plan, u length.Unit, offcut float64) []Figure {
	b, c := plan.Body, plan.Cost(calc.Rates{Offcut: offcut}, 0)
	used := "body and welt"
	if b.TabLength > 0 {
		used = "body, tab and welt"
	}
	return []Figure{
		area("leather used", c.LeatherArea, u, used),
		area("leather to buy", c.ToBuy, u, fmt.Sprintf("with %.0f %% for offcuts", 100*offcut)),
		ruler("smallest piece, long", b.Length+b.TabLength, u, ""),
		ruler("smallest piece, wide", b.Width, u, "both halves, fold in the middle"),
	}
}

// parts gives the figures of what is cut.
func parts(p project.Project, plan *calc.Plan, u length.Unit) []Figure {
	b := plan.Body
	out := []Figure{
		calliper("leather, body", p.Sheath.Leather.MM(), u, "thickness"),
		calliper("welt, all plies", plan.Welt.Thickness, u, plies(plan.Welt, u)),
		calliper("added for the bend, a half", b.Bend, u, ""),
	}
	if b.TabLength > 0 {
		out = append(out, ruler("tab, long", b.TabLength, u, "from the mouth"),
			ruler("tab, wide", p.Belt.Tab.MM(), u, "near edge "+length.Length(plan.Loop.Offset).Format(u, length.Ruler)+" from the fold"))
	}
	return out
}

func ruler(name string, mm float64, u length.Unit, note string) Figure {
	return Figure{name, length.Length(mm).Figure(u, length.Ruler), u.String(), note}
}

func area(name string, mm2 float64, u length.Unit, note string) Figure {
	value, unit, _ := strings.Cut(length.Area(mm2).Format(u), " ")
	return Figure{name, value, unit, note}
}

func calliper(name string, mm float64, u length.Unit, note string) Figure {
	return Figure{name, length.Length(mm).Figure(u, length.Calliper), u.String(), note}
}

// drill names the choice, and the others that do in the note.
func drill(s calc.Stitching) Figure {
	c := s.Choice()
	f := Figure{Name: "drill", Value: strings.TrimSuffix(strings.TrimSuffix(c.Name, " mm"), " in")}
	switch {
	case strings.HasSuffix(c.Name, " mm"):
		f.Unit = "mm"
	case strings.HasSuffix(c.Name, " in"):
		f.Unit = "in"
	}
	var also []string
	for _, d := range s.Drills {
		if !d.Choice {
			also = append(also, d.Name)
		}
	}
	if len(also) > 0 {
		f.Note = "or " + strings.Join(also, ", ")
	}
	return f
}

func measured(p project.Project, u length.Unit) string {
	if p.Stitch.Measured > 0 {
		return "as computed; laid out on " + p.Stitch.Measured.Format(u, length.Ruler) + " as measured"
	}
	return "measure yours before stepping off"
}

func threadNote(p project.Project, plan *calc.Plan) string {
	how := "one thread, hook from both sides"
	if p.Stitch.Method == calc.TwoNeedles {
		how = "a needle at each end"
	}
	return fmt.Sprintf("%.1f times the seam, waste and tails on top; %s", plan.Thread.Ratio, how)
}

func plies(w calc.Welt, u length.Unit) string {
	area := length.Area(w.Area).Format(u)
	if w.Plies == 1 {
		return "one ply, " + area
	}
	return fmt.Sprintf("%d plies, %s each", w.Plies, area)
}

// Hang is how loose a body cut from stock of another thickness hangs round
// the knife, a half: (π/2)·k·(leather − stock), mm.
func Hang(plan *calc.Plan, stock length.Length) float64 {
	t := plan.Input.Sheath.Leather
	if t == 0 {
		return 0
	}
	return plan.Body.Bend * float64(1-stock/t)
}

// Worn says for which hand and edge the sheath is.
func Worn(p project.Project) string {
	return p.Customer.Hand.String() + " hand, edge to the " + p.Customer.Edge.String()
}
