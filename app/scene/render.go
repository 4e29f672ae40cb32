package scene

import (
	"image"
	"image/color"
	"math"

	"bowline/model/units"
	"bowline/plotting/palette"
	"bowline/plotting/raster"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
)

// pointsPerInch is chosen as the resolution of an unscaled screen, so that one
// point of the canvas is one pixel of the view.
const pointsPerInch = 72

// Renderer draws pictures. It keeps what can be used again and serves one
// goroutine.
type Renderer struct {
	canvas  surface
	screen  *raster.Canvas // the canvas of images
	letters *letters
	path    vg.Path
	dashes  []vg.Length
	marks   map[gridMark]string // the words of grid lines
	height  float64
	dotted  bool       // dots are shown, which plates behind words cover
	ink     color.RGBA // that is drawn in, kept here so that handing it on takes no memory
}

// NewRenderer returns a renderer.
func NewRenderer() *Renderer {
	return &Renderer{
		letters: newLetters(),
		dashes:  []vg.Length{6, 4},
	}
}

// Draw fills img with the picture. scale is the number of image pixels to one
// pixel of the picture's view; u sets the spacing of the grid.
func (r *Renderer) Draw(img *image.RGBA, scale float64, p *Picture, u units.System, colors *palette.Palette) {
	r.onto(img, scale)
	r.picture(p, u, colors)
}

// onto has an image drawn on.
func (r *Renderer) onto(img *image.RGBA, scale float64) {
	if r.screen == nil {
		r.screen = raster.New(img, pointsPerInch*scale)
	} else {
		r.screen.Reset(img, pointsPerInch*scale)
	}
	r.canvas, r.height = r.screen, float64(img.Bounds().Dy())/scale
}

// picture draws all of a picture on the canvas.
func (r *Renderer) picture(p *Picture, u units.System, colors *palette.Palette) {
	r.ink = colors.Background
	r.canvas.Clear(&r.ink)
	r.grid(p.View, u, colors)
	for i := range p.Drawn {
		if d := &p.Drawn[i]; d.Shape != Label {
			r.draw(d, colors)
		}
	}
	// Words stand above all lines.
	legend := p.dots()
	r.dotted = legend != nil
	r.gridNumbers(p.View, u, colors)
	r.labels(p, colors)
	if legend != nil {
		r.legend(legend, p.View, colors)
	}
	for i := range p.Tags {
		r.tag(&p.Tags[i], colors)
	}
}

// color has what follows drawn in a color.
func (r *Renderer) color(c color.RGBA) {
	r.ink = c
	r.canvas.SetColor(&r.ink)
}

// at turns a screen point into a canvas point, whose y runs up.
func (r *Renderer) at(p r2.Vec) vg.Point {
	return vg.Point{X: vg.Length(p.X), Y: vg.Length(r.height - p.Y)}
}

// draw draws one item.
func (r *Renderer) draw(d *Drawn, colors *palette.Palette) {
	r.path = r.path[:0]
	switch d.Shape {
	case Swarm:
		r.swarm(d, colors)
		return
	case Diamond:
		c, half := r.at(d.Points[0]), vg.Length(d.Radius)
		r.path.Move(vg.Point{X: c.X + half, Y: c.Y})
		r.path.Line(vg.Point{X: c.X, Y: c.Y + half})
		r.path.Line(vg.Point{X: c.X - half, Y: c.Y})
		r.path.Line(vg.Point{X: c.X, Y: c.Y - half})
		r.path.Close()
	case Sight:
		r.sight(d)
	case Disc, Quarter:
		c := r.at(d.Points[0])
		r.path.Move(vg.Point{X: c.X + vg.Length(d.Radius), Y: c.Y})
		r.path.Arc(c, vg.Length(d.Radius), 0, 2*math.Pi)
		r.path.Close()
	default:
		for i, p := range d.Points {
			if i == 0 {
				r.path.Move(r.at(p))
			} else {
				r.path.Line(r.at(p))
			}
		}
		if d.Shape == Area {
			r.path.Close()
		}
	}
	if d.Lit {
		r.halo(d, colors)
	}
	if d.Shape == Quarter {
		r.quarter(d, colors)
		return
	}
	if d.Fill != None {
		r.color(d.Fill.In(colors))
		r.canvas.Fill(r.path)
	}
	r.stroke(d, colors)
	if d.Arrows != 0 {
		r.arrows(d, colors)
	}
	if d.Shape == Force {
		r.head(d, colors)
	}
}

// head draws the head of an arrow at its last point.
func (r *Renderer) head(d *Drawn, colors *palette.Palette) {
	tip, before := d.Points[len(d.Points)-1], d.Points[len(d.Points)-2]
	way := r2.Sub(tip, before)
	if r2.Norm(way) < 1e-6 {
		return
	}
	way = r2.Unit(way)
	aside := r2.Scale(arrowWidth/2+d.Width/2, r2.Vec{X: -way.Y, Y: way.X})
	tip, foot := r2.Add(tip, r2.Scale(arrowLength/2, way)), r2.Sub(tip, r2.Scale(arrowLength/2, way))
	r.path = r.path[:0]
	r.path.Move(r.at(tip))
	r.path.Line(r.at(r2.Add(foot, aside)))
	r.path.Line(r.at(r2.Sub(foot, aside)))
	r.path.Close()
	r.color(d.Stroke.In(colors))
	r.canvas.Fill(r.path)
}

