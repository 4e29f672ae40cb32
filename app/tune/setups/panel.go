// Package setups is the panel of the setups: what they differ by and what the car
// did with them.
package setups

import (
	"fmt"

	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/study"
	"bowline/app/tune/compare"
	"bowline/app/tune/runlog"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Panel is the page Setups of the tab Tune.
type Panel struct {
	panel.Face
	study   *study.Study
	say     func(string)
	list    *setupList
	buttons struct{ copy, rename, remove, up, down *widget.Button }
	name    *renameRow
	refused *form.Prose
	compare *compare.Part
	log     *runlog.Log
	page    *form.Page
}

// New returns the panel: comparison and the form of a run in words; setups, the runs and
// their chart as evidence.
func New(host panel.Host) panel.Panel {
	s, doc := host.Study, host.Study.Document()
	p := &Panel{study: s, say: host.Say, page: host.Page, list: newSetupList(s), refused: form.Words(theme.ColorNameError), compare: compare.New(s)}
	p.log = runlog.New(host)
	p.name = newRenameRow(s, p.Refresh, p.page)

	b := &p.buttons
	b.copy = widget.NewButton("Copy", func() { p.try(doc.CopySetup(doc.Setup())) })
	b.rename = widget.NewButton("Rename", p.name.open)
	b.remove = widget.NewButton("Delete", func() {
		deleted, problems := doc.DeleteSetup(doc.Setup())
		if p.try(problems) {
			p.say(words.SetupDeleted(deleted))
		}
	})
	b.up = widget.NewButtonWithIcon("", theme.MoveUpIcon(), func() { p.try(doc.MoveSetup(doc.Setup(), -1)) })
	b.down = widget.NewButtonWithIcon("", theme.MoveDownIcon(), func() { p.try(doc.MoveSetup(doc.Setup(), 1)) })
	p.Face = panel.Face{
		Name: "Setups",
		Said: form.Stacked(p.name.object, p.refused, p.compare.Object, p.log.Said),
		Shown: panel.Gallery(append([]panel.Exhibit{
			{Name: "Setups", Object: p.list.table, Tools: container.NewHBox(b.copy, b.rename, b.remove, b.up, b.down)},
			p.log.Shown,
		}, host.Charts(plotting.SixtyFootKey)...)...),
		Drawn:    []chart.Key{plotting.SixtyFootKey},
		Computed: study.WantsAllLaunches,
	}
	p.Refresh()
	return p
}

// Leave implements panel.Keeper: it asks about a run that is typed and not
// logged.
func (p *Panel) Leave(then func()) { p.log.Leave(then) }

// try shows why an edit was refused, and reports whether it was taken.
func (p *Panel) try(problems []car.Problem) bool {
	text := ""
	if len(problems) > 0 {
		text = fmt.Sprintf("%s; %s", problems[0].Wrong, problems[0].Right)
	}
	p.Refresh()
	p.refused.Set(text)
	p.page.Settle()
	return text == ""
}

// Refresh takes up the setups and the log as they are.
func (p *Panel) Refresh() {
	p.list.refresh()
	p.refused.Set("")
	p.compare.Refresh()
	p.log.Refresh()
	p.page.Settle()
}
