// Package file turns the bytes of a project file into a project and back. It touches no
// disk: that is what store is for.
//
// # Keys of a project beside those of the knife and its sheath
//
// Lengths are mm. Keys that are missing stand for their defaults, in package project's table.
//
// [[carried]] is a correction offered from elsewhere, which counts for nothing: from (words),
// at, by, reach, with, note as in [[fit]], of the knife it was found on, and that knife's
// deepest place, front of the handle and mouth: mm from the point.
//
// [[earlier]] is a half-width of an earlier sheath laid flat: at (from the point), wide (from
// the fold), line ("edge": the finished one, or "stitches"). [made_for] is the knife of another
// project that it was made for: title, inputs (that knife and its sheath, as in [[pattern]]).
//
// [leather] has name (the piece chosen, whose bend went into sheath.neutral), price_m2 or
// price_ft2 (as in leather.toml, taken with the name), lost (what a placing lost, as a share of
// what is cut) and cut (mm²: what all its parts took then; once they take another area the
// pattern is another, and lost no longer counts).
//
// [[part]] is added by the maker: name, count, length, width, or halves (a text of places along
// and half-widths), thickness (0: the body's).
//
// [[quote]] has date, until, due, accepted (local dates: made; the last on which it holds; the
// day promised with it, from acceptance on with the order; accepted), what (told to the
// customer), currency (put behind amounts), unit (the smallest amount, a text such as "0.05"),
// lines (a text, a row each: kind | amount | name | what it came from; kind is leather, thread,
// item, sundries, work, overhead, margin, minimum or agreed; amounts with a point, below 0 only
// for agreed). The sum of the lines is the price.
package file
