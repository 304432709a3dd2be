// Package versions is the patterns of a project: each that was printed, and the one that
// stands now; and how two of them differ.
//
// # Keys of chape patterns --json
//
// then and now (the two patterns: number, printed (a day), standing: drawn from what the project
// holds now); half_widths, each with at (mm from the point), name (a landmark, or ""), stitch
// and cut (mm from the fold: then, now, change; null where one of the two has no such line);
// figures that differ (name, then, now, unit: texts as on the plan in mm).
package versions
