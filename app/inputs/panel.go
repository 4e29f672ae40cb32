// Package inputs is the panel in which every input of a car is typed: the
// fields of the car in sections, the holes of its brackets and its setups. At
// the foot stands what the row at hand means and which values it takes.
//
// A change is handed to the document at once, as one undo step. The panel keeps
// no copy of the car; it shows the document's and holds only what has been
// typed and not been taken yet.
package inputs

import (
	"bowline/app/form"
	"bowline/model/stock"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Panel shows and edits the inputs of a document's car. Make one with New.
type Panel struct {
	widget.BaseWidget
	*Fields
	scroll *container.Scroll
	help   *form.Prose
	rule   *canvas.Rectangle

	// Attended, if set, is told the path of the row that is typed in, pointed at or
	// marked by Reveal; empty for none.
	Attended func(path string)
}

// New returns the panel of doc, which it listens to for good. Tubes and
// materials to choose from come from library. The sections about holes are open.
func New(doc Document, library stock.Library) *Panel {
	p := &Panel{scroll: container.NewVScroll(nil), help: form.Caption(idleHelp, theme.ColorNameForeground).Flush(), rule: canvas.NewRectangle(nil)}
	p.ExtendBaseWidget(p)
	p.Fields = newFields(doc, library, form.Host{Scroll: p.scroll, Grown: p.grown, Help: p.showHelp, At: p.attend})
	p.scroll.Content = p.Form
	p.build()
	p.SetOpenSections([]string{TitleSetup, TitleChassis, TitleHousing})
	return p
}

const idleHelp = "Enter takes a value, Escape takes it back. Lengths may be typed as 22.5, 22 1/2 or 571 mm. Up and down step a number."

func (p *Panel) showHelp(text string) {
	if text == "" {
		text = idleHelp
	}
	p.help.Set(text)
}

func (p *Panel) attend(path string) {
	if p.Attended != nil {
		p.Attended(path)
	}
}

// grown makes room for what has changed its height.
func (p *Panel) grown() {
	p.Form.Resize(p.Form.MinSize().Max(p.scroll.Size()))
	p.scroll.Scrolled(&fyne.ScrollEvent{}) // The end of the list may have come nearer.
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
	p.grown() // A new width may have changed heights.
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
