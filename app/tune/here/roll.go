package here

import (
	"strings"

	"bowline/app/form"
	"bowline/app/readout"
	"bowline/app/words"
	"bowline/model/roll"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// rollPart says how the axle rolls on its bars, and shows by how much the rod ends are
// misaligned.
type rollPart struct {
	object  fyne.CanvasObject
	verdict *form.Prose
	ends    *readout.Table
}

// Columns of the misalignments.
const (
	levelMost = iota
	tiltedHere
	tiltedMost
	misalignments
)

func newRollPart() rollPart {
	p := rollPart{verdict: form.Words(theme.ColorNameForeground)}
	tilt := units.US.FormatExact(units.Angle, roll.Tilt)
	p.ends = readout.New([]string{"Level, most", "Rolled " + tilt + ", here", "Rolled " + tilt + ", most"}, words.RodEnds())
	p.object = form.Group(form.Heading("Roll, and misalignment of the rod ends"), p.verdict, p.ends,
		form.Caption(words.RollAssumes, theme.ColorNamePlaceHolder))
	return p
}

// writeRoll writes all of it, and the rows of roll among the numbers.
func (p *Panel) writeRoll(u units.System) {
	r, err := p.study.Roll(p.study.Document().Setup())
	if err != nil {
		p.roll.verdict.Set(words.RollUnknown(err))
		r = nil
	} else {
		p.roll.verdict.Set(strings.Join(words.RollVerdict(r, u), " "))
	}
	ride, here := p.rolls(r)
	for column, at := range [...]*roll.State{ride, here} {
		stiffness, limit := "—", "—"
		if at != nil {
			stiffness, limit = u.Format(units.RollRate, at.Stiffness), words.RollLimitCell(r.Limits, at, u)
		}
		p.numbers.Set(rowRoll, column, stiffness, "")
		p.numbers.Set(rowRollLimit, column, limit, "")
	}
	var columns [misalignments]*roll.Misalignment
	var limits roll.Limits
	if r != nil {
		columns[levelMost], columns[tiltedMost], limits = &r.Most.Level, &r.Most.Tilted, r.Limits
	}
	if here != nil {
		columns[tiltedHere] = &here.Tilted
	}
	for column, m := range columns {
		p.misalign(column, m, limits, u)
	}
}

// rolls returns how the axle rolls at ride height and at the travel looked at, each nil
// where that is not known.
func (p *Panel) rolls(r *roll.Result) (ride, here *roll.State) {
	if r == nil {
		return nil, nil
	}
	travel := p.study.Station().Pose.Travel
	if travel == 0 {
		return &r.Ride, &r.Ride
	}
	if at, err := r.At(travel); err == nil {
		here = &at
	}
	return &r.Ride, here
}

// misalign writes a column of misalignments, those beyond their limit as wrong.
func (p *Panel) misalign(column int, m *roll.Misalignment, limits roll.Limits, u units.System) {
	for row := range words.RodEnds() {
		bar, end := row/2, row%2
		text, color := "—", fyne.ThemeColorName("")
		if m != nil {
			text = u.Format(units.Angle, m[bar][end])
			if limits[bar] > 0 && m[bar][end] > limits[bar] {
				color = theme.ColorNameError
			}
		}
		p.roll.ends.Set(row, column, text, color)
	}
}
