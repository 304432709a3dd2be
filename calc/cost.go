package calc

// Rates is what a shop pays and charges, in its own currency. Zero rates
// count nothing.
type Rates struct {
	Leather  float64 // a square metre of leather
	Thread   float64 // a metre of thread
	Sundries float64 // a sheath: cement, dye, wax
	Hour     float64 // an hour at the bench
	Offcut   float64 // share of leather bought on top of what is cut
	Placed   bool    // Offcut is what placing the parts on a piece loses, no guess
}

// DefaultOffcut is the share of leather lost between the pieces (common
// practice, no source).
const DefaultOffcut = 0.25

// Any tells whether any rate was given.
func (r Rates) Any() bool { return r.Leather > 0 || r.Thread > 0 || r.Sundries > 0 || r.Hour > 0 }

// Cost is what a sheath takes and what it comes to.
type Cost struct {
	LeatherArea float64 // body with tab, all plies of the welt, strap, mm²
	ToBuy       float64 // with offcuts; until the parts are placed never less than they take side by side, mm²
	ThreadUsed  float64 // seam and loop, mm
	Leather     float64 // in the shop's currency, as all below
	Thread      float64
	Sundries    float64
	Work        float64
	Total       float64
}

// Cost reckons leather, thread and work (hours at the bench).
func (p *Plan) Cost(r Rates, hours float64) Cost {
	const squareMetre = 1e6
	c := Cost{
		LeatherArea: p.Body.AreaWithTab + p.Welt.Area*float64(max(1, p.Welt.Plies)) + p.Strap.Area(),
		ThreadUsed:  p.Thread.Length + p.Loop.Thread,
		Sundries:    r.Sundries,
		Work:        hours * r.Hour,
	}
	c.ToBuy = c.LeatherArea * (1 + r.Offcut)
	if !r.Placed {
		c.ToBuy = max(c.ToBuy, p.boxes())
	}
	c.Leather = c.ToBuy / squareMetre * r.Leather
	c.Thread = c.ThreadUsed / 1000 * r.Thread
	c.Total = c.Leather + c.Thread + c.Sundries + c.Work
	return c
}
