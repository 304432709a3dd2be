package file

import (
	"strings"
	"testing"
)

// small is the least a file can hold.
const small = `format = 1
[[knife.station]]
at = 0
top = 7
bottom = 7
thick = 0.8
[[knife.station]]
at = 100
bottom = 30
thick = 4
[sheath]
mouth = 90
`

func TestDecodeRefuses(t *testing.T) {
	const list = "[[knife.station]]\nat = 100\nbottom = 30\nthick = 4\n"
	for _, c := range []struct {
		name, old, new string // what of small is replaced
		want           string
	}{
		{"no format", "format = 1\n", "", "f.toml: format: found nothing: a project file has a format: begin it with format = 1"},
		{"newer", "format = 1", "format = 2", "f.toml:1: format: found 2: it was written by a newer chape and is left as it is: use that one; this one reads up to format 1"},
		{"never was", "format = 1", "format = -3", "f.toml:1: format: found -3: no such format was ever written: write format = 1"},
		{"format text", "format = 1", `format = "1"`, `f.toml:1: format: found "1": write format = 1`},
		{"unknown key", "mouth = 90", "mouth = 90\nlether = 3", "f.toml:13: sheath.lether: found a key this program does not know: did you mean leather? Change it or take it out"},
		{"case", "mouth = 90", "mouth = 90\nLeather = 3", "f.toml:13: sheath.Leather: found a key this program does not know: did you mean leather? Change it or take it out"},
		{"elsewhere", "mouth = 90", "mouth = 90\npitch = 4", "f.toml:13: sheath.pitch: found a key this program does not know: pitch belongs in [stitch]: move it or take it out"},
		{"unknown table", "[sheath]", "[scabbard]\n[sheath]", "f.toml:11: scabbard: found a key this program does not know: take it out; known here are format, title, units, revision, notes, customer, knife, sheath, strap, belt, stitch, room, leather, made_for, fit, carried, earlier, step, pattern, quote, weigh, part"},
		{"escape in a key", "mouth = 90", "mouth = 90\n\"\\u001b[2J\" = 1", `f.toml:13: "sheath.\x1b[2J": found a key this program does not know: take it out; known here are mouth, leather, welt, plies, clearance, handle_clearance, point_room, gap, margin, sanding, blend, ease, neutral, mouth_round, mouth_rise, drain`},
		{"unknown in a row", "thick = 4", "thick = 4\nwidth = 2", "f.toml:11: knife.station.width of mark 2: found a key this program does not know: take it out; known here are at, top, bottom, thick, kind, bevel, round"},
		{"wrong type", "mouth = 90", "mouth = true", `f.toml:12: sheath.mouth: found true: write millimetres, such as 3.2, or a text with its unit, such as "1/8 in"`},
		{"no unit", "mouth = 90", `mouth = "90"`, `f.toml:12: sheath.mouth: found "90": write millimetres, such as 3.2, or a text with its unit, such as "1/8 in"`},
		{"ounces", "mouth = 90", `mouth = "8 oz"`, `f.toml:12: sheath.mouth: found "8 oz": ounces are for leather alone: here try 3.2, 3.2 mm, 1/8 in`},
		{"list for a length", "mouth = 90", `mouth = [90]`, `f.toml:12: sheath.mouth: found a list: write millimetres, such as 3.2, or a text with its unit, such as "1/8 in"`},
		{"nan", "mouth = 90", "mouth = nan", `f.toml:12: sheath.mouth: found NaN: write millimetres, such as 3.2, or a text with its unit, such as "1/8 in"`},
		{"inf", "thick = 4", "thick = -inf", `f.toml:10: knife.station.thick of mark 2: found -Inf: write millimetres, such as 3.2, or a text with its unit, such as "1/8 in"`},
		{"no mouth", "mouth = 90", "", "f.toml:11: sheath.mouth: found nothing: give it: point to mouth along the fold: to half the handle, or short of a guard"},
		{"no thickness", "thick = 4\n", "", "f.toml:7: knife.station.thick of mark 2: found nothing: give it: across at the fattest, with the calliper"},
		{"range", "mouth = 90", "mouth = 90\nleather = 40", "f.toml:13: sheath.leather: found 40 mm: give between 0.2 and 15 mm"},
		{"range in inches", "format = 1", "format = 1\nunits = \"in\"\nbelt.width = \"1/8 in\"", "f.toml:3: belt.width: found 1/8 in: give between 0.2 and 5.9 in"},
		{"not above", "mouth = 90", "mouth = 0", "f.toml:12: sheath.mouth: found 0 mm: give more than 0 and at most 2000 mm"},
		{"first mark", "at = 0", "at = 1", "f.toml:3: knife.station.at of mark 1: found 1 mm: the first mark stands at the point: give 0"},
		{"order", "at = 0\n", "at = 0\nbottom = 9\nthick = 1\n[[knife.station]]\nat = 120\n", "f.toml:12: knife.station.at of mark 3: found 100 mm: put the marks in order: the one before stands at 120 mm"},
		{"three at one place", "[sheath]", list + list + "[sheath]", "f.toml:16: knife.station.at of mark 4: found a third mark at 100 mm: two make a step: take one out (and 1 more)"},
		{"run of one at the end", "[sheath]", list + "[sheath]", "f.toml:12: knife.station.at of mark 3: found a single mark after the step at 100 mm: leave a section between steps: give it a mark more"},
		{"crossing", "bottom = 7", "bottom = 6.5", "f.toml:5: knife.station.bottom of mark 1: found 6.5 mm: give at least top, 7 mm: the edge can't lie above the back"},
		{"no marks", "[[knife.station]]\nat = 0\ntop = 7\nbottom = 7\nthick = 0.8\n", "", "f.toml:2: knife.station: found 1 of them: give the point, the end and marks between them: at least two"},
		{"mouth beyond", "mouth = 90", "mouth = 100.5", "f.toml:12: sheath.mouth: found 100.5 mm: the knife ends at 100 mm: give less"},
		{"gap", "mouth = 90", "mouth = 90\ngap = 3", "f.toml:13: sheath.gap: found 3 mm: give more than clearance, 3 mm"},
		{"blend", "mouth = 90", "mouth = 90\nblend = 6.5", "f.toml:13: sheath.blend: found 6.5 mm: give more than margin and sanding together, 6.5 mm"},
		{"default gap", "mouth = 90", "mouth = 90\nclearance = 8", "f.toml:11: sheath.gap: found 7.5 mm: give more than clearance, 8 mm"},
		{"pitch", "mouth = 90", "mouth = 90\n[stitch]\npitch = 0", "f.toml:14: stitch.pitch: found 0 mm: give between 1 and 50 mm"},
		{"thread", "mouth = 90", "mouth = 90\n[stitch]\nthread = 0.0", "f.toml:14: stitch.thread: found 0 mm: give more than 0 and at most 5 mm"},
		{"reach", "mouth = 90", "mouth = 90\n[[fit]]\nat = 9\nby = 1\nreach = 0", "f.toml:16: fit.reach of fit 1: found 0 mm: give more than 0 and at most 2000 mm"},
		{"count", "mouth = 90", "mouth = 90\nplies = 1.0", "f.toml:13: sheath.plies: found 1: write a whole number, such as 2"},
		{"choice", "mouth = 90", "mouth = 90\n[belt]\nloop = \"Folded\"", `f.toml:14: belt.loop: found "Folded": try folded or none`},
		{"kind", "thick = 4", "thick = 4\nkind = \"bar\"", `f.toml:11: knife.station.kind of mark 2: found "bar": try blade, slab or oval`},
		{"due with time", "format = 1", "format = 1\ncustomer.due = 2026-12-18T00:00:00Z", "f.toml:2: customer.due: found 2026-12-18T00:00:00Z: write a date without quotes, such as 2026-12-18"},
		{"local time", "mouth = 90", "mouth = 90\n[[step]]\ntitle = \"x\"\ndone = 2026-11-25T09:30:00", "f.toml:15: step.done of step 1: found 2026-11-25T09:30:00 without an offset: write a time with its offset, without quotes, such as 2026-11-25T09:30:00+01:00"},
		{"hold", "mouth = 90", "mouth = 90\n[[step]]\ntitle = \"x\"\nhold = 24", `f.toml:15: step.hold of step 1: found 24: write a duration in quotes, such as "24h" or "15m"`},
		{"hold below nothing", "mouth = 90", "mouth = 90\n[[step]]\ntitle = \"x\"\nhold = \"-1h\"", `f.toml:15: step.hold of step 1: found "-1h": give 0h to 8784h, such as 24h or 15m`},
		{"look by before the end", "mouth = 90", "mouth = 90\n[[step]]\ntitle = \"x\"\nhold = \"24h\"\nlatest = \"90m\"", `f.toml:16: step.latest of step 1: found "1h30m": give at least hold, 24h, or take it out: a step is not looked at before its hold is over`},
		{"temperature", "mouth = 90", "mouth = 90\n[room]\ntemperature = 70", "f.toml:14: room.temperature: found 70: give between -30 and 60"},
		{"humidity", "mouth = 90", "mouth = 90\n[room]\nhumidity = -1", "f.toml:14: room.humidity: found -1: give between 0 and 100"},
		{"humidity as text", "mouth = 90", "mouth = 90\n[room]\nhumidity = \"55 %\"", `f.toml:14: room.humidity: found "55 %": write a number, such as 0.5`},
		{"room misspelt", "mouth = 90", "mouth = 90\n[room]\ntemprature = 18", "f.toml:14: room.temprature: found a key this program does not know: did you mean temperature? Change it or take it out"},
		{"short name", "mouth = 90", "mouth = 90\n[[step]]\ntitle = \"x\"\nshort = \"RETENTIONS\"", "f.toml:15: step.short of step 1: found 10 letters: give at most 9 letters"},
		{"no title", "mouth = 90", "mouth = 90\n[[step]]\nshort = \"X\"", "f.toml:13: step.title of step 1: found nothing: give it: what is to be done"},
		{"skipped", "mouth = 90", "mouth = 90\n[[step]]\ntitle = \"x\"\nskipped = 1", "f.toml:15: step.skipped of step 1: found 1: write true or false"},
		{"grams", "mouth = 90", "mouth = 90\n[[weigh]]\nwhen = 2026-11-25T09:30:00+01:00\ngrams = -2.5", "f.toml:15: weigh.grams of weighing 1: found -2.5: give more than 0 and at most 20000"},
		{"pattern twice", "mouth = 90", "mouth = 90\n[[pattern]]\nnumber = 3\nprinted = 2026-11-25\n[[pattern]]\nnumber = 3\nprinted = 2026-11-26", "f.toml:17: pattern.number of pattern 2: found 3 once more: give each printed pattern its own number, or take one out"},
		{"pattern undated", "mouth = 90", "mouth = 90\n[[pattern]]\nnumber = 3", "f.toml:13: pattern.printed of pattern 1: found nothing: give it: the date on its sheets"},
		{"pattern unnumbered", "mouth = 90", "mouth = 90\n[[pattern]]\nprinted = 2026-11-25", "f.toml:13: pattern.number of pattern 1: found nothing: give it: as it stands on its sheets"},
		{"pattern's time", "mouth = 90", "mouth = 90\n[[pattern]]\nnumber = 3\nprinted = 2026-11-25T09:30:00Z", "f.toml:15: pattern.printed of pattern 1: found 2026-11-25T09:30:00Z: write a date without quotes, such as 2026-12-18"},
		{"table for a key", "mouth = 90", "mouth = 90\n[belt.width]", `f.toml:13: belt.width: found a table: write millimetres, such as 3.2, or a text with its unit, such as "1/8 in"`},
		{"key for a table", "format = 1", "format = 1\nbelt = 3", "f.toml:2: belt: found 3: write a table: [belt]"},
		{"one for a list", "mouth = 90", "mouth = 90\n[fit]\nat = 1", "f.toml:13: fit: found a table: write a table for each: [[fit]]"},
		{"outline", "format = 1", "format = 1\nknife.source = \"outline\"\nknife.outline.grind = 31\n", "f.toml:3: knife.outline.grind: found 31 mm: give at most the blade's depth, 30 mm, or 0 for a full grind"},
		{"twice", "mouth = 90", "mouth = 90\nmouth = 91", "f.toml:13: found text that is not valid TOML (Key 'sheath.mouth' has already been defined.): fix the line or restore a backup"},
		{"no equals", "mouth = 90", "mouth 90", `f.toml:12: found "90": an equals sign after the key, as in leather = 3.2`},
		{"no value", "mouth = 90", "mouth =", `f.toml:12: found nothing more: a value after the equals sign, as in leather = 3.2`},
		{"open text", "mouth = 90", "mouth = 90\ntitle = \"abc", `f.toml:13: found a text that does not end: close it with the quote it began with`},
		{"two on a line", "mouth = 90", "mouth = 90 leather = 3", "f.toml:12: found text that is not valid TOML (expected a top-level item to end with a newline, comment, or EOF, but got 'l' instead): fix the line or restore a backup"},
		{"zero byte", "mouth = 90", "mouth = 90\x00", "f.toml:12: found a zero byte: open a project file, which is plain text"},
		{"not UTF-8", "mouth = 90", "mouth = 90 # \xff", "f.toml:12: found bytes that are not UTF-8: save the file as UTF-8"},
	} {
		if !strings.Contains(small, c.old) {
			t.Fatalf("%s: %q is not in the small file", c.name, c.old)
		}
		data := strings.Replace(small, c.old, c.new, 1)
		p, _, err := Decode("f.toml", []byte(data))
		if err == nil {
			t.Errorf("%s: Decode takes it: %+v", c.name, p)
		} else if got := err.Error(); got != c.want {
			t.Errorf("%s:\ngot  %s\nwant %s", c.name, got, c.want)
		}
	}
}
