package holes

import (
	"fmt"

	"bowline/app/form"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// launches is where a person has all combinations launched, and what the list goes by and
// rests on.
type launches struct {
	study  *study.Study
	check  *form.Check
	button *widget.Button // stops the launches or goes on with them
	basis  *form.Prose
	object *fyne.Container
}

func newLaunches(s *study.Study) *launches {
	l := &launches{study: s, basis: form.Caption("", theme.ColorNamePlaceHolder)}
	l.check = form.NewCheck("Launch every combination", s.LaunchesHoles, form.Always(s.LaunchHoles))
	l.button = widget.NewButton("Stop", l.press)
	l.button.Hide()
	l.object = form.Stacked(container.NewBorder(nil, nil, nil, l.button, l.check), l.basis)
	return l
}

// press does what the button says.
func (l *launches) press() {
	if l.study.HolesLaunch().Phase == study.HolesStopped {
		l.study.ResumeHoleLaunches()
	} else {
		l.study.StopHoleLaunches()
	}
}

// refresh shows how far the launches are.
func (l *launches) refresh() {
	l.check.Update()
	text, button := l.words()
	l.basis.Set(text)
	l.basis.Hidden = text == ""
	l.button.Hidden = button == ""
	if button != "" && l.button.Text != button {
		l.button.SetText(button)
	}
}

// words say what the list goes by and how far the launches are, and what the button would
// do.
func (l *launches) words() (text, button string) {
	text = words.RankedBy(l.study.Ranking())
	switch now := l.study.HolesLaunch(); now.Phase {
	case study.HolesRun:
		button = "Stop"
	case study.HolesStopped:
		text, button = fmt.Sprintf("%s Stopped: %s are not launched.", text, units.Count(now.Total-now.Done)), "Go on"
	case study.HolesFailed:
		text += " They cannot be launched: " + now.Err.Error() + "."
	}
	return text, button
}
