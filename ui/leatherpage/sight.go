package leatherpage

import "chape/calc/nest"

// drawing shows the placing on one of its pieces, the piece in hand, or a part.
func (m *Model) drawing(w, h int) []string {
	if w <= 0 || h <= 1 {
		return nil
	}
	switch {
	case m.view == viewPart && m.at < len(m.snap.Project.Added):
		outline, err := m.snap.Project.Added[m.at].Outline()
		if err != nil {
			return nil
		}
		return m.pen.Part(outline, w, h)
	case m.view == viewAll && m.laid != nil && m.shown < len(m.laid.Result.Uses):
		return m.pen.Placing(m.laid, m.laid.Result.Uses[m.shown], w, h)
	}
	p, ok := m.inSight()
	if !ok {
		return nil
	}
	return m.pen.Piece(p, m.view != viewAll && len(m.piece().Corners) > 0, w, h)
}

// inSight is the piece to be shown: that in hand, else the first that is cut from.
func (m *Model) inSight() (nest.Piece, bool) {
	if m.view != viewAll {
		l := m.piece()
		return l.Piece(), l.Sized()
	}
	if i := m.list.At; i < len(m.rack.Stock().Pieces) && m.rack.Stock().Pieces[i].Sized() {
		return m.rack.Stock().Pieces[i].Piece(), true
	}
	if chosen := m.rack.Stock().Chosen(); len(chosen) > 0 {
		return chosen[0].Piece(), true
	}
	return nest.Piece{}, false
}
