package form

import (
	"slices"

	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// About says what a row or a button is for.
type About struct {
	Path    string // name of what the row edits, as in a Fault; empty for none
	Label   string
	Help    string
	Allowed func(units.System) string // range, may be nil
	Default func(units.System) string // what holds when left empty, may be nil
}

// describe writes the help line.
func (a *About) describe(s units.System) string {
	text := a.Help
	if a.Label != "" {
		text = a.Label + ": " + text
	}
	if a.Allowed != nil {
		text += " " + a.Allowed(s) + "."
	}
	if a.Default != nil {
		text += " Left empty: " + a.Default(s) + "."
	}
	return text
}

// Editor is what stands in a row: it shows a value and may change it.
type Editor interface {
	fyne.CanvasObject
	Update() // shows the value as it is now
	place(*Row)
}

// Row is one line of a form: a label, one or more editors and a unit, and under
// them what is said of the value and the reasons why a change was refused.
type Row struct {
	widget.BaseWidget
	About
	Editors  []Editor
	Wide     bool           // the editors share all the width behind the label
	End      Editor         // in the unit's place; nil for none
	Quantity units.Quantity // its unit stands at the end
	Wanted   func() bool    // whether the row is there; nil for always

	form    *Form
	section *Section
	why     *refusal
	remark  *remark // on the value; nil for none
	title   *canvas.Text
	unit    *canvas.Text
	frame   *canvas.Rectangle // while the row is marked; nil before it ever was
}

// NewRow returns a row with its editors from left to right, for an Item of the
// section.
func (s *Section) NewRow(a About, editors ...Editor) *Row {
	r := &Row{
		About: a, Editors: editors, why: newRefusal(Caption("", theme.ColorNameError).Flush()),
		form: s.form, section: s, title: canvas.NewText(a.Label, nil), unit: canvas.NewText("", nil),
	}
	for _, e := range editors {
		e.place(r)
	}
	r.ExtendBaseWidget(r)
	return r
}

// PutEnd puts an editor in the unit's place.
func (r *Row) PutEnd(e Editor) {
	r.End = e
	e.place(r)
}

// PutRemark says under the row what there is to say of its value, in a color of the
// theme; nothing takes no room.
func (r *Row) PutRemark(color fyne.ThemeColorName, text func() string) {
	r.remark = &remark{Caption("", color).Flush(), r.form, text}
	r.remark.prose.Hide()
}

// Remark returns what is said of the value.
func (r *Row) Remark() string {
	if r.remark == nil {
		return ""
	}
	return r.remark.prose.Text()
}

// Update brings the row up to date.
func (r *Row) Update() {
	if wanted := r.Wanted == nil || r.Wanted(); wanted != r.Visible() {
		r.Hidden = !wanted
		r.form.loose = true
		r.Restore()
	}
	for _, e := range r.Editors {
		e.Update()
	}
	if r.remark != nil && r.remark.prose.Tell(r.remark.text()) {
		r.form.loose = true
	}
	if symbol := r.form.units().Symbol(r.Quantity); symbol != r.unit.Text {
		r.unit.Text = symbol
		r.Refresh()
	}
}

// Rows lists the row.
func (r *Row) Rows() []*Row { return []*Row{r} }

// Restore takes back what was typed in the row.
func (r *Row) Restore() {
	for _, e := range r.entries() {
		e.Restore()
	}
}

// Retire ends a row whose values are no more. What is typed in it goes; it may
// still have the focus.
func (r *Row) Retire() {
	for _, e := range r.entries() {
		e.retire()
	}
}

// entries returns the editors in which something is typed.
func (r *Row) entries() []*Entry {
	var all []*Entry
	for _, ed := range r.Editors {
		if e, ok := ed.(*Entry); ok {
			all = append(all, e)
		}
	}
	return all
}

// SetTitle changes the label on screen; strong ones stand out.
func (r *Row) SetTitle(text string, strong bool) {
	if r.title.Text == text && r.title.TextStyle.Bold == strong {
		return
	}
	r.title.Text, r.title.TextStyle.Bold = text, strong
	r.Refresh()
}

// Section returns what the row stands in.
func (r *Row) Section() *Section { return r.section }

// Why is where the reasons stand why changes were refused.
func (r *Row) Why() *Prose { return r.why.prose }

// tell adds a reason.
func (r *Row) tell(from origin, text string) {
	r.setReasons(append(slices.Clone(r.why.reasons), reason{from, text}))
}

// unsay drops the reasons of what was tried in one editor.
func (r *Row) unsay(from origin) {
	r.setReasons(slices.DeleteFunc(slices.Clone(r.why.reasons), func(old reason) bool { return old.from == from }))
}

// outdate drops what the row has been told about changes tried elsewhere: its
// value is another one now.
func (r *Row) outdate() {
	r.setReasons(slices.DeleteFunc(slices.Clone(r.why.reasons), func(old reason) bool { return old.from.home() != r }))
}

func (r *Row) setReasons(reasons []reason) {
	if r.why.set(reasons) {
		r.form.relayout()
	}
}

// MouseIn shows the row's help.
func (r *Row) MouseIn(*desktop.MouseEvent) { r.form.hover(&r.About) }

// MouseMoved does nothing.
func (r *Row) MouseMoved(*desktop.MouseEvent) {}

// MouseOut goes back to the help of what has the focus.
func (r *Row) MouseOut() { r.form.hover(nil) }

// CreateRenderer lays the row out.
func (r *Row) CreateRenderer() fyne.WidgetRenderer {
	rr := &rowRenderer{row: r}
	rr.colors()
	rr.mark()
	return rr
}
