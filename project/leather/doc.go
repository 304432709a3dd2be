// Package leather is the leather on the rack: pieces with their flaws and their grain, how
// each hide bends and gives, and how the parts of sheaths are placed on them. It is kept in
// a file of its own beside the settings.
//
// # Keys of leather.toml
//
// The file is written by the program, beside config.toml: gap (mm, between parts), with (files
// of projects that are cut from it together with the one in hand) and [[leather]]: name,
// thickness (mm, or a text such as "8 oz"), width and height (mm; 0: no piece) or corners (a
// text of places, mm from the lower left corner, grain side up: "0 20; 300 0; …"), flaws (texts:
// "330 300 30" is along, up, across; or corners), grain (degrees from the lower edge,
// counter-clockwise; only where it counts), within (degrees); what it costs, price_m2 or
// price_ft2 (a text such as "92.50"); aside (true: not cut from for now); of the hide neutral,
// neutral_plus (shares of the thickness), strips (how many), stretch_wet, stretch_kept,
// stretch_plus (shares).
//
// # Keys of chape place --json
//
// fits, yield (share of the rectangles used), rectangle (their area, mm²), gap (mm), stopped
// (broken off); placements, each with part, project, kind (body, welt, strap, added), copy (from
// 1), leather, x, y (where the part's origin comes to lie, mm), angle (degrees,
// counter-clockwise), grain_down, outline (places, mm); missing (part, project, count,
// no_thickness: no piece is as thick); pieces used (leather, width, height of the rectangle: mm;
// parts, leather_area: mm²; yield).
package leather