// haloWidth is how far the outline of what is lit stands out [px].
const haloWidth = 3

// halo draws the outline of what is lit along the current path, behind it.
func (r *Renderer) halo(d *Drawn, colors *palette.Palette) {
	width := d.Width
	if d.Shape == Path {
		width = math.Max(d.Thick, 1)
	}
	r.canvas.SetColor(colors.Accent)
	r.canvas.SetLineDash(nil, 0)
	r.canvas.SetLineCap(raster.ButtCap)
	r.canvas.SetLineWidth(vg.Length(width + 2*haloWidth))
	r.canvas.Stroke(r.path)
}

// edgeWidth is that of the line along the sides of a path with girth [px].
const edgeWidth = 1.3

// stroke draws the current path's outline.
func (r *Renderer) stroke(d *Drawn, colors *palette.Palette) {
	if d.Stroke == None {
		return
	}
	width := d.Width
	if d.Shape == Path {
		width = math.Max(d.Thick, 1)
	}
	if d.Edge != None && width > 2*edgeWidth {
		r.color(d.Edge.In(colors))
		r.canvas.SetLineDash(nil, 0)
		r.canvas.SetLineCap(raster.ButtCap)
		r.canvas.SetLineWidth(vg.Length(width))
		r.canvas.Stroke(r.path)
		width -= 2 * edgeWidth
	}
	r.color(d.Stroke.In(colors))
	r.canvas.SetLineWidth(vg.Length(width))
	r.canvas.SetLineCap(raster.RoundCap)
	if d.Girth > 0 {
		r.canvas.SetLineCap(raster.ButtCap)
	}
	if d.Dashed {
		r.canvas.SetLineCap(raster.ButtCap)
		r.canvas.SetLineDash(r.dashes, 0)
	} else {
		r.canvas.SetLineDash(nil, 0)
	}
	r.canvas.Stroke(r.path)
}

// quarter draws the sign of a center of gravity.
func (r *Renderer) quarter(d *Drawn, colors *palette.Palette) {
	r.color(colors.Background)
	r.canvas.Fill(r.path)
	r.stroke(d, colors)
	c, radius := r.at(d.Points[0]), vg.Length(d.Radius)
	r.color(d.Fill.In(colors))
	for _, start := range []float64{0, math.Pi} {
		r.path = r.path[:0]
		r.path.Move(c)
		r.path.Arc(c, radius, start, math.Pi/2)
		r.path.Close()
		r.canvas.Fill(r.path)
	}
}

// Size of the arrowheads on bars [px].
const (
	arrowLength = 11.0
	arrowWidth  = 7.0
	arrowInset  = 0.2 // part of the bar between pivot and arrowhead
)

// arrows marks a bar with two heads: toward the pivots where it pushes on
// them, away from them where it pulls.
func (r *Renderer) arrows(d *Drawn, colors *palette.Palette) {
	a, b := d.Points[0], d.Points[len(d.Points)-1]
	length := r2.Norm(r2.Sub(b, a))
	if length < 6*arrowLength {
		return
	}
	u := r2.Scale(1/length, r2.Sub(b, a))
	n := r2.Vec{X: -u.Y, Y: u.X}
	r.color(colors.Background)
	half := arrowLength / 2 * float64(d.Arrows)
	width := math.Min(math.Max(arrowWidth, d.Thick), 3*arrowWidth) * 0.5
	for _, end := range []struct {
		at   r2.Vec
		sign float64
	}{{r2.Add(a, r2.Scale(arrowInset, r2.Sub(b, a))), -1}, {r2.Add(b, r2.Scale(arrowInset, r2.Sub(a, b))), 1}} {
		tip := r2.Add(end.at, r2.Scale(half*end.sign, u))
		tail := r2.Sub(end.at, r2.Scale(half*end.sign, u))
		corners := []r2.Vec{tip, r2.Add(tail, r2.Scale(width, n)), r2.Sub(tail, r2.Scale(width, n))}
		r.path = r.path[:0]
		r.path.Move(r.at(corners[0]))
		r.path.Line(r.at(corners[1]))
		r.path.Line(r.at(corners[2]))
		r.path.Close()
		r.color(colors.Background)
		r.canvas.Fill(r.path)
		r.color(d.Stroke.In(colors))
		r.canvas.SetLineWidth(2)
		r.canvas.SetLineDash(nil, 0)
		r.canvas.Stroke(r.path)
	}
}

// edge keeps words inside the picture [px].
const edge = 4

// plate fills a rectangle given by its upper left corner [px].
func (r *Renderer) plate(x, y, w, h float64, c color.RGBA) {
	r.path = r.path[:0]
	r.path.Move(r.at(r2.Vec{X: x, Y: y}))
	r.path.Line(r.at(r2.Vec{X: x + w, Y: y}))
	r.path.Line(r.at(r2.Vec{X: x + w, Y: y + h}))
	r.path.Line(r.at(r2.Vec{X: x, Y: y + h}))
	r.path.Close()
	r.color(c)
	r.canvas.Fill(r.path)
}

// veil is the background as a plate behind words: lines show through it, but
// not so as to be taken for letters. Dots, which would be, do not.
func (r *Renderer) veil(c color.RGBA) color.RGBA {
	if r.dotted {
		return c
	}
	const opacity = 190
	part := func(x uint8) uint8 { return uint8((int(x)*opacity + 127) / 255) }
	return color.RGBA{R: part(c.R), G: part(c.G), B: part(c.B), A: opacity}
}
