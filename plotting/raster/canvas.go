package raster

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"slices"

	"github.com/golang/freetype/raster"
	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/vg"
)

// LineCap is the shape of the ends of open lines and of dashes.
type LineCap int

const (
	ButtCap  LineCap = iota // Cut square at the end point. The default.
	RoundCap                // Half a disc around the end point.
)

const (
	// minWidth is the least width a line is drawn with, so that a hairline
	// does not fade away [px].
	minWidth = 0.25

	// maxSide is the largest width and height of an image: in 26.6 fixed point
	// it still multiplies by 64 without overflow [px].
	maxSide = 1 << 15

	// maxPatterns limits the table of dash patterns.
	maxPatterns = 64
)

// Canvas draws vg graphics into an *image.RGBA. Make one with [New].
type Canvas struct {
	state
	stack []state

	img  *image.RGBA
	dpi  float64 // Resolution [px/inch].
	ink  painter
	view box // The image, in device pixels.

	// Scratch memory kept between calls.
	patterns [][]vg.Length // Every dash pattern seen, so that setting one again costs nothing.
	path     polylines
	outline  polylines
	stroker  stroker
	scans    [scanClasses]*raster.Rasterizer
	sfntBuf  sfnt.Buffer
	stamps   map[stampSetKey]stampSet
	dots     map[float64]*dotSet // By radius [px].
}

// state is what Push saves and Pop restores.
type state struct {
	m      affine // Points to device pixels.
	width  vg.Length
	dashes []vg.Length // Shared, never written to.
	offset vg.Length
	color  pixel
	cap    LineCap
}

var _ vg.CanvasSizer = (*Canvas)(nil)

// New returns a canvas that draws into img at the given resolution
// [px/inch]. What img holds already stays until it is drawn over. A nil img,
// a side over 32768 pixels and a resolution that is not positive and finite
// are programming errors, on which New panics.
func New(img *image.RGBA, dpi float64) *Canvas {
	c := new(Canvas)
	c.Reset(img, dpi)
	return c
}

// Reset points the canvas at img, at the given resolution [px/inch], and sets
// the initial graphics state: black, solid lines of 1 point with butt caps and
// round joins, no transform, nothing pushed. The canvas keeps its scratch
// memory; otherwise this is [New].
func (c *Canvas) Reset(img *image.RGBA, dpi float64) {
	if img == nil {
		panic("raster: nil image")
	}
	if !(dpi > 0) || math.IsInf(dpi, 1) {
		panic(fmt.Sprintf("raster: resolution of %v px/inch, want a positive number", dpi))
	}
	size := img.Bounds().Size()
	if size.X > maxSide || size.Y > maxSide {
		panic(fmt.Sprintf("raster: image of %v pixels, want at most %d each way", size, maxSide))
	}
	c.img, c.dpi = img, dpi
	c.ink = newPainter(img)
	c.view = box{0, 0, float64(size.X), float64(size.Y)}
	c.stack = c.stack[:0]
	scale := dpi / vg.Inch.Points()
	c.state = state{m: affine{xx: scale, yy: -scale, y0: c.view.y1}}
	vg.Initialize(c)
}

// Size returns the width and height of the image in points.
func (c *Canvas) Size() (w, h vg.Length) {
	perPixel := vg.Inch / vg.Length(c.dpi)
	return vg.Length(c.view.x1) * perPixel, vg.Length(c.view.y1) * perPixel
}

// Clear sets every pixel of the image to the color, which may be translucent.
// A nil color is black.
func (c *Canvas) Clear(col color.Color) {
	c.ink.color = pixelOf(col)
	c.ink.clear()
}

// SetLineWidth implements vg.Canvas. Lines thinner than a quarter of a pixel
// are drawn a quarter of a pixel wide; lines whose width is not positive or
// not finite are not drawn.
func (c *Canvas) SetLineWidth(w vg.Length) { c.width = w }

