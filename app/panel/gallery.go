package panel

import (
	"slices"

	"bowline/app/form"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Exhibit is one thing of a panel's evidence, with its name.
type Exhibit struct {
	Name   string
	Object fyne.CanvasObject
	Tools  fyne.CanvasObject // act on it and stand beside its name; nil for none
}

// Showcase fills a panel's evidence with one exhibit at a time, chosen by name in a low
// row above it.
type Showcase struct {
	widget.BaseWidget
	exhibits []Exhibit
	names    *form.Radio
	list     *form.Select // in place of the names where they have no room
	shown    int
	object   *fyne.Container
}

// Gallery returns the exhibits with the first on show.
func Gallery(exhibits ...Exhibit) *Showcase {
	c := &Showcase{exhibits: exhibits}
	var names []string
	var objects []fyne.CanvasObject
	for i, e := range exhibits {
		names = append(names, e.Name)
		objects = append(objects, e.Object)
		if e.Tools != nil {
			objects = append(objects, e.Tools)
		}
		c.mark(i)
	}
	shown := func() string { return names[c.shown] }
	c.names = form.NewRadio(names, shown, func(name string) { c.Choose(slices.Index(names, name)) })
	c.list = form.NewSelect(func() []string { return names }, shown, form.Always(c.Choose))
	c.list.Update()
	c.names.Hidden, c.list.Hidden = len(names) < 2, true
	c.object = container.New(hall{c}, append(objects, c.names, c.list)...)
	c.ExtendBaseWidget(c)
	return c
}

// mark shows an exhibit or hides it, whichever it is to be.
func (c *Showcase) mark(index int) {
	e := c.exhibits[index]
	for _, o := range []fyne.CanvasObject{e.Object, e.Tools} {
		switch {
		case o == nil:
		case index == c.shown:
			o.Show()
		default:
			o.Hide()
		}
	}
}

// Choose puts an exhibit on show.
func (c *Showcase) Choose(index int) {
	was := c.shown
	c.shown = index
	c.mark(was)
	c.mark(index)
	c.names.Update()
	c.list.Update()
	c.object.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (c *Showcase) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(c.object) }

// hall is the layout of a Showcase: names and tools in one row where they fit, the exhibit
// below them. Names that have no room stand in a list.
type hall struct{ *Showcase }

// MinSize implements fyne.Layout.
func (h hall) MinSize([]fyne.CanvasObject) fyne.Size {
	var least fyne.Size
	row := float32(0)
	if len(h.exhibits) > 1 {
		row = h.names.MinSize().Height
	}
	for _, e := range h.exhibits {
		least = least.Max(e.Object.MinSize())
		if e.Tools != nil {
			least, row = least.Max(fyne.NewSize(e.Tools.MinSize().Width, 0)), max(row, e.Tools.MinSize().Height)
		}
	}
	return least.AddWidthHeight(0, row)
}

// Layout implements fyne.Layout.
func (h hall) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	shown, y, used := h.exhibits[h.shown], float32(0), float32(0)
	if len(h.exhibits) > 1 {
		least := h.names.MinSize()
		used, y = min(least.Width, size.Width), least.Height
		for o, on := range map[fyne.CanvasObject]bool{h.names: least.Width <= size.Width, h.list: least.Width > size.Width} {
			if o.Resize(fyne.NewSize(used, y)); on {
				o.Show()
			} else {
				o.Hide()
			}
		}
	}
	if o := shown.Tools; o != nil {
		least := o.MinSize()
		at := fyne.NewPos(max(0, size.Width-least.Width), 0)
		if used+theme.Padding()+least.Width > size.Width {
			at = fyne.NewPos(0, y)
		}
		o.Move(at)
		o.Resize(fyne.NewSize(min(least.Width, size.Width), least.Height))
		y = max(y, at.Y+least.Height)
	}
	shown.Object.Move(fyne.NewPos(0, y))
	shown.Object.Resize(fyne.NewSize(size.Width, max(0, size.Height-y)))
}

// Charts returns charts as exhibits.
func (h Host) Charts(keys ...chart.Key) []Exhibit {
	var list []Exhibit
	for _, key := range keys {
		kinds := plotting.Kinds()
		i := slices.IndexFunc(kinds, func(k plotting.Kind) bool { return k.Key == key })
		list = append(list, Exhibit{Name: kinds[i].Name, Object: h.Chart(key)})
	}
	return list
}
