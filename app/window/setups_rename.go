package window

import (
	"fmt"

	"bowline/app/readout"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// renameRow is where another name of a setup is typed; it is hidden until
// someone asks for it. It stays with its setup while another one is chosen.
type renameRow struct {
	rename func(setup int, name string) []car.Problem
	done   func()
	on     *page
	entry  *runEntry
	title  *readout.Prose
	why    *readout.Prose
	object *fyne.Container

	car   *car.Car // that setup is an index of
	setup int
}

func newRenameRow(rename func(int, string) []car.Problem, done func(), on *page) *renameRow {
	r := &renameRow{rename: rename, done: done, on: on, entry: &runEntry{left: func() {}}, title: words(theme.ColorNameForeground), why: words(theme.ColorNameError)}
	r.entry.Wrapping = fyne.TextWrap(fyne.TextTruncateClip)
	r.entry.OnChanged = func(string) { r.tell("") }
	r.entry.OnSubmitted = func(string) { r.submit() }
	r.entry.ExtendBaseWidget(r.entry)
	buttons := container.NewHBox(widget.NewButton("Take name", r.submit), widget.NewButton("Cancel", r.close))
	r.object = stacked(r.title, container.NewBorder(nil, nil, nil, buttons, underWheel(r.entry, on.scroll.Scrolled)), r.why)
	r.object.Hide()
	return r
}

// open asks for another name of a setup. Asked again for the same one it keeps
// what is typed.
func (r *renameRow) open(c *car.Car, setup int) {
	if !r.object.Visible() || setup != r.setup {
		r.car, r.setup = c, setup
		r.entry.SetText(c.Setups[setup].Name)
		r.object.Show()
		r.refresh(c)
		r.on.settle()
	}
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(r.entry); canvas != nil {
		canvas.Focus(r.entry)
	}
}

// close ends it.
func (r *renameRow) close() {
	r.why.Set("")
	r.object.Hide()
	r.on.settle()
}

// tell shows why a name is refused; empty is that it is not.
func (r *renameRow) tell(why string) {
	if r.why.Set(why) {
		r.on.settle()
	}
}

// submit takes the name typed.
func (r *renameRow) submit() {
	if problems := r.rename(r.setup, r.entry.Text); len(problems) > 0 {
		r.tell(problems[0].Wrong + "; " + problems[0].Right)
		return
	}
	r.close()
	r.done()
}

// refresh finds the setup again after the car has changed; when it has gone
// there is nothing to rename.
func (r *renameRow) refresh(c *car.Car) {
	if !r.object.Visible() {
		return
	}
	if c != r.car {
		at := c.SetupNamed(r.car.Setups[r.setup].Name)
		if at < 0 && len(c.Setups) == len(r.car.Setups) {
			at = r.setup // renamed elsewhere
		}
		if at < 0 {
			r.close()
			return
		}
		r.car, r.setup = c, at
	}
	r.title.Set(fmt.Sprintf("Another name for %q:", c.Setups[r.setup].Name))
}
