package form

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// header opens and closes its section, by pointer or by Space and Enter.
type header struct {
	widget.BaseWidget
	section          *Section
	focused, hovered bool
	refused          int // entries in the section whose text was refused
}

func newHeader(s *Section) *header {
	h := &header{section: s}
	h.ExtendBaseWidget(h)
	return h
}

func (h *header) set(state *bool, on bool) {
	*state = on
	h.Refresh()
}

// count shows how many entries of the section are refused.
func (h *header) count(refused int) {
	if refused != h.refused {
		h.refused = refused
		h.Refresh()
	}
}

// Tapped opens or closes the section.
func (h *header) Tapped(*fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(h); c != nil {
		c.Focus(h)
	}
	h.section.Open(!h.section.IsOpen())
}

// TypedKey opens or closes the section.
func (h *header) TypedKey(key *fyne.KeyEvent) {
	switch open := h.section.IsOpen(); key.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		h.section.Open(!open)
	case fyne.KeyRight:
		h.section.Open(true)
	case fyne.KeyLeft:
		h.section.Open(false)
	}
}

// TypedRune does nothing.
func (h *header) TypedRune(rune) {}

// FocusGained marks the header and brings it into sight.
func (h *header) FocusGained() {
	h.set(&h.focused, true)
	h.section.form.host.reveal(h)
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
		title: canvas.NewText(h.section.Title, nil), note: canvas.NewText("", nil),
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
	if icon := arrow(h.section.IsOpen()); r.arrow.Resource != icon {
		r.arrow.Resource = icon
	}
	r.Layout(h.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}
