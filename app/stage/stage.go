// Package stage is the window's canvas: it shows the study's car from a
// viewpoint, and passes the mouse and the keyboard on to it.
package stage

import (
	"image"
	"math"
	"slices"

	"bowline/app/look"
	"bowline/app/runner"
	"bowline/app/scene"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// free is the number of no fit: the view is as zoomed and panned.
const free = -1

// wholeFit is the number of the fit that a launch is looked at with: of every viewpoint the
// second one is of the whole car.
const wholeFit = 1

// Stage is the widget. Its view fits anew when its size changes, another car is
// loaded or a fit is asked for, and after an edit that took what the fit keeps in
// sight out of the picture.
type Stage struct {
	widget.BaseWidget

	study     *study.Study
	viewpoint scene.Viewpoint
	hands     scene.Hands
	colors    func() *palette.Palette

	raster    *canvas.Raster
	image     *image.RGBA
	renderer  *scene.Renderer
	list      scene.List
	picture   scene.Picture
	view      scene.View
	fit       int  // which of the viewpoint's fits, or free
	of        int  // what the view is fitted to
	launching bool // the launch was looked at last
	refit     bool // the view does not suit its size, fit or car any more

	hot     scene.ID // under the pointer
	pointer r2.Vec   // [px]
	inside  bool     // the pointer is over the stage
	press   press
	clicks  [2]scene.ID  // what was clicked last, the last first
	lit     scene.ID     // has an outline
	soon    *runner.Soon // brings what is dragged to the pointer

	// Refused is told why an edit was refused, and nil when a drag is taken again
	// and when it is over.
	Refused func([]car.Problem)
	// Keys, if set, is asked first to take a key, and reports whether it has.
	Keys func(key scene.Key, shift bool) bool
	// Clicked, if set, is told of a click without Shift: on what, or on nothing.
	Clicked func(scene.ID)
	// Drawn, if set, is called after each drawing of the picture.
	Drawn func(*scene.Picture)
}

// New returns a stage that shows a study from a viewpoint. colors is asked at
// every drawing.
func New(s *study.Study, p scene.Viewpoint, colors func() *palette.Palette) *Stage {
	v := &Stage{study: s, colors: colors, hands: idle{}, renderer: scene.NewRenderer()}
	v.soon = runner.NewSoon(fyne.Do, v.drop)
	v.raster = look.NewPicture(v.draw)
	v.ExtendBaseWidget(v)
	v.Look(p)
	s.Listen(v.follow)
	return v
}

// Look shows the study from another viewpoint, with its first fit.
func (v *Stage) Look(p scene.Viewpoint) {
	v.cancelDrag()
	before := v.hands
	v.viewpoint, v.hands = p, p.Hands()
	if v.hands == nil {
		v.hands = idle{}
	}
	v.hot, v.clicks = scene.ID{}, [2]scene.ID{}
	v.SetFit(0)
	before.Point(scene.ID{})
}

// CreateRenderer implements fyne.Widget.
func (v *Stage) CreateRenderer() fyne.WidgetRenderer { return look.PictureRenderer(v.raster) }

// MinSize implements fyne.CanvasObject.
func (v *Stage) MinSize() fyne.Size { return fyne.NewSize(280, 180) }

// Resize implements fyne.CanvasObject.
func (v *Stage) Resize(size fyne.Size) {
	v.BaseWidget.Resize(size)
	v.settle()
}

// follow shows what has changed in the study.
func (v *Stage) follow(c study.Change) {
	if c.Has(study.Loaded) {
		v.forget()
	}
	if launching := v.study.Launching(); launching != v.launching {
		v.launching = launching
		v.SetFit(map[bool]int{true: wholeFit}[launching])
	}
	if c&^(study.File|study.History|study.Progress) != 0 {
		v.settle()
	}
}

// forget lets go of a car that has gone, to show the one in its place.
func (v *Stage) forget() {
	v.soon.Drop()
	v.press, v.refit = press{}, true
	if v.fit == free {
		v.fit = 0
	}
}

// Light gives a thing an outline, in whatever view it is seen, until another one is
// lit; the zero ID is nothing.
func (v *Stage) Light(id scene.ID) {
	if id != v.lit {
		v.lit = id
		v.redraw()
	}
}

// redraw has the view drawn anew in the next frame.
func (v *Stage) redraw() { v.raster.Refresh() }

// Picture returns what is on screen.
func (v *Stage) Picture() *scene.Picture { return &v.picture }

// draw is the raster's generator: it gets the size in device pixels.
func (v *Stage) draw(w, h int) image.Image {
	if v.image == nil || v.image.Rect.Dx() != w || v.image.Rect.Dy() != h {
		v.image = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	size := v.Size()
	if size.Width < 1 || size.Height < 1 {
		return v.image
	}
	v.arrange()
	v.write()
	v.renderer.Draw(v.image, float64(w)/float64(v.raster.Size().Width), &v.picture, v.study.Units(), v.colors())
	if v.Drawn != nil {
		v.Drawn(&v.picture)
	}
	return v.image
}

// arrange lists what there is to see and where it is on screen.
func (v *Stage) arrange() {
	v.place()
	v.viewpoint.Fill(&v.list, v.at())
	if v.lit.Kind != scene.Nothing {
		v.list.Light(v.lit)
	}
	v.picture.Project(v.list.Items, v.view)
}

// at is what the pointer is at.
func (v *Stage) at() scene.Pointer { return scene.Pointer{Hot: v.hot, Held: v.press.begun} }

// write names what is under the pointer or dragged, and where the pointer is.
func (v *Stage) write() {
	if !v.inside || v.press.down && v.press.hold == nil {
		return
	}
	words := v.viewpoint.Describe(v.hot, v.at())
	if v.press.begun {
		v.picture.Held(words, v.pointer, v.study.Units())
		return
	}
	v.picture.Tag(v.pointer, words)
	v.picture.Coordinates(v.pointer, v.study.Units())
}

// place chooses the part of the car that is shown. It stands still while
// something is dragged, and through an edit unless that took what the fit keeps
// in sight out of it.
func (v *Stage) place() {
	width, height := float64(v.Size().Width), float64(v.Size().Height)
	v.refit = v.refit || width != v.view.Width || height != v.view.Height
	v.view = v.view.Resized(width, height)
	v.view.Plane = v.viewpoint.Plane()
	if v.fit == free || v.press.down {
		return
	}
	f := v.viewpoint.Fits()[v.fit].Framing(width, height)
	lost := func(p r3.Vec) bool { return !v.view.Shows(p) && f.View.Shows(p) }
	if v.refit || f.Of != v.of || slices.ContainsFunc(f.Sights, lost) {
		v.view, v.of, v.refit = f.View, f.Of, false
	}
}

// SetFit keeps something in sight from now on: one of the viewpoint's fits.
func (v *Stage) SetFit(fit int) {
	v.fit, v.refit = fit, true
	v.settle()
}

// Zoom magnifies about the middle of the view.
func (v *Stage) Zoom(factor float64) {
	v.zoom(factor, r2.Vec{X: float64(v.Size().Width) / 2, Y: float64(v.Size().Height) / 2})
}

func (v *Stage) zoom(factor float64, about r2.Vec) {
	v.place()
	v.fit = free
	v.view = v.view.Zoomed(factor, about)
	v.settle()
}

// report passes on why an edit was refused, or that one was taken.
func (v *Stage) report(p []car.Problem) {
	if v.Refused != nil {
		v.Refused(p)
	}
}

// refuse passes on why something was refused, if it was.
func (v *Stage) refuse(p []car.Problem) {
	if len(p) > 0 {
		v.report(p)
	}
}

// idle are the hands of a viewpoint that has none.
type idle struct{}

func (idle) Cursor(scene.ID) scene.Cursor                 { return scene.Arrow }
func (idle) Point(scene.ID)                               {}
func (idle) Hold(*scene.Picture, r2.Vec, bool) scene.Hold { return nil }
func (idle) Click(scene.ID, bool) []car.Problem           { return nil }
func (idle) DoubleClick(scene.ID) []car.Problem           { return nil }
func (idle) Press(scene.Key, bool) []car.Problem          { return nil }

// wheelZoom is the magnification of one scrolled unit; a notch is ten.
const wheelZoom = 1.012

// Scrolled implements fyne.Scrollable: zoom about the pointer.
func (v *Stage) Scrolled(e *fyne.ScrollEvent) {
	v.zoom(math.Pow(wheelZoom, float64(e.Scrolled.DY)), vec(e.Position))
}
