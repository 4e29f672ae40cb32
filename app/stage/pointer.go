package stage

import (
	"bowline/app/scene"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"gonum.org/v1/gonum/spatial/r2"
)

// press is what the pressed mouse button is about.
type press struct {
	down  bool
	on    scene.ID   // what was under the pointer
	shift bool       // Shift was held
	hold  scene.Hold // what is dragged; nil where that is the picture
	begun bool       // it has been dragged
	moved bool       // the mouse has moved
}

// vec turns a position into a screen point.
func vec(p fyne.Position) r2.Vec { return r2.Vec{X: float64(p.X), Y: float64(p.Y)} }

// MouseIn implements desktop.Hoverable.
func (v *Stage) MouseIn(e *desktop.MouseEvent) { v.hover(e) }

// MouseMoved implements desktop.Hoverable.
func (v *Stage) MouseMoved(e *desktop.MouseEvent) { v.hover(e) }

// MouseOut implements desktop.Hoverable.
func (v *Stage) MouseOut() {
	v.inside, v.hot = false, scene.ID{}
	v.hands.Point(v.hot)
	v.redraw()
}

// hover takes note of where the pointer is.
func (v *Stage) hover(e *desktop.MouseEvent) {
	if e.Button&desktop.MouseButtonPrimary == 0 {
		v.endDrag() // The button went up where the stage does not hear of it.
	}
	v.inside, v.pointer = true, vec(e.Position)
	if !v.press.down {
		v.hot = v.picture.Pick(v.pointer)
		v.hands.Point(v.hot)
	}
	v.redraw()
}

// settle has the view drawn anew and finds what is under a pointer that may be at
// rest while the view changes.
func (v *Stage) settle() {
	v.redraw()
	if !v.inside || v.press.down {
		return
	}
	v.arrange()
	if hot := v.picture.Pick(v.pointer); hot != v.hot {
		v.hot = hot
		v.study.Then(func() { v.hands.Point(v.hot) })
	}
}

// cursors are the toolkit's cursors.
var cursors = map[scene.Cursor]desktop.Cursor{
	scene.Arrow: desktop.DefaultCursor, scene.Hand: desktop.PointerCursor, scene.Cross: desktop.CrosshairCursor,
	scene.Across: desktop.HResizeCursor, scene.Upright: desktop.VResizeCursor,
}

// Cursor implements desktop.Cursorable.
func (v *Stage) Cursor() desktop.Cursor { return cursors[v.hands.Cursor(v.hot)] }

// MouseDown implements desktop.Mouseable: it takes hold of what is under the
// pointer, or else of the picture.
func (v *Stage) MouseDown(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(v); c != nil {
		c.Focus(v)
	}
	v.place()
	v.pointer = vec(e.Position)
	v.hot = v.picture.Pick(v.pointer)
	v.hands.Point(v.hot)
	shift := e.Modifier&fyne.KeyModifierShift != 0
	v.press = press{down: true, on: v.hot, shift: shift, hold: v.hands.Hold(&v.picture, v.pointer, shift)}
}

// MouseUp implements desktop.Mouseable. A press and release at one place is a
// click.
func (v *Stage) MouseUp(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	clicked, shift, moved := v.press.on, v.press.shift, v.press.moved
	if moved {
		clicked = scene.ID{}
	}
	v.endDrag()
	v.clicks = [2]scene.ID{clicked, v.clicks[0]}
	v.refuse(v.hands.Click(clicked, shift))
	if v.Clicked != nil && !moved && !shift {
		v.Clicked(clicked)
	}
}

// DoubleTapped implements fyne.DoubleTappable.
func (v *Stage) DoubleTapped(*fyne.PointEvent) {
	if v.clicks[0] == v.clicks[1] {
		v.refuse(v.hands.DoubleClick(v.clicks[0]))
	}
	v.clicks = [2]scene.ID{}
	v.settle()
}

// Dragged implements fyne.Draggable.
func (v *Stage) Dragged(e *fyne.DragEvent) {
	v.pointer, v.press.moved = vec(e.Position), true
	switch {
	case v.press.hold != nil:
		v.soon.Ask()
	case v.press.down:
		v.fit = free
		v.view = v.view.Panned(r2.Vec{X: float64(e.Dragged.DX), Y: float64(e.Dragged.DY)})
		v.redraw()
	}
}

// drop brings what is held to where the pointer is by now. The mouse tells of
// more places than there are frames; those in between are passed over.
func (v *Stage) drop() {
	if v.press.hold == nil {
		return
	}
	v.press.begun = true
	id, problems := v.press.hold.To(v.view, v.pointer)
	v.hot = id
	v.hands.Point(id)
	v.report(problems)
	v.redraw()
}

// DragEnd implements fyne.Draggable.
func (v *Stage) DragEnd() { v.endDrag() }

// endDrag lets go of what is held.
func (v *Stage) endDrag() {
	if v.press.down {
		v.soon.Flush()
		v.release(scene.Hold.End)
	}
}

// cancelDrag lets go of what is held and takes the drag back.
func (v *Stage) cancelDrag() {
	v.soon.Drop()
	v.release(scene.Hold.Cancel)
}

// release ends a press in one of two ways.
func (v *Stage) release(end func(scene.Hold)) {
	if v.press.hold != nil {
		end(v.press.hold)
	}
	if v.press.begun {
		v.report(nil)
	}
	v.press = press{}
	v.settle()
}
