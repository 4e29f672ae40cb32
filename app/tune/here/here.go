// Package here is the panel of the holes in use: instant center and anti-squat at
// ride height and at the travel looked at.
package here

import (
	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/readout"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Panel is the page Here of the tab Tune.
type Panel struct {
	panel.Face
	study   *study.Study
	verdict *form.Prose
	numbers *readout.Table
	roll    rollPart
}

// Rows of the numbers.
const (
	rowAhead = iota
	rowUp
	rowSquat
	rowPinion
	rowJoint
	rowShift
	rowCG
	rowSpring
	rowShare
	rowThrust
	rowFront
	rowLimit
	rowRoll
	rowRollLimit
	rowCount
)

var rowNames = [rowCount]string{
	rowAhead: "IC ahead, swing arm", rowUp: "IC up", rowSquat: "Anti-squat",
	rowPinion: "Pinion angle change", rowJoint: "Pinion joint", rowShift: "Axle moves", rowCG: "CG height",
	rowSpring: "Springs, hooked", rowShare: "Through the bars", rowThrust: "Thrust, hooked", rowFront: "Front tires, hooked", rowLimit: "Limit, hooked",
	rowRoll: "Roll, bars alone", rowRollLimit: "Roll, rod ends allow",
}

// New returns the panel.
func New(host panel.Host) panel.Panel {
	p := &Panel{
		study:   host.Study,
		verdict: form.Words(theme.ColorNameForeground),
		numbers: readout.New([]string{"At ride height", "Here"}, rowNames[:]),
		roll:    newRollPart(),
	}
	p.Face = panel.Face{
		Name:  "Here",
		Said:  container.NewVBox(p.verdict, p.numbers, p.roll.object),
		Shown: panel.Gallery(host.Charts(plotting.AntiSquatKey, plotting.CenterPathKey)...),
		Drawn: []chart.Key{plotting.AntiSquatKey, plotting.CenterPathKey},
	}
	p.Refresh()
	return p
}

// Refresh writes verdict and numbers.
func (p *Panel) Refresh() {
	r, u := p.study.Result(), p.study.Units()
	p.verdict.Set(words.CenterVerdict(r.CenterVerdict(), u))
	heading := "Now: " + u.Travel(p.study.Travel())
	if _, playing := p.study.Instant(); playing {
		heading = "Now: " + u.Format(units.Time, p.study.Time())
	}
	p.numbers.SetHeading(1, heading)
	p.column(0, r, &r.Ride, u)
	p.column(1, r, p.study.Station(), u)
	p.writeRoll(u)
}

// column writes one station.
func (p *Panel) column(i int, r *analysis.Result, s *analysis.Station, u units.System) {
	set := func(row int, text string) { p.numbers.Set(row, i, text, "") }
	length := func(x float64) string { return u.Format(units.Length, x) }
	ahead, up, squat := "parallel bars", "—", "upright"
	if s.HasInstantCenter {
		ahead, up = length(s.InstantCenter.X), length(s.InstantCenter.Y)
	}
	set(rowAhead, ahead)
	set(rowUp, up)
	color := fyne.ThemeColorName("")
	if s.HasAntiSquat {
		squat = u.Format(units.Percent, s.AntiSquat)
		color = panel.TargetColor(r, s.AntiSquat)
	}
	p.numbers.Set(rowSquat, i, squat, color)
	set(rowPinion, u.Nose(s.Pose.Turn))
	set(rowJoint, "not given")
	if s.Joints.Given {
		set(rowJoint, u.Nose(s.Joints.Pinion))
	}
	set(rowShift, u.ForeAft(s.Pose.Shift))
	set(rowCG, length(s.CG.Y))
	hooked := &s.Loads.Hooked
	spring, share := "—", "—"
	if hooked.Balanced {
		spring = u.Directed(units.Force, r.SpringChange(hooked), "more", "less")
		share = units.WholePercent(hooked.BarsShare)
	}
	set(rowSpring, spring)
	set(rowShare, share)
	set(rowThrust, u.Format(units.Force, hooked.Thrust))
	set(rowFront, u.Format(units.Force, hooked.FrontLoad))
	set(rowLimit, hooked.Governs.String())
	if _, playing := p.study.Instant(); playing && i == 1 {
		for _, row := range []int{rowJoint, rowThrust, rowFront, rowLimit} {
			set(row, "—") // an instant of the launch is no load case
		}
	}
}
