package inputs

import (
	"fmt"
	"strconv"

	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// item is a part of a section that follows the car.
type item interface {
	show(view)
	rows() []*row // that it consists of
}

// section is a group of inputs that opens and closes under its header.
type section struct {
	panel  *Panel
	title  string
	header *header
	body   *fyne.Container
	items  []item
	owned  bool // labels mean nothing without the title
}

func newSection(p *Panel, title string) *section {
	s := &section{panel: p, title: title, body: container.New(stack{gap: rowGap, inset: bodyInset})}
	s.header = newHeader(s)
	s.body.Hide()
	return s
}

const (
	rowGap    = 2 // between rows
	bodyInset = 6 // around the rows of a section
)

// isOpen tells whether the section's inputs can be seen.
func (s *section) isOpen() bool { return s.body.Visible() }

// setOpen opens or closes the section.
func (s *section) setOpen(open bool) {
	if open == s.isOpen() {
		return
	}
	if open {
		s.show(s.panel.view())
		s.body.Show()
	} else {
		s.body.Hide()
	}
	s.header.Refresh()
	s.panel.relayout()
}

// show brings everything in the section up to date.
func (s *section) show(v view) {
	for _, i := range s.items {
		i.show(v)
	}
}

func (s *section) rows() []*row {
	var all []*row
	for _, i := range s.items {
		all = append(all, i.rows()...)
	}
	return all
}

// add puts an item at the end, which o draws.
func (s *section) add(i item, o fyne.CanvasObject) {
	s.items = append(s.items, i)
	s.body.Objects = append(s.body.Objects, o)
}

func (r *row) rows() []*row { return []*row{r} }

// row adds a row.
func (s *section) row(a about, editors ...editor) *row {
	if s.owned && a.action == "" {
		a.action = "Set " + lower(s.title) + ": " + lower(a.label)
	}
	r := newRow(s, a, editors...)
	s.add(r, r)
	return r
}

// numbers adds a row for each plain number of a table of the car file.
func (s *section) numbers(table string) {
	for _, t := range car.Sections {
		if t.Table != table {
			continue
		}
		for _, f := range t.Fields {
			s.field(f)
		}
	}
}

// field adds the row of a plain number.
func (s *section) field(f *car.Field) {
	a := about{path: f.Path, label: f.Label, help: f.Help, allowed: f.Range}
	if f.Optional {
		a.fallback = func(u units.System) string { return u.FormatExact(f.Quantity, f.Default) }
	}
	n := &number{quantity: f.Quantity, in: f.In, optional: f.Optional, fallback: f.Default, thin: isWall(f.Path)}
	s.row(a, newEntry(n)).quantity = f.Quantity
}

// text adds a row for a text.
func (s *section) text(a about, in func(*car.Car) *string) *row {
	r := s.row(a, newEntry(&words{in: func(c *car.Car, _ int) *string { return in(c) }}))
	r.wide = true
	return r
}

// choice adds a row to choose from a list.
func (s *section) choice(a about, c *choice) {
	s.row(a, c).wide = true
}

// readout adds a row for a computed number.
func (s *section) readout(a about, q units.Quantity, value func(*car.Car) float64) {
	s.row(a, newReadout(func(v view) string {
		return strconv.FormatFloat(v.units.FromSI(q, value(v.car)), 'f', v.units.Decimals(q), 64)
	})).quantity = q
}

// header opens and closes its section, by pointer or by Space and Enter.
type header struct {
	widget.BaseWidget
	section          *section
	focused, hovered bool
	refused          int // editors in the section whose text was refused
}

func newHeader(s *section) *header {
	h := &header{section: s}
	h.ExtendBaseWidget(h)
	return h
}

func (h *header) set(state *bool, on bool) {
	*state = on
	h.Refresh()
}

// Tapped opens or closes the section.
func (h *header) Tapped(*fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(h); c != nil {
		c.Focus(h)
	}
	h.section.setOpen(!h.section.isOpen())
}

// TypedKey opens or closes the section.
func (h *header) TypedKey(key *fyne.KeyEvent) {
	switch open := h.section.isOpen(); key.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		h.section.setOpen(!open)
	case fyne.KeyRight:
		h.section.setOpen(true)
	case fyne.KeyLeft:
		h.section.setOpen(false)
	}
}

