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
	"time"

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
	Dragging() bool
	Apply(label string, edit func(*car.Car)) []car.Problem
	SelectSetup(i int)
	CopySetup(i int) []car.Problem
	DeleteSetup(i int) (said string, problems []car.Problem)
	MoveSetup(i, by int) []car.Problem
	Listen(hear func(document.Event)) (cancel func())
}

// Panel shows and edits the inputs of a document's car. Make one with New.
type Panel struct {
	widget.BaseWidget

	// Said hears what is to be told of an edit; nil for nobody.
	Said func(string)

	// Later has a function run by the goroutine of the window after a while.
	Later func(after time.Duration, run func())

	doc     Document
	library stock.Library

	sections []*section
	list     *fyne.Container // headers and bodies of the sections
	scroll   *container.Scroll
	host     *guest // not nil for a panel in another one's scroll
	help     *prose
	rule     *canvas.Rectangle

	focused, hovered *about   // whose help is wanted; nil for none
	pointed          bool     // the pointer has moved since the focus did
	refused          []origin // whose change was refused
	loose            bool     // what the sections hold has changed, so they must be laid out
	behind           bool     // a drag has gone on since the values were shown
}

// New returns the panel of doc, which it listens to for good. Tubes and
// materials to choose from come from library. The sections about holes are open.
func New(doc Document, library stock.Library) *Panel {
	p := &Panel{doc: doc, library: library, Later: later, help: newProse("", theme.ColorNameForeground), rule: canvas.NewRectangle(nil)}
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
		for _, s := range p.sections {
			s.show(p.view())
		}
		p.RestorePending()
	}
	switch changed := e.Has(document.Changed | document.SetupSelected | document.UnitsChanged); {
	case !p.doc.Dragging():
		if changed || p.behind {
			p.refresh()
		}
	case changed && !p.behind:
		p.behind = true
		p.Later(dragPace, func() {
			if p.behind {
				p.refresh()
			}
		})
	}
}

// dragPace is how far the values may be behind a drag: the toolkit takes as
// long for one text that changes as the side view for all of the car.
const dragPace = 100 * time.Millisecond

// later is what Panel.Later is by default.
func later(after time.Duration, run func()) {
	time.AfterFunc(after, func() { fyne.Do(run) })
}

// refresh shows the document as it is now.
func (p *Panel) refresh() {
	p.behind = false
	for _, from := range slices.Clone(p.refused) {
		if !from.pending() {
			p.forgive(from)
		}
	}
	v := p.view()
	for _, s := range p.sections {
		if s.isOpen() || s.pending() {
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
	if p.host != nil {
		p.host.relayout(p)
		return
	}
	p.list.Layout.Layout(p.list.Objects, p.list.Size())
	p.list.Resize(p.list.MinSize().Max(p.scroll.Size()))
	p.scroll.Scrolled(&fyne.ScrollEvent{}) // The end of the list may have come nearer.
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

// helpLines is the room for help.
const helpLines = 4

// leastSize is the smallest panel that is of use.
var leastSize = fyne.NewSize(270, 200)

// CreateRenderer lays the panel out.
func (p *Panel) CreateRenderer() fyne.WidgetRenderer {
	if p.host != nil {
		return &guestRenderer{p}
	}
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
