package form

import "fyne.io/fyne/v2"

// attend shows the help of what has got the focus and brings it into sight.
func (f *Form) attend(a *About, o fyne.CanvasObject) {
	f.focused, f.pointed = a, false
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
	text := ""
	switch {
	case f.hovered != nil && (f.pointed || f.focused == nil):
		text = f.hovered.describe(f.units())
	case f.focused != nil:
		text = f.focused.describe(f.units())
	}
	if text != f.help {
		f.help = text
		f.host.help(text)
	}
}
