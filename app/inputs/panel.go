// Package inputs is the panel in which every input of a car is typed: sections
// that open and close, rows of label, entry and unit, and under a row the
// reason why its value is refused. At the foot stands what the row at hand
// means and which values it takes.
//
// A change is handed to the document at once, as one undo step. The panel keeps
// no copy of the car; it shows the document's and holds only what has been
// typed and not been taken yet.
package inputs

import (
	"iter"
	"slices"
	"strings"

	"bowline/app/document"
	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Document is what the panel needs of a *document.Document.
type Document interface {
	Car() *car.Car
	Setup() int
	Units() units.System
	Apply(label string, edit func(*car.Car)) []car.Problem
	SelectSetup(i int)
	Listen(hear func(document.Event)) (cancel func())
}

// Panel shows and edits the inputs of a document's car. Make one with New.
type Panel struct {
	widget.BaseWidget
	doc     Document
	library stock.Library

	sections []*section
	list     *fyne.Container // headers and bodies of the sections
	scroll   *container.Scroll
	help     *prose
	rule     *canvas.Rectangle

	focused, hovered *about   // whose help is wanted; nil for none
	refused          []origin // whose change was refused
	loose            bool     // what the sections hold has changed, so they must be laid out
}

// New returns the panel of doc, which it listens to for good. Tubes and
// materials to choose from come from library. The sections about holes are open.
func New(doc Document, library stock.Library) *Panel {
	p := &Panel{doc: doc, library: library, help: newProse("", theme.ColorNameForeground), rule: canvas.NewRectangle(nil)}
	p.ExtendBaseWidget(p)
	p.build()
	p.list = container.New(stack{})
	for _, s := range p.sections {
		p.list.Objects = append(p.list.Objects, s.header, s.body)
	}
	p.scroll = container.NewVScroll(p.list)
	p.showHelp()
	p.SetOpenSections([]string{TitleSetup, TitleChassis, TitleHousing})
	doc.Listen(p.hear)
	return p
}

func (p *Panel) view() view {
	return view{p.doc.Car(), p.doc.Setup(), p.doc.Units(), p.library}
}

// hear follows a change of the document.
func (p *Panel) hear(e document.Event) {
	if e.Has(document.Loaded) {
		p.RestorePending()
	}
	if e.Has(document.Changed | document.SetupSelected | document.UnitsChanged) {
		p.refresh()
	}
}

// refresh shows the document as it is now.
func (p *Panel) refresh() {
	for _, from := range slices.Clone(p.refused) {
		if !from.pending() {
			p.forgive(from)
		}
	}
	v := p.view()
	for _, s := range p.sections {
		if s.isOpen() {
			s.show(v)
		}
	}
	if p.loose {
		p.relayout()
	}
	p.showHelp()
}

// relayout makes room for what has changed its height.
func (p *Panel) relayout() {
	p.loose = false
	p.list.Layout.Layout(p.list.Objects, p.list.Size())
	p.list.Resize(p.list.MinSize().Max(p.scroll.Size()))
	p.scroll.Scrolled(&fyne.ScrollEvent{}) // The end of the list may have come nearer.
}

// CommitPending hands over what has been typed and not been taken yet, and
// tells whether all of it was taken. Call it before undo, a save, another car
// or other units. What is refused stays where it was typed, marked, with the
// reason, and the first of it gets the focus; RestorePending takes it back.
func (p *Panel) CommitPending() bool {
	var refused *entry
	for e := range p.entries() {
		if e.pending() && !e.commit() && refused == nil {
			refused = e
		}
	}
	if refused != nil {
		p.goTo(refused.row, refused)
	}
	return refused == nil
}

// RestorePending takes back what has been typed and not been taken yet.
func (p *Panel) RestorePending() {
	for e := range p.entries() {
		if e.pending() {
			e.restore()
		}
	}
}

// entries lists the entries in the order of the panel.
func (p *Panel) entries() iter.Seq[*entry] {
	return func(yield func(*entry) bool) {
		for r := range p.rows() {
			for _, e := range r.entries() {
				if !yield(e) {
					return
				}
			}
		}
	}
}

// rows lists all rows.
func (p *Panel) rows() iter.Seq[*row] {
	return func(yield func(*row) bool) {
		for _, s := range p.sections {
			for _, r := range s.rows() {
				if !yield(r) {
					return
				}
			}
		}
	}
}

// rowAt returns the row of an entry of the car file, or nil.
func (p *Panel) rowAt(path string) *row {
	for r := range p.rows() {
		if r.path == path {
			return r
		}
	}
	return nil
}

// apply makes one change of the car, tried in from, and tells whether it was
// taken. What speaks against it is shown.
func (p *Panel) apply(from origin, action string, change func(*car.Car)) bool {
	p.forgive(from)
	problems := p.doc.Apply(action, change)
	if len(problems) == 0 {
		p.outdate(from.home())
		return true
	}
	p.report(from, problems)
	return false
}

// outdate drops what a row has been told about changes tried elsewhere: its
// value is another one now.
func (p *Panel) outdate(r *row) {
	r.setReasons(slices.DeleteFunc(slices.Clone(r.reasons), func(old reason) bool { return old.from.home() != r }))
}

// shownProblems is how many problems of one change are written out.
const shownProblems = 3

// report shows problems where the change was tried, and each at its own row too.
func (p *Panel) report(from origin, problems []car.Problem) {
	home := from.home()
	var here []string
	for i, problem := range problems {
		text := spoken(problem.Wrong + "; " + problem.Right)
		if i == shownProblems {
			here = append(here, "And more of that kind.")
			break
		}
		if r := p.rowAt(problem.Path); r != nil && r != home {
			r.tell(from, text)
			text = r.label + ": " + text
		}
		here = append(here, text)
	}
	p.refuse(from, strings.Join(here, "\n"))
}

// spoken puts labels in the place of keys of the car file.
func spoken(text string) string {
	for _, s := range car.Sections {
		for _, f := range s.Fields {
			text = strings.ReplaceAll(text, f.Path, lower(f.Label))
		}
	}
	return text
}

// refuse shows why a change was refused where it was tried.
func (p *Panel) refuse(from origin, why string) {
	r := from.home()
	r.unsay(from)
	r.tell(from, why)
	if !slices.Contains(p.refused, from) {
		p.refused = append(p.refused, from)
	}
	from.setRefused(true)
	p.count()
	p.scrollTo(r)
}

// forgive forgets that a change tried in from was refused.
func (p *Panel) forgive(from origin) {
	i := slices.Index(p.refused, from)
	if i < 0 {
		return
	}
	p.refused = slices.Delete(p.refused, i, i+1)
	from.setRefused(false)
	for r := range p.rows() {
		r.unsay(from)
	}
	p.count()
}

// count writes on the headers how many texts below them are refused.
func (p *Panel) count() {
	for _, s := range p.sections {
		n := 0
		for _, from := range p.refused {
			if from.home().section == s && from.pending() {
				n++
			}
		}
		if n != s.header.refused {
			s.header.refused = n
			s.header.Refresh()
		}
	}
}

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
	p.relayout()
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
	p.focused = a
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
	p.hovered = a
	p.showHelp()
}

