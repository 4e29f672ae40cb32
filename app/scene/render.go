package scene

import (
	"image"
	"image/color"
	"math"
	"slices"

	"bowline/model/units"
	"bowline/plotting/palette"
	"bowline/plotting/raster"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/font/liberation"
	"gonum.org/v1/plot/vg"
)

// pointsPerInch is chosen as the resolution of an unscaled screen, so that one
// point of the canvas is one pixel of the view.
const pointsPerInch = 72

// Renderer draws pictures. It keeps what can be used again and serves one
// goroutine.
type Renderer struct {
	canvas *raster.Canvas
	fonts  *font.Cache
	faces  map[float64]font.Face
	path   vg.Path
	dashes []vg.Length
	height float64
	placed []box // of words that others keep clear of
	dotted bool  // dots are shown, which plates behind words cover
}

// NewRenderer returns a renderer.
func NewRenderer() *Renderer {
	return &Renderer{
		fonts:  font.NewCache(liberation.Collection()),
		faces:  map[float64]font.Face{},
		dashes: []vg.Length{6, 4},
	}
}

// Draw fills img with the picture. scale is the number of image pixels to one
// pixel of the picture's view; u sets the spacing of the grid.
func (r *Renderer) Draw(img *image.RGBA, scale float64, p *Picture, u units.System, colors *palette.Palette) {
	if r.canvas == nil {
		r.canvas = raster.New(img, pointsPerInch*scale)
	} else {
		r.canvas.Reset(img, pointsPerInch*scale)
	}
	r.height = float64(img.Bounds().Dy()) / scale
	r.canvas.Clear(colors.Background)
	r.grid(p.View, u, colors)
	for i := range p.Drawn {
		if d := &p.Drawn[i]; d.Shape != Label {
			r.draw(d, colors)
		}
	}
	// Words stand above all lines and clear of each other.
	r.placed = r.placed[:0]
	legend := p.dots()
	r.dotted = legend != nil
	if legend != nil {
		r.placed = append(r.placed, legendBox(p.View))
	}
	r.gridNumbers(p.View, u, colors)
	for i := range p.Drawn {
		if d := &p.Drawn[i]; d.Shape == Label {
			r.text(d.Points[0], d.Item, colors)
		}
	}
	if legend != nil {
		r.legend(legend, p.View, colors)
	}
	for i := range p.Tags {
		r.tag(&p.Tags[i], p.View, colors)
	}
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
	if d.Shape == Quarter {
		r.quarter(d, colors)
		return
	}
	if d.Fill != None {
		r.canvas.SetColor(d.Fill.In(colors))
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
	r.canvas.SetColor(d.Stroke.In(colors))
	r.canvas.Fill(r.path)
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
		r.canvas.SetColor(d.Edge.In(colors))
		r.canvas.SetLineDash(nil, 0)
		r.canvas.SetLineCap(raster.ButtCap)
		r.canvas.SetLineWidth(vg.Length(width))
		r.canvas.Stroke(r.path)
		width -= 2 * edgeWidth
	}
	r.canvas.SetColor(d.Stroke.In(colors))
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
	r.canvas.SetColor(colors.Background)
	r.canvas.Fill(r.path)
	r.stroke(d, colors)
	c, radius := r.at(d.Points[0]), vg.Length(d.Radius)
	r.canvas.SetColor(d.Fill.In(colors))
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
	r.canvas.SetColor(colors.Background)
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
		r.canvas.SetColor(colors.Background)
		r.canvas.Fill(r.path)
		r.canvas.SetColor(d.Stroke.In(colors))
		r.canvas.SetLineWidth(2)
		r.canvas.SetLineDash(nil, 0)
		r.canvas.Stroke(r.path)
	}
}

// face returns the font at a size.
func (r *Renderer) face(size float64) font.Face {
	f, ok := r.faces[size]
	if !ok {
		f = r.fonts.Lookup(font.Font{Typeface: "Liberation", Variant: "Sans"}, vg.Length(size))
		r.faces[size] = f
	}
	return f
}

