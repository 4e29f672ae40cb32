package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// refusal is the frame that lies on a field whose text is refused.
type refusal struct {
	widget.BaseWidget
	frame *canvas.Rectangle
	on    bool
}

// newRefusal returns a frame that does not show.
func newRefusal() *refusal {
	r := &refusal{frame: canvas.NewRectangle(nil)}
	r.frame.StrokeWidth = 2
	r.ExtendBaseWidget(r)
	return r
}

// show shows or hides the frame.
func (r *refusal) show(on bool) {
	if on != r.on {
		r.on = on
		r.Refresh()
	}
}

// CreateRenderer implements fyne.Widget.
func (r *refusal) CreateRenderer() fyne.WidgetRenderer {
	renderer := &refusalRenderer{widget.NewSimpleRenderer(r.frame), r}
	renderer.Refresh()
	return renderer
}

type refusalRenderer struct {
	fyne.WidgetRenderer
	refusal *refusal
}

// Refresh takes up the theme's color.
func (r *refusalRenderer) Refresh() {
	r.refusal.frame.Hidden = !r.refusal.on
	r.refusal.frame.StrokeColor = theme.Color(theme.ColorNameError)
	r.refusal.frame.CornerRadius = theme.InputRadiusSize()
	r.refusal.frame.Refresh()
}
