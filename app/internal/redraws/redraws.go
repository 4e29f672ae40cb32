// Package redraws lets a test count what would be drawn anew: words that stay
// the same must not be, for a drag has a frame's time for everything.
package redraws

import "fyne.io/fyne/v2"

// Count returns how often things on screen asked to be drawn anew while do ran.
func Count(do func()) int {
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
