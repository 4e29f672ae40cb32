package window

import (
	"bowline/app/readout"
	"bowline/app/study"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// runLog shows what the car did with a setup: the runs logged, and where another
// one is typed.
type runLog struct {
	study  *study.Study
	say    func(string)
	on     *page
	list   *runTable
	form   *runForm
	detail *readout.Prose
	all    *widget.Check
	edit   *widget.Button
	remove *widget.Button
	object fyne.CanvasObject
}

// mostRuns is how many runs the list shows before it scrolls.
const mostRuns = 10

// newRunLog returns the log for a page.
func newRunLog(s *study.Study, say func(string), on *page) *runLog {
	l := &runLog{study: s, say: say, on: on, list: newRunTable(s), form: newRunForm(s, on), detail: prose(theme.ColorNameForeground)}
	l.all = widget.NewCheck("All setups", func(on bool) {
		l.list.setAll(on)
		l.refresh()
	})
	l.edit = widget.NewButton("Edit", l.editSelected)
	l.remove = widget.NewButton("Delete", l.deleteSelected)
	hear := l.list.table.OnSelected
	l.list.table.OnSelected = func(key int) {
		hear(key)
		l.show()
	}
	l.list.table.OnActivated = func(int) { l.editSelected() }
	l.form.logged = func(setup, run int, said string) {
		l.list.refresh()
		l.list.choose(setup, run)
		l.show()
		l.say(said)
	}
	l.object = stacked(
		container.NewHBox(widget.NewLabelWithStyle("Run log", fyne.TextAlignLeading, fyne.TextStyle{Bold: true}), l.all, layout.NewSpacer(), l.edit, l.remove),
		listed(l.list.table, l.list.Len, mostRuns, on), l.detail, l.form.object,
	)
	return l
}

// refresh takes up log and form as they are.
func (l *runLog) refresh() {
	l.list.refresh()
	l.form.refresh()
	l.show()
}

// show writes the run selected and what can be done to it.
func (l *runLog) show() {
	r, ok := l.list.selected()
	text := ""
	if ok {
		text = r.describe(l.study.Units())
	}
	l.detail.Set(text)
	defer l.on.settle()
	for _, b := range []*widget.Button{l.edit, l.remove} {
		if ok != !b.Disabled() {
			if ok {
				b.Enable()
			} else {
				b.Disable()
			}
		}
	}
}

// editSelected puts the run selected into the form.
func (l *runLog) editSelected() {
	if r, ok := l.list.selected(); ok {
		l.form.edit(r)
	}
}

// deleteSelected deletes the run selected.
func (l *runLog) deleteSelected() {
	r, ok := l.list.selected()
	if !ok {
		return
	}
	if problems := l.study.Document().DeleteRun(r.setup, r.index); len(problems) > 0 {
		l.say(problems[0].String())
		return
	}
	l.say("The run of " + r.Date + " is deleted. Undo brings it back.")
	l.refresh()
}

// leaveRun asks about a run that is typed and not logged before it goes on.
// Without one it goes on at once.
func (w *Window) leaveRun(form *runForm, then func()) {
	if !form.typed() {
		then()
		return
	}
	w.ask("Run not logged", "A run is typed on the page Setups that is not in the log.",
		answer{"Log it", func() {
			if form.submit() {
				w.leaveRun(form, then)
			} else {
				w.say("The run is refused; the page Setups of the tab Tune says why.")
			}
		}},
		answer{"Drop it", func() {
			form.drop()
			then()
		}},
		answer{"Keep editing", nil})
}
