// Package sheet draws words and boxes as one picture in the window's own
// fonts, crisp at any scale of the screen: the toolkit's text makes a texture
// of every new word, which takes longer than a frame for a table of them.
package sheet

import (
	"image"
	"image/color"
	"math"

	"bowline/app/look"
	"bowline/plotting/raster"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// pixelsPerInch makes a point of the canvas a pixel of an unscaled screen.
const pixelsPerInch = 72

// Sheet is a raster that words are drawn on. It belongs to the goroutine of the
// window.
type Sheet struct {
	raster *canvas.Raster
	image  *image.RGBA
	canvas raster.Canvas
	paint  func(*Pen)
	bare   bool
}

// New returns a sheet that calls paint for each new picture, on the background
// of the theme.
func New(paint func(*Pen)) *Sheet {
	s := &Sheet{paint: paint}
	s.raster = look.NewPicture(s.Draw)
	return s
}

// Bare leaves the background out, so that what is behind the sheet shows through.
func (s *Sheet) Bare() { s.bare = true }

// Renderer renders a widget that is this sheet.
func (s *Sheet) Renderer() fyne.WidgetRenderer { return look.PictureRenderer(s.raster) }

// Refresh has the sheet drawn anew in the next frame.
func (s *Sheet) Refresh() { s.raster.Refresh() }

// Draw returns the picture at a size in device pixels. The image is the same
// one each time, as long as the size is.
func (s *Sheet) Draw(w, h int) image.Image {
	w, h = max(w, 1), max(h, 1)
	if s.image == nil || s.image.Rect.Size() != image.Pt(w, h) {
		s.image = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	scale := float64(w) / math.Max(float64(s.raster.Size().Width), 1)
	s.canvas.Reset(s.image, pixelsPerInch*scale)
	background := theme.Color(theme.ColorNameBackground)
	if s.bare {
		background = color.Transparent
	}
	s.canvas.Clear(background)
	s.paint(&Pen{canvas: &s.canvas, scale: scale, height: float64(h) / scale})
	return s.image
}

// Ink returns a theme color; without a name, that of text.
func Ink(name fyne.ThemeColorName) color.Color {
	if name == "" {
		name = theme.ColorNameForeground
	}
	return theme.Color(name)
}