// Sizes of letters [px].
const (
	Letter = 12.0 // in labels and tags
	small  = 11.0
)

// edge keeps words inside the picture [px].
const edge = 4

// box is a rectangle on screen [px].
type box struct{ left, top, right, bottom float64 }

func (b box) meets(c box) bool {
	return b.left < c.right && c.left < b.right && b.top < c.bottom && c.top < b.bottom
}

// holds reports whether a point is in the box.
func (b box) holds(p r2.Vec) bool {
	return p.X > b.left && p.X < b.right && p.Y > b.top && p.Y < b.bottom
}

// beside is how far words stand from their point [px].
const beside = 14

// nearEdge is how near the picture's edge a point may be and still have its
// words [px]; the sign it stands at is cut off there.
const nearEdge = 14

// text draws a label over a plate of the background, kept inside the picture
// and clear of the labels before it.
func (r *Renderer) text(at r2.Vec, item *Item, colors *palette.Palette) {
	w, h := r.canvas.Size()
	text := item.Text
	if item.Figure != "" {
		text += "  " + item.Figure
	}
	if item.Stays {
		at, text = kept(at, text, float64(w), float64(h))
	}
	if at.X < nearEdge || at.X > float64(w)-nearEdge || at.Y < nearEdge || at.Y > float64(h)-nearEdge {
		return
	}
	face := r.face(Letter)
	width := float64(r.canvas.TextWidth(face, text))
	x := at.X + beside*item.Beside.X - (1-item.Beside.X)/2*width
	y := at.Y - beside*item.Beside.Y + (1-item.Beside.Y)/2*0.72*Letter
	x = math.Max(edge, math.Min(float64(w)-width-edge, x))
	y = math.Max(Letter+edge, math.Min(float64(h)-edge, y))
	y = r.clear(x, y, width, Letter, item.Beside.Y > 0)
	r.words(x, y, width, Letter, text, item.Stroke, face, colors)
}

// clear returns the nearest height, upward or downward, at which words keep
// clear of those placed already, and notes where they are.
func (r *Renderer) clear(x, y, width, size float64, upward bool) float64 {
	const tries = 6
	place := func(y float64) box {
		return box{x - platePad, y - 0.8*size - platePad, x + width + platePad, y + 0.2*size + platePad}
	}
	step := size + 2*platePad
	if upward {
		step = -step
	}
	found := y
	for i := range tries {
		to := y + float64(i)*step
		if !slices.ContainsFunc(r.placed, place(to).meets) {
			found = to
			break
		}
	}
	r.placed = append(r.placed, place(found))
	return found
}

// words draws text on its plate; y is its baseline.
func (r *Renderer) words(x, y, width, size float64, text string, ink Color, face font.Face, colors *palette.Palette) {
	r.plate(x-platePad, y-0.8*size-platePad, width+2*platePad, size+2*platePad, r.veil(colors.Background))
	r.canvas.SetColor(ink.In(colors))
	r.canvas.FillString(face, r.at(r2.Vec{X: x, Y: y}), text)
}

// platePad is how far the plate behind words reaches beyond them [px].
const platePad = 1.5

// plate fills a rectangle given by its upper left corner [px].
func (r *Renderer) plate(x, y, w, h float64, c color.Color) {
	r.path = r.path[:0]
	r.path.Move(r.at(r2.Vec{X: x, Y: y}))
	r.path.Line(r.at(r2.Vec{X: x + w, Y: y}))
	r.path.Line(r.at(r2.Vec{X: x + w, Y: y + h}))
	r.path.Line(r.at(r2.Vec{X: x, Y: y + h}))
	r.path.Close()
	r.canvas.SetColor(c)
	r.canvas.Fill(r.path)
}

// veil is the background as a plate behind words: lines show through it, but
// not so as to be taken for letters. Dots, which would be, do not.
func (r *Renderer) veil(c color.RGBA) color.Color {
	if r.dotted {
		return c
	}
	return color.NRGBA{R: c.R, G: c.G, B: c.B, A: 190}
}
