// Package lookback is a look back over the shelf: hours by sheath and by step, what each
// took of leather and thread, and what was quoted against what it took.
//
// # Keys of chape shelf --json
//
// currency; sheaths, each with file, title, customer, due, finished, put_away, minutes
// (expected, spent, left: still to do), steps (title, expected, spent: minutes; done), leather
// (cut, bought: mm²; yield: share), thread (mm), cost (by the minutes spent) and price (by those
// expected), both at today's prices (amount; at_least: some price is missing), quote (the one
// that counts: date, until, accepted, currency, amount), left (quote less cost, once finished),
// ready (at: RFC 3339, by itself: no other takes the bench; spare: days before due; unset, bare:
// waits and steps not counted; queue: at and spare once after so many, promised earlier, had
// the bench first), error; totals: sheaths, finished, minutes, leather, thread (of the
// finished), quoted (how many finished ones have a quote), asked, took (those together), steps
// (title, sheaths, spent, median, expected).
//
// Money is a text, a day 2026-12-18; what is not known is null. Added parts count in leather.
package lookback
