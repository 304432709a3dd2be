package project

import (
	"slices"

	"chape/calc/knife"
	"chape/project/added"
	"chape/project/money"
	"chape/project/steps"
	"chape/project/weigh"
)

// How many rows a file may hold: far more than anyone makes.
const (
	mostMarks     = 200
	mostFits      = 100
	mostSteps     = steps.Most
	mostWeighings = 1000
	mostPatterns  = 1000
	mostQuotes    = 100
	mostCarried   = 200
	mostEarlier   = 200
	mostAdded     = 50
)

// List is a table that a project has a row of for each mark, fit, offered fit,
// half-width of an earlier sheath, step, printed pattern,
// quote, weighing or added part.
type List struct {
	Key     string  // in the file: "knife.station"
	Most    int     // rows
	Columns []Field // of any row: At gives one row's
	rows    func(*Project) int
	resize  func(*Project, int)
}

// Rows is how many rows p has.
func (l List) Rows(p *Project) int { return l.rows(p) }

// Resize gives p n empty rows in place of those it has.
func (l List) Resize(p *Project, n int) { l.resize(p, n) }

// row gives the columns of row i.
func (l List) row(i int) []Field {
	fs := slices.Clone(l.Columns)
	for j := range fs {
		fs[j].Index = i
	}
	return fs
}

func list[T any](key string, most int, cs []column[T], of func(*Project) *[]T, then func(*Project) error) List {
	l := List{Key: key, Most: most}
	for _, c := range cs {
		l.Columns = append(l.Columns, field(c, func(p *Project, i int) *T { return &(*of(p))[i] }, then))
	}
	l.rows = func(p *Project) int { return len(*of(p)) }
	l.resize = func(p *Project, n int) { *of(p) = make([]T, n) }
	return l
}

// The lists, in the order of Lists.
const (
	listOfMarks = iota
	listOfFits
	listOfCarried
	listOfEarlier
	listOfSteps
	listOfPatterns
	listOfQuotes
	listOfWeighings
	listOfAdded
)

// Lists are the lists of a project, in the order of the file.
var Lists = []List{
	list("knife.station", mostMarks, marks, func(p *Project) *[]knife.Station { return &p.Knife.Stations },
		func(p *Project) error { // marks that are typed stand for themselves: the outline fills them no longer
			p.Source = FromStations
			return nil
		}),
	list("fit", mostFits, fits, func(p *Project) *[]Fit { return &p.Fits }, nil),
	list("carried", mostCarried, carriedColumns, func(p *Project) *[]Carried { return &p.Carried }, nil),
	list("earlier", mostEarlier, earlierColumns, func(p *Project) *[]Half { return &p.Earlier }, nil),
	list("step", mostSteps, steps.Columns, func(p *Project) *[]steps.Step { return &p.Steps }, nil),
	list("pattern", mostPatterns, patterns, func(p *Project) *[]Pattern { return &p.Patterns }, nil),
	list("quote", mostQuotes, money.Columns, func(p *Project) *[]Quote { return &p.Quotes }, nil),
	list("weigh", mostWeighings, weigh.Columns, func(p *Project) *[]weigh.Weighing { return &p.Weigh }, nil),
	list("part", mostAdded, added.Columns, func(p *Project) *[]Part { return &p.Added }, nil),
}

// MarkFields are the columns of mark i, as they are measured. A change makes the marks
// stand for themselves.
func MarkFields(i int) []Field {
	fs := Lists[listOfMarks].row(i)
	for j := range fs {
		switch fs[j].Key {
		case "knife.station.bevel":
			fs[j].Kind = Length // the height is typed, the share is kept
		case "knife.station.at":
			fs[j].set = moving(fs[j].set)
		case "knife.station.thick":
			set := fs[j].set
			fs[j].set = func(p *Project, i int, v any) error {
				err := set(p, i, v)
				if err == nil {
					p.Measured(i)
				}
				return err
			}
		}
	}
	return fs
}

// FitFields are the columns of correction i.
func FitFields(i int) []Field { return Lists[listOfFits].row(i) }

// StepFields are the columns of step i.
func StepFields(i int) []Field { return Lists[listOfSteps].row(i) }

// QuoteFields are the columns of quote i.
func QuoteFields(i int) []Field { return Lists[listOfQuotes].row(i) }

// AddedFields are the columns of added part i.
func AddedFields(i int) []Field { return Lists[listOfAdded].row(i) }

// WeighFields are the columns of weighing i.
func WeighFields(i int) []Field { return Lists[listOfWeighings].row(i) }

// Clone is a copy that shares no list with p.
func (p Project) Clone() Project {
	p.Knife.Stations = slices.Clone(p.Knife.Stations)
	p.Tracing.Left = slices.Clone(p.Tracing.Left)
	p.Fits = slices.Clone(p.Fits)
	p.Carried = slices.Clone(p.Carried)
	p.Earlier = slices.Clone(p.Earlier)
	p.Steps = slices.Clone(p.Steps)
	p.Patterns = slices.Clone(p.Patterns)
	p.Quotes = slices.Clone(p.Quotes)
	p.Weigh = slices.Clone(p.Weigh)
	p.Added = slices.Clone(p.Added)
	return p
}
