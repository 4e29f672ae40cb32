package chart

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// dotRadius is that of a point of size 1 at scale 1 [pt].
const dotRadius = 2.6

// glyph returns how gonum draws a point's shape in a color.
func (p *picture) glyph(s Shape, ink color.Color, size float64) draw.GlyphStyle {
	return draw.GlyphStyle{
		Color: ink, Radius: dotRadius * p.scale * vg.Length(usual(size)),
		Shape: glyph{shape: s, around: p.style.Palette.Background, scale: p.scale},
	}
}

// glyph is a draw.GlyphDrawer of a shape set off from what lies below.
type glyph struct {
	shape  Shape
	around color.Color
	scale  vg.Length
}

// solids are gonum's shapes, and a diamond, which it lacks.
var solids = map[Shape]draw.GlyphDrawer{Disc: draw.CircleGlyph{}, Square: draw.BoxGlyph{}, Triangle: draw.PyramidGlyph{}, Diamond: diamond{}}

// DrawGlyph implements draw.GlyphDrawer. Ring and cross are ours: gonum's are
// strokes of half a point, at any scale.
func (g glyph) DrawGlyph(c *draw.Canvas, s draw.GlyphStyle, pt vg.Point) {
	r := s.Radius
	switch g.shape {
	case Ring:
		draw.CircleGlyph{}.DrawGlyph(c, g.behind(1.2*r, c), pt)
		c.SetLineStyle(draw.LineStyle{Color: s.Color, Width: 1.2 * g.scale})
		c.Stroke(Circle(pt, 1.2*r))
	case Cross:
		line := draw.LineStyle{Color: s.Color, Width: lineWidth * g.scale}
		c.StrokeLine2(line, pt.X-r, pt.Y-r, pt.X+r, pt.Y+r)
		c.StrokeLine2(line, pt.X-r, pt.Y+r, pt.X+r, pt.Y-r)
	case None:
	default:
		solid := solids[g.shape]
		solid.DrawGlyph(c, g.behind(r+0.9*g.scale, c), pt)
		c.SetColor(s.Color)
		solid.DrawGlyph(c, s, pt)
	}
}

// behind sets the color around a shape and returns its style.
func (g glyph) behind(r vg.Length, c *draw.Canvas) draw.GlyphStyle {
	c.SetColor(g.around)
	return draw.GlyphStyle{Color: g.around, Radius: r}
}

// diamond is a square on its corner.
type diamond struct{}

// DrawGlyph implements draw.GlyphDrawer.
func (diamond) DrawGlyph(c *draw.Canvas, s draw.GlyphStyle, pt vg.Point) {
	var path vg.Path
	for i, corner := range []vg.Point{{X: 1.3}, {Y: 1.3}, {X: -1.3}, {Y: -1.3}} {
		if to := pt.Add(corner.Scale(s.Radius)); i == 0 {
			path.Move(to)
		} else {
			path.Line(to)
		}
	}
	path.Close()
	c.Fill(path)
}

// Circle returns a path around a point.
func Circle(at vg.Point, r vg.Length) vg.Path {
	var path vg.Path
	path.Move(vg.Point{X: at.X + r, Y: at.Y})
	path.Arc(at, r, 0, 2*math.Pi)
	path.Close()
	return path
}
