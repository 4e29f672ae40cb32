package listing

import (
	"math"

	"fyne.io/fyne/v2"
)

// FocusGained implements fyne.Focusable.
func (t *Table) FocusGained() {
	defer t.update(t.view)
	t.view.focused = true
}

// FocusLost implements fyne.Focusable.
func (t *Table) FocusLost() {
	defer t.update(t.view)
	t.view.focused = false
}

// TypedRune implements fyne.Focusable.
func (t *Table) TypedRune(rune) {}

// TypedKey implements fyne.Focusable: keys move the selection and scroll
// sideways.
func (t *Table) TypedKey(e *fyne.KeyEvent) {
	t.settle()
	row := t.find(t.view.selected)
	f := t.frame()
	page := max(int(f.height/f.pitch)-1, 1)
	switch e.Name {
	case fyne.KeyUp:
		t.move(row, row-1)
	case fyne.KeyDown:
		t.move(row, row+1)
	case fyne.KeyPageUp:
		t.move(row, row-page)
	case fyne.KeyPageDown:
		t.move(row, row+page)
	case fyne.KeyHome:
		t.choose(0)
	case fyne.KeyEnd:
		t.choose(f.rows - 1)
	case fyne.KeyLeft:
		t.sideways(-1)
	case fyne.KeyRight:
		t.sideways(1)
	case fyne.KeyReturn, fyne.KeyEnter:
		if row != None {
			tell(t.OnActivated, t.view.selected)
		}
	}
}

// move selects another row than the one selected; with none selected, the first
// one that is in sight whole.
func (t *Table) move(from, to int) {
	if from == None {
		to = int(math.Ceil(t.view.y / float64(pitch())))
	}
	t.choose(to)
}

// choose selects a row, or the nearest one that there is.
func (t *Table) choose(row int) {
	n := t.rows()
	if n == 0 {
		return
	}
	before := t.view
	row = min(max(row, 0), n-1)
	key := t.source.Key(row)
	t.hint, t.reveal = row, false
	t.view.selected = key
	t.show(row)
	t.pointer = nil // Rows that pass below a resting pointer are not pointed at.
	t.point(&before)
	if key != before.selected {
		tell(t.OnSelected, key)
	}
}

// keyStep is how far a key scrolls sideways over the text size.
const keyStep = 4

// sideways scrolls columns.
func (t *Table) sideways(direction float64) {
	before := t.view
	t.scroll(t.view.x+direction*keyStep*float64(t.natural().size), t.view.y)
	t.point(&before)
}
