package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Readout shows a text that cannot be edited.
type Readout struct {
	widget.BaseWidget
	text  func() string
	label *canvas.Text
}

// NewReadout returns a readout of what text returns.
func NewReadout(text func() string) *Readout {
	r := &Readout{text: text, label: canvas.NewText("", nil)}
	r.ExtendBaseWidget(r)
	return r
}

func (r *Readout) place(*Row) {}

// Text returns what is shown.
func (r *Readout) Text() string { return r.label.Text }

// Update shows the text as it is now.
func (r *Readout) Update() {
	if text := r.text(); text != r.label.Text {
		r.label.Text = text
		r.Refresh()
	}
}

// CreateRenderer shows the text.
func (r *Readout) CreateRenderer() fyne.WidgetRenderer {
	rr := &readoutRenderer{r}
	rr.colors()
	return rr
}

type readoutRenderer struct{ readout *Readout }

func (rr *readoutRenderer) Destroy() {}

func (rr *readoutRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{rr.readout.label}
}

// inset is where the text of an entry begins.
func (rr *readoutRenderer) inset() float32 {
	return rr.readout.Theme().Size(theme.SizeNameInnerPadding)
}

func (rr *readoutRenderer) MinSize() fyne.Size {
	return rr.readout.label.MinSize().AddWidthHeight(rr.inset(), 2*rr.inset())
}

func (rr *readoutRenderer) Layout(size fyne.Size) {
	least := rr.readout.label.MinSize()
	rr.readout.label.Move(fyne.NewPos(rr.inset(), (size.Height-least.Height)/2))
	rr.readout.label.Resize(least)
}

func (rr *readoutRenderer) Refresh() {
	rr.colors()
	rr.Layout(rr.readout.Size())
	rr.readout.label.Refresh()
}

func (rr *readoutRenderer) colors() {
	th := rr.readout.Theme()
	rr.readout.label.Color = th.Color(theme.ColorNameForeground, fyne.CurrentApp().Settings().ThemeVariant())
	rr.readout.label.TextSize = th.Size(theme.SizeNameText)
}
