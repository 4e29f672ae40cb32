package inputs

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// view is what the panel shows: a car, one of its setups, and how to write it.
type view struct {
	car     *car.Car
	setup   int
	units   units.System
	library stock.Library
}

// about says what a row is for.
type about struct {
	path     string // entry of the car file, as in a car.Problem; empty for none
	label    string
	help     string
	action   string                    // undo label; by itself "Set " and the label
	allowed  func(units.System) string // range, may be nil
	fallback func(units.System) string // what holds when left out, may be nil
}

// describe writes the help line.
func (a *about) describe(s units.System) string {
	text := a.help
	if a.label != "" {
		text = a.label + ": " + text
	}
	if a.allowed != nil {
		text += " " + a.allowed(s) + "."
	}
	if a.fallback != nil {
		text += " Left empty: " + a.fallback(s) + "."
	}
	return text
}

// lower writes a label within a sentence; abbreviations keep their capitals.
func lower(label string) string {
	first, n := utf8.DecodeRuneInString(label)
	if second, _ := utf8.DecodeRuneInString(label[n:]); unicode.IsUpper(second) {
		return label
	}
	return string(unicode.ToLower(first)) + label[n:]
}

// editor is what stands in a row: it shows a part of the car and may change it.
type editor interface {
	fyne.CanvasObject
	place(*row)
	show(view)
}

// origin is an editor whose change may be refused.
type origin interface {
	home() *row
	pending() bool     // It still holds a text that was refused.
	setRefused(v bool) // It looks so.
}

// row is one line of the panel: a label, one or more editors and a unit, and
// under them the reasons why a change was refused.
type row struct {
	widget.BaseWidget
	about
	panel    *Panel
	section  *section
	editors  []editor
	wide     bool            // the editors share all the width behind the label
	end      editor          // in the unit's place; nil for none
	quantity units.Quantity  // its unit stands at the end
	wanted   func(view) bool // whether the row is there; nil for always

	reasons []reason
	title   *canvas.Text
	unit    *canvas.Text
	why     *prose
}

// reason says why a change that was tried in one editor was refused.
type reason struct {
	from origin
	text string
}

// newRow returns a row of a section with its editors from left to right.
func newRow(s *section, a about, editors ...editor) *row {
	if a.action == "" {
		a.action = "Set " + lower(a.label)
	}
	r := &row{
		about: a, panel: s.panel, section: s, editors: editors,
		title: canvas.NewText(a.label, nil), unit: canvas.NewText("", nil), why: newProse("", theme.ColorNameError),
	}
	for _, e := range editors {
		e.place(r)
	}
	r.ExtendBaseWidget(r)
	return r
}

// show brings the row up to date.
func (r *row) show(v view) {
	if wanted := r.wanted == nil || r.wanted(v); wanted != r.Visible() {
		r.Hidden = !wanted
		r.panel.loose = true
		for _, e := range r.entries() {
			e.restore()
		}
	}
	for _, e := range r.editors {
		e.show(v)
	}
	if symbol := v.units.Symbol(r.quantity); symbol != r.unit.Text {
		r.unit.Text = symbol
		r.Refresh()
	}
}

// entries returns the editors in which something is typed.
func (r *row) entries() []*entry {
	var all []*entry
	for _, ed := range r.editors {
		if e, ok := ed.(*entry); ok {
			all = append(all, e)
		}
	}
	return all
}

// setTitle changes the label on screen; strong ones stand out.
func (r *row) setTitle(text string, strong bool) {
	if r.title.Text == text && r.title.TextStyle.Bold == strong {
		return
	}
	r.title.Text, r.title.TextStyle.Bold = text, strong
	r.Refresh()
}

// tell adds a reason; an empty one is none.
func (r *row) tell(from origin, text string) {
	if text != "" {
		r.setReasons(append(r.reasons, reason{from, text}))
	}
}

// unsay drops the reasons of what was tried in one editor.
func (r *row) unsay(from origin) {
	r.setReasons(slices.DeleteFunc(slices.Clone(r.reasons), func(old reason) bool { return old.from == from }))
}

func (r *row) setReasons(reasons []reason) {
	r.reasons = reasons
	texts := make([]string, len(reasons))
	for i, reason := range reasons {
		texts[i] = reason.text
	}
	if r.why.set(strings.Join(texts, "\n")) {
		r.panel.relayout()
	}
}

// MouseIn shows the row's help.
func (r *row) MouseIn(*desktop.MouseEvent) { r.panel.hover(&r.about) }

// MouseMoved does nothing.
func (r *row) MouseMoved(*desktop.MouseEvent) {}

// MouseOut goes back to the help of what has the focus.
func (r *row) MouseOut() { r.panel.hover(nil) }

// CreateRenderer lays the row out.
func (r *row) CreateRenderer() fyne.WidgetRenderer {
	rr := &rowRenderer{row: r}
	rr.colors()
	return rr
}
