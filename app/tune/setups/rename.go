package setups

import (
	"fmt"

	"bowline/app/document"
	"bowline/app/panel"
	"bowline/app/readout"
	"bowline/app/study"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// renameRow is where another name of the current setup is typed; it is hidden
// until someone asks for it. It closes when another setup becomes the current
// one, so that what is typed never names that.
type renameRow struct {
	doc    *document.Document
	done   func()
	on     *panel.Page
	entry  *panel.Entry
	mark   *panel.Refusal
	title  *readout.Prose
	why    *readout.Prose
	object *fyne.Container

	name string // of the setup
}

func newRenameRow(s *study.Study, done func(), on *panel.Page) *renameRow {
	r := &renameRow{doc: s.Document(), done: done, on: on, entry: panel.NewEntry(), mark: panel.NewRefusal(), title: panel.Prose(theme.ColorNameForeground), why: panel.Prose(theme.ColorNameError)}
	r.entry.OnChanged = func(string) { r.tell("") }
	r.entry.OnSubmitted = func(string) { r.submit() }
	r.entry.Escaped = r.close
	buttons := container.NewHBox(widget.NewButton("Take name", r.submit), widget.NewButton("Cancel", r.close))
	r.object = panel.Group(r.title, container.NewBorder(nil, nil, nil, buttons, panel.UnderWheel(container.NewStack(r.entry, r.mark), on.Scrolled)), r.why)
	r.object.Hide()
	s.Listen(func(c study.Change) {
		if c.Has(study.Loaded) || r.object.Visible() && r.current() != r.name {
			r.close()
		}
	})
	return r
}

// current returns the name of the current setup, by which it is known wherever
// it stands.
func (r *renameRow) current() string { return r.doc.Car().Setups[r.doc.Setup()].Name }

// open asks for another name of the current setup, with the one that it has
// selected. Asked again it keeps what is typed.
func (r *renameRow) open() {
	if !r.object.Visible() {
		r.name = r.current()
		r.title.Set(fmt.Sprintf("Another name for %q:", r.name))
		r.entry.SetText(r.name)
		r.tell("")
		r.object.Show()
		r.on.Settle()
	}
	r.entry.Take(r.on)
	r.entry.SelectAll()
}

// close ends it.
func (r *renameRow) close() {
	if !r.object.Visible() {
		return
	}
	r.entry.Release(r.on)
	r.tell("")
	r.object.Hide()
	r.on.Settle()
}

// tell shows why a name is refused; empty is that it is not.
func (r *renameRow) tell(why string) {
	r.mark.Mark(why != "")
	if r.why.Set(why) {
		r.on.Settle()
	}
}

// submit takes the name typed.
func (r *renameRow) submit() {
	if problems := r.doc.RenameSetup(r.doc.Setup(), r.entry.Text); len(problems) > 0 {
		r.tell(problems[0].Wrong + "; " + problems[0].Right)
		return
	}
	r.close()
	r.done()
}
