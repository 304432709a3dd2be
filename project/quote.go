package project

import "chape/project/money"

// Quote is a price that was told to a customer, as the file keeps it.
type Quote = money.Kept

// Standing is the quote that counts, by its place: the accepted one last accepted, else
// the one made last; -1 where there is none.
func (p Project) Standing() int {
	at := len(p.Quotes) - 1
	for i, q := range p.Quotes {
		if at < 0 || !q.Accepted.IsZero() && !q.Accepted.Before(p.Quotes[at].Accepted) {
			at = i
		}
	}
	return at
}
