package drypane

import (
	"fmt"
	"math"
	"time"

	lewis "chape/calc/drying"
	"chape/project/steps"
	"chape/project/weigh"
)

// caution stands on the page whatever else does.
var caution = fmt.Sprintf("never above %.0f °C, away from heat and sun; start weighing once the surface no longer shines; the knife out, dried and oiled", lewis.Warmest)

// verdict is when the sheath will be dry, or why that can't be said.
func (m *Model) verdict() (text string, bad bool) {
	if w, ok := m.toCome(); ok {
		return fmt.Sprintf("the weighing of %s g is dated %s, which is still to come: %s corrects its time, %s takes it out",
			figure(w.Grams), m.clock(w.When), timeKey, removeKey), true
	}
	if m.dry.Err != nil && !m.dry.Steady {
		return m.dry.Err.Error(), len(m.dry.Rows) > 0
	}
	last := m.snap.Project.Weigh[m.dry.Rows[len(m.dry.Rows)-1]]
	if m.dry.Steady {
		return fmt.Sprintf("dry by weight: %s g at %s, as at %s", figure(last.Grams), m.clock(last.When), m.clock(m.dry.Since)), false
	}
	if m.dry.Estimate.Reached {
		what := "its weight before wetting"
		if m.dry.Estimate.Rate > 0 {
			what = "where the curve ends"
		}
		return fmt.Sprintf("dry: %s g at %s is within %.0f %% of %s, %s g", figure(last.Grams), m.clock(last.When), 100*lewis.NearDry, what, m.dryText()), false
	}
	from, likely, to := m.dry.Window()
	text = fmt.Sprintf("within %.0f %% of dry between %s and %s, most likely %s", 100*lewis.NearDry, m.clock(from), m.clock(to), m.clock(likely))
	if m.snap.Now.After(likely) {
		text += ": weigh it now"
	}
	return text, false
}

// next says when to weigh it again.
func (m *Model) next() string {
	if _, early := m.toCome(); early || m.dry.Next.IsZero() {
		return ""
	}
	list := m.snap.Project.Steps
	switch i := reminder(list); {
	case !m.dry.Next.After(m.snap.Now):
		return "weigh it again now"
	case i >= 0 && list[i].HoldState(m.snap.Now) == steps.HoldRunning:
		return fmt.Sprintf("weigh it again about %s: a hold runs till %s", m.clock(m.dry.Next), m.clock(list[i].NotBefore()))
	}
	return fmt.Sprintf("weigh it again about %s: %s starts a hold till then", m.clock(m.dry.Next), againKey)
}

// toCome finds a weighing that the clock has not come to: a slip in the file, or the
// clock was set. No estimate can stand on it.
func (m *Model) toCome() (weigh.Weighing, bool) {
	for _, i := range m.dry.Rows {
		if w := m.snap.Project.Weigh[i]; w.When.After(m.snap.Now.Add(time.Minute)) {
			return w, true
		}
	}
	return weigh.Weighing{}, false
}

// how says how the verdict was found and what it is worth.
func (m *Model) how() string {
	e, n := m.dry.Estimate, len(m.dry.Rows)
	_, early := m.toCome()
	switch {
	case m.dry.Err != nil || early:
		return ""
	case e.Rate == 0:
		return fmt.Sprintf("by the weight before wetting alone, %s g", m.dryText())
	}
	text := fmt.Sprintf("how: drying curves through %d weighings, ending at %s g (%s g before wetting)", n, m.dryText(), figure(e.Before))
	if e.Before == 0 {
		text = fmt.Sprintf("how: drying curves through %d weighings, not weighed before wetting, ending at %s g", n, m.dryText())
	}
	text += fmt.Sprintf("; scatter %s g", fine(math.Max(e.Scatter, 0.1)))
	if !e.Reached {
		text += fmt.Sprintf("; right %.0f times in 10 while the weather stays, else it dries later", 10*lewis.Confidence)
	}
	return text
}

// dryText is the dry weight: as it was weighed, or as it was fitted.
func (m *Model) dryText() string {
	if m.dry.Estimate.Rate == 0 {
		return figure(m.dry.Estimate.Dry)
	}
	return fmt.Sprintf("%.1f", m.dry.Estimate.Dry)
}

// guess is what the room's air alone tells while there is no estimate, or
// what is wrong with the room.
func (m *Model) guess() (text string, bad bool) {
	r := m.snap.Project.Room
	if !r.HasTemperature {
		return "", false
	}
	humidity := r.Humidity
	if !r.HasHumidity {
		humidity = 50 // whether it is too hot or too cold shows at any
	}
	g, err := lewis.FirstGuess(r.Temperature, humidity)
	if err != nil {
		return err.Error(), true
	}
	if m.dry.Err == nil || !r.HasHumidity {
		return "", false
	}
	basis := fmt.Sprintf(", by %s °C and %s %% alone", figure(r.Temperature), figure(r.Humidity))
	if from, to, ok := m.dry.Guess(r, m.snap.Project.Weigh); ok {
		return "a guess: dry between " + m.clock(from) + " and " + m.clock(to) + basis, false
	}
	return fmt.Sprintf("a guess: dry %.0f to %.0f h after it was wetted%s", g.Earliest.Hours(), g.Latest.Hours(), basis), false
}

// roomText is the room as it is known.
func (m *Model) roomText() string {
	r := m.snap.Project.Room
	const warm, damp = warmKey, dampKey
	switch {
	case r.HasTemperature && r.HasHumidity:
		return fmt.Sprintf("room %s °C, %s %% (%s, %s)", figure(r.Temperature), figure(r.Humidity), warm, damp)
	case r.HasTemperature:
		return fmt.Sprintf("room %s °C (%s); its humidity: %s, for a guess before there are enough weighings", figure(r.Temperature), warm, damp)
	case r.HasHumidity:
		return fmt.Sprintf("room %s %% (%s); its temperature: %s, for a guess before there are enough weighings", figure(r.Humidity), damp, warm)
	}
	return fmt.Sprintf("room not known: %s temperature, %s humidity, for a guess before there are enough weighings", warm, damp)
}

// hours is a time as the curve's axis counts it.
func (m *Model) hours(t time.Time) float64 { return t.Sub(m.dry.Start).Hours() }

// note is what is said beside a weighing.
func (m *Model) note(k int) string {
	switch w := m.snap.Project.Weigh[m.rows[k]]; {
	case k < len(m.dry.Earlier):
		return "earlier"
	case w.State == weigh.Before:
		return "before"
	}
	return ""
}
