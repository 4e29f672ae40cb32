package form

import "fyne.io/fyne/v2"

// attend shows the help of what has got the focus and brings it into sight.
func (f *Form) attend(a *About, o fyne.CanvasObject) {
	f.focused, f.pointed = a, false
	f.mark(nil)
	f.showHelp()
	f.host.reveal(o)
}

// leave takes the help of what had the focus away.
func (f *Form) leave() {
	f.focused = nil
	f.showHelp()
}

// hover shows the help of what the pointer is on; nil for nothing.
func (f *Form) hover(a *About) {
	f.hovered, f.pointed = a, true
	f.showHelp()
}

// showHelp shows the help of what has the focus or is under the pointer: of the
// later of the two.
func (f *Form) showHelp() {
	text, path := "", ""
	if f.marked != nil {
		path = f.marked.Path
	}
	if a := f.atHand(); a != nil {
		text, path = a.describe(f.units()), a.Path
	}
	if text != f.help {
		f.help = text
		f.host.help(text)
	}
	if path != f.path {
		f.path = path
		f.host.at(path)
	}
}

// atHand returns what has the focus or is under the pointer: the later of the two, or
// nil.
func (f *Form) atHand() *About {
	if f.hovered != nil && (f.pointed || f.focused == nil) {
		return f.hovered
	}
	return f.focused
}

// Reveal opens the section of a path's row, brings the row into sight and marks it, until
// another row is shown or one is typed in. It reports whether there is such a row. The
// focus stays where it is.
func (f *Form) Reveal(path string) bool {
	r := f.Row(path)
	if r == nil && path != "" {
		f.UpdateAll() // Rows that come and go may not have come yet.
		r = f.Row(path)
	}
	if path == "" || r == nil {
		f.mark(nil)
		f.showHelp()
		return false
	}
	r.section.Open(true)
	f.mark(r)
	f.showHelp()
	// As much of the section as there is room for, then its title, the row above all.
	f.bring(r.section.body)
	if r.section.header != nil {
		f.bring(r.section.header)
	}
	f.bring(r)
	return true
}

// bring brings a part of the form into sight, one too that was never drawn, whose place
// the driver does not know.
func (f *Form) bring(o fyne.CanvasObject) {
	top, found := within(f.list, o)
	if !found || !o.Visible() || f.host.canvas() == nil {
		return
	}
	d := fyne.CurrentApp().Driver()
	top += d.AbsolutePositionForObject(f).Y - d.AbsolutePositionForObject(f.host.Scroll.Content).Y
	f.host.revealAt(top, o.Size().Height)
}

// within returns how far below the top of a container one of its parts stands.
func within(c *fyne.Container, o fyne.CanvasObject) (top float32, found bool) {
	for _, each := range c.Objects {
		if each == o {
			return each.Position().Y, true
		}
		if inner, ok := each.(*fyne.Container); ok {
			if top, found := within(inner, o); found {
				return inner.Position().Y + top, true
			}
		}
	}
	return 0, false
}

// Marked returns the path of the row that Reveal has marked; empty for none.
func (f *Form) Marked() string {
	if f.marked == nil {
		return ""
	}
	return f.marked.Path
}

// mark marks a row in place of the one that was; nil for none.
func (f *Form) mark(r *Row) {
	if was := f.marked; was != r {
		f.marked = r
		for _, each := range []*Row{was, r} {
			if each != nil {
				each.Refresh()
			}
		}
	}
}
