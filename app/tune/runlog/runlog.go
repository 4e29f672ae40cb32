// Package runlog shows what the car did with a setup, the runs logged, and takes
// another one that is typed: parts of the page of setups.
package runlog

import (
	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Log is the run log with its form.
type Log struct {
	study   *study.Study
	against *form.Prose // the time computed
	say     func(string)
	ask     func(title, question string, answers ...panel.Answer)
	on      *form.Page
	list    *runTable
	form    *runForm
	detail  *form.Prose
	all     *widget.Check
	edit    *widget.Button
	remove  *widget.Button

	Said  fyne.CanvasObject // words on the runs and the form
	Shown panel.Exhibit     // the runs
}

// New returns the log.
func New(host panel.Host) *Log {
	s, on := host.Study, host.Page
	l := &Log{study: s, say: host.Say, ask: host.Ask, on: on, list: newRunTable(s), form: newRunForm(s, on), detail: form.Words(theme.ColorNameForeground), against: form.Words(theme.ColorNameForeground)}
	l.all = widget.NewCheck("All setups", func(on bool) {
		l.list.setAll(on)
		l.Refresh()
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
	l.Said = form.Group(l.against, l.detail, l.form.object)
	l.Shown = panel.Exhibit{Name: "Run log", Object: l.list.table, Tools: container.NewHBox(l.all, l.edit, l.remove)}
	return l
}

// Refresh takes up log and form as they are.
func (l *Log) Refresh() {
	l.list.refresh()
	l.form.refresh()
	l.compare()
	l.show()
}

// compare writes how the times logged with the current setup stand to the one computed.
func (l *Log) compare() {
	doc := l.study.Document()
	text := ""
	if launched, current := l.study.LaunchOf(doc.Setup()); current {
		best, _ := car.Quickest(doc.Car().Setups[doc.Setup()].Runs)
		text = words.LoggedAgainst(best, launched, l.study.Units())
	}
	l.against.Set(text)
}

// show writes the run selected and what can be done to it.
func (l *Log) show() {
	r, ok := l.list.selected()
	text := ""
	if ok {
		text = r.describe(l.study.Units())
	}
	l.detail.Set(text)
	defer l.on.Settle()
	form.Enable(l.edit, ok)
	form.Enable(l.remove, ok)
}

// editSelected puts the run selected into the form.
func (l *Log) editSelected() {
	if r, ok := l.list.selected(); ok {
		l.form.edit(r)
	}
}

// deleteSelected deletes the run selected.
func (l *Log) deleteSelected() {
	r, ok := l.list.selected()
	if !ok {
		return
	}
	if problems := l.study.Document().DeleteRun(r.setup, r.index); len(problems) > 0 {
		l.say(problems[0].String())
		return
	}
	l.say(words.RunDeleted(r.Run))
	l.Refresh()
}

// Leave asks about a run that is typed and not logged before it goes on. Without
// one it goes on at once.
func (l *Log) Leave(then func()) {
	if !l.form.typed() {
		then()
		return
	}
	l.ask("Run not logged", "A run is typed on the page Setups that is not in the log.",
		panel.Answer{Name: "Log it", Do: func() {
			if l.form.submit() {
				l.Leave(then)
			} else {
				l.say("The run is refused; the page Setups of the tab Tune says why.")
			}
		}},
		panel.Answer{Name: "Drop it", Do: func() {
			l.form.drop()
			then()
		}},
		panel.Answer{Name: "Keep editing"})
}
