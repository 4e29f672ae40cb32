package sheet

import (
	"image/color"
	"math"

	"bowline/plotting/raster"

	"fyne.io/fyne/v2"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// Pen draws on a sheet. Places count from its upper left corner, in pixels of
// an unscaled screen.
type Pen struct {
	canvas *raster.Canvas
	scale  float64 // device pixels per pixel
	height float64
	path   vg.Path
}

// Snap returns the edge between device pixels that is nearest to a place.
func (p *Pen) Snap(at float32) float32 {
	return float32(math.Round(float64(at)*p.scale) / p.scale)
}

// Hairline returns the width of a thin line: whole device pixels, about one
// pixel.
func (p *Pen) Hairline() float32 {
	return float32(math.Max(math.Round(p.scale), 1) / p.scale)
}

// Box fills a rectangle.
func (p *Pen) Box(x, y, w, h float32, c color.Color) {
	p.Shape(c, fyne.NewPos(x, y+h), fyne.NewPos(x+w, y+h), fyne.NewPos(x+w, y), fyne.NewPos(x, y))
}

// Frame draws the border of a rectangle, with lines inside it.
func (p *Pen) Frame(x, y, w, h, line float32, c color.Color) {
	line = min(line, w/2, h/2)
	p.Box(x, y, w, line, c)
	p.Box(x, y+h-line, w, line, c)
	p.Box(x, y+line, line, h-2*line, c)
	p.Box(x+w-line, y+line, line, h-2*line, c)
}

// Shape fills a polygon.
func (p *Pen) Shape(c color.Color, corners ...fyne.Position) {
	p.path = p.path[:0]
	kind := vg.MoveComp
	for _, at := range corners {
		p.path = append(p.path, vg.PathComp{Type: kind, Pos: p.point(at.X, at.Y)})
		kind = vg.LineComp
	}
	p.path = append(p.path, vg.PathComp{Type: vg.CloseComp})
	p.canvas.SetColor(c)
	p.canvas.Fill(p.path)
}

// Line draws a line through places.
func (p *Pen) Line(width float32, c color.Color, through ...fyne.Position) {
	p.path = p.path[:0]
	kind := vg.MoveComp
	for _, at := range through {
		p.path = append(p.path, vg.PathComp{Type: kind, Pos: p.point(at.X, at.Y)})
		kind = vg.LineComp
	}
	p.canvas.SetLineWidth(vg.Length(width))
	p.canvas.SetColor(c)
	p.canvas.Stroke(p.path)
}

// Dot fills a circle.
func (p *Pen) Dot(center fyne.Position, radius float32, c color.RGBA) {
	p.canvas.Dot(p.point(center.X, center.Y), vg.Length(radius), c)
}

// Words writes a line of text; y is its baseline.
func (p *Pen) Words(x, y float32, text string, f font.Face, c color.Color) {
	p.canvas.SetColor(c)
	p.canvas.FillString(f, p.point(x, y), text)
}

// Width returns how wide a line of text is.
func (p *Pen) Width(text string, f font.Face) float32 {
	return float32(p.canvas.TextWidth(f, text))
}

// point turns a place into one of the canvas, whose y runs up.
func (p *Pen) point(x, y float32) vg.Point {
	return vg.Point{X: vg.Length(x), Y: vg.Length(p.height - float64(y))}
}
