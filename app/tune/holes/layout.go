package holes

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// room divides the panel's room: verdict, progress, launches and tools over the list, which
// gets the height that is left. The tools scroll when they would leave it too little. While
// one of them is open, the card below the list gives up its room first.
type room struct {
	panel *Panel
	tight bool    // the card has given up its room
	given float64 // offset of the split that gave it up
	loose float64 // offset before
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
func (l *room) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	verdict, status, launches, tools := l.panel.verdict, l.panel.status, l.panel.launches.object, l.panel.tools
	y := float32(0)
	put := func(o fyne.CanvasObject, height float32) {
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, height))
		y += height
	}
	for _, o := range []fyne.CanvasObject{verdict, status, launches} {
		if o.Visible() {
			// The height of words depends on their width.
			o.Resize(fyne.NewSize(size.Width, o.Size().Height))
			spread(o)
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
	l.panel.head.Resize(fyne.NewSize(size.Width, y))
	put(l.panel.split, height)
}

// tighten gives the list what room the card can do without, and takes it back,
// unless the person has divided it otherwise meanwhile.
func (l *room) tighten(tight bool, height float32) {
	theirs := l.tight && l.panel.split.Offset != l.given
	switch shared := height - 2*theme.Padding(); {
	case tight && !theirs && shared > 0:
		if !l.tight {
			l.loose = l.panel.split.Offset
		}
		l.given = float64(max(shared-l.panel.chosen.head(), 0) / shared)
		l.panel.split.SetOffset(l.given)
	case !tight && l.tight && !theirs:
		l.panel.split.SetOffset(l.loose)
	}
	l.tight = tight
}

// MinSize implements fyne.Layout.
func (l *room) MinSize([]fyne.CanvasObject) fyne.Size {
	least := fyne.NewSize(l.panel.split.MinSize().Width, leastList)
	for _, o := range l.panel.head.Objects {
		if o.Visible() {
			m := o.MinSize()
			least.Width = max(least.Width, m.Width)
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
