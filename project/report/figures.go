package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	bill "chape/project/money"
	"chape/project/takes"
)

// sewing is what dividers, drill and thread are set by.
func sewing(p project.Project, plan *calc.Plan, u length.Unit) Rows {
	s := plan.Stitch
	out := Rows{
		{Key: Stitches, Name: "stitches", Value: strconv.Itoa(s.Stitches), Note: fmt.Sprintf("%d holes", s.Holes)},
		DividerRow(plan, u),
		TenStepsRow(plan, u),
		pitch(plan, u),
		ruler(First, "mouth to first hole", p.Stitch.First.MM(), u, "", "along the line"),
		drill(s),
		calliper(Stack, "thickness to sew through", s.Stack, u, "", "two of leather and the welt"),
		ruler(ClosedLine, "stitch line, sheath closed", s.PlaneLine, u, measured(p, u), ""),
		ruler(FlatLine, "stitch line, in the flat", s.Line, u, "", ""),
		thread(SeamThread, "thread for the seam", plan.Thread.Length, u, threadWhy(p, plan)),
	}
	if plan.Loop.Thread > 0 {
		out = append(out, thread(LoopThread, "thread for the loop", plan.Loop.Thread, u, ""))
	}
	return out
}

// DividerRow is the divider setting, the chord from hole to hole.
func DividerRow(plan *calc.Plan, u length.Unit) Row {
	r := Row{Key: Divider, Name: "divider setting", Why: "straight from hole to hole", Unit: u.String()}
	r.Value, r.Note = dividers(plan.Stitch.Walk, u)
	return r
}

// pitch is what the dividers would be set to were the line straight; as closely shown, for
// it is compared with the setting.
func pitch(plan *calc.Plan, u length.Unit) Row {
	r := Row{Key: Pitch, Name: "pitch along the line", Unit: u.String()}
	r.Value, _ = dividers(plan.Stitch.Pitch, u)
	return r
}

// dividers shows a setting as closely as dividers can be set; inch makers have it in
// millimetres beside.
func dividers(mm float64, u length.Unit) (value, note string) {
	metric := strconv.FormatFloat(mm, 'f', 2, 64)
	if u == length.Inches {
		return strconv.FormatFloat(length.Length(mm).In(), 'f', 3, 64), metric + " mm"
	}
	return metric, ""
}

// TenStepsRow is what ten steps of the dividers measure: the setting is checked by them, for
// a ruler shows an error ten times as large.
func TenStepsRow(plan *calc.Plan, u length.Unit) Row {
	ten := length.Length(10 * plan.Stitch.Walk)
	r := Row{Key: TenSteps, Name: "ten steps of it", Value: strconv.FormatFloat(ten.MM(), 'f', 1, 64), Unit: u.String(),
		Why: "in a straight line along a ruler, to check the setting"}
	if u == length.Inches {
		r.Value, r.Note = strconv.FormatFloat(ten.In(), 'f', 2, 64), r.Value+" mm"
	}
	return r
}

// leather is what a sheath takes of it: the area used, the area to buy with a share for
// offcuts, and the smallest piece that the body with its tab is cut from.
func leather(p project.Project, plan *calc.Plan, u length.Unit, offcut float64) Rows {
	b := plan.Body
	c, with := takes.ToBuy(p, plan, takes.LossOf(p, plan, offcut), u)
	used := "body and welt"
	if b.TabLength > 0 {
		used = "body, tab and welt"
	}
	if plan.Strap != nil {
		used = strings.Replace(used, " and welt", ", welt and strap", 1)
	}
	var more []string
	for _, a := range p.Added {
		more = append(more, a.Name)
	}
	if len(more) > 0 {
		used += "; not counted: " + strings.Join(more, ", ")
	}
	return Rows{
		area(ToBuy, "leather to buy", c.ToBuy, u, with),
		ruler(PieceLong, "smallest piece, long", b.Length+b.TabLength, u, "", ""),
		ruler(PieceWide, "smallest piece, wide", b.Width, u, "both halves, fold in the middle", ""),
		area(Used, "leather used", c.LeatherArea, u, used),
	}
}

