// Package chartview shows a chart in the window: the picture comes from a
// worker, the pointer's place on it goes back as a position: a rear travel, or
// for a chart of a launch a time.
package chartview

import (
	"image"
	"strings"

	"bowline/app/form"
	"bowline/app/look"
	"bowline/model/units"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Host is what a view needs of its window.
type Host struct {
	At      func() float64      // the position looked at: travel [m] or time [s]
	Visit   func(float64)       // looks at another one while the pointer is there
	Stay    func()              // goes on looking at it
	Leave   func()              // goes back to where the visit began, if it still lasts
	Units   func() units.System // on screen
	Resized func()              // a picture of another size is wanted
	Export  func(chart.Key)     // the person wants this chart in a file
}

// View is one chart with its values in words and an export button.
type View struct {
	widget.BaseWidget
	key  chart.Key
	host Host

	plot   *area
	values *form.Prose
	object fyne.CanvasObject

	shown  Picture
	pixels image.Point // size wanted, device pixels
	dpi    float64
}

// Picture is a drawn chart.
type Picture struct {
	Image  *image.RGBA
	Chart  *chart.Chart
	Layout chart.Layout
}

// Height of the chart without its words [px].
const (
	height = 120 // at least
	roomy  = 150 // with its words below it
)

// baseDPI is the resolution of an unscaled screen that charts are made for.
const baseDPI = 96

// New returns an empty view for the chart with a key.
func New(key chart.Key, host Host) *View {
	v := &View{key: key, host: host, values: form.Caption("", theme.ColorNameForeground).KeepMost()}
	v.plot = newArea(v)
	export := widget.NewButton("Export…", func() { host.Export(key) })
	export.Importance = widget.LowImportance
	v.object = container.New(room{}, v.plot, container.NewBorder(nil, nil, nil, export, v.values))
	v.ExtendBaseWidget(v)
	return v
}

// room is the layout of a chart over its values, which it does without where there is too
// little height for both.
type room struct{}

// MinSize implements fyne.Layout.
func (room) MinSize(objects []fyne.CanvasObject) fyne.Size {
	plot, below := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(max(plot.Width, below.Width), plot.Height)
}

// Layout implements fyne.Layout.
func (room) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	plot, below := objects[0], objects[1]
	below.Resize(fyne.NewSize(size.Width, below.Size().Height)) // The height of words depends on their width.
	foot := below.MinSize().Height
	if size.Height-foot < roomy {
		foot = 0
		below.Hide()
	} else {
		below.Show()
		below.Move(fyne.NewPos(0, size.Height-foot))
		below.Resize(fyne.NewSize(size.Width, foot))
	}
	plot.Resize(fyne.NewSize(size.Width, size.Height-foot))
}

// CreateRenderer implements fyne.Widget.
func (v *View) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(v.object) }

// Key returns which chart is shown.
func (v *View) Key() chart.Key { return v.key }

// Want returns the size [device px] and the resolution of the picture to draw;
// an empty size before the view has been on screen and while it is hidden.
func (v *View) Want() (size image.Point, dpi float64) {
	if v.Hidden {
		return image.Point{}, v.dpi
	}
	return v.pixels, v.dpi
}

// Show implements fyne.CanvasObject: back on screen, a picture of what is looked at by now is
// asked for.
func (v *View) Show() {
	v.BaseWidget.Show()
	if v.pixels != (image.Point{}) {
		v.host.Resized()
	}
}

// Present puts a picture on screen.
func (v *View) Present(p Picture) {
	v.shown = p
	v.plot.raster.Refresh()
	v.write()
}

// At returns where the chart's marker stands.
func (v *View) At() float64 { return v.host.At() }

// Place returns where a position along the chart is on the window's canvas [px], and
// false while there is no picture.
func (v *View) Place(at float64) (x float64, ok bool) {
	l := &v.shown.Layout
	if v.Hidden || v.shown.Image == nil || !(l.Right > l.Left) {
		return 0, false
	}
	px, _ := l.ToPixel(at, l.Frame.Y.Min)
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(v.plot.raster)
	return float64(corner.X) + px/float64(v.shown.Image.Rect.Dx())*float64(v.plot.raster.Size().Width), true
}

// Frame returns the axes shown, for the next drawing to hold on to.
func (v *View) Frame() chart.Frame { return v.shown.Layout.Frame }

// write puts the values under the pointer, or else at the position looked
// at, below the chart.
func (v *View) write() {
	if v.shown.Chart == nil {
		return
	}
	lines := v.shown.Chart.Readout(v.host.At(), v.host.Units())
	if v.plot.inside {
		x, y := v.plot.device(v.plot.pointer)
		if under := v.shown.Layout.Readout(x, y, v.host.Units()); len(under) > 0 {
			lines = under
		}
	}
	v.values.Set(strings.Join(lines, "  ·  "))
}

// area is the drawn part, which follows the pointer.
type area struct {
	widget.BaseWidget
	view    *View
	raster  *canvas.Raster
	inside  bool
	pointer fyne.Position
}

func newArea(v *View) *area {
	a := &area{view: v}
	a.raster = look.NewPicture(a.draw)
	a.ExtendBaseWidget(a)
	return a
}

// CreateRenderer implements fyne.Widget.
func (a *area) CreateRenderer() fyne.WidgetRenderer { return look.PictureRenderer(a.raster) }

// MinSize implements fyne.CanvasObject.
func (a *area) MinSize() fyne.Size { return fyne.NewSize(240, height) }

// draw returns the last picture; one of another size is asked for.
func (a *area) draw(w, h int) image.Image {
	v := a.view
	if size := image.Pt(w, h); size != v.pixels && a.raster.Size().Width > 0 {
		v.pixels = size
		v.dpi = baseDPI * float64(w) / float64(a.raster.Size().Width)
		v.host.Resized()
	}
	if v.shown.Image == nil {
		return image.NewRGBA(image.Rect(0, 0, 1, 1)) // Transparent.
	}
	return v.shown.Image
}

// device turns a position into pixels of the picture, which may be of the size
// that the view had before.
func (a *area) device(p fyne.Position) (x, y float64) {
	if a.view.shown.Image == nil {
		return 0, 0
	}
	size, pixels := a.raster.Size(), a.view.shown.Image.Rect.Size()
	return float64(p.X/size.Width) * float64(pixels.X), float64(p.Y/size.Height) * float64(pixels.Y)
}

// MouseIn implements desktop.Hoverable.
func (a *area) MouseIn(e *desktop.MouseEvent) {
	a.inside = true
	a.point(e.Position)
}

// MouseMoved implements desktop.Hoverable: the car goes to the position pointed
// at.
func (a *area) MouseMoved(e *desktop.MouseEvent) { a.point(e.Position) }

func (a *area) point(p fyne.Position) {
	a.pointer = p
	x, y := a.device(p)
	if at, ok := a.view.shown.Layout.At(x, y); ok {
		a.view.host.Visit(at)
	}
	a.view.write()
}

// MouseOut implements desktop.Hoverable: the car goes back to where it was,
// unless a click has kept it or something else has moved it since.
func (a *area) MouseOut() {
	a.inside = false
	a.view.host.Leave()
	a.view.write()
}

// Tapped implements fyne.Tappable: it keeps the position pointed at.
func (a *area) Tapped(*fyne.PointEvent) { a.view.host.Stay() }
