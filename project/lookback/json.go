package lookback

import (
	"encoding/json"
	"math"
	"time"

	"chape/calc/calendar"
	"chape/project/money"
	"chape/project/shop"
)

// The keys of the shelf's JSON; other programs rely on them.
type (
	shelfJSON struct {
		Currency string       `json:"currency"`
		Sheaths  []sheathJSON `json:"sheaths"`
		Totals   totalsJSON   `json:"totals"`
	}
	sheathJSON struct {
		File     string       `json:"file"`
		Title    string       `json:"title"`
		Customer string       `json:"customer"`
		Due      *string      `json:"due"`
		Finished bool         `json:"finished"`
		PutAway  bool         `json:"put_away"`
		Minutes  minutesJSON  `json:"minutes"`
		Steps    []stepJSON   `json:"steps"`
		Leather  *leatherJSON `json:"leather"`
		Thread   *float64     `json:"thread"`
		Cost     *amountJSON  `json:"cost"`
		Price    *amountJSON  `json:"price"`
		Quote    *quoteJSON   `json:"quote"`
		Left     *string      `json:"left"`
		Ready    *readyJSON   `json:"ready"`
		Error    *string      `json:"error"`
	}
	minutesJSON struct {
		Expected int `json:"expected"`
		Spent    int `json:"spent"`
		Left     int `json:"left"`
	}
	stepJSON struct {
		Title    string `json:"title"`
		Expected int    `json:"expected"`
		Spent    int    `json:"spent"`
		Done     bool   `json:"done"`
	}
	leatherJSON struct {
		Cut    float64 `json:"cut"`
		Bought float64 `json:"bought"`
		Yield  float64 `json:"yield"`
	}
	amountJSON struct {
		Amount  string `json:"amount"`
		AtLeast bool   `json:"at_least"`
	}
	quoteJSON struct {
		Date     string  `json:"date"`
		Until    *string `json:"until"`
		Accepted *string `json:"accepted"`
		Currency string  `json:"currency"`
		Amount   string  `json:"amount"`
	}
	readyJSON struct {
		At    string     `json:"at"`
		Spare *int       `json:"spare"`
		Unset int        `json:"unset"`
		Bare  int        `json:"bare"`
		Queue *queueJSON `json:"queue"`
	}
	queueJSON struct {
		After int    `json:"after"`
		At    string `json:"at"`
		Spare *int   `json:"spare"`
	}
	totalsJSON struct {
		Sheaths  int           `json:"sheaths"`
		Finished int           `json:"finished"`
		Minutes  minutesJSON   `json:"minutes"`
		Leather  leatherJSON   `json:"leather"`
		Thread   float64       `json:"thread"`
		Quoted   int           `json:"quoted"`
		Asked    string        `json:"asked"`
		Took     string        `json:"took"`
		Steps    []stepSumJSON `json:"steps"`
	}
	stepSumJSON struct {
		Title    string `json:"title"`
		Sheaths  int    `json:"sheaths"`
		Spent    int    `json:"spent"`
		Median   int    `json:"median"`
		Expected int    `json:"expected"`
	}
)

// JSON writes sheaths for other programs: areas in mm², lengths in mm, minutes whole,
// money as texts with the currency's decimals, days as 2026-12-18, moments as RFC 3339 in
// now's zone. What is not known is null.
func JSON(all []Sheath, sh shop.Shop, now time.Time) ([]byte, error) {
	c := sh.Prices.Currency
	out := shelfJSON{Currency: c.Sign, Sheaths: []sheathJSON{}}
	q := sh.Queue(promised(all), now)
	for _, s := range all {
		out.Sheaths = append(out.Sheaths, s.json(sh, q, now))
	}
	t := Sum(all)
	out.Totals = totalsJSON{
		Sheaths: t.Sheaths, Finished: t.Finished, Minutes: minutesOf(t.Hours),
		Leather: leatherJSON{tidy(float64(t.Leather)), tidy(float64(t.Bought)), tidy(t.Yield())}, Thread: tidy(t.Thread.MM()),
		Quoted: t.Quoted, Asked: c.Amount(t.Asked), Took: c.Amount(t.Took), Steps: []stepSumJSON{},
	}
	for _, s := range t.Steps {
		out.Totals.Steps = append(out.Totals.Steps, stepSumJSON{s.Title, s.Sheaths, whole(s.Spent), whole(s.Median), whole(s.Expected)})
	}
	data, err := json.MarshalIndent(out, "", "  ")
	return append(data, '\n'), err
}

