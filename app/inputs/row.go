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

type rowRenderer struct{ row *row }

func (rr *rowRenderer) Destroy() {}

func (rr *rowRenderer) Objects() []fyne.CanvasObject {
	r := rr.row
	objects := []fyne.CanvasObject{r.title}
	for _, e := range r.editors {
		objects = append(objects, e)
	}
	if r.end != nil {
		objects = append(objects, r.end)
	}
	return append(objects, r.unit, r.why)
}

// slots are where the parts of a row go.
type slots struct {
	top      float32   // of the editors; above it stands a label too long for their line
	height   float32   // of the editors
	x, width []float32 // of each editor
	end      float32   // where the unit begins
}

// slots divides a width among the parts of the row.
func (rr *rowRenderer) slots(width float32) slots {
	r, th := rr.row, rr.row.Theme()
	gap, text := th.Size(theme.SizeNamePadding), th.Size(theme.SizeNameText)
	label := r.title.MinSize()
	s := slots{height: label.Height, end: width - unitWidth(th)}
	for _, e := range r.editors {
		s.height = max(s.height, e.MinSize().Height)
	}
	n := float32(len(r.editors))
	left, each := float32(0), float32(0)
	if r.wide {
		if r.title.Text != "" {
			left = fyne.MeasureText("Upper housing", text, fyne.TextStyle{}).Width + gap
		}
		s.end = width
		each = (width - left - (n-1)*gap) / n
	} else {
		each = fyne.MeasureText("0000.0000", text, fyne.TextStyle{}).Width + 2*th.Size(theme.SizeNameInnerPadding)
		left = s.end - n*(each+gap)
	}
	for i := range r.editors {
		s.x = append(s.x, left+float32(i)*(each+gap))
		s.width = append(s.width, each)
	}
	if label.Width+gap > left && label.Width > 0 && n > 0 {
		s.top = label.Height
	}
	return s
}

// unitWidth is the room for a unit, the widest being N/mm.
func unitWidth(th fyne.Theme) float32 {
	return fyne.MeasureText("N/mm", th.Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Width + th.Size(theme.SizeNamePadding)
}

func (rr *rowRenderer) Layout(size fyne.Size) {
	r, s := rr.row, rr.slots(size.Width)
	label := r.title.MinSize()
	r.title.Resize(label)
	r.title.Move(fyne.NewPos(0, 0))
	if s.top == 0 {
		r.title.Move(fyne.NewPos(0, (s.height-label.Height)/2))
	}
	for i, e := range r.editors {
		e.Resize(fyne.NewSize(s.width[i], s.height))
		e.Move(fyne.NewPos(s.x[i], s.top))
	}
	unit := r.unit.MinSize()
	r.unit.Resize(unit)
	r.unit.Move(fyne.NewPos(s.end, s.top+(s.height-unit.Height)/2))
	if r.end != nil {
		r.end.Resize(fyne.NewSize(size.Width-s.end, s.height))
		r.end.Move(fyne.NewPos(s.end, s.top))
	}
	y := s.top + s.height
	r.why.Move(fyne.NewPos(0, y))
	r.why.Resize(fyne.NewSize(size.Width, size.Height-y))
}

func (rr *rowRenderer) MinSize() fyne.Size {
	r := rr.row
	width := r.Size().Width
	if width == 0 {
		width = firstWidth
	}
	if r.why.Size().Width != width {
		r.why.Resize(fyne.NewSize(width, r.why.Size().Height))
	}
	s := rr.slots(width)
	return fyne.NewSize(0, s.top+s.height+r.why.MinSize().Height)
}

func (rr *rowRenderer) Refresh() {
	rr.colors()
	rr.Layout(rr.row.Size())
	for _, o := range rr.Objects() {
		o.Refresh()
	}
}

func (rr *rowRenderer) colors() {
	r, th, variant := rr.row, rr.row.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	r.title.Color = th.Color(theme.ColorNameForeground, variant)
	r.title.TextSize = th.Size(theme.SizeNameText)
	r.unit.Color = th.Color(theme.ColorNamePlaceHolder, variant)
	r.unit.TextSize = th.Size(theme.SizeNameCaptionText)
}
