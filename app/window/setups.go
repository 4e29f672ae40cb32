package window

import (
	"fmt"

	"bowline/app/readout"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// setupsPanel answers the racer what the setups differ by and what the car did
// with them.
type setupsPanel struct {
	study   *study.Study
	say     func(string)
	list    *setupList
	buttons struct{ copy, rename, remove, up, down *widget.Button }
	name    *renameRow
	refused *readout.Prose
	compare *comparePart
	log     *runLog
	page    *page
	object  fyne.CanvasObject
}

// mostSetups is how many setups the list shows before it scrolls.
const mostSetups = 8

// newSetupsPanel returns the page: setups, comparison, run log and its chart.
func newSetupsPanel(w *Window) *setupsPanel {
	p := &setupsPanel{study: w.study, say: w.say, page: newPage(), list: newSetupList(w.study), refused: prose(theme.ColorNameError), compare: newComparePart(w.study)}
	p.object = p.page.scroll
	w.inputs.Said = w.say
	p.log = newRunLog(w.study, w.say, p.page)
	p.name = newRenameRow(w.doc, p.refresh, p.page)

	doc, b := w.doc, &p.buttons
	b.copy = widget.NewButton("Copy", func() { p.try(doc.CopySetup(doc.Setup())) })
	b.rename = widget.NewButton("Rename", p.name.open)
	b.remove = widget.NewButton("Delete", func() {
		said, problems := doc.DeleteSetup(doc.Setup())
		if p.try(problems) {
			p.say(said)
		}
	})
	b.up = widget.NewButtonWithIcon("", theme.MoveUpIcon(), func() { p.try(doc.MoveSetup(doc.Setup(), -1)) })
	b.down = widget.NewButtonWithIcon("", theme.MoveDownIcon(), func() { p.try(doc.MoveSetup(doc.Setup(), 1)) })
	p.page.add(
		listed(p.list.table, p.list.Len, mostSetups, p.page),
		container.NewHBox(b.copy, b.rename, b.remove, b.up, b.down),
		p.name.object, p.refused,
		p.compare.object, p.log.object,
		w.charts.views[plotting.SixtyFootKey],
	)
	p.refresh()
	return p
}

func (p *setupsPanel) charts() []chart.Key { return []chart.Key{plotting.SixtyFootKey} }

func (p *setupsPanel) wants() study.Wants { return study.WantsOtherLaunches }

// try shows why an edit was refused, and tells whether it was taken.
func (p *setupsPanel) try(problems []car.Problem) bool {
	text := ""
	if len(problems) > 0 {
		text = fmt.Sprintf("%s; %s", problems[0].Wrong, problems[0].Right)
	}
	p.refresh()
	p.refused.Set(text)
	p.page.settle()
	return text == ""
}

// refresh takes up the setups and the log as they are.
func (p *setupsPanel) refresh() {
	p.list.refresh()
	p.refused.Set("")
	p.compare.refresh()
	p.log.refresh()
	p.page.settle()
}
