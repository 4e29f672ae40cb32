package controls

import (
	"slices"

	"bowline/app/form"
	"bowline/app/scene"
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
	setup  *form.Select
	load   *form.Radio
	view   *form.Radio
	moving *form.Check
	fits   *fyne.Container
	cloud  *widget.Button // fits all instant centers, while the holes are searched
	turned func()         // called when buttons have come or gone; may be nil

	// Launched, if set, is called when a person has chosen to look at the launch.
	Launched func()
}

// caseWords are the load cases as the toolbar offers them, and launchWord the
// launch beside them.
var caseWords = map[analysis.Case]string{analysis.Hit: "Hit", analysis.Hooked: "Hooked"}

const launchWord = "Launch"

// View is a view of the car that the toolbar offers, by its name.
type View struct {
	Name      string
	Viewpoint scene.Viewpoint
}

// NewToolbar returns the bar over a stage, which shows the first of the views.
func NewToolbar(s *study.Study, v *stage.Stage, views ...View) *Toolbar {
	b := &Toolbar{study: s}
	b.setup = form.NewSelect(b.names, func() string { return b.names()[s.Document().Setup()] }, form.Always(s.Document().SelectSetup))
	b.load = form.NewRadio([]string{caseWords[analysis.Hit], caseWords[analysis.Hooked], launchWord}, b.loading, func(word string) {
		was := s.Launching()
		s.SetLaunching(word == launchWord)
		for c, w := range caseWords {
			if w == word {
				s.SetCase(c)
			}
		}
		if !was && s.Launching() && b.Launched != nil {
			b.Launched()
		}
	})
	names := make([]string, len(views))
	for i, each := range views {
		names[i] = each.Name
	}
	looked := names[0]
	b.view = form.NewRadio(names, func() string { return looked }, func(word string) {
		looked = word
		v.Look(views[slices.Index(names, word)].Viewpoint)
	})
	b.moving = form.NewCheck("Move holes", s.Moving, form.Always(s.SetMoving))
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

// View returns which of the views is shown, by its place among them.
func (b *Toolbar) View() int { return slices.Index(b.view.Options, b.view.Selected) }

// names lists the setups.
func (b *Toolbar) names() []string {
	setups := b.study.Document().Car().Setups
	names := make([]string, len(setups))
	for i, s := range setups {
		names[i] = s.Name
	}
	return names
}

// loading names the load case that is looked at, or the launch.
func (b *Toolbar) loading() string {
	if b.study.Launching() {
		return launchWord
	}
	return caseWords[b.study.Case()]
}

// refresh takes up names and choices.
func (b *Toolbar) refresh() {
	b.setup.Update()
	b.load.Update()
	b.view.Update()
	b.moving.Update()
	if on := b.study.Searching(); on != b.cloud.Visible() {
		b.cloud.Hidden = !on
		if b.turned != nil {
			b.turned()
		}
	}
}
