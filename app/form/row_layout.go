package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

type rowRenderer struct{ row *Row }

func (rr *rowRenderer) Destroy() {}

func (rr *rowRenderer) Objects() []fyne.CanvasObject {
	r := rr.row
	objects := []fyne.CanvasObject{r.title}
	for _, e := range r.Editors {
		objects = append(objects, e)
	}
	if r.End != nil {
		objects = append(objects, r.End)
	}
	objects = append(objects, r.unit)
	for _, p := range rr.below() {
		objects = append(objects, p)
	}
	if r.frame != nil {
		objects = append(objects, r.frame)
	}
	return objects
}

// mark shows or hides the frame of a marked row.
func (rr *rowRenderer) mark() {
	r := rr.row
	marked := r.form.marked == r
	if r.frame == nil {
		if !marked {
			return
		}
		r.frame = canvas.NewRectangle(nil)
	}
	th := r.Theme()
	r.frame.Hidden = !marked
	r.frame.StrokeColor = th.Color(theme.ColorNamePrimary, fyne.CurrentApp().Settings().ThemeVariant())
	r.frame.StrokeWidth = 2
	r.frame.CornerRadius = th.Size(theme.SizeNameInputRadius)
}

// below are what stands under the editors.
func (rr *rowRenderer) below() []*Prose {
	if r := rr.row.remark; r != nil {
		return []*Prose{r.prose, rr.row.why.prose}
	}
	return []*Prose{rr.row.why.prose}
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
	s := slots{height: label.Height, end: width - rr.unitWidth()}
	for _, e := range r.Editors {
		s.height = max(s.height, e.MinSize().Height)
	}
	n := float32(len(r.Editors))
	left, each := float32(0), float32(0)
	if r.Wide {
		if r.title.Text != "" {
			left = fyne.MeasureText(r.form.columns.Label, text, fyne.TextStyle{}).Width + gap
		}
		s.end = width
		each = (width - left - (n-1)*gap) / n
	} else {
		each = fyne.MeasureText(r.form.columns.Number, text, fyne.TextStyle{}).Width + 2*th.Size(theme.SizeNameInnerPadding)
		left = s.end - n*(each+gap)
	}
	for i := range r.Editors {
		s.x = append(s.x, left+float32(i)*(each+gap))
		s.width = append(s.width, each)
	}
	if label.Width+gap > left && label.Width > 0 && n > 0 {
		s.top = label.Height
	}
	return s
}

// unitWidth is the room for a unit.
func (rr *rowRenderer) unitWidth() float32 {
	th := rr.row.Theme()
	return fyne.MeasureText(rr.row.form.columns.Unit, th.Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Width + th.Size(theme.SizeNamePadding)
}

// frameOut is how far the frame of a marked row is outside of it [px].
const frameOut = 2

func (rr *rowRenderer) Layout(size fyne.Size) {
	r, s := rr.row, rr.slots(size.Width)
	if r.frame != nil {
		r.frame.Move(fyne.NewPos(-frameOut, -frameOut))
		r.frame.Resize(size.AddWidthHeight(2*frameOut, 2*frameOut))
	}
	label := r.title.MinSize()
	r.title.Resize(label)
	r.title.Move(fyne.NewPos(0, 0))
	if s.top == 0 {
		r.title.Move(fyne.NewPos(0, (s.height-label.Height)/2))
	}
	for i, e := range r.Editors {
		e.Resize(fyne.NewSize(s.width[i], s.height))
		e.Move(fyne.NewPos(s.x[i], s.top))
	}
	unit := r.unit.MinSize()
	r.unit.Resize(unit)
	r.unit.Move(fyne.NewPos(s.end, s.top+(s.height-unit.Height)/2))
	if r.End != nil {
		r.End.Resize(fyne.NewSize(size.Width-s.end, s.height))
		r.End.Move(fyne.NewPos(s.end, s.top))
	}
	y := s.top + s.height
	for _, p := range rr.below() {
		p.Move(fyne.NewPos(0, y))
		y += wrapped(p, size.Width)
		p.Resize(fyne.NewSize(size.Width, y-p.Position().Y))
	}
}

func (rr *rowRenderer) MinSize() fyne.Size {
	r := rr.row
	width := r.Size().Width
	if width == 0 {
		width = firstWidth
	}
	s := rr.slots(width)
	height := s.top + s.height
	for _, p := range rr.below() {
		height += wrapped(p, width)
	}
	return fyne.NewSize(0, height)
}

// wrapped returns how high text is in a width.
func wrapped(p *Prose, width float32) float32 {
	if p.Size().Width != width {
		p.Resize(fyne.NewSize(width, p.Size().Height))
	}
	return p.MinSize().Height
}

func (rr *rowRenderer) Refresh() {
	rr.colors()
	rr.mark()
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
