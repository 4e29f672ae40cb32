package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Item is a part of a section.
type Item interface {
	Update()      // shows the values as they are now
	Rows() []*Row // that it consists of
}

// Section is a group of rows that opens and closes under its header.
type Section struct {
	Title string
	cover
	form   *Form
	header *header
	body   *fyne.Container
	items  []Item
}

const (
	rowGap    = 2 // between rows
	bodyInset = 6 // around the rows of a section
	bareInset = 3 // around the rows of a section without a header, as words have it
)

// Section adds a section, which is closed.
func (f *Form) Section(title string) *Section {
	s := f.section(title, bodyInset)
	s.header = newHeader(s)
	s.turned = func() {
		s.header.Refresh()
		f.relayout()
	}
	s.body.Hide()
	f.list.Objects = append(f.list.Objects, s.header, s.body)
	return s
}

// Bare adds rows without a header.
func (f *Form) Bare() *Section {
	s := f.section("", bareInset)
	f.list.Objects = append(f.list.Objects, s.body)
	return s
}

func (f *Form) section(title string, inset float32) *Section {
	s := &Section{Title: title, form: f, body: container.New(Stack{Gap: rowGap, Inset: inset})}
	s.cover = cover{body: s.body, opening: s.update}
	f.sections = append(f.sections, s)
	return s
}

// update brings everything in the section up to date.
func (s *Section) update() {
	for _, i := range s.items {
		i.Update()
	}
}

// pending reports whether something was typed in the section that has not been
// taken.
func (s *Section) pending() bool {
	for _, r := range s.rows() {
		for _, e := range r.entries() {
			if e.Pending() {
				return true
			}
		}
	}
	return false
}

func (s *Section) rows() []*Row {
	var all []*Row
	for _, i := range s.items {
		all = append(all, i.Rows()...)
	}
	return all
}

// Add puts an item at the end, which o draws.
func (s *Section) Add(i Item, o fyne.CanvasObject) {
	s.items = append(s.items, i)
	s.body.Objects = append(s.body.Objects, o)
}

// Row adds a row with its editors from left to right.
func (s *Section) Row(a About, editors ...Editor) *Row {
	r := s.NewRow(a, editors...)
	s.Add(r, r)
	return r
}

// Remark adds a paragraph whose text follows the values.
func (s *Section) Remark(text func() string) {
	r := &remark{Caption("", theme.ColorNamePlaceHolder).Flush(), s.form, text}
	s.Add(r, r.prose)
}

type remark struct {
	prose *Prose
	form  *Form
	text  func() string
}

func (r *remark) Rows() []*Row { return nil }

func (r *remark) Update() {
	if r.prose.Set(r.text()) {
		r.form.loose = true
	}
}

// List is rows that come and go, for an Item that holds them.
type List struct {
	box     *fyne.Container
	section *Section
	rows    []*Row
}

// NewList adds an empty list to a section; i is the Item that it belongs to.
func (s *Section) NewList(i Item) *List {
	l := &List{box: container.New(Stack{Gap: rowGap}), section: s}
	s.Add(i, l.box)
	return l
}

// Rows lists the rows.
func (l *List) Rows() []*Row { return l.rows }

// Set puts rows into the list.
func (l *List) Set(rows []*Row) {
	l.rows = rows
	l.box.Objects = l.box.Objects[:0]
	for _, r := range rows {
		l.box.Objects = append(l.box.Objects, r)
	}
	l.section.form.loose = true
}
