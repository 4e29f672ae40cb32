package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// holesLayout puts verdict, progress and tools over the list, which gets the
// height that is left. The tools scroll when they would leave it too little. While
// one of them is open, the card below the list gives up its room first.
type holesLayout struct {
	panel *holesPanel
	split *container.Split // list over card
	tight bool             // the card has given up its room
	given float64          // offset of the split that gave it up
	loose float64          // offset before
}

const (
	// listShare is the part of the list in the height that it shares with what is
	// to be known of the combination picked.
	listShare = 0.5
	// leastList is the height that list and card keep.
	leastList = 230
	// tightList is what they keep while the card has given up its room: enough for
	// six rows of the list, and in a high page for this part of what there is.
	tightList  = 262
	tightShare = 0.5
)

// Layout implements fyne.Layout.
func (l *holesLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	verdict, status, tools := objects[0], objects[1], objects[2].(*container.Scroll)
	y := float32(0)
	put := func(o fyne.CanvasObject, height float32) {
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, height))
		y += height
	}
	for _, o := range []fyne.CanvasObject{verdict, status} {
		if o.Visible() {
			// The height of words depends on their width.
			o.Resize(fyne.NewSize(size.Width, o.Size().Height))
			put(o, o.MinSize().Height)
		}
	}
	tight := l.panel.toolOpen()
	keep := float32(leastList)
	if tight {
		keep = max(tightList, tightShare*(size.Height-y))
	}
	tools.Resize(fyne.NewSize(size.Width, tools.Size().Height))
	spread(tools.Content)
	put(tools, max(min(tools.Content.MinSize().Height, size.Height-y-keep), tools.MinSize().Height))
	tools.Refresh()
	height := max(size.Height-y, 0)
	l.tighten(tight, height)
	put(l.split, height)
}

// tighten gives the list what room the card can do without, and takes it back,
// unless the person has divided it otherwise meanwhile.
func (l *holesLayout) tighten(tight bool, height float32) {
	theirs := l.tight && l.split.Offset != l.given
	switch room := height - 2*theme.Padding(); {
	case tight && !theirs && room > 0:
		if !l.tight {
			l.loose = l.split.Offset
		}
		l.given = float64(max(room-l.panel.chosen.head(), 0) / room)
		l.split.SetOffset(l.given)
	case !tight && l.tight && !theirs:
		l.split.SetOffset(l.loose)
	}
	l.tight = tight
}

// MinSize implements fyne.Layout.
func (*holesLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := fyne.NewSize(0, leastList)
	for i, o := range objects {
		if !o.Visible() {
			continue
		}
		m := o.MinSize()
		least.Width = max(least.Width, m.Width)
		if i < 3 {
			least.Height += m.Height
		}
	}
	return least
}

// spread gives everything in a container its width, however deep, and then the
// height that depends on it: what was hidden has had no width, so that its words
// would be taken to need more lines than they do.
func spread(o fyne.CanvasObject) {
	for range 2 {
		spreadOnce(o)
	}
}

func spreadOnce(o fyne.CanvasObject) {
	c, ok := o.(*fyne.Container)
	if !ok || !c.Visible() || c.Layout == nil {
		return
	}
	c.Layout.Layout(c.Objects, c.Size())
	for _, part := range c.Objects {
		spreadOnce(part)
	}
}
