// Package form is what people type into: entries, numbers with their unit,
// choices and boxes in rows and sections that open and close, and the words
// around them. It holds the manners that are the same everywhere: a value is
// taken on Enter and when its entry is left, Escape takes it back, a refused one
// stays where it was typed, with a frame and the reason, what is typed is never
// lost to a change elsewhere, what has the focus comes into sight, and the mouse
// wheel scrolls the page.
//
// It knows nothing of cars or documents: callers give functions that get a value,
// take one and say what speaks against it. What the program shows and what a
// person does are two paths: Update and the Show methods call nobody.
package form

import (
	"iter"
	"slices"

	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Form is sections of rows, as high as they are.
type Form struct {
	widget.BaseWidget
	host     Host
	columns  Columns
	units    func() units.System
	sections []*Section
	list     *fyne.Container // headers and bodies of the sections
	height   float32         // of the list, told to the host last

	focused, hovered *About   // whose help is wanted; nil for none
	pointed          bool     // the pointer has moved since the focus did
	help             string   // shown last
	path             string   // told last
	marked           *Row     // nil for none
	refused          []origin // whose change was refused
	loose            bool     // what the sections hold has changed, so they must be laid out
}

// Columns are texts that the columns of a form have room for: before entries that
// share the width, in the entry of a number, and behind it.
type Columns struct{ Label, Number, Unit string }

// New returns an empty form for a host. Numbers are shown in units.
func New(host Host, columns Columns, units func() units.System) *Form {
	f := &Form{host: host, columns: columns, units: units, list: container.New(Stack{})}
	f.ExtendBaseWidget(f)
	return f
}

// Update shows the values as they are now, in all sections that are open, and
// takes back what is refused but not typed any more.
func (f *Form) Update() {
	for _, from := range slices.Clone(f.refused) {
		if !from.Pending() {
			f.forgive(from)
		}
	}
	for _, s := range f.sections {
		if s.IsOpen() || s.pending() {
			s.update()
		}
	}
	if f.loose {
		f.relayout()
	}
	f.showHelp()
}

// UpdateAll is Update for closed sections too.
func (f *Form) UpdateAll() {
	for _, s := range f.sections {
		s.update()
	}
	f.Update()
}

// Rows lists all rows from top to bottom.
func (f *Form) Rows() iter.Seq[*Row] {
	return func(yield func(*Row) bool) {
		for _, s := range f.sections {
			for _, r := range s.rows() {
				if !yield(r) {
					return
				}
			}
		}
	}
}

// Row returns the row of a path, or nil.
func (f *Form) Row(path string) *Row {
	for r := range f.Rows() {
		if r.Path == path {
			return r
		}
	}
	return nil
}

// entries lists the entries in the order of the form.
func (f *Form) entries() iter.Seq[*Entry] {
	return func(yield func(*Entry) bool) {
		for r := range f.Rows() {
			for _, e := range r.entries() {
				if !yield(e) {
					return
				}
			}
		}
	}
}

// OpenSections returns the titles of the sections that are open.
func (f *Form) OpenSections() []string {
	var titles []string
	for _, s := range f.sections {
		if s.IsOpen() {
			titles = append(titles, s.Title)
		}
	}
	return titles
}

// SetOpenSections opens the sections with these titles and closes the others.
// Unknown titles are passed over.
func (f *Form) SetOpenSections(titles []string) {
	for _, s := range f.sections {
		s.Open(slices.Contains(titles, s.Title))
	}
}

// relayout makes room for what has changed its height.
func (f *Form) relayout() {
	f.loose = false
	f.list.Layout.Layout(f.list.Objects, f.list.Size())
	if height := f.list.MinSize().Height; height != f.height {
		f.height = height
		f.host.grown()
	}
}

// CreateRenderer shows the sections.
func (f *Form) CreateRenderer() fyne.WidgetRenderer { return &formRenderer{f} }

type formRenderer struct{ form *Form }

func (r *formRenderer) Destroy()                     {}
func (r *formRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.form.list} }
func (r *formRenderer) MinSize() fyne.Size           { return r.form.list.MinSize() }

func (r *formRenderer) Layout(size fyne.Size) {
	r.form.list.Resize(size)
	r.form.relayout() // A new width may have changed heights.
}

func (r *formRenderer) Refresh() {
	r.Layout(r.form.Size())
	r.form.list.Refresh()
}