// parts gives the figures of what is cut.
func parts(p project.Project, plan *calc.Plan, u length.Unit) Rows {
	b := plan.Body
	out := Rows{
		calliper(Body, "leather, body", p.Sheath.Leather.MM(), u, soldAs("thickness", p.Sold.Body), ""),
		calliper(Welt, "welt, all plies", plan.Welt.Thickness, u, soldAs(plies(plan.Welt, u), p.Sold.Welt), ""),
		calliper(Bend, "added for the bend, a half", b.Bend, u, "", ""),
	}
	if b.TabLength > 0 {
		out = append(out, ruler(TabLong, "tab, long", b.TabLength, u, "from the mouth", ""),
			ruler(TabWide, "tab, wide", p.Belt.Tab.MM(), u, "near edge "+length.Length(plan.Loop.Offset).Format(u, length.Ruler)+" from the fold", ""))
	}
	return out
}

// soldAs adds to a note how the leather is sold, where that is a range.
func soldAs(note, as string) string {
	if as == "" {
		return note
	}
	return note + ", the thicker end of " + as
}

// tightest is the place where the knife passes hardest.
func tightest(plan *calc.Plan, u length.Unit) Rows {
	for _, c := range plan.Checks {
		if c.Name == "squeeze" {
			a := plan.Across(c.At)
			return Rows{calliper(Tightest, "tightest place", math.Abs(a.Need-a.Room), u,
				Room(plan, a)+", at "+length.Length(c.At).Format(u, length.Ruler), "")}
		}
	}
	return nil
}

// Room says what the difference of the need and the room of a section means.
func Room(plan *calc.Plan, a calc.Across) string {
	switch d := a.Need - a.Room; {
	case d <= 0:
		return "a side to spare"
	case d <= plan.Input.Limits.Snug.MM():
		return "a side tight, " + plan.Held()
	}
	return "a side too tight"
}

// CostRow is what a sheath has cost so far, by the minutes spent: the sum, and the lines
// that it is of.
func CostRow(b bill.Bill) Row {
	sum, atLeast := b.Total()
	var of []string
	if atLeast {
		of = append(of, "at least")
	}
	for _, l := range b.Lines {
		if l.Amount.Decimal().IsPositive() {
			of = append(of, l.Name+" "+b.Currency.Amount(l.Amount.Decimal()))
		}
	}
	return Row{Key: Money, Name: "cost so far", Value: b.Currency.Amount(sum), Unit: b.Currency.Sign, Note: strings.Join(of, ", ")}
}

func ruler(k Key, name string, mm float64, u length.Unit, note, why string) Row {
	return Row{k, name, length.Length(mm).Figure(u, length.Ruler), u.String(), note, why}
}

func calliper(k Key, name string, mm float64, u length.Unit, note, why string) Row {
	return Row{k, name, length.Length(mm).Figure(u, length.Calliper), u.String(), note, why}
}

func area(k Key, name string, mm2 float64, u length.Unit, note string) Row {
	value, unit, _ := strings.Cut(length.Area(mm2).Format(u), " ")
	return Row{k, name, value, unit, note, ""}
}

// thread is shown as it is pulled off the reel: in metres or feet.
func thread(k Key, name string, mm float64, u length.Unit, why string) Row {
	if u == length.Inches {
		return Row{k, name, strconv.FormatFloat(length.Length(mm).In()/12, 'f', 1, 64), "ft", "", why}
	}
	return Row{k, name, strconv.FormatFloat(mm/1000, 'f', 2, 64), "m", "", why}
}

// drill names the choice, and the others that do in the note.
func drill(s calc.Stitching) Row {
	r := Row{Key: Drill, Name: "drill", Value: s.Choice().Name}
	if i := strings.LastIndex(r.Value, " "); i > 0 {
		r.Value, r.Unit = r.Value[:i], r.Value[i+1:]
	}
	if also := otherDrills(s.Drills); len(also) > 0 {
		r.Note = "or " + strings.Join(also, ", ")
	}
	return r
}

// otherDrills are those beside the choice, smallest to largest of each
// series.
func otherDrills(all []calc.Drill) []string {
	var out []string
	for i := 0; i < len(all); {
		if all[i].Choice {
			i++
			continue
		}
		j := i
		for j+1 < len(all) && all[j+1].Series == all[i].Series && !all[j+1].Choice {
			j++
		}
		switch {
		case j == i:
			out = append(out, all[i].Name)
		default:
			out = append(out, all[i].Name+" to "+all[j].Name)
		}
		i = j + 1
	}
	return out
}

func measured(p project.Project, u length.Unit) string {
	if p.Stitch.Measured > 0 {
		return "as computed; laid out on " + p.Stitch.Measured.Format(u, length.Ruler) + " as measured"
	}
	return "measure yours before stepping off"
}

func threadWhy(p project.Project, plan *calc.Plan) string {
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
