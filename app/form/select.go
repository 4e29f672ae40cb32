package form

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Always returns a change that nothing speaks against.
func Always[T any](do func(T)) func(T) []Fault {
	return func(x T) []Fault {
		do(x)
		return nil
	}
}

// attached is what stands in a row or alone.
type attached struct{ row *Row }

func (a *attached) place(r *Row) { a.row = r }
func (a *attached) home() *Row   { return a.row }

// Pending implements origin: nothing is typed.
func (a *attached) Pending() bool { return false }

func (a *attached) setRefused(bool) {}

// try makes a change and reports whether it was taken.
func (a *attached) try(self origin, change func() []Fault) bool {
	if a.row == nil {
		return len(change()) == 0
	}
	return a.row.form.try(self, change)
}

// attend shows the help of what has got the focus; about is nil for the row's.
func (a *attached) attend(about *About, o fyne.CanvasObject) {
	if a.row != nil {
		a.row.form.attend(a.about(about), o)
	}
}

func (a *attached) leave() {
	if a.row != nil {
		a.row.form.leave()
	}
}

// point shows the help of what the pointer is on; about is nil for the row's.
func (a *attached) point(about *About) {
	if a.row != nil {
		a.row.form.hover(a.about(about))
	}
}

func (a *attached) unpoint() {
	if a.row != nil {
		a.row.form.hover(nil)
	}
}

func (a *attached) about(about *About) *About {
	if about == nil {
		return &a.row.About
	}
	return about
}

// Select chooses one of a list. Only a person's choice is reported.
type Select struct {
	widget.Select
	attached
	options func() []string
	current func() string
	choose  func(i int) []Fault
}

// NewSelect returns a choice among options. What is current may be none of them.
// choose takes another choice; what is refused is shown no more.
func NewSelect(options func() []string, current func() string, choose func(i int) []Fault) *Select {
	s := &Select{options: options, current: current, choose: choose}
	s.OnChanged = s.chosen
	s.ExtendBaseWidget(s)
	return s
}

// Update shows options and choice as they are now.
func (s *Select) Update() {
	options, current := s.options(), s.current()
	if current == s.Selected && slices.Equal(options, s.Options) {
		return
	}
	s.Options, s.Selected = options, current
	s.Refresh()
}

func (s *Select) chosen(option string) {
	if i := slices.Index(s.Options, option); i >= 0 && option != s.current() {
		s.try(s, func() []Fault { return s.choose(i) })
	}
	s.Update()
}

// FocusGained shows the help of the row.
func (s *Select) FocusGained() {
	s.Select.FocusGained()
	s.attend(nil, s)
}

// FocusLost takes the help away.
func (s *Select) FocusLost() {
	s.Select.FocusLost()
	s.leave()
}

// MouseIn shows the help of the row.
func (s *Select) MouseIn(e *desktop.MouseEvent) {
	s.Select.MouseIn(e)
	s.point(nil)
}

// MouseOut takes the help away.
func (s *Select) MouseOut() {
	s.Select.MouseOut()
	s.unpoint()
}

// TypedKey opens the list on Enter too.
func (s *Select) TypedKey(key *fyne.KeyEvent) { s.Select.TypedKey(spaceForEnter(key)) }

// spaceForEnter makes Enter mean what Space does.
func spaceForEnter(key *fyne.KeyEvent) *fyne.KeyEvent {
	if key.Name == fyne.KeyReturn || key.Name == fyne.KeyEnter {
		return &fyne.KeyEvent{Name: fyne.KeySpace, Physical: key.Physical}
	}
	return key
}
