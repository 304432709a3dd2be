package store

import (
	"crypto/rand"
	"encoding/hex"
	"fmt"
	"path/filepath"
	"regexp"
	"strconv"
	"sync"
	"sync/atomic"
	"time"
	"unicode/utf8"
)

// The names this package uses beside a file NAME, all hidden:
//
//	.NAME.before                                the backup
//	.NAME.PROCESS-N.new                         bytes on their way in
//	.NAME.PROCESS-N-TIME-OURS-EXPECTED.hold     a whole version, in or out
//
// A .new may be deleted whatever is in it. A .hold may be what the file held
// until a moment ago, so its name carries the hashes that tell.

// stemMax leaves room for the longest of these endings in the 255 bytes most
// file systems give a name.
const stemMax = 150

// stem is the part of a hidden name that belongs to one file.
func stem(base string) string {
	if len(base) <= stemMax {
		return "." + base
	}
	cut := stemMax - 20
	for !utf8.RuneStart(base[cut]) {
		cut--
	}
	sum := sum16([]byte(base))
	return "." + base[:cut] + "~" + sum
}

// BackupName is the name of the backup of the file path.
func BackupName(path string) string {
	return filepath.Join(filepath.Dir(path), stem(filepath.Base(path))+".before")
}

// process tells the leftovers of this process from those of others.
var process = func() string {
	var b [6]byte
	rand.Read(b[:])
	return hex.EncodeToString(b[:])
}()

var (
	lastName atomic.Int64
	inUse    sync.Map // hidden names of saves under way in this process
)

// hiddenNames are the names of one save; old is a .new that a copy of the old
// version is made in.
type hiddenNames struct{ fresh, old, hold string }

func newNames(path string, ours, expect Stamp, now time.Time) hiddenNames {
	start := filepath.Join(filepath.Dir(path), stem(filepath.Base(path))) + "." + process
	i := lastName.Add(2)
	n := hiddenNames{
		fresh: fmt.Sprintf("%s-%d.new", start, i),
		old:   fmt.Sprintf("%s-%d.new", start, i+1),
		hold:  fmt.Sprintf("%s-%d-%x-%s-%s.hold", start, i, now.Unix(), short(ours), short(expect)),
	}
	for _, name := range []string{n.fresh, n.old, n.hold} {
		inUse.Store(name, true)
	}
	return n
}

// done lets the next save clean up what this one could not.
func (n hiddenNames) done() {
	for _, name := range []string{n.fresh, n.old, n.hold} {
		inUse.Delete(name)
	}
}

func short(s Stamp) string { return hex.EncodeToString(s.Sum[:8]) }

func sum16(data []byte) string { return short(stampOf(data, time.Time{}, time.Time{})) }

var (
	freshEnd = regexp.MustCompile(`^\.([0-9a-f]{12})-[0-9]+\.new$`)
	holdEnd  = regexp.MustCompile(`^\.([0-9a-f]{12})-[0-9]+-([0-9a-f]+)-([0-9a-f]{16})-([0-9a-f]{16})\.hold$`)
)

// leftover is what the hidden name of another save says.
type leftover struct {
	process      string
	whole        bool // a .hold
	made         time.Time
	ours, expect string
}

// parseLeftover reads the part of a hidden name after its stem.
func parseLeftover(end string) (leftover, bool) {
	if m := freshEnd.FindStringSubmatch(end); m != nil {
		return leftover{process: m[1]}, true
	}
	m := holdEnd.FindStringSubmatch(end)
	if m == nil {
		return leftover{}, false
	}
	sec, err := strconv.ParseInt(m[2], 16, 64)
	if err != nil {
		return leftover{}, false
	}
	return leftover{process: m[1], whole: true, made: time.Unix(sec, 0), ours: m[3], expect: m[4]}, true
}

// FullPath is a file's name from the root of the system on; "" stays so.
func FullPath(p string) string {
	if p == "" {
		return ""
	}
	if abs, err := filepath.Abs(p); err == nil {
		return abs
	}
	return p
}
