package window

import (
	"bowline/app/scene/side"
	"bowline/app/stage"
	"bowline/app/study"
	"bowline/model/analysis"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// toolbar stands over the side view: setup, load case, hole mode and fit. How
// high it is depends on its width: middleLayout gives it its place.
type toolbar struct {
	study  *study.Study
	setup  *widget.Select
	load   *widget.RadioGroup
	moving *widget.Check
	fits   *fyne.Container
	cloud  *widget.Button // fits all instant centers, while the holes are searched
	turned func()         // told when buttons have come or gone; may be nil
}

// caseWords are the load cases as the toolbar offers them, and launchWord the
// launch beside them.
var caseWords = map[analysis.Case]string{analysis.Hit: "Hit", analysis.Hooked: "Hooked"}

const launchWord = "Launch"

// newToolbar returns the bar over a side view.
func newToolbar(s *study.Study, v *stage.Stage) *toolbar {
	b := &toolbar{study: s}
	b.setup = widget.NewSelect(nil, func(string) {
		if i := b.setup.SelectedIndex(); i >= 0 && i != s.Document().Setup() {
			s.Document().SelectSetup(i)
		}
	})
	b.load = widget.NewRadioGroup([]string{caseWords[analysis.Hit], caseWords[analysis.Hooked], launchWord}, func(word string) {
		s.SetLaunching(word == launchWord)
		for c, w := range caseWords {
			if w == word {
				s.SetCase(c)
			}
		}
	})
	b.load.Horizontal, b.load.Required = true, true
	b.moving = widget.NewCheck("Move holes", s.SetMoving)
	b.cloud = widget.NewButton("Fit ICs", func() { v.SetFit(side.FitCenters) })
	b.fits = container.NewHBox(
		widget.NewButton("Fit bars", func() { v.SetFit(side.FitBars) }),
		widget.NewButton("Fit car", func() { v.SetFit(side.FitCar) }),
		b.cloud,
	)
	s.Listen(func(c study.Change) {
		if c.Has(study.Analysis | study.Choice | study.Wanted) {
			b.refresh()
		}
	})
	b.refresh()
	return b
}

// refresh takes up names and choices.
func (b *toolbar) refresh() {
	doc := b.study.Document()
	names := make([]string, len(doc.Car().Setups))
	same := len(names) == len(b.setup.Options)
	for i, s := range doc.Car().Setups {
		names[i] = s.Name
		same = same && names[i] == b.setup.Options[i]
	}
	if !same {
		b.setup.Options = names
		b.setup.Refresh()
	}
	if b.setup.Selected != names[doc.Setup()] {
		b.setup.Selected = names[doc.Setup()]
		b.setup.Refresh()
	}
	shown := caseWords[b.study.Case()]
	if b.study.Launching() {
		shown = launchWord
	}
	if b.load.Selected != shown {
		b.load.Selected = shown
		b.load.Refresh()
	}
	if b.moving.Checked != b.study.Moving() {
		b.moving.Checked = b.study.Moving()
		b.moving.Refresh()
	}
	if on := b.study.Searching(); on != b.cloud.Visible() {
		b.cloud.Hidden = !on
		if b.turned != nil {
			b.turned()
		}
	}
}
