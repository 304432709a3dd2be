package earlierpage

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"chape/calc/length"
)

var errExtent = errors.New("that can't be read: type it as 50 %, or as 50 % from 20 to 150")

// extent reads a share and a stretch, mm: "50 % from 80 to 150"; where one of both is left
// out it is what was offered.
func (m *Model) extent(text string) (share, lo, hi float64, err error) {
	share, lo, hi = 1, m.offer[0], m.offer[1]
	first, stretch, long := strings.Cut(text, "from")
	if first = strings.TrimSpace(first); first != "" || !long {
		if share, err = shareOf(first); err != nil {
			return 0, 0, 0, err
		}
	}
	if !long {
		return share, lo, hi, nil
	}
	from, to, ok := strings.Cut(stretch, "to")
	a, errA := length.Parse(strings.TrimSpace(from), m.snap.Unit)
	b, errB := length.Parse(strings.TrimSpace(to), m.snap.Unit)
	if !ok || errA != nil || errB != nil {
		return 0, 0, 0, errExtent
	}
	const shown = 5e-4 // mm: a mouth is offered rounded
	mouth := m.snap.Project.Sheath.Mouth
	switch {
	case a < 0 || float64(b-mouth) > shown || float64(a-mouth) > shown:
		return 0, 0, 0, fmt.Errorf("the fold runs from the point to the mouth: give places from 0 to %s", mouth.Short(m.snap.Unit))
	case b <= a:
		return 0, 0, 0, fmt.Errorf("the stretch ends before it begins: give the place nearer the point first, as from %s to %s", max(b, 0).Short(m.snap.Unit), a.Short(m.snap.Unit))
	}
	return share, a.MM(), b.MM(), nil
}

// shareOf reads "50 %"; a bare figure is in percent, too.
func shareOf(text string) (float64, error) {
	percent, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimSpace(strings.TrimSuffix(text, "%")), ",", "."), 64)
	switch {
	case err != nil:
		return 0, errExtent
	case !(percent >= 1 && percent <= 100):
		return 0, errors.New("how much: give 1 to 100 %")
	}
	return percent / 100, nil
}
