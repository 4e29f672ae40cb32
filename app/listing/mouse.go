package listing

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// MouseIn implements desktop.Hoverable.
func (t *Table) MouseIn(e *desktop.MouseEvent) { t.MouseMoved(e) }

// MouseMoved implements desktop.Hoverable.
func (t *Table) MouseMoved(e *desktop.MouseEvent) {
	if e.Button&desktop.MouseButtonPrimary == 0 {
		t.grab = grab{} // The button went up where the table does not hear of it.
	}
	before := t.view
	t.pointer = &point{e.Position.X, e.Position.Y}
	t.point(&before)
}

// MouseOut implements desktop.Hoverable.
func (t *Table) MouseOut() {
	before := t.view
	t.pointer = nil
	t.point(&before)
}

// point finds what is under the pointer, has the table drawn if it looks
// different from before, or in any case if before is nil, and tells of what is
// pointed at. It comes last in everything that may have moved rows.
func (t *Table) point(before *view) {
	at, pointed := spot{row: None, column: None}, t.view.heading
	if t.pointer != nil && (t.grab.part == nothing || t.grab.part == heading) {
		at = t.spot(*t.pointer)
	}
	key := None
	if at.row != None {
		key = t.source.Key(at.row)
	}
	moved := key != t.under
	if moved {
		t.under, t.view.hovered = key, key
	}
	t.view.heading, t.view.bar = None, nothing
	switch {
	case at.part == heading:
		t.view.heading = at.column
	case at.part == barDown || at.part == barAcross:
		t.view.bar = at.part
	case t.grab.part == barDown || t.grab.part == barAcross:
		t.view.bar = t.grab.part
	}
	if before == nil || t.view != *before {
		t.redraw()
	}
	if moved {
		tell(t.OnHovered, key)
	}
	if pointed != t.view.heading {
		tell(t.OnPointed, t.view.heading)
	}
}

// Cursor implements desktop.Cursorable: a heading can be clicked.
func (t *Table) Cursor() desktop.Cursor {
	if t.view.heading != None {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// MouseDown implements desktop.Mouseable: a row is selected as soon as it is
// pressed.
func (t *Table) MouseDown(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil {
		c.Focus(t)
	}
	t.settle()
	before, p := t.view, point{e.Position.X, e.Position.Y}
	at, key := t.spot(p), None
	t.grab = grab{}
	switch at.part {
	case body:
		key = t.source.Key(at.row)
		t.hint, t.reveal = at.row, false
		t.view.selected = key
	case heading:
		t.grab = grab{part: heading, column: at.column}
	case barDown, barAcross:
		t.takeBar(at.part, p)
		t.view.bar, t.reveal = at.part, false
	}
	t.presses = [2]int{t.presses[1], key}
	t.update(before)
	if key != None && key != before.selected {
		tell(t.OnSelected, key)
	}
}

// MouseUp implements desktop.Mouseable. A heading that is still under the
// pointer has been clicked.
func (t *Table) MouseUp(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	before, held := t.view, t.grab
	t.grab = grab{}
	at := t.spot(point{e.Position.X, e.Position.Y})
	clicked := held.part == heading && at.part == heading && at.column == held.column
	if clicked {
		t.scroll(t.view.x, 0) // Who sorts wants to see what comes first.
	}
	t.point(&before)
	if clicked {
		tell(t.OnSort, held.column)
	}
}

// DoubleTapped implements fyne.DoubleTappable: a row pressed twice is
// activated.
func (t *Table) DoubleTapped(*fyne.PointEvent) {
	key := t.presses[1]
	if key == None || t.presses[0] != key || t.find(key) == None {
		return
	}
	t.presses = [2]int{None, None}
	tell(t.OnActivated, key)
}

// Dragged implements fyne.Draggable: it moves the thumb held.
func (t *Table) Dragged(e *fyne.DragEvent) {
	t.pointer = &point{e.Position.X, e.Position.Y}
	if t.grab.part != barDown && t.grab.part != barAcross {
		return
	}
	defer t.update(t.view)
	t.dragBar(point{e.Position.X, e.Position.Y})
}

// DragEnd implements fyne.Draggable.
func (t *Table) DragEnd() {
	before := t.view
	t.grab = grab{}
	t.point(&before)
}

// Scrolled implements fyne.Scrollable: by pixels, and sideways with Shift.
func (t *Table) Scrolled(e *fyne.ScrollEvent) {
	dx, dy := float64(e.Scrolled.DX), float64(e.Scrolled.DY)
	if dx == 0 && t.held()&fyne.KeyModifierShift != 0 {
		dx, dy = dy, 0
	}
	t.reveal = false
	before := t.view
	t.scroll(t.view.x-dx, t.view.y-dy)
	t.point(&before)
}
