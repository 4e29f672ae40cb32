package inputs

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// readout shows a text that cannot be edited.
type readout struct {
	widget.BaseWidget
	text  func(view) string
	label *canvas.Text
}

func newReadout(text func(view) string) *readout {
	r := &readout{text: text, label: canvas.NewText("", nil)}
	r.ExtendBaseWidget(r)
	return r
}

func (r *readout) place(*row) {}

func (r *readout) show(v view) {
	if text := r.text(v); text != r.label.Text {
		r.label.Text = text
		r.Refresh()
	}
}

// CreateRenderer shows the text.
func (r *readout) CreateRenderer() fyne.WidgetRenderer {
	rr := &readoutRenderer{r}
	rr.colors()
	return rr
}

type readoutRenderer struct{ readout *readout }

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
