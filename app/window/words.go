package window

import (
	"bowline/app/readout"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// prose returns a place for sentences in a color of the theme.
func prose(color fyne.ThemeColorName) *readout.Prose {
	return readout.NewProse("", theme.SizeNameText, color, fyne.TextStyle{})
}

// tell writes text into a place for sentences that is there only while there is
// any, and tells whether it differs from before.
func tell(p *readout.Prose, text string) bool {
	p.Hidden = text == ""
	return p.Set(text)
}

// reveal brings an object within a scroll into sight, no farther than needed.
func reveal(s *container.Scroll, o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	top := d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(s.Content).Y
	to := s.Offset
	to.Y = min(max(to.Y, top+o.Size().Height-s.Size().Height), top)
	if to != s.Offset {
		s.ScrollToOffset(to)
	}
}

// scrolled stacks objects that scroll up and down together.
func scrolled(objects ...fyne.CanvasObject) fyne.CanvasObject {
	return container.NewVScroll(container.New(besideBar{}, container.NewVBox(objects...)))
}

// besideBar is the layout of what scrolls: it stays clear of the bar at its
// right.
type besideBar struct{}

// barRoom is the width of a bar, under the pointer too (look).
const barRoom = 6

// MinSize implements fyne.Layout.
func (besideBar) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(barRoom, 0)
}

// Layout implements fyne.Layout.
func (besideBar) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.Position{})
	objects[0].Resize(size.SubtractWidthHeight(barRoom, 0))
}
