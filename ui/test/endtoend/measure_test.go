//go:build linux

package endtoend

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"
)

// TestMeasure takes the figures of DEVELOPERS.md. It judges none: on a busy
// machine they mean nothing.
func TestMeasure(t *testing.T) {
	if !*measure {
		t.Log("only with -measure")
		return
	}
	bare, err := build(t.TempDir(), "chape/ui/test/endtoend/bare")
	if err != nil {
		t.Fatal(err)
	}
	h := newHome(t, aKnife())
	ours := func(answering bool, w, hgt int) *watched { return watch(t, h.dir, answering, w, hgt, *program, h.path) }
	theirs := func(answering bool, w, hgt int) *watched { return watch(t, h.dir, answering, w, hgt, bare) }
	for _, answering := range []bool{true, false} {
		name := map[bool]string{true: "answering", false: "silent"}[answering]
		t.Run("start, "+name, func(t *testing.T) { measureStart(t, answering, ours, theirs) })
	}
	for _, size := range [][2]int{{80, 24}, {160, 45}} {
		t.Run(fmt.Sprintf("keys, %d×%d", size[0], size[1]), func(t *testing.T) {
			other := theirs(true, size[0], size[1])
			other.until(ready)
			b := keyTimes(other, "a", "b")
			for name, keys := range map[string][]string{"moving": {down, "\x1b[A"}, "typing": {"1", "\x7f"}} {
				mine := ours(true, size[0], size[1])
				mine.until(ready)
				mine.respond(down)
				a := keyTimes(mine, keys...)
				mine.stop()
				t.Logf("key to screen, %s, 200 keys: chape p50 %v p95 %v; bare p50 %v p95 %v; p95 %.2f times", name,
					at(a, 0.5), at(a, 0.95), at(b, 0.5), at(b, 0.95), float64(at(a, 0.95))/float64(at(b, 0.95)))
			}
		})
	}
	t.Run("idle", func(t *testing.T) { measureIdle(t, ours, theirs) })
}

type starter func(answering bool, width, height int) *watched

func measureStart(t *testing.T, answering bool, ours, theirs starter) {
	var a, b []time.Duration
	for range 30 { // by turns, so that whatever the machine does meets both
		for _, s := range []struct {
			start starter
			times *[]time.Duration
		}{{ours, &a}, {theirs, &b}} {
			w := s.start(answering, 120, 40)
			*s.times = append(*s.times, w.until(ready).Sub(w.begun))
			w.stop()
		}
	}
	t.Logf("start to first frame, 30 times each: chape %v, bare %v; %.2f times", at(a, 0.5), at(b, 0.5), float64(at(a, 0.5))/float64(at(b, 0.5)))
}

// keyTimes is the time from a key to what it changes on the screen, 200 times,
// at moments that have nothing to do with the renderer's own beat.
func keyTimes(w *watched, keys ...string) []time.Duration {
	r := rand.New(rand.NewPCG(*seed, 5))
	var times []time.Duration
	for i := range 200 {
		<-time.After(50*time.Millisecond + time.Duration(r.IntN(50_000))*time.Microsecond)
		times = append(times, w.respond(keys[i%len(keys)]))
	}
	return times
}

func measureIdle(t *testing.T, ours, theirs starter) {
	const span = 25 * time.Second
	mine, other := ours(true, 120, 40), theirs(true, 120, 40)
	mine.until(ready)
	other.until(ready)
	mineAt, otherAt := mine.cpu(), other.cpu()
	<-time.After(span)
	a, b := mine.cpu()-mineAt, other.cpu()-otherAt
	t.Logf("idle %v: chape %v (%.2f %% of a core), bare %v (%.2f %%); %.2f times", span,
		a, 100*a.Seconds()/span.Seconds(), b, 100*b.Seconds()/span.Seconds(), float64(a)/float64(max(b, 1)))
}
