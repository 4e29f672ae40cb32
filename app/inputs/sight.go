package inputs

import (
	"slices"

	"fyne.io/fyne/v2"
)

// OpenSections returns the titles of the sections that are open.
func (p *Panel) OpenSections() []string {
	var titles []string
	for _, s := range p.sections {
		if s.isOpen() {
			titles = append(titles, s.title)
		}
	}
	return titles
}

// SetOpenSections opens the sections with these titles and closes the others.
// Unknown titles are passed over.
func (p *Panel) SetOpenSections(titles []string) {
	for _, s := range p.sections {
		s.setOpen(slices.Contains(titles, s.title))
	}
}

// Reveal opens the section that holds an entry of the car file, named as in
// car.Problem, moves the focus to its row and tells whether there is such a row.
func (p *Panel) Reveal(path string) bool {
	for _, s := range p.sections {
		s.show(p.view())
	}
	r := p.rowAt(path)
	if r == nil {
		return false
	}
	p.goTo(r, r.editors[0])
	return true
}

// goTo opens the section of a row and moves the focus to an editor in it.
func (p *Panel) goTo(r *row, e editor) {
	r.section.setOpen(true)
	f, ok := e.(fyne.Focusable)
	if c := fyne.CurrentApp().Driver().CanvasForObject(r); ok && c != nil {
		c.Focus(f)
	}
	p.scrollTo(r)
}

// attend shows the help of a row and brings its editor into sight.
func (p *Panel) attend(a *about, o fyne.CanvasObject) {
	p.focused, p.pointed = a, false
	p.showHelp()
	p.scrollTo(o)
}

// leave takes the help of what had the focus away.
func (p *Panel) leave() {
	p.focused = nil
	p.showHelp()
}

// hover shows the help of what the pointer is on; nil for nothing.
func (p *Panel) hover(a *about) {
	p.hovered, p.pointed = a, true
	p.showHelp()
}

const idleHelp = "Enter takes a value, Escape takes it back. Lengths may be typed as 22.5, 22 1/2 or 571 mm. Up and down step a number."

// showHelp shows the help of what has the focus or is under the pointer: of the
// later of the two.
func (p *Panel) showHelp() {
	text := idleHelp
	if p.host != nil {
		text = ""
	}
	switch {
	case p.hovered != nil && (p.pointed || p.focused == nil):
		text = p.hovered.describe(p.doc.Units())
	case p.focused != nil:
		text = p.focused.describe(p.doc.Units())
	}
	if p.host != nil {
		p.host.show(text)
		return
	}
	p.help.set(text)
}

// scrollTo brings an object of the sections into sight.
func (p *Panel) scrollTo(o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	if d.CanvasForObject(o) == nil || !o.Visible() {
		return
	}
	top := d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(p.scroll.Content).Y
	bottom := top + o.Size().Height
	offset := p.scroll.Offset
	switch {
	case top < offset.Y:
		offset.Y = top
	case bottom > offset.Y+p.scroll.Size().Height:
		offset.Y = bottom - p.scroll.Size().Height
	default:
		return
	}
	p.scroll.ScrollToOffset(offset)
}
