package raster

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
)

const (
	// maxDot is the largest radius that is stamped [px]. Larger discs are too
	// many pixels to keep.
	maxDot = 16

	// maxDotSets limits the radii whose stamps are kept.
	maxDotSets = 16
)

// dotSet holds the stamps of a disc of one radius by the place of its center
// within a pixel.
type dotSet [stampSteps * stampSteps]*stamp

// Dot fills a disc in a color, which may be translucent, for pictures of
// thousands of small ones: up to a radius of 16 pixels it is blended from a
// stamp, its center rounded to a sixteenth of a pixel each way. The radius is
// scaled as line widths are; one that is not positive draws nothing. The color
// set for other drawing stays as it is.
func (c *Canvas) Dot(center vg.Point, radius vg.Length, col color.RGBA) {
	p := c.m.apply(center.X.Points(), center.Y.Points())
	r := radius.Points() * math.Sqrt(math.Abs(c.m.det()))
	if !(r > 0) || !p.finite() || !c.view.grow(r).holds(p) {
		return
	}
	ink := pixel(col.R) | pixel(col.G)<<8 | pixel(col.B)<<16 | pixel(col.A)<<24
	if r > maxDot {
		kept := c.color
		c.color = ink
		c.circle(p, r, c.view)
		c.fill(&c.path, 0, len(c.path.pieces))
		c.color = kept
		return
	}
	px, subX := pixelAndStep(p.x)
	py, subY := pixelAndStep(p.y)
	set := c.dotSet(r)
	s := set[subY*stampSteps+subX]
	if s == nil {
		s = c.cutDot(r, float64(subX)/stampSteps, float64(subY)/stampSteps)
		set[subY*stampSteps+subX] = s
	}
	c.ink.color = ink
	c.ink.stamp(s, px+s.x, py+s.y)
}

// circle replaces the path by a circle in device pixels.
func (c *Canvas) circle(center point, r float64, view box) {
	c.path.begin(view)
	e := ellipse{center, point{r, 0}, point{0, r}}
	c.path.add(e.at(0))
	c.path.arc(e, 0, 2*math.Pi, maxHalvings)
	c.path.finish(true)
}

// dotSet returns the stamps of a radius [px].
func (c *Canvas) dotSet(r float64) *dotSet {
	set := c.dots[r]
	if set == nil {
		if c.dots == nil || len(c.dots) >= maxDotSets {
			c.dots = map[float64]*dotSet{}
		}
		set = new(dotSet)
		c.dots[r] = set
	}
	return set
}

// cutDot makes the stamp of a disc whose center is at x, y of pixel 0, 0.
func (c *Canvas) cutDot(r, x, y float64) *stamp {
	s := &stamp{x: int(math.Floor(x - r)), y: int(math.Floor(y - r))}
	width, height := int(math.Ceil(x+r))-s.x, int(math.Ceil(y+r))-s.y
	s.width, s.cover = width, make([]uint8, width*height)
	c.circle(point{x - float64(s.x), y - float64(s.y)}, r, box{0, 0, float64(width), float64(height)})
	c.scan(s, height)
	return s
}
