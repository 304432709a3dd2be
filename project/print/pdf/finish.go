package pdf

import (
	"bytes"
	"chape/project/print/sheet"
	"errors"
	"fmt"
	"regexp"
	"strconv"
)

// Mark is the comment that ends a finished file before its last "startxref". A file
// that somebody has written notes into has more behind it, and is theirs.
const Mark = "% " + sheet.Producer

// The end of what the library writes: trailer dictionary and the place of its
// cross-reference table (ISO 32000-1, 7.5.5).
var trailerRE = regexp.MustCompile(`\ntrailer\n<<\n((?:/\w+ \d+(?: 0 R)?\n)+)>>\nstartxref\n(\d+)\n%%EOF\n$`)

// finish asks viewers not to scale (ISO 32000-1, 12.2, PrintScaling, a key of PDF 1.6),
// for which the library has no call: an incremental update (7.5.6) with a new version of
// the catalog. The bytes before it stay as they are.
func finish(data []byte) ([]byte, error) {
	m := trailerRE.FindSubmatch(data)
	if m == nil {
		return nil, errors.New("the PDF does not end in a trailer")
	}
	root, err := trailerNumber(m[1], "Root")
	if err != nil {
		return nil, err
	}
	head := fmt.Sprintf("\n%d 0 obj\n<<\n", root)
	from := bytes.LastIndex(data, []byte(head))
	if from < 0 {
		return nil, errors.New("the PDF has no catalog")
	}
	catalog := data[from+len(head):]
	to := bytes.Index(catalog, []byte("\n>>\nendobj"))
	if to < 0 {
		return nil, errors.New("the PDF's catalog has no end")
	}
	out := bytes.NewBuffer(bytes.Clone(data))
	at := out.Len()
	fmt.Fprintf(out, "%d 0 obj\n<<\n%s\n/Version /1.6\n/ViewerPreferences << /PrintScaling /None >>\n>>\nendobj\n", root, catalog[:to])
	table := out.Len()
	fmt.Fprintf(out, "xref\n0 1\n0000000000 65535 f \n%d 1\n%010d 00000 n \ntrailer\n<<\n%s/Prev %s\n>>\n%s\nstartxref\n%d\n%%%%EOF\n", root, at, m[1], m[2], Mark, table)
	return out.Bytes(), nil
}

// trailerNumber is an entry of the trailer.
func trailerNumber(trailer []byte, key string) (int, error) {
	m := regexp.MustCompile(`/` + key + ` (\d+)`).FindSubmatch(trailer)
	if m == nil {
		return 0, fmt.Errorf("the PDF's trailer has no %s", key)
	}
	return strconv.Atoi(string(m[1]))
}
