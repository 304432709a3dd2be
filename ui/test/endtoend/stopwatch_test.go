//go:build linux

package endtoend

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/creack/pty"
)

// watched is a program in a terminal that only notes when what came: no screen
// is worked out that would be measured as well.
type watched struct {
	tb    testing.TB
	cmd   *exec.Cmd
	pty   *os.File
	begun time.Time

	mu   sync.Mutex
	came *sync.Cond
	out  []byte
	last time.Time // when the newest of it came
	end  bool
}

// answers are the replies to the questions that programs ask at their start:
// the background's colour (OSC 11) and where the cursor is.
var answers = map[string]string{
	"\x1b]11;?": "\x1b]11;rgb:1010/1010/1010\x1b\\",
	"\x1b[6n":   "\x1b[1;1R",
}

func watch(tb testing.TB, dir string, answering bool, width, height int, name string, args ...string) *watched {
	tb.Helper()
	cmd := exec.Command(name, args...)
	cmd.Dir = dir
	cmd.Env = []string{
		"TERM=xterm-256color", "COLORTERM=truecolor", "LANG=C.UTF-8", "TZ=UTC", "HOME=" + dir,
		"XDG_CONFIG_HOME=" + dir + "/config", "XDG_DATA_HOME=" + dir + "/data", "XDG_CACHE_HOME=" + dir + "/cache",
	}
	w := &watched{tb: tb, cmd: cmd, begun: time.Now()}
	w.came = sync.NewCond(&w.mu)
	var err error
	if w.pty, err = pty.StartWithSize(cmd, &pty.Winsize{Rows: uint16(height), Cols: uint16(width)}); err != nil {
		tb.Fatal(err)
	}
	go w.read(answering)
	tb.Cleanup(w.stop)
	return w
}

func (w *watched) read(answering bool) {
	buf := make([]byte, 64<<10)
	for {
		n, err := w.pty.Read(buf)
		w.mu.Lock()
		w.out = append(w.out, buf[:n]...)
		w.last = time.Now()
		w.end = err != nil
		w.came.Broadcast()
		w.mu.Unlock()
		if err != nil {
			return
		}
		for question, answer := range answers {
			if answering && bytes.Contains(buf[:n], []byte(question)) {
				w.pty.WriteString(answer)
			}
		}
	}
}

// until waits for a text in what comes from now on and gives the time it came.
func (w *watched) until(text string) time.Time {
	w.tb.Helper()
	w.mu.Lock()
	defer w.mu.Unlock()
	w.wait(fmt.Sprintf("showed %q", text), func() bool { return bytes.Contains(w.out, []byte(text)) })
	return w.last
}

// respond types keys and gives the time until something came in return. Nothing
// else may be under way: an idle program writes nothing.
func (w *watched) respond(keys string) time.Duration {
	w.tb.Helper()
	w.mu.Lock()
	defer w.mu.Unlock()
	w.out = nil
	begun := time.Now()
	if _, err := w.pty.WriteString(keys); err != nil {
		w.tb.Fatal(err)
	}
	w.wait(fmt.Sprintf("answered %q", keys), func() bool { return len(w.out) > 0 })
	return w.last.Sub(begun)
}

// wait waits for output with the lock held.
func (w *watched) wait(what string, ok func() bool) {
	w.tb.Helper()
	alarm := time.AfterFunc(10*time.Second, func() {
		w.mu.Lock()
		w.end = true
		w.came.Broadcast()
		w.mu.Unlock()
	})
	defer alarm.Stop()
	for !ok() {
		if w.end {
			w.tb.Fatalf("%s never %s", w.cmd.Path, what)
		}
		w.came.Wait()
	}
}

func (w *watched) stop() {
	w.cmd.Process.Kill()
	w.cmd.Wait()
	w.pty.Close()
}

// cpu is the time the program has had on the processors, in the user's and the
// system's name: fields 14 and 15 of proc(5) stat, in hundredths of a second.
func (w *watched) cpu() time.Duration {
	w.tb.Helper()
	data, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", w.cmd.Process.Pid))
	if err != nil {
		w.tb.Fatal(err)
	}
	_, after, _ := strings.Cut(string(data), ") ")
	fields := strings.Fields(after)
	sum := time.Duration(0)
	for _, f := range fields[11:13] {
		n, err := strconv.Atoi(f)
		if err != nil {
			w.tb.Fatal(err)
		}
		sum += time.Duration(n) * 10 * time.Millisecond
	}
	return sum
}

// at gives the share-th of some times, 0.5 the median.
func at(times []time.Duration, share float64) time.Duration {
	sorted := slices.Sorted(slices.Values(times))
	return sorted[min(len(sorted)-1, int(share*float64(len(sorted))))]
}
