package length

import (
	"testing"

	"github.com/BurntSushi/toml"
)

func TestConversions(t *testing.T) {
	var zero Length
	if zero.MM() != 0 || zero.In() != 0 {
		t.Errorf("the zero Length is %v mm, %v in", zero.MM(), zero.In())
	}
	// 16 CFR 500.19; NBS Circular 572, addendum of 1959.
	if got := Inch.MM(); got != 25.4 {
		t.Errorf("Inch.MM() = %v, want 25.4", got)
	}
	if got := (12 * Inch).In(); !approxEqual(Length(got), 12) {
		t.Errorf("(12*Inch).In() = %v, want 12", got)
	}
	// Trade conversion charts (common practice, no source).
	if got := (8 * Ounce).MM(); got != 3.175 {
		t.Errorf("(8*Ounce).MM() = %v, want 3.175", got)
	}
}

func TestUnitText(t *testing.T) {
	for _, u := range []Unit{Millimetres, Inches} {
		got, err := ParseUnit(u.String())
		if err != nil || got != u {
			t.Errorf("ParseUnit(%q) = %v, %v, want %v", u, got, err, u)
		}
		text, err := toml.Marshal(struct{ Unit Unit }{u})
		if err != nil {
			t.Fatal(err)
		}
		back := struct{ Unit Unit }{Unit: 1 - u}
		if err := toml.Unmarshal(text, &back); err != nil || back.Unit != u {
			t.Errorf("toml.Unmarshal(%q) = %v, %v, want %v", text, back.Unit, err, u)
		}
	}
	u := Inches
	err := u.UnmarshalText([]byte("furlong"))
	if want := `"furlong" is not a unit: use mm or in`; err == nil || err.Error() != want {
		t.Errorf("UnmarshalText(furlong): error %v, want %q", err, want)
	}
	if u != Inches {
		t.Errorf("a refused unit changed the old one to %v", u)
	}
}

func TestArea(t *testing.T) {
	// 1 ft² = 929.0304 cm²: 16 CFR 500.19; NBS Circular 572, addendum 1959.
	if got := SquareFoot.CM2(); !approxEqual(Length(got), 929.0304) {
		t.Errorf("SquareFoot.CM2() = %v, want 929.0304", got)
	}
	tests := []struct {
		a    Area
		u    Unit
		want string
	}{
		{0, Millimetres, "0 cm²"},
		{SquareFoot, Millimetres, "929 cm²"},
		{12350, Millimetres, "124 cm²"},
		{SquareFoot, Inches, "1.00 ft²"},
		{1.505 * SquareFoot, Inches, "1.51 ft²"},
		{72 * SquareInch, Inches, "72.0 in²"},
		{0.25 * SquareInch, Inches, "0.3 in²"},
	}
	for _, tt := range tests {
		if got := tt.a.Format(tt.u); got != tt.want {
			t.Errorf("Area(%v).Format(%v) = %q, want %q", float64(tt.a), tt.u, got, tt.want)
		}
	}
	if got := (144 * SquareInch).Ft2(); !approxEqual(Length(got), 1) {
		t.Errorf("(144*SquareInch).Ft2() = %v, want 1", got)
	}
	if got := SquareFoot.In2(); !approxEqual(Length(got), 144) {
		t.Errorf("SquareFoot.In2() = %v, want 144", got)
	}
}
