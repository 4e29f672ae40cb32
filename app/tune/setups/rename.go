package setups

import (
	"fmt"

	"bowline/app/document"
	"bowline/app/form"
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
	on     *form.Page
	entry  *form.Draft
	title  *form.Prose
	object *fyne.Container

	name string // of the setup
}

func newRenameRow(s *study.Study, done func(), on *form.Page) *renameRow {
	r := &renameRow{doc: s.Document(), done: done, on: on, entry: form.NewDraft(on.Host()), title: form.Words(theme.ColorNameForeground)}
	r.entry.Get = func(bool) string { return r.name }
	r.entry.Submit, r.entry.Cancel = r.submit, r.close
	buttons := container.NewHBox(widget.NewButton("Take name", r.submit), widget.NewButton("Cancel", r.close))
	r.object = form.Group(r.title, container.NewBorder(nil, nil, nil, buttons, r.entry), r.entry.Why())
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
		r.entry.Restore()
		r.object.Show()
		r.on.Settle()
	}
	r.entry.Focus()
	r.entry.SelectAll()
}

// close ends it.
func (r *renameRow) close() {
	if !r.object.Visible() {
		return
	}
	r.entry.Unfocus()
	r.entry.Restore()
	r.object.Hide()
	r.on.Settle()
}

// submit takes the name typed.
func (r *renameRow) submit() {
	if problems := r.doc.RenameSetup(r.doc.Setup(), r.entry.Text); len(problems) > 0 {
		r.entry.Refuse(problems[0].Wrong + "; " + problems[0].Right)
		return
	}
	r.close()
	r.done()
}
