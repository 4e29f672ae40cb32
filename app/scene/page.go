package scene

import (
	"image"
	"image/color"
	"math"
	"strings"

	"bowline/model/units"
	"bowline/plotting/palette"
	"bowline/plotting/raster"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// surface is what a renderer draws on: the image of the screen, or the page of a file.
type surface interface {
	Size() (width, height vg.Length)
	Clear(color.Color)
	SetColor(color.Color)
	SetLineWidth(vg.Length)
	SetLineDash([]vg.Length, vg.Length)
	SetLineCap(raster.LineCap)
	Fill(vg.Path)
	Stroke(vg.Path)
	FillString(font.Face, vg.Point, string)
	Dot(center vg.Point, radius vg.Length, ink color.RGBA)
}

// page is a drawing for a file; its lines end square.
type page struct {
	vg.Canvas
	width, height vg.Length
}

// Size implements surface.
func (p page) Size() (width, height vg.Length) { return p.width, p.height }

// Clear implements surface.
func (p page) Clear(c color.Color) {
	p.SetColor(c)
	p.Fill(vg.Rectangle{Max: vg.Point{X: p.width, Y: p.height}}.Path())
}

// SetLineCap implements surface.
func (page) SetLineCap(raster.LineCap) {}

// Dot implements surface.
func (p page) Dot(center vg.Point, radius vg.Length, ink color.RGBA) {
	var path vg.Path
	path.Move(vg.Point{X: center.X + radius, Y: center.Y})
	path.Arc(center, radius, 0, 2*math.Pi)
	path.Close()
	p.SetColor(ink)
	p.Fill(path)
}

// Foot is what stands below a picture that leaves the program: a title and small print.
type Foot struct{ Title, Small string }

// Room below a picture [px].
const (
	footPad  = 7.0
	footLine = 14.0
)

// rows breaks the small print into lines of a width.
func (f *Foot) rows(letters *letters, width float64) []string {
	var rows []string
	row := ""
	for _, word := range strings.Fields(f.Small) {
		next := strings.TrimSpace(row + " " + word)
		if row != "" && letters.width(letters.small, next) > width {
			rows = append(rows, row)
			next = word
		}
		row = next
	}
	return append(rows, row)
}

// FootHeight returns how much room a foot takes below a picture of a width [px]; an empty one
// takes none.
func (r *Renderer) FootHeight(f Foot, width float64) float64 {
	if f == (Foot{}) {
		return 0
	}
	return 2*footPad + footLine*float64(1+len(f.rows(r.letters, width-2*footPad)))
}

// DrawSheet fills an image with a picture and a foot below it, as Draw does with the picture
// alone. The image is as high as both at the scale.
func (r *Renderer) DrawSheet(img *image.RGBA, scale float64, p *Picture, f Foot, u units.System, colors *palette.Palette) {
	r.onto(img, scale)
	r.picture(p, u, colors)
	r.foot(p, f, colors)
}

// DrawPage draws a picture with a foot below it on a canvas whose lower left corner is the
// origin, a point for each pixel of both.
func (r *Renderer) DrawPage(c vg.Canvas, p *Picture, f Foot, u units.System, colors *palette.Palette) {
	r.height = p.View.Height + r.FootHeight(f, p.View.Width)
	r.canvas = page{c, vg.Length(p.View.Width), vg.Length(r.height)}
	r.picture(p, u, colors)
	r.foot(p, f, colors)
}

// foot writes title and small print below a picture.
func (r *Renderer) foot(p *Picture, f Foot, colors *palette.Palette) {
	if f == (Foot{}) {
		return
	}
	width := p.View.Width
	r.plate(0, p.View.Height, width, r.height-p.View.Height, colors.Raised)
	y := p.View.Height + footPad + 0.8*footLine
	write := func(face font.Face, c color.RGBA, text string) {
		r.color(c)
		r.canvas.FillString(face, vg.Point{X: footPad, Y: vg.Length(r.height - y)}, text)
		y += footLine
	}
	write(r.letters.bold, colors.Ink, f.Title)
	for _, row := range f.rows(r.letters, width-2*footPad) {
		write(r.letters.small, colors.Muted, row)
	}
}
