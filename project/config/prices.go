package config

import (
	"fmt"
	"math"
	"strconv"

	"chape/calc/calendar"
	"chape/calc/length"
	"chape/project/file"
	"chape/project/money"
	"chape/project/shop"

	"github.com/shopspring/decimal"
)

// asked is what the shop asks beyond its costs. Amounts are strings, so that they
// stay the decimals that were typed.
type asked struct {
	unit, minimum, snap, rivet string
	overhead, margin           float64
	holds                      float64 // days that a quote holds
}

// priceSettings are the keys of what the shop pays and asks.
func (c *Config) priceSettings() []file.Setting {
	p, a := &c.price, &c.asked
	return []file.Setting{
		text("price.currency", "put behind prices", 10, &c.currency),
		text("price.unit", `the smallest amount there is, as in "0.01", "0.05" or "1"; empty: 0.01`, 20, &a.unit),
		number("price.leather_m2", "leather, a square metre; or give leather_ft2", 0, 1e6, &p.leatherM2),
		number("price.leather_ft2", "leather, a square foot; or give leather_m2", 0, 1e6, &p.leatherFt2),
		number("price.thread", "thread, a metre", 0, 1e6, &p.thread),
		number("price.sundries", "cement, dye and wax, a sheath", 0, 1e6, &p.sundries),
		text("price.snap", `a snap, as in "0.85"; empty: not known`, 20, &a.snap),
		text("price.rivet", `a rivet, as in "0.15"; empty: not known`, 20, &a.rivet),
		number("price.hour", "an hour at the bench", 0, 1e6, &p.hour),
		number("price.offcut", "leather lost between the pieces, as a share of what is cut", 0, 5, &p.offcut),
		number("price.overhead", "rent, tools, electricity: as a share of the cost expected", 0, 5, &a.overhead),
		number("price.margin", "what the shop keeps, as a share of the price", 0, 0.9, &a.margin),
		number("price.holds", "days that a quote holds, counted from the day it is made; 0: no end is set", 0, 3650, &a.holds),
		text("price.minimum", `the least you ask, as in "80"; empty: none`, 20, &a.minimum),
	}
}

// checkPrices looks at the amounts, and at the shop's hours.
func (c *Config) checkPrices(add func(key, found, remedy string)) {
	if c.price.leatherM2 > 0 && c.price.leatherFt2 > 0 {
		add("price.leather_ft2", "a price by the square metre as well", "give one of the two")
	}
	for _, v := range []struct{ key, text string }{
		{"price.unit", c.asked.unit}, {"price.snap", c.asked.snap}, {"price.rivet", c.asked.rivet}, {"price.minimum", c.asked.minimum},
	} {
		a, err := money.Parse(v.text)
		if err != nil {
			add(v.key, fmt.Sprintf("%q", v.text), "write an amount as in \"12.50\", with a point, without currency; or leave it empty")
		} else if v.key == "price.unit" && a.Known() && !a.Decimal().IsPositive() {
			add(v.key, fmt.Sprintf("%q", v.text), `give the smallest amount there is, as in "0.01"`)
		}
	}
	if h := c.asked.holds; h != math.Trunc(h) {
		add("price.holds", strconv.FormatFloat(h, 'g', -1, 64), "give whole days, such as 30; 0: no end is set")
	}
	if _, err := calendar.ParseWeek(c.hours); err != nil {
		add("shop.hours", fmt.Sprintf("%q", c.hours), remedyOf(err))
	}
}

// shopSettings are when somebody stands at the bench, and who.
func (c *Config) shopSettings() []file.Setting {
	return []file.Setting{
		text("shop.hours", `days and hours at the bench, as in "mon-fri 18-21, sat 9-13 14-17"; empty: not said`, 300, &c.hours),
		text("shop.name", "your name, or the shop's, as customers read it on order sheet and care card; empty: a line to write it on", 100, &c.maker),
		words("shop.address", `where they find you, a text a line, as in ["Mill Lane 3", "Anytown", "a telephone number"]`, 6, &c.address),
	}
}

// amount reads what checkPrices let pass.
func amount(text string) money.Amount {
	a, _ := money.Parse(text)
	return a
}

// Prices is what a sheath is reckoned with in exact decimals. A price of 0 in the
// settings is one that is not known.
func (c Config) Prices() money.Prices {
	p := money.Prices{
		Currency:   money.Currency{Sign: c.currency, Unit: amount(c.asked.unit).Decimal()},
		Leather:    money.FromNumber(c.price.leatherM2),
		LeatherBy:  money.SquareMetre,
		Thread:     money.FromNumber(c.price.thread),
		Sundries:   money.FromNumber(c.price.sundries),
		Hour:       money.FromNumber(c.price.hour),
		Overhead:   decimal.NewFromFloat(c.asked.overhead),
		Margin:     decimal.NewFromFloat(c.asked.margin),
		OwnMinimum: amount(c.asked.minimum),
	}
	if c.price.leatherFt2 > 0 {
		p.Leather, p.LeatherBy = money.FromNumber(c.price.leatherFt2), length.SquareFoot
	}
	return p
}

// Shop is what the maker's shop pays, asks and has time for.
func (c Config) Shop() shop.Shop {
	w, _ := calendar.ParseWeek(c.hours) // what does not parse is refused by Decode
	return shop.Shop{
		Prices: c.Prices(), Snap: amount(c.asked.snap), Rivet: amount(c.asked.rivet), Offcut: c.price.offcut,
		Holds: int(c.asked.holds), Week: w, Name: c.maker, Address: c.address,
	}
}
