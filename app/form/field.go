package form

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// field is what Entry and Draft have in common: a text with a value behind it.
// What is typed stays until it is taken or taken back, whatever happens to the
// value meanwhile. A refused text has a frame, and a reason.
type field struct {
	widget.Entry

	// Get returns the text of the value, with more digits while it is edited.
	Get func(edited bool) string
	// Hint is what stands there while the text is empty, as a placeholder; nil leaves
	// the placeholder as it is.
	Hint func() string

	host  Host     // that it stands in
	self  writable // the widget that this is a part of
	typed func()   // a person has changed the text
	row   *Row     // nil for a field that stands alone
	why   *refusal // of one that stands alone
	shown string   // text of the value that is shown or was before it was typed over
	gone  bool     // there is no value any more

	focused bool
	refused bool
	frame   *canvas.Rectangle // of a refused text
	wheel   *wheel
}

// writable is a field as the toolkit has it.
type writable interface {
	fyne.Widget
	fyne.Focusable
}

// init makes the parts of a field that stands in a host; self is the widget.
func (f *field) init(self writable, host Host) {
	f.self, f.host, f.why = self, host, newRefusal(Words(theme.ColorNameError))
	f.frame = canvas.NewRectangle(nil)
	f.wheel = newWheel(func(turn *fyne.ScrollEvent) { f.host.scrolled(turn) })
	f.OnChanged = f.changed
	f.Wrapping = fyne.TextWrap(fyne.TextTruncateClip) // A long text scrolls within the field.
	f.ExtendBaseWidget(self)
}

// UndoesText returns the field that has the focus when undo and redo are of what
// is typed there; nil when they are of the document.
func UndoesText(focus fyne.Focusable) Textual {
	if e, ok := focus.(*Entry); ok && e.Document {
		return nil
	}
	text, _ := focus.(Textual)
	return text
}

// Textual is where text is typed that has steps of its own to undo.
type Textual interface {
	fyne.Focusable
	Undo()
	Redo()
}

// Pending reports whether something was typed that has not been taken.
func (f *field) Pending() bool { return strings.TrimSpace(f.Text) != strings.TrimSpace(f.shown) }

// Refused reports whether the text is marked as refused.
func (f *field) Refused() bool { return f.refused }

// Update shows the value. What is being typed stays: it is a change now from the
// value as it has become.
func (f *field) Update() {
	f.hint()
	text := f.value()
	if !f.Pending() {
		f.write(text)
		return
	}
	if f.shown = text; !f.Pending() {
		f.forgive()
	}
}

// hint shows the placeholder of the moment.
func (f *field) hint() {
	if f.Hint == nil {
		return
	}
	if text := f.Hint(); text != f.PlaceHolder {
		f.SetPlaceHolder(text)
	}
}

// value returns the text of the value.
func (f *field) value() string {
	if f.gone || f.Get == nil {
		return ""
	}
	return f.Get(f.focused)
}

// write shows the text of the value.
func (f *field) write(text string) {
	f.shown = text
	f.Put(text)
}

// Put writes a text as if it had been typed, but reports it to nobody.
func (f *field) Put(text string) {
	if text == f.Text {
		return
	}
	f.OnChanged = nil
	f.SetText(text)
	f.OnChanged = f.changed
}

func (f *field) changed(string) {
	if f.typed != nil {
		f.typed()
	}
}

// Restore takes back what was typed.
func (f *field) Restore() {
	f.forgive()
	f.write(f.value())
}

// retire ends a field whose value is no more. It may still have the focus.
func (f *field) retire() {
	f.gone = true
	f.Restore()
}

// refuse marks a text outside of a row as refused and says why; empty takes that
// back.
func (f *field) refuse(why string) {
	f.setRefused(why != "")
	if f.why.set([]reason{{f, why}}) {
		f.host.grown()
	}
}

// forgive forgets that the text was refused.
func (f *field) forgive() {
	if f.row != nil {
		f.row.form.forgive(f)
		return
	}
	f.refuse("")
}

// Why is where the reason stands why a text was refused. It belongs below a field
// that stands alone; of one in a row the row has it.
func (f *field) Why() *Prose { return f.why.prose }

func (f *field) home() *Row { return f.row }

// setRefused shows or hides the frame of a refused text.
func (f *field) setRefused(refused bool) {
	if f.refused != refused {
		f.refused = refused
		f.Refresh()
	}
}

// Focus brings the field into sight and gives it the focus.
func (f *field) Focus() {
	if c := f.host.canvas(); c != nil {
		f.host.reveal(f.self)
		c.Focus(f.self)
	}
}

// Unfocus takes the focus from the field, if it has it.
func (f *field) Unfocus() {
	if c := f.host.canvas(); c != nil && c.Focused() == fyne.Focusable(f.self) {
		c.Unfocus()
	}
}

// SelectAll selects the text from its end to its start, so that of one too long
// the start is in sight.
func (f *field) SelectAll() {
	if f.Text == "" {
		return
	}
	shift := &fyne.KeyEvent{Name: desktop.KeyShiftLeft}
	f.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageDown})
	f.KeyDown(shift)
	f.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageUp})
	f.KeyUp(shift)
}

// AcceptsTab leaves the tab key to moving on.
func (f *field) AcceptsTab() bool { return false }

// CreateRenderer adds the frame of a refused text.
func (f *field) CreateRenderer() fyne.WidgetRenderer {
	r := &fieldRenderer{WidgetRenderer: f.Entry.CreateRenderer(), field: f}
	r.mark()
	return r
}

type fieldRenderer struct {
	fyne.WidgetRenderer
	field *field
}

func (r *fieldRenderer) Objects() []fyne.CanvasObject {
	return slices.Concat(r.WidgetRenderer.Objects(), []fyne.CanvasObject{r.field.frame, r.field.wheel})
}

func (r *fieldRenderer) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.field.frame.Resize(size)
	r.field.wheel.Resize(size)
}

func (r *fieldRenderer) Refresh() {
	r.WidgetRenderer.Refresh()
	r.mark()
}

// mark draws the frame of a refused text, or none.
func (r *fieldRenderer) mark() {
	th, frame := r.field.Theme(), r.field.frame
	frame.Hidden = !r.field.refused
	frame.StrokeColor = th.Color(theme.ColorNameError, fyne.CurrentApp().Settings().ThemeVariant())
	frame.StrokeWidth = 2
	frame.CornerRadius = th.Size(theme.SizeNameInputRadius)
	frame.Refresh()
}
