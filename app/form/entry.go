package form

import "fyne.io/fyne/v2"

// Entry is where one value is typed. It hands over what was typed on Enter and
// when it is left; Escape takes it back.
type Entry struct {
	field

	// Take takes a text over, or says what speaks against it.
	Take func(typed string) []Fault
	// Step returns what a text becomes n steps up, if there are steps; nil for none.
	Step func(typed string, n int) (text string, ok bool)
	// Help says what the value means; one in a row has the row's.
	Help string
	// Document says that the value is the document's: the text is selected when
	// the entry gets the focus, so that typing replaces it, and undo is of the
	// document. Otherwise undo is of the text.
	Document bool
}

// NewEntry returns an entry for a row.
func NewEntry() *Entry {
	e := &Entry{}
	e.init(e, Host{})
	return e
}

// In has an entry stand in a host without a row, and returns e.
func (e *Entry) In(host Host) *Entry {
	e.host = host
	return e
}

// Wrap makes the text wrap and returns e.
func (e *Entry) Wrap() *Entry {
	e.MultiLine = true
	e.Wrapping = fyne.TextWrapWord
	e.SetMinRowsVisible(2)
	return e
}

func (e *Entry) place(r *Row) {
	e.row, e.host, e.why = r, r.form.host, r.why
}

// Commit hands over what was typed, if anything, and reports whether it was
// taken.
func (e *Entry) Commit() bool {
	if !e.Pending() || e.gone {
		e.Restore()
		return true
	}
	e.forgive()
	faults := e.Take(e.Text)
	switch {
	case len(faults) == 0 && e.row != nil:
		e.row.outdate()
	case len(faults) > 0 && e.row != nil:
		e.row.form.report(&e.field, faults)
		return false
	case len(faults) > 0:
		e.refuse(faults[0].Text)
		return false
	}
	e.Restore()
	return true
}

// step moves the value and hands it over, and reports whether it has steps.
func (e *Entry) step(n int) bool {
	if e.Step == nil || e.gone {
		return false
	}
	text, ok := e.Step(e.Text, n)
	if ok {
		e.Put(text)
		e.Commit()
		e.SelectAll()
	}
	return ok
}

// FocusGained brings the entry into sight, tells what it means and shows the
// value as it is edited.
func (e *Entry) FocusGained() {
	e.field.FocusGained()
	e.focused = true
	e.Update()
	if e.Document {
		e.SelectAll()
	}
	if e.row != nil {
		e.row.form.attend(&e.row.About, e)
		return
	}
	e.host.reveal(e)
	e.host.help(e.Help)
}

// FocusLost hands over what was typed.
func (e *Entry) FocusLost() {
	e.field.FocusLost()
	e.focused = false
	e.Commit()
	if e.row != nil {
		e.row.form.leave()
		return
	}
	e.host.help("")
}

// TypedKey handles the keys that mean more here than in any text.
func (e *Entry) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyEscape:
		e.Restore()
		if e.Document {
			e.SelectAll()
		}
	case fyne.KeyReturn, fyne.KeyEnter:
		if e.Commit() && e.Document {
			e.SelectAll()
		}
	default:
		if n := stepKeys[key.Name]; n == 0 || !e.step(n) {
			e.field.TypedKey(key)
		}
	}
}

// stepKeys are the keys that move a number, and by how many steps.
var stepKeys = map[fyne.KeyName]int{
	fyne.KeyUp: 1, fyne.KeyDown: -1, fyne.KeyPageUp: 10, fyne.KeyPageDown: -10,
}
