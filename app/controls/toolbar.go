package controls

import (
	"bowline/app/panel"
	"bowline/app/scene/side"
	"bowline/app/stage"
	"bowline/app/study"
	"bowline/model/analysis"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Toolbar stands over the side view: setup, load case, hole mode and fit. How
// high it is depends on its width: middleLayout gives it its place.
type Toolbar struct {
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

// NewToolbar returns the bar over a side view.
func NewToolbar(s *study.Study, v *stage.Stage) *Toolbar {
	b := &Toolbar{study: s}
	b.setup = widget.NewSelect(nil, func(string) {
		s.Document().SelectSetup(b.setup.SelectedIndex())
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
func (b *Toolbar) refresh() {
	doc := b.study.Document()
	names := make([]string, len(doc.Car().Setups))
	for i, s := range doc.Car().Setups {
		names[i] = s.Name
	}
	panel.ShowSelected(b.setup, names, names[doc.Setup()])
	shown := caseWords[b.study.Case()]
	if b.study.Launching() {
		shown = launchWord
	}
	panel.ShowChosen(b.load, shown)
	panel.ShowChecked(b.moving, b.study.Moving())
	if on := b.study.Searching(); on != b.cloud.Visible() {
		b.cloud.Hidden = !on
		if b.turned != nil {
			b.turned()
		}
	}
}
