package panel

import (
	"bowline/app/form"
	"bowline/app/listing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// ListOn puts a list on a page: it is as high as its rows, of which no more than
// most are seen at once, and gives the wheel to the page unless it has more rows
// than that or is turned sideways.
func ListOn(page *form.Page, table *listing.Table, rows func() int, most int) *fyne.Container {
	room := listRoom{rows: rows, most: most}
	return container.New(room, form.UnderWheel(table, func(e *fyne.ScrollEvent) {
		if room.scrolls() || e.Scrolled.DX != 0 {
			table.Scrolled(e)
			return
		}
		page.Scroll.Scrolled(e)
	}))
}

// listRoom gives a list of rows the height of those that there are, within
// bounds.
type listRoom struct {
	rows func() int
	most int // rows
}

// listRow is the room for a row over the text size.
const listRow = 1.55

// MinSize implements fyne.Layout.
func (r listRoom) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := objects[0].MinSize() // has three rows
	least.Height += float32(max(0, min(r.rows(), r.most)-3)) * theme.TextSize() * listRow
	return least
}

// Layout implements fyne.Layout.
func (listRoom) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(0, 0))
		o.Resize(size)
	}
}

// scrolls reports whether the list has more rows than room.
func (r listRoom) scrolls() bool { return r.rows() > r.most }

// FarAway is from which distance on a list does not tell how far off an instant
// center is [m].
const FarAway = 9.99
