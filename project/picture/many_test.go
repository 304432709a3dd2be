package picture

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/calc/trace"
	"chape/project/picture/phototest"
)

var (
	pictures = flag.Int("pictures", 1, "hard pictures of random knives that are read; from 2 on all refusals are tried on pictures, too")
	high     = flag.Int("high", 2000, "their height in dots; 4000 is 12 megapixels")
	first    = flag.Uint64("first", 100, "the first one's seed")
)

// randomKnife is an invented knife with a bolster or guard that fits an A4 sheet.
func randomKnife(r *rand.Rand) knife.Knife {
	between := func(lo, hi float64) length.Length { return length.Length(lo + (hi-lo)*r.Float64()) }
	blade := between(70, 115)
	depth, proud, front := between(18, 32), between(0, 5), between(4, 12)
	curved := between(0.2, 0.45)
	st := []knife.Station{{At: 0, Top: proud + depth*curved, Bottom: proud + depth*curved + 0.5, Thick: 1, Kind: knife.Blade, Bevel: 1}}
	add := func(at, top, bottom length.Length, kind knife.Kind) {
		st = append(st, knife.Station{At: at, Top: top, Bottom: bottom, Thick: 4, Kind: kind, Bevel: 1})
	}
	add(blade*0.12, proud+depth*curved*0.6, proud+depth*0.72, knife.Blade)
	add(blade*0.4, proud, proud+depth*0.97, knife.Blade)
	add(blade, proud, proud+depth, knife.Blade)
	add(blade, 0, proud+depth+between(1, 8), knife.Slab)
	add(blade+front, 0, st[len(st)-1].Bottom, knife.Slab)
	add(blade+front, proud, proud+depth*0.85, knife.Oval)
	add(blade+front+between(35, 50), proud, proud+depth*0.95, knife.Oval)
	add(blade+front+between(75, 110), proud+0.5, proud+depth*0.9, knife.Oval)
	return knife.Knife{Stations: st}
}

// Pictures that nobody tuned to: read within the goals, or refused. Many by flag.
func TestManyPictures(t *testing.T) {
	var sum figures
	for i := range *pictures {
		seed := *first + uint64(i)
		sum.one(t, seed)
	}
	if *pictures > 1 {
		fmt.Print(sum.say())
	}
}

// figures gathers what many readings came to.
type figures struct {
	read, refused, stepsLost int
	rms, worst, steps, ends  float64
	longest                  time.Duration
	sumRMS                   float64
	reasons                  []string
}

func (f *figures) one(t *testing.T, seed uint64) {
	r := rand.New(rand.NewPCG(seed, 11))
	d := outlineOf(t, randomKnife(r))
	p := page()
	want := drawKnife(t, p, d, r)
	data := phototest.JPEG(p, hard(r, *high, seed))
	from := time.Now()
	m, err := Decode(context.Background(), bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	got, err := trace.Read(context.Background(), m, trace.Options{})
	f.longest = max(f.longest, time.Since(from))
	if err != nil {
		f.refused++
		f.reasons = append(f.reasons, fmt.Sprintf("%d: %v", seed, err))
		return
	}
	f.read++
	rms, worst := fault(got.Outline, want, stepCorners(d, want))
	f.rms, f.worst, f.sumRMS = max(f.rms, rms), max(f.worst, worst), f.sumRMS+rms
	if rms > 0.2 || worst > 0.6 {
		t.Errorf("picture %d: wrong by %.3f mm, at worst %.3f; residual %.3f", seed, rms, worst, got.Residual.RMS)
	}
	if e := math.Abs(got.Knife.Length() - d.long); e > 0.8 {
		t.Errorf("picture %d: length %.2f, want %.2f", seed, got.Knife.Length(), d.long)
	} else {
		f.ends = max(f.ends, e)
	}
	if len(got.Knife.Steps) != len(d.steps) {
		f.stepsLost++
		t.Errorf("picture %d: steps %v, want %v", seed, got.Knife.Steps, d.steps)
		return
	}
	for i, s := range d.steps {
		e := math.Abs(got.Knife.Steps[i] - s)
		f.steps = max(f.steps, e)
		if e > 0.4 {
			t.Errorf("picture %d: step at %.2f, want %.2f", seed, got.Knife.Steps[i], s)
		}
	}
}

// stepCorners are the true corners at steps.
func stepCorners(d drawn, on curve.Line) (out curve.Line) {
	for i, v := range d.line {
		for _, s := range d.steps {
			if v.X == s {
				out = append(out, on[i])
			}
		}
	}
	return out
}

func (f *figures) say() string {
	s := fmt.Sprintf("%d read, %d refused; outline RMS mean %.3f, at most %.3f, worst point %.2f; steps within %.2f, length within %.2f mm; %v at most\n",
		f.read, f.refused, f.sumRMS/float64(max(f.read, 1)), f.rms, f.worst, f.steps, f.ends, f.longest.Round(time.Millisecond))
	for _, r := range f.reasons {
		s += r + "\n"
	}
	return s
}

// A picture of 12 megapixels of an A4 sheet.
func BenchmarkRead12(b *testing.B) { benchmarkRead(b, 4000) }

// A picture of 64 megapixels.
func BenchmarkRead64(b *testing.B) { benchmarkRead(b, 9200) }

func benchmarkRead(b *testing.B, high int) {
	r := rand.New(rand.NewPCG(7, 11))
	d := outlineOf(b, randomKnife(r))
	p := page()
	drawKnife(b, p, d, r)
	data := phototest.JPEG(p, hard(r, high, 7))
	b.ReportAllocs()
	for b.Loop() {
		m, err := Decode(context.Background(), bytes.NewReader(data))
		if err != nil {
			b.Fatal(err)
		}
		if _, err := trace.Read(context.Background(), m, trace.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
