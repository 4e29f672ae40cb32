package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Refusal is the frame that lies on a field whose text is refused.
type Refusal struct {
	widget.BaseWidget
	frame *canvas.Rectangle
	on    bool
}

// NewRefusal returns a frame that does not show.
func NewRefusal() *Refusal {
	r := &Refusal{frame: canvas.NewRectangle(nil)}
	r.frame.StrokeWidth = 2
	r.ExtendBaseWidget(r)
	return r
}

// Mark shows or hides the frame.
func (r *Refusal) Mark(on bool) {
	if on != r.on {
		r.on = on
		r.Refresh()
	}
}

// CreateRenderer implements fyne.Widget.
func (r *Refusal) CreateRenderer() fyne.WidgetRenderer {
	renderer := &refusalRenderer{widget.NewSimpleRenderer(r.frame), r}
	renderer.Refresh()
	return renderer
}

type refusalRenderer struct {
	fyne.WidgetRenderer
	refusal *Refusal
}

// Refresh takes up the theme's color.
func (r *refusalRenderer) Refresh() {
	r.refusal.frame.Hidden = !r.refusal.on
	r.refusal.frame.StrokeColor = theme.Color(theme.ColorNameError)
	r.refusal.frame.CornerRadius = theme.InputRadiusSize()
	r.refusal.frame.Refresh()
}
