// Package readout shows words and numbers that follow a drag. They are drawn
// as one picture in the window's own fonts: the toolkit's text makes a texture
// of every new word, which takes longer than a frame for a table of them.
package readout

import (
	"image"
	"image/color"
	"math"

	"bowline/plotting/raster"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// pixelsPerInch makes a point of the canvas a pixel of an unscaled screen.
const pixelsPerInch = 72

// sheet is a raster that words are drawn on.
type sheet struct {
	raster *canvas.Raster
	image  *image.RGBA
	canvas raster.Canvas
	size   func() fyne.Size
	back   func() color.Color
	paint  func(*pen)
}

// newSheet returns a sheet of a size that calls paint for each new picture.
func newSheet(size func() fyne.Size, back func() color.Color, paint func(*pen)) *sheet {
	s := &sheet{size: size, back: back, paint: paint}
	s.raster = canvas.NewRaster(s.draw)
	return s
}

// draw is the raster's generator: it gets the size in device pixels.
func (s *sheet) draw(w, h int) image.Image {
	w, h = max(w, 1), max(h, 1)
	if s.image == nil || s.image.Rect.Size() != image.Pt(w, h) {
		s.image = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	scale := float64(w) / math.Max(float64(s.size().Width), 1)
	s.canvas.Reset(s.image, pixelsPerInch*scale)
	s.canvas.Clear(s.back())
	s.paint(&pen{canvas: &s.canvas, height: float64(h) / scale})
	return s.image
}

// pen draws on a sheet; places count from its upper left corner.
type pen struct {
	canvas *raster.Canvas
	height float64
	path   vg.Path
}

// box fills a rectangle.
func (p *pen) box(x, y, w, h float32, c color.Color) {
	low, high := vg.Length(p.height-float64(y+h)), vg.Length(p.height-float64(y))
	left, right := vg.Length(x), vg.Length(x+w)
	p.path = append(p.path[:0],
		vg.PathComp{Type: vg.MoveComp, Pos: vg.Point{X: left, Y: low}},
		vg.PathComp{Type: vg.LineComp, Pos: vg.Point{X: right, Y: low}},
		vg.PathComp{Type: vg.LineComp, Pos: vg.Point{X: right, Y: high}},
		vg.PathComp{Type: vg.LineComp, Pos: vg.Point{X: left, Y: high}},
		vg.PathComp{Type: vg.CloseComp})
	p.canvas.SetColor(c)
	p.canvas.Fill(p.path)
}

// words writes a line of text; y is its baseline.
func (p *pen) words(x, y float32, text string, f font.Face, c color.Color) {
	p.canvas.SetColor(c)
	p.canvas.FillString(f, vg.Point{X: vg.Length(x), Y: vg.Length(p.height - float64(y))}, text)
}

// faceKey names a font of a theme at a size.
type faceKey struct {
	font string
	size float32
}

// faces are the fonts in use. They belong to the goroutine of the window.
var faces = map[faceKey]font.Face{}

// face returns the theme's font of a style at a size [px]. A font that cannot
// be read is one without letters: the theme's own are built in and tested.
func face(style fyne.TextStyle, size float32) font.Face {
	resource := fyne.CurrentApp().Settings().Theme().Font(style)
	key := faceKey{resource.Name(), size}
	f, ok := faces[key]
	if !ok {
		f.Font = font.Font{Size: vg.Length(size)}
		if parsed, err := opentype.Parse(resource.Content()); err == nil {
			f.Face = parsed
		}
		faces[key] = f
	}
	return f
}
