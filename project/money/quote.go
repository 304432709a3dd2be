package money

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/shopspring/decimal"
)

// Quote is a bill as it was told to a customer: a copy, which no price list moves.
type Quote struct {
	Date     time.Time // the day, as a local date
	Accepted time.Time // the day; zero: not yet
	Bill     Bill
}

// Freeze makes a quote of a bill on a day. A bill with a price missing is refused:
// nobody can be held to "at least".
func Freeze(b Bill, day time.Time) (Quote, error) {
	for _, l := range b.Lines {
		if !l.Amount.known {
			return Quote{}, fmt.Errorf("%s has no price: give it in the settings before you quote", l.Name)
		}
	}
	lines := append([]Line(nil), b.Lines...)
	return Quote{Date: day, Bill: Bill{b.Currency, lines}}, nil
}

// Known is the bill without the lines whose price is missing.
func (b Bill) Known() Bill {
	b.Lines = slices.DeleteFunc(slices.Clone(b.Lines), func(l Line) bool { return !l.Amount.known })
	return b
}

// Agree puts the price that was agreed on in place of the one that was reckoned: the
// difference is a line of its own. What was agreed before counts no more.
func (b Bill) Agree(price decimal.Decimal) Bill {
	lines := slices.DeleteFunc(slices.Clone(b.Lines), func(l Line) bool { return l.Kind == AgreedLine })
	b.Lines = lines
	sum, _ := b.Total()
	if by := b.Currency.Round(price).Sub(sum); !by.IsZero() {
		b.add(Line{AgreedLine, "as agreed", "the price was set by hand", Of(by)})
	}
	return b
}

// Total is what the customer was asked for.
func (q Quote) Total() decimal.Decimal {
	sum, _ := q.Bill.Total()
	return sum
}

// Against is what a quote leaves when the sheath has cost so much: below 0 it took
// more than was asked.
func (q Quote) Against(cost Bill) decimal.Decimal {
	sum, _ := cost.Total()
	return q.Total().Sub(sum)
}

// kindWords are the kinds in a file.
var kindWords = [...]string{"leather", "thread", "item", "sundries", "work", "overhead", "margin", "minimum", "agreed"}

// Text writes the lines of a bill, one a row: kind, amount, name and what it came
// from, parted by " | ". ParseBill reads it back.
func (b Bill) Text() string {
	var s strings.Builder
	for _, l := range b.Lines {
		row := []string{kindWords[l.Kind], "?", clean(l.Name), clean(l.From)}
		if l.Amount.known {
			row[1] = l.Amount.value.StringFixed(max(0, -b.Currency.unit().Exponent()))
		}
		s.WriteString(strings.Join(row, " | ") + "\n")
	}
	return s.String()
}

// clean keeps a name in its place in the row.
func clean(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(s, "|", "/")), " ")
}

// ParseBill reads what Text wrote. The error names the row.
func ParseBill(text string, c Currency) (Bill, error) {
	b := Bill{Currency: c}
	for i, row := range strings.Split(text, "\n") {
		if strings.TrimSpace(row) == "" {
			continue
		}
		l, err := parseLine(row)
		if err != nil {
			return Bill{}, fmt.Errorf("row %d, %.60q: %w", i+1, row, err)
		}
		b.Lines = append(b.Lines, l)
	}
	return b, nil
}

func parseLine(row string) (Line, error) {
	cells := strings.Split(row, "|")
	if len(cells) != 4 {
		return Line{}, errors.New("write kind | amount | name | what it came from")
	}
	for i := range cells {
		cells[i] = strings.TrimSpace(cells[i])
	}
	l := Line{Name: cells[2], From: cells[3]}
	found := false
	for k, w := range kindWords {
		if w == cells[0] {
			l.Kind, found = Kind(k), true
		}
	}
	if !found {
		return Line{}, fmt.Errorf("%.40q is none of %s", cells[0], strings.Join(kindWords[:], ", "))
	}
	if cells[1] == "?" {
		return l, nil
	}
	text, less := cells[1], false
	if l.Kind == AgreedLine {
		text, less = strings.CutPrefix(text, "-")
	}
	a, err := Parse(text)
	if less {
		a.value = a.value.Neg()
	}
	if err == nil && !a.known {
		err = errors.New("the amount is missing: write it, or ? if it is not known")
	}
	l.Amount = a
	return l, err
}
