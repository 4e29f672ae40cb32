package raster

import (
	"image"
	"math"

	"golang.org/x/image/draw"
	"golang.org/x/image/math/f64"
	"gonum.org/v1/plot/vg"
)

const (
	// maxShrink is how much an image may shrink in either direction before it
	// is too small to see [pixels of the image per px].
	maxShrink = 1 << 14

	// maxOffset bounds the placement of an image, whose interpolation counts
	// pixels in integers [px].
	maxOffset = 1 << 30
)

// DrawImage implements vg.Canvas. The image follows the whole transform of the
// canvas, with bilinear interpolation. One that shrinks to a speck of less than
// 1/16384 of its size, and one placed or enlarged beyond 2^30 pixels, are not
// drawn.
func (c *Canvas) DrawImage(rect vg.Rectangle, img image.Image) {
	from := img.Bounds()
	if from.Empty() {
		return
	}
	size := rect.Size()
	sx := size.X.Points() / float64(from.Dx())
	sy := size.Y.Points() / float64(from.Dy())
	// The first pixel of the image is at the top left of the rectangle, its
	// rows run down.
	m := c.m.translate(rect.Min.X.Points(), rect.Max.Y.Points()).scale(sx, -sy)
	det := math.Abs(m.det())
	grown := max(math.Abs(m.xx), math.Abs(m.xy), math.Abs(m.yx), math.Abs(m.yy))
	span := grown * float64(from.Dx()+from.Dy())
	far := max(math.Abs(m.x0), math.Abs(m.y0))
	// The entries of the inverse are those of m over its determinant.
	if !(grown < maxShrink*det) || !(far+span < maxOffset) {
		return
	}
	to := c.img.Rect
	if m.xx == 1 && m.yy == 1 && m.xy == 0 && m.yx == 0 && m.x0 == math.Trunc(m.x0) && m.y0 == math.Trunc(m.y0) {
		at := from.Sub(from.Min).Add(to.Min).Add(image.Pt(int(m.x0), int(m.y0)))
		draw.Draw(c.img, at, img, from.Min, draw.Over)
		return
	}
	m.x0 += float64(to.Min.X) - m.xx*float64(from.Min.X) - m.xy*float64(from.Min.Y)
	m.y0 += float64(to.Min.Y) - m.yx*float64(from.Min.X) - m.yy*float64(from.Min.Y)
	var by draw.Transformer = draw.ApproxBiLinear
	if det < 1 {
		// Only the kernel takes in all pixels of an image that shrinks.
		by = draw.BiLinear
	}
	by.Transform(c.img, f64.Aff3{m.xx, m.xy, m.x0, m.yx, m.yy, m.y0}, img, from, draw.Over, nil)
}