const idleHelp = "Enter takes a value, Escape takes it back. Lengths may be typed as 22.5, 22 1/2 or 571 mm. Up and down step a number."

func (p *Panel) showHelp() {
	text := idleHelp
	switch {
	case p.hovered != nil:
		text = p.hovered.describe(p.doc.Units())
	case p.focused != nil:
		text = p.focused.describe(p.doc.Units())
	}
	p.help.set(text)
}

// scrollTo brings an object of the sections into sight.
func (p *Panel) scrollTo(o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	if d.CanvasForObject(o) == nil || !o.Visible() {
		return
	}
	top := d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(p.list).Y
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

// helpLines is the room for help.
const helpLines = 4

// leastSize is the smallest panel that is of use.
var leastSize = fyne.NewSize(270, 200)

// CreateRenderer lays the panel out.
func (p *Panel) CreateRenderer() fyne.WidgetRenderer {
	r := &panelRenderer{p}
	r.colors()
	return r
}

type panelRenderer struct{ panel *Panel }

func (r *panelRenderer) Destroy()           {}
func (r *panelRenderer) MinSize() fyne.Size { return leastSize }

func (r *panelRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.panel.scroll, r.panel.rule, r.panel.help}
}

func (r *panelRenderer) Layout(size fyne.Size) {
	p, th := r.panel, r.panel.Theme()
	pad := th.Size(theme.SizeNamePadding)
	line := fyne.MeasureText("M", th.Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Height
	help := line*helpLines + 2*pad
	p.scroll.Resize(fyne.NewSize(size.Width, size.Height-help))
	p.rule.Move(fyne.NewPos(0, size.Height-help))
	p.rule.Resize(fyne.NewSize(size.Width, 1))
	p.help.Move(fyne.NewPos(2*pad, size.Height-help+pad))
	p.help.Resize(fyne.NewSize(size.Width-4*pad, help-2*pad))
	p.relayout() // A new width may have changed heights.
}

func (r *panelRenderer) Refresh() {
	r.colors()
	r.Layout(r.panel.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *panelRenderer) colors() {
	r.panel.rule.FillColor = r.panel.Theme().Color(theme.ColorNameSeparator, fyne.CurrentApp().Settings().ThemeVariant())
}