// SetLineDash implements vg.Canvas. The pattern repeats, also one of odd
// length: its dashes become gaps in the next round. An empty pattern, one
// with a negative or non-finite length or offset, and one that repeats within a
// quarter of a pixel give a solid line. So does what is left of a path after
// some 20000 dashes.
func (c *Canvas) SetLineDash(pattern []vg.Length, offset vg.Length) {
	c.dashes, c.offset = c.intern(pattern), offset
}

// intern returns a copy of the pattern that is shared and never changes.
func (c *Canvas) intern(pattern []vg.Length) []vg.Length {
	if len(pattern) == 0 {
		return nil
	}
	for _, known := range c.patterns {
		if slices.Equal(known, pattern) {
			return known
		}
	}
	if len(c.patterns) >= maxPatterns {
		c.patterns = c.patterns[:0]
	}
	known := slices.Clone(pattern)
	c.patterns = append(c.patterns, known)
	return known
}

// SetLineCap sets the shape of line ends.
func (c *Canvas) SetLineCap(lc LineCap) { c.cap = lc }

// SetColor implements vg.Canvas.
func (c *Canvas) SetColor(col color.Color) { c.color = pixelOf(col) }

// Rotate implements vg.Canvas.
func (c *Canvas) Rotate(rad float64) { c.m = c.m.rotate(rad) }

// Translate implements vg.Canvas.
func (c *Canvas) Translate(pt vg.Point) { c.m = c.m.translate(pt.X.Points(), pt.Y.Points()) }

// Scale implements vg.Canvas.
func (c *Canvas) Scale(x, y float64) { c.m = c.m.scale(x, y) }

// Push implements vg.Canvas. It saves line caps as well.
func (c *Canvas) Push() { c.stack = append(c.stack, c.state) }

// Pop implements vg.Canvas. It panics without a matching Push.
func (c *Canvas) Pop() {
	last := len(c.stack) - 1
	if last < 0 {
		panic("raster: Pop without Push")
	}
	c.state, c.stack = c.stack[last], c.stack[:last]
}

// Fill implements vg.Canvas.
func (c *Canvas) Fill(p vg.Path) {
	if !pathBounds(p, c.m).touches(c.view) {
		return
	}
	c.path.flatten(p, c.m, c.view)
	c.fill(&c.path, 0, len(c.path.pieces))
}

// DrawImage implements vg.Canvas, for which it has to be there. Nothing that draws
// here holds images; to ask for one is a programming error, on which it panics.
func (c *Canvas) DrawImage(vg.Rectangle, image.Image) { panic("raster: images are not drawn") }

// Stroke implements vg.Canvas.
func (c *Canvas) Stroke(p vg.Path) {
	view, ok := c.startStroke()
	if !ok || !pathBounds(p, c.m).touches(view) {
		return
	}
	c.path.flatten(p, c.m, view)
	c.strokePath(view)
}

// startStroke prepares the stroker, and returns the part of the plane where
// lines may show. It reports false when the line width draws nothing.
func (c *Canvas) startStroke() (view box, ok bool) {
	scale := math.Sqrt(math.Abs(c.m.det()))
	width := max(c.width.Points()*scale, minWidth)
	if !(c.width > 0) || !(scale > 0) || !(width <= farthest) {
		return box{}, false
	}
	c.stroker.init(&c.outline, width/2, c.cap)
	view = c.view.grow(c.stroker.reach())
	c.stroker.dashes = dashesOf(c.dashes, c.offset, scale)
	return view, true
}

// strokePath strokes the flattened path.
func (c *Canvas) strokePath(view box) {
	c.outline.reset()
	c.stroker.stroke(&c.path, view)
	n := len(c.outline.pieces)
	straight := len(c.path.pts) == 2 && !c.path.pieces[0].closed
	if !straight || !c.stroker.apart() {
		c.fill(&c.outline, 0, n)
		return
	}
	// The dashes of a straight line do not meet: one by one is faster.
	for i := range n {
		c.fill(&c.outline, i, i+1)
	}
}
