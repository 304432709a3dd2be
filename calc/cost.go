package calc

// Rates is how much more leather is bought than is cut.
type Rates struct {
	Offcut float64 // share of leather bought on top of what is cut
	Placed bool    // Offcut is what placing the parts on a piece loses, no guess
}

// DefaultOffcut is the share of leather lost between the pieces (common
// practice, no source).
const DefaultOffcut = 0.25

// Cost is what a sheath takes.
type Cost struct {
	LeatherArea float64 // body with tab, all plies of the welt, strap, mm²
	ToBuy       float64 // with offcuts; until the parts are placed never less than they take side by side, mm²
	ThreadUsed  float64 // seam and loop, mm
}

// Cost reckons leather and thread.
func (p *Plan) Cost(r Rates) Cost {
	c := Cost{
		LeatherArea: p.Body.AreaWithTab + p.Welt.Area*float64(max(1, p.Welt.Plies)) + p.Strap.Area(),
		ThreadUsed:  p.Thread.Length + p.Loop.Thread,
	}
	c.ToBuy = c.LeatherArea * (1 + r.Offcut)
	if !r.Placed {
		c.ToBuy = max(c.ToBuy, p.boxes())
	}
	return c
}
