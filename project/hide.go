package project

import (
	"chape/project/added"
	"chape/project/money"
	"chape/project/value"
)

// Hide is the leather that a sheath is cut from.
type Hide struct {
	Name   string  // as it is called in the list of leather; "": none chosen
	Lost   float64 // leather lost between the parts as they were placed, as a share of what is cut
	Placed bool    // Lost was found by placing
	Cut    float64 // mm² that the parts took when they were placed; 0: not known
	Price  money.ByArea
}

// Part is a part that the maker adds to those of the sheath.
type Part = added.Part

var hide = []column[Project]{
	value.At(Spec{Key: "leather.name", Group: "leather", Name: "leather", Kind: Text, Max: LongestLine,
		Hint: "the leather it is cut from, by its name in your list"}, "", func(p *Project) *string { return &p.Hide.Name }).UnlessEmpty(),
	lost(),
	value.At(Spec{Key: "leather.cut", Group: "leather", Name: "taken when placed", Kind: Number, Max: 1e9,
		Hint: "mm²: what the parts took when they were placed; it counts while they take as much"},
		0.0, func(p *Project) *float64 { return &p.Hide.Cut }).Only(func(p *Project) bool { return p.Hide.Cut > 0 }),
	hidePrice("leather.price_m2", "price, a square metre", func(p *Project) *string { return &p.Hide.Price.M2 }),
	hidePrice("leather.price_ft2", "price, a square foot", func(p *Project) *string { return &p.Hide.Price.Ft2 }),
}

// hidePrice is what the chosen leather itself costs.
func hidePrice(key, name string, p func(*Project) *string) column[Project] {
	return value.At(Spec{Key: key, Group: "leather", Name: name, Kind: Text, Max: 20,
		Hint: `of this leather, as in "92.50"; empty: the one of the settings`}, "", p).UnlessEmpty()
}

// lost is what placing the parts loses.
func lost() column[Project] {
	c := value.OptionalNumber(Spec{Key: "leather.lost", Group: "leather", Name: "lost between the parts", Max: 100, Auto: "not placed",
		Hint: "as a share of what is cut, found by placing the parts"},
		func(p *Project) *float64 { return &p.Hide.Lost }, func(p *Project) *bool { return &p.Hide.Placed })
	c.Kind = Share
	return c
}

// hide checks the price of the leather chosen.
func (c *checker) hide(p money.ByArea) {
	if _, by, err := p.Amount(); err != nil {
		key := "leather.price_ft2"
		if by == money.SquareMetre && p.Ft2 == "" {
			key = "leather.price_m2"
		}
		c.add(key, -1, p.Found(), err.Error())
	}
}
