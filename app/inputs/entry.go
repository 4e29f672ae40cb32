package inputs

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// entry edits one value. It hands over what was typed on Enter and when the
// focus leaves; Escape takes it back. A refused text stays, marked, until it is
// corrected or taken back.
type entry struct {
	widget.Entry
	row   *row
	value value
	shown string // what the panel has written into it

	focused bool
	refused bool
	mark    *canvas.Rectangle // frame of a refused text
	wheel   *wheel
}

func newEntry(v value) *entry {
	e := &entry{value: v, mark: canvas.NewRectangle(nil), wheel: newWheel()}
	e.Wrapping = fyne.TextWrap(fyne.TextTruncateClip)
	e.ExtendBaseWidget(e)
	return e
}

// IsField tells whether something that can have the focus is where a value of a
// car is typed.
func IsField(f fyne.Focusable) bool {
	_, ok := f.(*entry)
	return ok
}

// newLongEntry returns an entry whose text wraps.
func newLongEntry(v value) *entry {
	e := newEntry(v)
	e.MultiLine = true
	e.Wrapping = fyne.TextWrapWord
	e.SetMinRowsVisible(2)
	return e
}

func (e *entry) place(r *row) { e.row, e.wheel.row = r, r }
func (e *entry) home() *row   { return e.row }

// pending tells whether something was typed that the car has not taken.
func (e *entry) pending() bool { return e.Text != e.shown }

// show writes the value. What is being typed stays: it is a change now from the
// value as it has become.
func (e *entry) show(v view) {
	text := e.value.text(v, e.focused)
	if !e.pending() {
		e.write(text)
		return
	}
	if e.shown = text; !e.pending() {
		e.row.panel.forgive(e)
	}
}

func (e *entry) write(text string) {
	if text == e.shown && text == e.Text {
		return
	}
	e.shown = text
	e.SetText(text)
}

// commit hands over what was typed, if anything, and tells whether it was taken.
func (e *entry) commit() bool {
	p := e.row.panel
	if !e.pending() {
		e.restore()
		return true
	}
	change, err := e.value.parse(e.Text, p.view())
	if err != nil {
		p.forgive(e)
		p.refuse(e, err.Error())
		return false
	}
	if !p.apply(e, e.row.action, change) {
		return false
	}
	e.restore()
	return true
}

// restore takes back what was typed.
func (e *entry) restore() {
	p := e.row.panel
	p.forgive(e)
	e.write(e.value.text(p.view(), e.focused))
}

// step moves the value and hands it over.
func (e *entry) step(n int) bool {
	text, ok := e.value.stepped(e.Text, n, e.row.panel.view())
	if ok {
		e.SetText(text)
		e.commit()
		e.selectAll()
	}
	return ok
}

// setRefused shows or hides the frame of a refused text.
func (e *entry) setRefused(refused bool) {
	if e.refused == refused {
		return
	}
	e.refused = refused
	e.Refresh()
}

// FocusGained shows more digits, selected, so that typing replaces them.
func (e *entry) FocusGained() {
	e.Entry.FocusGained()
	e.focused = true
	e.show(e.row.panel.view())
	e.selectAll()
	e.row.panel.attend(&e.row.about, e)
}

// FocusLost hands over what was typed.
func (e *entry) FocusLost() {
	e.Entry.FocusLost()
	e.focused = false
	e.commit()
	e.row.panel.leave()
}

// selectAll selects the text from its end to its start, so that of one too long
// the start is in sight.
func (e *entry) selectAll() {
	if e.Text == "" {
		return
	}
	shift := &fyne.KeyEvent{Name: desktop.KeyShiftLeft}
	e.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageDown})
	e.KeyDown(shift)
	e.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageUp})
	e.KeyUp(shift)
}

// TypedKey handles the keys that mean more here than in any text.
func (e *entry) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyEscape:
		e.restore()
		e.selectAll()
	case fyne.KeyReturn, fyne.KeyEnter:
		if e.commit() {
			e.selectAll()
		}
	default:
		if n := stepKeys[key.Name]; n == 0 || !e.step(n) {
			e.Entry.TypedKey(key)
		}
	}
}

// stepKeys are the keys that move a number, and by how many steps.
var stepKeys = map[fyne.KeyName]int{
	fyne.KeyUp: 1, fyne.KeyDown: -1, fyne.KeyPageUp: 10, fyne.KeyPageDown: -10,
}

// AcceptsTab leaves the tab key to moving on.
func (e *entry) AcceptsTab() bool { return false }

// CreateRenderer adds the frame of a refused text.
func (e *entry) CreateRenderer() fyne.WidgetRenderer {
	r := &entryRenderer{WidgetRenderer: e.Entry.CreateRenderer(), entry: e}
	r.frame()
	return r
}

type entryRenderer struct {
	fyne.WidgetRenderer
	entry *entry
}

func (r *entryRenderer) Objects() []fyne.CanvasObject {
	return slices.Concat(r.WidgetRenderer.Objects(), []fyne.CanvasObject{r.entry.mark, r.entry.wheel})
}

func (r *entryRenderer) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.entry.mark.Resize(size)
	r.entry.wheel.Resize(size)
}

func (r *entryRenderer) Refresh() {
	r.WidgetRenderer.Refresh()
	r.frame()
}

// frame draws the frame, or none.
func (r *entryRenderer) frame() {
	th, m := r.entry.Theme(), r.entry.mark
	m.Hidden = !r.entry.refused
	m.StrokeColor = th.Color(theme.ColorNameError, fyne.CurrentApp().Settings().ThemeVariant())
	m.StrokeWidth = 2
	m.CornerRadius = th.Size(theme.SizeNameInputRadius)
	m.Refresh()
}

// wheel lies on an entry and gives the mouse wheel to the panel: an entry would
// keep it for text that is too long.
type wheel struct {
	widget.BaseWidget
	row *row
}

func newWheel() *wheel {
	w := &wheel{}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled scrolls the panel.
func (w *wheel) Scrolled(e *fyne.ScrollEvent) { w.row.panel.scroll.Scrolled(e) }

// CreateRenderer draws nothing.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewWithoutLayout())
}
