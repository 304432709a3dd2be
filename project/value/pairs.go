package value

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"chape/calc/curve"
	"chape/calc/length"
)

// Pairs reads places: two lengths each, with ";" between one place and the next, as in
// "0 10; 40 20; 80 8". A bare number is in the unit. The error says what would do.
func Pairs(text string, u length.Unit) ([]curve.Vec, error) {
	var out []curve.Vec
	for _, place := range strings.Split(text, ";") {
		if strings.TrimSpace(place) == "" {
			continue
		}
		figures := strings.Fields(place)
		if len(figures) != 2 {
			how := "with \";\" between places: 0 10; 40 20; 80 8"
			if u == length.Inches {
				how = "a fraction behind a hyphen, \";\" between places: 0 10-1/2; 12 0"
			}
			return nil, fmt.Errorf("%.30q is no place: write two figures for each, %s", strings.TrimSpace(place), how)
		}
		var at [2]float64
		for i, f := range figures {
			l, err := length.Parse(f, u)
			if err != nil {
				return nil, err
			}
			at[i] = l.MM()
		}
		out = append(out, curve.Vec{X: at[0], Y: at[1]})
	}
	return out, nil
}

// SayPairs is the text that Pairs reads.
func SayPairs(at []curve.Vec, u length.Unit) string {
	var out []string
	for _, v := range at {
		say := func(mm float64) string { return strings.ReplaceAll(length.Length(mm).Short(u), " ", "-") }
		out = append(out, say(v.X)+" "+say(v.Y))
	}
	return strings.Join(out, "; ")
}

// SayPlaces is the text that Places reads.
func SayPlaces(ls []length.Length) string {
	words := make([]string, len(ls))
	for i, l := range ls {
		words[i] = strconv.FormatFloat(l.MM(), 'f', -1, 64)
	}
	return strings.Join(words, " ")
}

// Places reads places in mm, apart by spaces, from 0 to most; words that are none say nothing.
func Places(s string, most float64) []length.Length {
	var ls []length.Length
	for _, w := range strings.Fields(s) {
		if mm, err := strconv.ParseFloat(w, 64); err == nil && mm >= 0 && mm <= most {
			ls = append(ls, length.Length(mm))
		}
	}
	slices.Sort(ls)
	return ls
}
