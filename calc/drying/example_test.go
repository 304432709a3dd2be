package drying_test

import (
	"fmt"
	"time"

	"chape/calc/drying"
)

func ExampleRecord_Estimate() {
	const dry = 121.0 // grams, just before wetting
	e, err := drying.Record{Before: dry, Clock: 9 * time.Hour, Weighings: []drying.Weighing{
		{At: 0, Grams: 179},
		{At: 3 * time.Hour, Grams: 163},
		{At: 6 * time.Hour, Grams: 154},
		{At: 10 * time.Hour, Grams: 142},
	}}.Estimate()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("dry in %.0f h, between %.0f and %.0f h\n", e.Likely.Hours(), e.Earliest.Hours(), e.Latest.Hours())
	fmt.Printf("%.0f g after 20 h\n", e.Grams(20*time.Hour))
	// Output:
	// dry in 33 h, between 30 and 39 h
	// 128 g after 20 h
}

func ExampleFirstGuess() {
	g, err := drying.FirstGuess(16, 65)
	fmt.Printf("a guess: %.0f to %.0f h %v\n", g.Earliest.Hours(), g.Latest.Hours(), err)
	_, err = drying.FirstGuess(60, 20)
	fmt.Println(err)
	// Output:
	// a guess: 44 to 88 h <nil>
	// 60 °C is too hot for wet leather: dry it at room temperature, never above 40 °C
}
