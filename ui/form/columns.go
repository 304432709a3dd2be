package form

import (
	"github.com/charmbracelet/x/ansi"

	"chape/project"
)

// The names of the columns where the full names have no room.
var shortNames = map[string]string{
	"thickness": "thick", "grind height": "grind",
}

// ColumnName is what stands over a field's column.
func ColumnName(f project.Field) string {
	if s, ok := shortNames[f.Name]; ok {
		return s
	}
	return f.Name
}

// wordsWidth is how much of a column of words is shown where others need the
// room too.
const wordsWidth = 10

// Columns are what the columns of a table take, in cells.
type Columns struct {
	least []int // with words shortened
	whole []int // with their words whole
}

// ColumnsOf are those of a list among the rows of a page.
func ColumnsOf(rows []Row, list string) Columns {
	var c Columns
	for _, r := range rows {
		if r.List != list || r.IsHeading() {
			continue
		}
		if c.least == nil {
			c = Columns{make([]int, len(r.Cells)), make([]int, len(r.Cells))}
		}
		for j, text := range r.Texts {
			c.whole[j] = max(c.whole[j], ansi.StringWidth(text))
			c.least[j] = max(ansi.StringWidth(ColumnName(r.Cells[j])), min(wordsWidth, c.whole[j]))
		}
	}
	return c
}

// Least is what all of them take, a cell behind each.
func (c Columns) Least() int {
	w := 0
	for _, l := range c.least {
		w += l + 1
	}
	return w
}

// In says which columns are shown in so many cells, a cell between two, and how wide: the
// first one always, and as many others as there is room for round the one in hand. What
// room is left goes to the columns whose words are cut.
func (c Columns) In(room, inHand int) (shown, widths []int) {
	if len(c.least) == 0 {
		return nil, nil
	}
	first := 1
	for ; first < inHand && !c.fit(first, inHand, room); first++ {
	}
	room -= c.least[0]
	shown, widths = []int{0}, []int{c.least[0]}
	for j := first; j < len(c.least) && room >= c.least[j]+1; j++ {
		room -= c.least[j] + 1
		shown, widths = append(shown, j), append(widths, c.least[j])
	}
	for n, j := range shown {
		more := max(0, min(c.whole[j]-widths[n], room))
		widths[n] += more
		room -= more
	}
	return shown, widths
}

// fit tells whether columns from to last fit beside the first one.
func (c Columns) fit(from, last, room int) bool {
	sum := c.least[0]
	for j := from; j <= last; j++ {
		sum += 1 + c.least[j]
	}
	return sum <= room
}
