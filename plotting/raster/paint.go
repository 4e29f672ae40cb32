package raster

import (
	"encoding/binary"
	"image"
	"image/color"

	"github.com/golang/freetype/raster"
)

// pixel is a color as it stands in the image: premultiplied, red in the
// lowest byte, alpha in the highest.
type pixel uint32

// pixelOf rounds a color to 8 bits. Nil is black. A color channel above alpha,
// which no color has, is cut down to it.
func pixelOf(col color.Color) pixel {
	if col == nil {
		return opaque
	}
	r, g, b, a := col.RGBA()
	a = min(a, 0xffff)
	r, g, b = min(r, a), min(g, a), min(b, a)
	return pixel(r>>8 | g>>8<<8 | b>>8<<16 | a>>8<<24)
}

// opaque is the alpha of a color that covers what is below; on its own it is
// black.
const opaque pixel = 0xff000000

// alpha returns the alpha of the color, 0 to 255.
func (p pixel) alpha() uint32 { return uint32(p >> 24) }

// times returns the color times a/255, rounded to nearest, for a in 0 to 255.
func (p pixel) times(a uint32) pixel { return pixel(times(uint64(p), uint64(a))) }

// times multiplies two pixels by a/255, rounded to nearest, for a in 0 to 255.
func times(pixels, a uint64) uint64 {
	// Every second channel at a time, each in 16 bits. With h one half, x/255
	// to nearest is (x+h + (x+h)/256)/256.
	const low, half = 0x00ff00ff00ff00ff, 0x0080008000800080
	even := pixels&low*a + half
	odd := pixels>>8&low*a + half
	even = (even + even>>8&low) >> 8 & low
	odd = (odd + odd>>8&low) &^ low
	return even | odd
}

// painter blends spans of one color into an image.
type painter struct {
	pix    []uint8 // From the first pixel of the image.
	stride int     // Bytes per row.
	w, h   int     // Size of the image [px].
	color  pixel
}

// newPainter returns a painter of the image.
func newPainter(img *image.RGBA) painter {
	b := img.Rect
	p := painter{stride: img.Stride, w: b.Dx(), h: b.Dy()}
	if b.Empty() {
		return painter{}
	}
	p.pix = img.Pix[img.PixOffset(b.Min.X, b.Min.Y):]
	return p
}

// Paint implements raster.Painter.
func (p *painter) Paint(spans []raster.Span, _ bool) {
	for i := range spans {
		s := &spans[i]
		p.span(s.Y, s.X0, s.X1, coverage(s.Alpha))
	}
}

// coverage rounds the 16-bit coverage of a span to 8 bits.
func coverage(alpha uint32) uint32 { return (alpha*255 + 1<<15) >> 16 }

// row returns the bytes of pixels x0 to x1 of row y, which must be inside.
func (p *painter) row(y, x0, x1 int) []uint8 {
	at := y * p.stride
	return p.pix[at+4*x0 : at+4*x1]
}

// span blends the color over pixels x0 to x1 of row y at a coverage of 0 to
// 255. What lies outside the image is left out.
func (p *painter) span(y, x0, x1 int, cover uint32) {
	x0, x1 = max(x0, 0), min(x1, p.w)
	if y < 0 || y >= p.h || x0 >= x1 {
		return
	}
	row := p.row(y, x0, x1)
	src := p.color
	if cover != 255 {
		src = src.times(cover)
	}
	if src >= opaque {
		set(row, src)
		return
	}
	rest := 255 - src.alpha()
	for pair := uint64(src)<<32 | uint64(src); len(row) >= 8; row = row[8:] {
		dst := binary.LittleEndian.Uint64(row)
		binary.LittleEndian.PutUint64(row, pair+times(dst, uint64(rest)))
	}
	if len(row) >= 4 {
		dst := pixel(binary.LittleEndian.Uint32(row))
		binary.LittleEndian.PutUint32(row, uint32(src+dst.times(rest)))
	}
}

// set fills a row with the color.
func set(row []uint8, col pixel) {
	const short = 32 * 4 // Bytes filled one pixel at a time.
	for at := 0; at < min(len(row), short); at += 4 {
		binary.LittleEndian.PutUint32(row[at:], uint32(col))
	}
	for done := short; done < len(row); done *= 2 {
		copy(row[done:], row[:done])
	}
}

// clear sets all pixels to the color.
func (p *painter) clear() { p.setRows(0, p.h, 0, p.w) }

// setRows sets pixels x0 to x1 of rows y0 to y1, which must be inside.
func (p *painter) setRows(y0, y1, x0, x1 int) {
	if y0 >= y1 || x0 >= x1 {
		return
	}
	if x1-x0 == p.w && p.stride == 4*p.w {
		set(p.pix[y0*p.stride:y1*p.stride], p.color)
		return
	}
	first := p.row(y0, x0, x1)
	set(first, p.color)
	for y := y0 + 1; y < y1; y++ {
		copy(p.row(y, x0, x1), first)
	}
}

// stamp blends the color where a stamp covers, with its upper left pixel at x,
// y. What lies outside the image is left out.
func (p *painter) stamp(s *stamp, x, y int) {
	first, last := max(-x, 0), min(p.w-x, s.width)
	if first >= last {
		return
	}
	for cover := s.cover; len(cover) > 0; cover, y = cover[s.width:], y+1 {
		if y < 0 || y >= p.h {
			continue
		}
		row := p.row(y, x+first, x+last)
		for i, c := range cover[first:last] {
			if c == 0 {
				continue
			}
			dst := row[4*i : 4*i+4 : 4*i+4]
			src := p.color
			if c != 255 {
				src = src.times(uint32(c))
			}
			if src < opaque {
				src += pixel(binary.LittleEndian.Uint32(dst)).times(255 - src.alpha())
			}
			binary.LittleEndian.PutUint32(dst, uint32(src))
		}
	}
}
