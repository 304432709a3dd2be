// Package report says what a plan says, once: rows of figures and tables that the Plan
// pane, the plain page, the work card and the setting-out sheet lay out at their width;
// and JSON for other programs. It neither reads nor writes files.
//
// # Keys of the drying figures
//
// chape plan --json gives drying, null without weighings since the last wetting: before, last,
// dry (where the curve ends), scatter (of a weighing from the curve): grams; weighings: how
// many; rate: of the faster part, per hour; slow: share of the water in a slower part; reached:
// within 2 % of dry; steady: dry by weight; earliest, likely, latest: the window, weigh_next:
// RFC 3339 on the weighings' clock; text: why there is no window. What is not known is null.
//
// # Axes of a traced piece of leather
//
// chape trace --of leather --json gives the outline in the sheet's axes, y down it: turn y round
// (0 − y), as the Leather page does, to have the piece grain side up in the axes of corners in
// leather.toml; left as it is, it is a mirror image.
package report
