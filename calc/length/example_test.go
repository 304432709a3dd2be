package length_test

import (
	"fmt"

	"chape/calc/length"
)

func ExampleParse() {
	for _, s := range []string{"3.2", "3,2 mm", "1/8", `1 3/8"`, "1-3/8", "1⅜", "-1.5"} {
		l, err := length.Parse(s, length.Millimetres)
		fmt.Println(s, "→", l.Exact(length.Millimetres), err)
	}
	_, err := length.Parse("3..2", length.Millimetres)
	fmt.Println(err)
	// Output:
	// 3.2 → 3.2 <nil>
	// 3,2 mm → 3.2 <nil>
	// 1/8 → 3.175 <nil>
	// 1 3/8" → 34.925 <nil>
	// 1-3/8 → 34.925 <nil>
	// 1⅜ → 34.925 <nil>
	// -1.5 → -1.5 <nil>
	// "3..2" is not a length: try 3.2, 3.2 mm, 1/8 in
}

func ExampleParseLeather() {
	l, err := length.ParseLeather("8 oz", length.Millimetres)
	fmt.Println(l.Format(length.Inches, length.Calliper), err)
	sold, err := length.ParseSold("7/8 oz", length.Millimetres)
	fmt.Println(sold.As, sold.Thick.Format(length.Inches, length.Calliper), err)
	// Output:
	// 1/8 in <nil>
	// 7/8 oz 1/8 in <nil>
}

func ExampleLength_Format() {
	l := 34.9 * length.Millimetre
	fmt.Println(l.Format(length.Millimetres, length.Ruler))
	fmt.Println(l.Format(length.Millimetres, length.Calliper))
	fmt.Println(l.Format(length.Inches, length.Ruler))
	// Output:
	// 35 mm
	// 34.9 mm
	// 1 3/8 in
}
