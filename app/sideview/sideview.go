// Package sideview is the window's canvas: it shows the study's car in side
// view and turns the mouse and the keyboard into edits of it.
package sideview

import (
	"image"
	"math"
	"slices"

	"bowline/app/look"
	"bowline/app/runner"
	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
	"gonum.org/v1/gonum/spatial/r2"
)

// Fit is what the view keeps in sight while nobody zooms or pans. It fits anew
// when its size changes, another car is loaded or a fit is asked for, and after
// an edit that took what it keeps in sight out of the picture.
type Fit int

// The fits.
const (
	FitLink  Fit = iota // rear tire, brackets and instant center; the target too while the holes are searched
	FitCar              // both tires
	FitCloud            // target and most of the combinations of holes as well
	Free                // as zoomed and panned
)

// SideView is the side view widget.
type SideView struct {
	widget.BaseWidget

	study  *study.Study
	colors func() *palette.Palette

	raster   *canvas.Raster
	image    *image.RGBA
	renderer *scene.Renderer
	items    []scene.Item
	picture  scene.Picture
	view     scene.View
	fit      Fit
	refit    bool // the view does not suit its size or car any more

	hot     scene.ID // under the pointer
	pointer r2.Vec   // [px]
	inside  bool     // the pointer is over the view
	drag    drag
	soon    *runner.Soon // brings what is dragged to the pointer

	search  bool         // the combinations of holes are looked at
	cloud   side.Cloud   // of the study's combinations, while they are looked at
	clicks  [2]int       // the combinations clicked last, the last one first
	telling *runner.Soon // tells the study of the combination under the pointer

	// Refused is told why an edit was refused, and nil when one was taken.
	Refused func([]car.Problem)
	// Drawn, if set, is called after each drawing of the picture.
	Drawn func(*scene.Picture)
}

// New returns the side view of a study. colors is asked at every drawing.
func New(s *study.Study, colors func() *palette.Palette) *SideView {
	v := &SideView{study: s, colors: colors, renderer: scene.NewRenderer(), refit: true}
	v.soon = runner.NewSoon(fyne.Do, v.drop)
	v.clicks = [2]int{study.None, study.None}
	v.telling = runner.NewSoon(fyne.Do, v.point)
	v.raster = look.NewPicture(v.draw)
	v.ExtendBaseWidget(v)
	v.gather(study.Ranking)
	s.Listen(v.follow)
	return v
}

// CreateRenderer implements fyne.Widget.
func (v *SideView) CreateRenderer() fyne.WidgetRenderer { return look.PictureRenderer(v.raster) }

// MinSize implements fyne.CanvasObject.
func (v *SideView) MinSize() fyne.Size { return fyne.NewSize(280, 240) }

// follow shows what has changed.
func (v *SideView) follow(c study.Change) {
	if c.Has(study.Loaded) {
		v.letGo()
	}
	v.gather(c)
	if c&^(study.File|study.History|study.Progress) != 0 {
		v.Redraw()
	}
}

// letGo lets go of a car that has gone, to show the one in its place.
func (v *SideView) letGo() {
	v.soon.Drop()
	v.drag, v.refit = drag{}, true
	if v.fit == Free {
		v.fit = FitLink
	}
}

// Redraw has the view drawn anew in the next frame.
func (v *SideView) Redraw() { v.raster.Refresh() }

// Picture returns what is on screen.
func (v *SideView) Picture() *scene.Picture { return &v.picture }