func (s Sheath) json(sh shop.Shop, q shop.Queue, now time.Time) sheathJSON {
	out := sheathJSON{
		File: s.File, Title: s.Title, Customer: s.Customer, Due: dayOf(s.Due), Finished: s.Finished, PutAway: s.PutAway,
		Minutes: minutesOf(s.Hours), Steps: []stepJSON{}, Ready: s.ready(sh, q, now),
	}
	for _, st := range s.Steps {
		out.Steps = append(out.Steps, stepJSON{st.Title, whole(st.Expected), whole(st.Spent), st.Done})
	}
	if q := s.Quote; q != nil {
		out.Quote = &quoteJSON{*dayOf(q.Date), dayOf(s.Until), dayOf(q.Accepted), q.Bill.Currency.Sign, q.Bill.Currency.Amount(q.Total())}
	}
	if s.Err != "" {
		out.Error = &s.Err
		return out
	}
	thread := tidy(s.Thread.MM())
	out.Leather = &leatherJSON{tidy(float64(s.Leather)), tidy(float64(s.Bought)), tidy(s.Yield())}
	out.Thread, out.Cost, out.Price = &thread, amountOf(s.Cost), amountOf(s.Price)
	if left, ok := s.Left(); ok {
		text := s.Cost.Currency.Amount(left)
		out.Left = &text
	}
	return out
}

// ready is null where all is done, and where the shop's hours are not known.
func (s Sheath) ready(sh shop.Shop, q shop.Queue, now time.Time) *readyJSON {
	if len(s.Open.Jobs) == 0 || !sh.Week.Any() {
		return nil
	}
	r, ok := s.Open.Earliest(now, calendar.Shop{Week: sh.Week})
	if !ok {
		return nil
	}
	out := &readyJSON{At: r.At.Format(time.RFC3339), Spare: s.spare(r.Finish), Unset: r.Unset, Bare: r.Bare}
	if f, after, ok := q.Earliest(s.Open, s.Due, now); ok && !s.PutAway {
		out.Queue = &queueJSON{after, f.At.Format(time.RFC3339), s.spare(f)}
	}
	return out
}

// spare are the days to spare; null where it is promised for none.
func (s Sheath) spare(f calendar.Finish) *int {
	if s.Due.IsZero() {
		return nil
	}
	spare := f.Spare(calendar.DayOf(s.Due))
	return &spare
}

// promised are the sheaths that share the bench.
func promised(all []Sheath) []shop.Promise {
	var out []shop.Promise
	for _, s := range all {
		if !s.PutAway {
			out = append(out, shop.Promise{Open: s.Open, Due: s.Due})
		}
	}
	return out
}

func amountOf(b money.Bill) *amountJSON {
	sum, atLeast := b.Total()
	return &amountJSON{b.Currency.Amount(sum), atLeast}
}

func dayOf(t time.Time) *string {
	if t.IsZero() {
		return nil
	}
	s := t.Format(time.DateOnly)
	return &s
}

func minutesOf(h money.Sum) minutesJSON {
	return minutesJSON{whole(h.Expected), whole(h.Spent), whole(h.Left)}
}

func whole(d time.Duration) int { return int(d.Round(time.Minute) / time.Minute) }

// tidy takes off what adding leaves behind the sixth decimal.
func tidy(f float64) float64 { return math.Round(f*1e6) / 1e6 }
