package sideview

import (
	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"gonum.org/v1/gonum/spatial/r2"
)

// drag is what the pressed mouse button holds.
type drag struct {
	id      scene.ID // Nothing: not dragging, or panning
	panning bool
	moves   bool     // the hole itself moves
	begun   bool     // the document has been told
	grip    r2.Vec   // from the pointer to what is dragged [px]
	from    r2.Vec   // where the button went down, in the dragged bracket's own frame or, for the target, in the ground's [m]
	dot     bool     // the button went down on a combination's dot
	moved   bool     // the mouse has moved since
	before  *car.Car // the car when the button went down
}

func (d *drag) active() bool { return d.id.Kind != scene.Nothing || d.panning }

// MouseDown implements desktop.Mouseable: it takes hold of what is under the
// pointer.
func (v *SideView) MouseDown(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(v); c != nil {
		c.Focus(v)
	}
	v.place()
	at := vec(e.Position)
	id := v.picture.Pick(at)
	v.pointer = at
	v.setHot(id)
	v.telling.Flush()
	dot := id.Kind == scene.Combination
	if dot {
		// A click picks the dot; a drag takes what is behind, where that is the
		// target or nothing.
		if id = v.picture.PickBehind(at); id.Kind != scene.TargetBox {
			id = scene.ID{}
		}
	}
	v.grab(id, at, e.Modifier)
	v.drag.dot, v.drag.before = dot, v.study.Document().Car()
}

// grab takes hold of a hole, a bracket or the target, else of the view.
func (v *SideView) grab(id scene.ID, at r2.Vec, held fyne.KeyModifier) {
	switch kind := id.Kind; {
	case kind == scene.Pivot || kind == scene.Hole:
		v.study.Select(id.Row)
		v.drag = drag{id: id, moves: v.study.Moving() || held&fyne.KeyModifierShift != 0}
		if p, ok := v.picture.Find(id); ok {
			v.drag.grip = r2.Sub(p, at)
		}
	case kind == scene.ChassisBody || kind == scene.HousingBody:
		v.drag = drag{id: id}
		v.drag.from = v.study.Local(v.bracketRow(), v.view.World(at))
	case kind == scene.TargetBox && v.study.Searching():
		v.drag = drag{id: id, from: v.view.World(at)}
	default:
		v.drag = drag{panning: true}
	}
}

// bracketRow is a row whose frame the dragged bracket has.
func (v *SideView) bracketRow() car.Row {
	if v.drag.id.Kind == scene.ChassisBody {
		return car.ChassisUpper
	}
	return car.HousingUpper
}

// MouseUp implements desktop.Mouseable. A click on a free hole takes it.
func (v *SideView) MouseUp(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	v.soon.Flush()
	d := v.drag
	if d.id.Kind == scene.Hole && !d.begun && !d.moves {
		v.report(v.study.Choose(d.id.Row, d.id.Index))
	}
	v.endDrag()
	v.clicked(d.dot && !d.moved)
}

// Dragged implements fyne.Draggable.
func (v *SideView) Dragged(e *fyne.DragEvent) {
	v.pointer, v.drag.moved = vec(e.Position), true
	switch {
	case v.drag.panning:
		v.fit = Free
		v.view = v.view.Panned(r2.Vec{X: float64(e.Dragged.DX), Y: float64(e.Dragged.DY)})
		v.Redraw()
	case v.drag.active():
		v.soon.Ask()
	}
}

// drop brings what is held to where the pointer is by now. The mouse tells of
// more places than there are pictures; those in between are passed over.
func (v *SideView) drop() {
	if v.drag.panning || !v.drag.active() {
		return
	}
	v.begin()
	v.report(v.dragTo(v.pointer))
}

// DragEnd implements fyne.Draggable.
func (v *SideView) DragEnd() { v.endDrag() }

// begin makes the drag one undo step.
func (v *SideView) begin() {
	if v.drag.begun {
		return
	}
	v.drag.begun = true
	label := "Move bracket"
	switch {
	case v.drag.id.Kind == scene.Pivot || v.drag.id.Kind == scene.Hole:
		label = "Use another " + v.drag.id.Row.String() + " hole"
		if v.drag.moves {
			label = "Move " + v.drag.id.Row.String() + " hole"
		}
	case v.drag.id.Kind == scene.ChassisBody:
		label = "Move chassis bracket"
	case v.drag.id.Kind == scene.HousingBody:
		label = "Move housing bracket"
	case v.drag.id.Kind == scene.TargetBox:
		label = "Move target"
		if side.Edges(v.drag.id.Index) != side.AllEdges {
			label = "Resize target"
		}
		v.setHot(v.drag.id) // even if it was taken hold of under a dot
	}
	v.study.Document().Begin(label)
}

// dragTo brings what is held to the pointer.
func (v *SideView) dragTo(pointer r2.Vec) []car.Problem {
	d := &v.drag
	switch d.id.Kind {
	case scene.Pivot, scene.Hole:
		p := v.view.World(r2.Add(pointer, d.grip))
		if d.moves {
			return v.study.Move(d.id.Row, d.id.Index, p)
		}
		problems := v.study.Choose(d.id.Row, v.study.Nearest(d.id.Row, p))
		v.hot = scene.ID{Kind: scene.Pivot, Row: d.id.Row, Index: v.study.Hole(d.id.Row)}
		return problems
	case scene.TargetBox:
		low, high := side.Edges(d.id.Index).Corners(r2.Sub(v.view.World(pointer), d.from))
		return v.study.MoveTarget(d.before, low, high)
	default:
		to := v.study.Local(v.bracketRow(), v.view.World(pointer))
		return v.study.MoveBracket(d.id.Kind == scene.ChassisBody, d.before, r2.Sub(to, d.from))
	}
}

// endDrag lets go.
func (v *SideView) endDrag() {
	v.soon.Flush()
	if v.drag.begun {
		v.study.Document().End()
		v.report(nil)
	}
	v.drag = drag{}
	v.Redraw()
}

// cancelDrag lets go and takes the drag back.
func (v *SideView) cancelDrag() {
	v.soon.Drop()
	if v.drag.begun {
		v.study.Document().Cancel()
		v.report(nil)
	}
	v.drag = drag{}
	v.Redraw()
}
