// Package shoptest is the invented shop that tests reckon with, and shelves of invented
// sheaths. Tests only.
package shoptest

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/shopspring/decimal"

	"chape/calc/calendar"
	"chape/project"
	"chape/project/file"
	"chape/project/money"
	"chape/project/shop"
)

// Amount is a price as it is typed.
func Amount(s string) money.Amount { return money.Of(decimal.RequireFromString(s)) }

// Evenings is a shop with every price, open on five evenings and on Saturday mornings.
func Evenings() shop.Shop {
	w, err := calendar.ParseWeek("mon-fri 18-21, sat 9-13")
	if err != nil {
		panic(err)
	}
	return shop.Shop{
		Prices: money.Prices{Currency: money.Currency{Sign: "€"}, Leather: Amount("90"), Thread: Amount("0.05"), Sundries: Amount("3"), Hour: Amount("36"),
			Overhead: decimal.RequireFromString("0.1"), Margin: decimal.RequireFromString("0.2")},
		Snap: Amount("0.85"), Rivet: Amount("0.15"), Offcut: 0.25, Week: w,
	}
}

// Shelf is a folder of projects by the names of their files, without ending, and of files
// that are torn.
func Shelf(t testing.TB, projects map[string]project.Project, torn ...string) (dir string) {
	t.Helper()
	dir = t.TempDir()
	put := func(name string, data []byte) {
		path := filepath.Join(dir, name+".toml")
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for name, p := range projects {
		put(name, file.Encode(p))
	}
	for _, name := range torn {
		put(name, []byte("format ="))
	}
	return dir
}