// draw is the raster's generator: it gets the size in device pixels.
func (v *SideView) draw(w, h int) image.Image {
	if v.image == nil || v.image.Rect.Dx() != w || v.image.Rect.Dy() != h {
		v.image = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	size := v.Size()
	if size.Width < 1 || size.Height < 1 {
		return v.image
	}
	v.project()
	v.renderer.Draw(v.image, float64(w)/float64(v.raster.Size().Width), &v.picture, v.study.Units(), v.colors())
	if v.Drawn != nil {
		v.Drawn(&v.picture)
	}
	return v.image
}

// place chooses the part of the world that is shown. It stands still while
// something is dragged, and through an edit unless that took what the fit keeps
// in sight out of it.
func (v *SideView) place() {
	width, height := float64(v.Size().Width), float64(v.Size().Height)
	v.refit = v.refit || width != v.view.Width || height != v.view.Height
	v.view = v.view.Resized(width, height)
	if v.fit == Free || v.drag.active() {
		return
	}
	fitted, sights := v.fitted()
	if v.refit || slices.ContainsFunc(sights[:], func(p r2.Vec) bool { return !shows(v.view, p) && shows(fitted, p) }) {
		v.view, v.refit = fitted, false
	}
}

// fitted returns the view that the fit asks for, and points of the ground's
// frame that it keeps in sight: the front of the car, or the instant center and,
// while the holes are searched, two corners of the target.
func (v *SideView) fitted() (scene.View, [3]r2.Vec) {
	r, width, height := v.study.Result(), v.view.Width, v.view.Height
	ic, k := r.Ride.InstantCenter, r.Car.Check
	switch {
	case v.fit == FitCar:
		front := r2.Vec{X: r.Ride.Pose.Ground.Wheelbase + r.Car.Tires.FrontRadius}
		return side.FitCar(width, height, r), [3]r2.Vec{front, front, front}
	case !v.search:
		return side.FitLink(width, height, r), [3]r2.Vec{ic, ic, ic}
	}
	sights := [3]r2.Vec{ic, {X: k.TargetICX[0], Y: k.TargetICZ[0]}, {X: k.TargetICX[1], Y: k.TargetICZ[1]}}
	if v.fit == FitCloud {
		return side.FitCloud(width, height, r, &v.cloud), sights
	}
	return side.FitTarget(width, height, r), sights
}

// shows tells whether a point of the ground's frame is in the picture.
func shows(v scene.View, p r2.Vec) bool {
	at := v.Screen(p)
	return at.X >= 0 && at.X <= v.Width && at.Y >= 0 && at.Y <= v.Height
}

// project puts the study's car on screen and finds what is under the pointer.
func (v *SideView) project() {
	v.place()
	v.arrange()
	if v.inside && !v.drag.active() {
		if hot := v.picture.Pick(v.pointer); hot != v.hot {
			v.setHot(hot)
			v.arrange()
		}
	}
	if !v.inside || v.drag.panning {
		return
	}
	words := side.Describe(v.hot, v.study.Result(), v.study.Station(), v.options())
	if v.drag.begun {
		v.picture.Held(words, v.pointer, v.study.Units(), v.view.Screen(v.study.Station().InstantCenter))
		return
	}
	v.picture.Tag(v.pointer, words)
	v.picture.Coordinates(v.pointer, v.study.Units())
}

// arrange lists what is drawn and where.
func (v *SideView) arrange() {
	v.items = side.Build(v.items, v.study.Result(), v.study.Station(), v.options())
	v.picture.Project(v.items, v.view)
}

// options say how the car is shown now.
func (v *SideView) options() side.Options {
	return side.Options{
		Units: v.study.Units(), Case: v.study.Case(), Selected: v.study.Pivot(),
		Hot: v.hot, Labels: true, Moving: v.study.Moving(), Launch: v.instant(),
		Tuning: v.study.Searching(), Held: v.drag.begun, Cloud: v.shownCloud(), Other: v.other(),
	}
}

// instant is what the bars carry at the time of the launch looked at; nil
// while a travel is.
func (v *SideView) instant() *side.Instant {
	i, ok := v.study.Instant()
	if !ok {
		return nil
	}
	r := v.study.Launch()
	return &side.Instant{Tension: tensions(r, i), Spin: r.Frames[i].Spin, Distance: r.Distance[i], CenterPath: v.study.CenterPath()}
}

// tensions are what the bars carry at an instant of a launch.
func tensions(r *launch.Result, i int) (tension [2][2]float64) {
	for _, bar := range launch.Bars {
		tension[bar.Pair()][bar.Side()] = r.Tension[bar][i]
	}
	return tension
}

// other is the setup that the current one is held against, or nil.
func (v *SideView) other() *side.Other {
	others := v.study.Others()
	if len(others) == 0 {
		return nil
	}
	o := others[0]
	shown := &side.Other{Name: o.Name, Result: o.Result, Station: &o.Station}
	if i, ok := v.study.Instant(); ok && o.Launch != nil && len(o.Launch.Frames) > 0 {
		tension := tensions(o.Launch, min(i, len(o.Launch.Frames)-1))
		shown.Tension = &tension
	}
	return shown
}

// SetFit keeps something in sight from now on.
func (v *SideView) SetFit(f Fit) {
	v.fit, v.refit = f, true
	v.Redraw()
}

// Zoom magnifies about the middle of the view.
func (v *SideView) Zoom(factor float64) {
	v.zoom(factor, r2.Vec{X: float64(v.Size().Width) / 2, Y: float64(v.Size().Height) / 2})
}

func (v *SideView) zoom(factor float64, about r2.Vec) {
	v.place()
	v.fit = Free
	v.view = v.view.Zoomed(factor, about)
	v.Redraw()
}

// wheelZoom is the magnification of one scrolled unit; a notch is ten.
const wheelZoom = 1.012

// Scrolled implements fyne.Scrollable: zoom about the pointer.
func (v *SideView) Scrolled(e *fyne.ScrollEvent) {
	v.zoom(math.Pow(wheelZoom, float64(e.Scrolled.DY)), vec(e.Position))
}

// vec turns a position into a screen point.
func vec(p fyne.Position) r2.Vec { return r2.Vec{X: float64(p.X), Y: float64(p.Y)} }

// MouseIn implements desktop.Hoverable.
func (v *SideView) MouseIn(e *desktop.MouseEvent) { v.hover(e) }

// MouseMoved implements desktop.Hoverable.
func (v *SideView) MouseMoved(e *desktop.MouseEvent) { v.hover(e) }

// MouseOut implements desktop.Hoverable.
func (v *SideView) MouseOut() {
	v.inside = false
	v.setHot(scene.ID{})
	v.telling.Flush()
	v.Redraw()
}

// hover takes note of where the pointer is.
func (v *SideView) hover(e *desktop.MouseEvent) {
	if e.Button&desktop.MouseButtonPrimary == 0 {
		v.endDrag() // The button went up where the view does not hear of it.
	}
	v.inside, v.pointer = true, vec(e.Position)
	if !v.drag.active() {
		v.setHot(v.picture.Pick(v.pointer))
		v.telling.Flush()
	}
	v.Redraw()
}

// Cursor implements desktop.Cursorable.
func (v *SideView) Cursor() desktop.Cursor {
	switch v.hot.Kind {
	case scene.Pivot, scene.Hole, scene.Combination:
		return desktop.PointerCursor
	case scene.ChassisBody, scene.HousingBody:
		return desktop.CrosshairCursor
	case scene.TargetBox:
		return targetCursor(v.hot)
	}
	return desktop.DefaultCursor
}

// FocusGained implements fyne.Focusable.
func (v *SideView) FocusGained() {}

// FocusLost implements fyne.Focusable.
func (v *SideView) FocusLost() {}

// TypedRune implements fyne.Focusable.
func (v *SideView) TypedRune(r rune) {
	switch r {
	case '+', '=':
		v.Zoom(1.2)
	case '-':
		v.Zoom(1 / 1.2)
	case 'f', 'F':
		v.SetFit(FitLink)
	case 'c', 'C':
		v.SetFit(FitCar)
	case 'h', 'H':
		v.SetFit(FitCloud)
	case 'm', 'M':
		v.study.SetMoving(!v.study.Moving())
	case '1', '2', '3', '4':
		v.study.Select(car.Rows[r-'1'])
	}
}

// TypedKey implements fyne.Focusable: arrows nudge the selected pivot.
func (v *SideView) TypedKey(e *fyne.KeyEvent) {
	step := 1.0
	if modifiers()&fyne.KeyModifierShift != 0 {
		step = study.NudgeFast
	}
	switch e.Name {
	case fyne.KeyLeft:
		v.report(v.study.Nudge(-step, 0))
	case fyne.KeyRight:
		v.report(v.study.Nudge(step, 0))
	case fyne.KeyUp:
		v.report(v.study.Nudge(0, step))
	case fyne.KeyDown:
		v.report(v.study.Nudge(0, -step))
	case fyne.KeyReturn, fyne.KeyEnter:
		v.usePicked()
	case fyne.KeyEscape:
		v.cancelDrag()
	}
}

// report passes on why an edit was refused.
func (v *SideView) report(p []car.Problem) {
	if v.Refused != nil {
		v.Refused(p)
	}
}

// modifiers returns the modifier keys held down, where the driver tells.
func modifiers() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}
