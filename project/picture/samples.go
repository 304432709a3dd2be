package picture

import (
	"context"
	"image"
	"image/color"

	"chape/calc/trace"
)

// samples takes the red, green and blue of a decoded picture. What is see-through counts as on white.
func samples(ctx context.Context, m image.Image) (*trace.Picture, error) {
	b := m.Bounds()
	p := &trace.Picture{Width: b.Dx(), Height: b.Dy(), RGB: make([]uint8, 3*b.Dx()*b.Dy())}
	for y := range p.Height {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		row := p.RGB[3*y*p.Width : 3*(y+1)*p.Width]
		switch m := m.(type) {
		case *image.YCbCr:
			for x := range p.Width {
				i, c := m.YOffset(b.Min.X+x, b.Min.Y+y), m.COffset(b.Min.X+x, b.Min.Y+y)
				row[3*x], row[3*x+1], row[3*x+2] = color.YCbCrToRGB(m.Y[i], m.Cb[c], m.Cr[c])
			}
		case *image.RGBA:
			from := m.Pix[y*m.Stride:]
			for x := range p.Width {
				copy(row[3*x:3*x+3], from[4*x:])
				whiten(row[3*x:3*x+3], from[4*x+3])
			}
		case *image.Gray:
			from := m.Pix[y*m.Stride:]
			for x := range p.Width {
				row[3*x], row[3*x+1], row[3*x+2] = from[x], from[x], from[x]
			}
		default:
			for x := range p.Width {
				r, g, bl, a := m.At(b.Min.X+x, b.Min.Y+y).RGBA()
				row[3*x], row[3*x+1], row[3*x+2] = uint8(r>>8), uint8(g>>8), uint8(bl>>8)
				whiten(row[3*x:3*x+3], uint8(a>>8))
			}
		}
	}
	return p, nil
}

// whiten puts a dot, its colour already weighed by how solid it is, on white.
func whiten(rgb []uint8, solid uint8) {
	for i := range rgb {
		rgb[i] += min(255-solid, 255-rgb[i])
	}
}
