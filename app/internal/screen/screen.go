// Package screen is what tests see of widgets.
package screen

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

// Walk visits an object and all its parts that can be seen, from top to bottom,
// with their places in what the object stands in.
func Walk(o fyne.CanvasObject, visit func(o fyne.CanvasObject, at fyne.Position)) {
	walk(o, fyne.Position{}, visit)
}

func walk(o fyne.CanvasObject, at fyne.Position, visit func(fyne.CanvasObject, fyne.Position)) {
	if o == nil || !o.Visible() {
		return
	}
	at = at.Add(o.Position())
	visit(o, at)
	for _, part := range parts(o) {
		walk(part, at, visit)
	}
}

func parts(o fyne.CanvasObject) []fyne.CanvasObject {
	switch o := o.(type) {
	case *fyne.Container:
		return o.Objects
	case fyne.Widget:
		return test.WidgetRenderer(o).Objects()
	}
	return nil
}

// Seen lists an object and all its parts that can be seen, from top to bottom.
func Seen(o fyne.CanvasObject) []fyne.CanvasObject {
	var list []fyne.CanvasObject
	Walk(o, func(part fyne.CanvasObject, _ fyne.Position) { list = append(list, part) })
	return list
}

// Writes reports whether just this line is written by a label within an object.
func Writes(o fyne.CanvasObject, line string) bool {
	for _, part := range Seen(o) {
		if text, ok := part.(*canvas.Text); ok && text.Text == line {
			return true
		}
	}
	return false
}

// Draw draws a widget that is one picture.
func Draw(w fyne.Widget, width, height int) *image.RGBA {
	return test.WidgetRenderer(w).Objects()[0].(*canvas.Raster).Generator(width, height).(*image.RGBA)
}

// Inked counts the pixels of a part of a picture that have just a color.
func Inked(img *image.RGBA, part image.Rectangle, c color.RGBA) int {
	n := 0
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			if img.RGBAAt(x, y) == c {
				n++
			}
		}
	}
	return n
}

// Redraws returns how often things on screen asked to be drawn anew while do ran:
// words that stay the same must not, for a drag has a frame's time for everything.
func Redraws(do func()) int {
	app := fyne.CurrentApp()
	n := 0
	fyne.SetCurrentApp(counting{App: app, driver: countingDriver{Driver: app.Driver(), n: &n}})
	defer fyne.SetCurrentApp(app)
	do()
	return n
}

// counting is an app whose canvases count.
type counting struct {
	fyne.App
	driver fyne.Driver
}

// Driver implements fyne.App.
func (a counting) Driver() fyne.Driver { return a.driver }

type countingDriver struct {
	fyne.Driver
	n *int
}

// CanvasForObject implements fyne.Driver.
func (d countingDriver) CanvasForObject(o fyne.CanvasObject) fyne.Canvas {
	c := d.Driver.CanvasForObject(o)
	if c == nil {
		return nil
	}
	return countingCanvas{c, d.n}
}

type countingCanvas struct {
	fyne.Canvas
	n *int
}

// Refresh implements fyne.Canvas.
func (c countingCanvas) Refresh(o fyne.CanvasObject) {
	*c.n++
	c.Canvas.Refresh(o)
}
