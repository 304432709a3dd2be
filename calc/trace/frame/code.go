package frame

import (
	"errors"
	"fmt"
	"math"

	"chape/calc/curve"
)

// The code row: cells along the frame's inner edge, black is 1.
const (
	Cells      = 30
	CellWidth  = 2.5
	CellHeight = 4.0
	codeX      = 15.0 // of the first cell
	codeY      = 2.5
	// RowEnd is how far the row reaches from the frame's inner edge.
	RowEnd = codeY + CellHeight
)

// Cell is the place of cell i.
func Cell(i int) Box {
	return box(codeX+float64(i)*CellWidth, codeY, CellWidth, CellHeight)
}

// The words of the row, most significant bit first: start bit, width and height in
// squares, version, check, stop bit.
const (
	sizeBits    = 8
	versionBits = 4
	checkBits   = 8
	dataBits    = 2*sizeBits + versionBits
)

// Code is what the row's cells say.
func (s Sheet) Code() [Cells]bool {
	data := uint(math.Round(s.Width/Band))<<(sizeBits+versionBits) | uint(math.Round(s.Height/Band))<<versionBits | uint(s.Version)
	all := 1<<(Cells-1) | data<<(checkBits+1) | uint(crc(data))<<1 | 1
	var cells [Cells]bool
	for i := range cells {
		cells[i] = all>>(Cells-1-i)&1 == 1
	}
	return cells
}

// ErrVersion is a sheet of a kind that is newer than this program.
var ErrVersion = errors.New("the sheet is of a newer kind than this chape reads: use a newer one, or print the sheet anew")

// Parse reads the row. The error is ErrVersion where the row is sound but of an unknown version.
func Parse(cells [Cells]bool) (Sheet, error) {
	all := uint(0)
	for _, black := range cells {
		all <<= 1
		if black {
			all |= 1
		}
	}
	data := all >> (checkBits + 1) & (1<<dataBits - 1)
	if all>>(Cells-1) != 1 || all&1 != 1 || uint(crc(data)) != all>>1&(1<<checkBits-1) {
		return Sheet{}, errors.New("the code row can't be read")
	}
	s := Sheet{
		Width:   Band * float64(data>>(sizeBits+versionBits)),
		Height:  Band * float64(data>>versionBits&(1<<sizeBits-1)),
		Version: int(data & (1<<versionBits - 1)),
	}
	switch {
	case s.Version != Newest:
		return s, ErrVersion
	case s.Width < Least || s.Height < Least:
		return s, fmt.Errorf("no sheet is %g × %g mm", s.Width, s.Height)
	}
	return s, nil
}

// crc is the check over the 20 bits of data: CRC-8 with polynomial 0x07, start 0 (the one of
// ITU-T I.432.1 without its final mask; from memory), bit by bit.
func crc(data uint) uint8 {
	var c uint8
	for i := dataBits - 1; i >= 0; i-- {
		top := c>>7 ^ uint8(data>>i&1)
		c <<= 1
		if top == 1 {
			c ^= 0x07
		}
	}
	return c
}

// Row is the box round the whole code row.
func Row() Box { return Box{Cell(0).Lo, curve.Vec{X: codeX + Cells*CellWidth, Y: RowEnd}} }
