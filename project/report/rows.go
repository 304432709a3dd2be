package report

import (
	"slices"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
)

// Key tells what a row is, for layouts that show only some.
type Key uint8

// The rows, in the order of Rows.
const (
	Stitches Key = iota
	Divider
	TenSteps
	Pitch
	First
	Drill
	Stack
	ClosedLine
	FlatLine
	SeamThread
	LoopThread
	ToBuy
	PieceLong
	PieceWide
	TabLong
	TabWide
	Tightest
	Used
	Body
	Welt
	Bend
	Money
	loopRow
	extraRow
	benchRow
)

// Row is one thing that a plan says. Value has no unit, so that a column of figures can be
// aligned on the decimal point. Note belongs to the figure and is shown wherever it is;
// Why explains it where there is room.
type Row struct {
	Key   Key
	Name  string
	Value string
	Unit  string
	Note  string
	Why   string
}

// Said is value and unit in running words: "4.05 mm".
func (r Row) Said() string {
	if r.Unit == "" {
		return r.Value
	}
	return r.Value + " " + r.Unit
}

// Words are note and explanation together.
func (r Row) Words() string {
	if r.Note != "" && r.Why != "" {
		return r.Note + "; " + r.Why
	}
	return r.Note + r.Why
}

// Rows is everything that a plan says in figures.
type Rows []Row

// Figures are the rows of a plan in unit u; offcut is the share of leather bought on top of
// what is cut. What a ruler is laid to is shown to 0.5 mm or
// 1/32 in, what a calliper shows to 0.05 mm or 1/64 in, the divider setting to 0.01 mm or
// 0.001 in, for every step carries its error on; thread as it is pulled off the reel.
func Figures(p project.Project, plan *calc.Plan, u length.Unit, offcut float64) Rows {
	out := sewing(p, plan, u)
	out = append(out, leather(p, plan, u, offcut)...)
	out = append(out, parts(p, plan, u)...)
	out = append(out, tightest(plan, u)...)
	slices.SortStableFunc(out, func(a, b Row) int { return int(a.Key) - int(b.Key) })
	return out
}

// Pick gives the rows with these keys, in the order of the keys; those that the plan does
// not have are left out.
func (rs Rows) Pick(keys ...Key) Rows {
	var out Rows
	for _, k := range keys {
		for _, r := range rs {
			if r.Key == k {
				out = append(out, r)
			}
		}
	}
	return out
}

// Without leaves rows out.
func (rs Rows) Without(keys ...Key) Rows {
	return slices.DeleteFunc(slices.Clone(rs), func(r Row) bool { return slices.Contains(keys, r.Key) })
}