// TypedRune does nothing.
func (h *header) TypedRune(rune) {}

// FocusGained marks the header and brings it into sight.
func (h *header) FocusGained() {
	h.set(&h.focused, true)
	h.section.panel.scrollTo(h)
}

// FocusLost unmarks the header.
func (h *header) FocusLost() { h.set(&h.focused, false) }

// MouseIn marks the header.
func (h *header) MouseIn(*desktop.MouseEvent) { h.set(&h.hovered, true) }

// MouseMoved does nothing.
func (h *header) MouseMoved(*desktop.MouseEvent) {}

// MouseOut unmarks the header.
func (h *header) MouseOut() { h.set(&h.hovered, false) }

// CreateRenderer draws the header.
func (h *header) CreateRenderer() fyne.WidgetRenderer {
	r := &headerRenderer{
		header: h, back: canvas.NewRectangle(nil), rule: canvas.NewRectangle(nil), arrow: canvas.NewImageFromResource(nil),
		title: canvas.NewText(h.section.title, nil), note: canvas.NewText("", nil),
	}
	r.title.TextStyle.Bold = true
	r.Refresh()
	return r
}

type headerRenderer struct {
	header      *header
	back, rule  *canvas.Rectangle
	arrow       *canvas.Image
	title, note *canvas.Text
}

func (r *headerRenderer) Destroy() {}

func (r *headerRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.back, r.rule, r.arrow, r.title, r.note}
}

func (r *headerRenderer) MinSize() fyne.Size {
	th := r.header.Theme()
	return fyne.NewSize(0, r.title.MinSize().Height+2*th.Size(theme.SizeNamePadding))
}

func (r *headerRenderer) Layout(size fyne.Size) {
	th := r.header.Theme()
	icon, gap := th.Size(theme.SizeNameInlineIcon), th.Size(theme.SizeNamePadding)
	r.back.Resize(size)
	r.rule.Resize(fyne.NewSize(size.Width, 1))
	r.arrow.Resize(fyne.NewSquareSize(icon))
	r.arrow.Move(fyne.NewPos(0, (size.Height-icon)/2))
	middle := func(t *canvas.Text, x float32) {
		t.Resize(t.MinSize())
		t.Move(fyne.NewPos(x, (size.Height-t.MinSize().Height)/2))
	}
	middle(r.title, icon+gap)
	middle(r.note, size.Width-r.note.MinSize().Width-bodyInset)
}

func (r *headerRenderer) Refresh() {
	h, th, variant := r.header, r.header.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	back := theme.ColorNameHeaderBackground
	if h.hovered {
		back = theme.ColorNameHover
	}
	r.back.FillColor = th.Color(back, variant)
	r.back.StrokeWidth = 0
	if h.focused {
		r.back.StrokeColor, r.back.StrokeWidth = th.Color(theme.ColorNamePrimary, variant), 2
	}
	r.rule.FillColor = th.Color(theme.ColorNameSeparator, variant)
	r.title.Color = th.Color(theme.ColorNameForeground, variant)
	r.title.TextSize = th.Size(theme.SizeNameText)
	r.note.Color = th.Color(theme.ColorNameError, variant)
	r.note.TextSize = th.Size(theme.SizeNameCaptionText)
	r.note.Text = ""
	if h.refused > 0 {
		r.note.Text = fmt.Sprintf("%d refused", h.refused)
	}
	arrow := theme.IconNameMenuExpand
	if h.section.isOpen() {
		arrow = theme.IconNameArrowDropDown
	}
	if icon := th.Icon(arrow); r.arrow.Resource != icon {
		r.arrow.Resource = icon
	}
	r.Layout(h.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}
