package calc

// Hand is the hand that draws the knife.
type Hand uint8

// The hands.
const (
	RightHand Hand = iota
	LeftHand
)

// String gives the word the project file uses.
func (h Hand) String() string {
	if h == LeftHand {
		return "left"
	}
	return "right"
}

// Edge is where the edge points when the sheath is worn.
type Edge uint8

// The directions.
const (
	EdgeRear Edge = iota
	EdgeFront
)

// String gives the word the project file uses.
func (e Edge) String() string {
	if e == EdgeFront {
		return "front"
	}
	return "rear"
}

// Up is the side of the leather that one looks at.
type Up uint8

// The sides.
const (
	GrainUp Up = iota
	FleshUp
)

// String gives the words the screen and the paper use.
func (u Up) String() string {
	if u == FleshUp {
		return "flesh side up"
	}
	return "grain side up"
}

// BackIsRight tells on which side of the fold the back half, with the tab,
// lies when the mouth is up. From the right hip with the edge to the rear and
// the grain side up it is the right; left hand, edge to the front and flesh
// side up each mirror it.
func BackIsRight(h Hand, e Edge, u Up) bool {
	return (h == LeftHand) == ((e == EdgeFront) != (u == FleshUp))
}
