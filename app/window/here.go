package window

import (
	"math"

	"bowline/app/readout"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// herePanel answers the racer for the holes in use: where the instant center
// and the anti-squat are, at ride height and at the travel looked at.
type herePanel struct {
	study   *study.Study
	verdict *readout.Prose
	numbers *readout.Table
	object  fyne.CanvasObject
}

// Rows of the numbers.
const (
	tuneAhead = iota
	tuneUp
	tuneSquat
	tunePinion
	tuneJoint
	tuneShift
	tuneCG
	tuneSpring
	tuneShare
	tuneThrust
	tuneFront
	tuneLimit
	tuneRows
)

var tuneNames = [tuneRows]string{
	tuneAhead: "IC ahead, swing arm", tuneUp: "IC up", tuneSquat: "Anti-squat",
	tunePinion: "Pinion angle change", tuneJoint: "Pinion joint", tuneShift: "Axle moves", tuneCG: "CG height",
	tuneSpring: "Springs, hooked", tuneShare: "Through the bars", tuneThrust: "Thrust, hooked", tuneFront: "Front tires, hooked", tuneLimit: "Limit, hooked",
}

// newHerePanel returns the panel with its charts below the numbers.
func newHerePanel(s *study.Study, charts ...fyne.CanvasObject) *herePanel {
	p := &herePanel{
		study:   s,
		verdict: prose(theme.ColorNameForeground),
		numbers: readout.New([]string{"At ride height", "Here"}, tuneNames[:]),
	}
	p.object = scrolled(append([]fyne.CanvasObject{p.verdict, p.numbers}, charts...)...)
	p.refresh()
	return p
}

func (p *herePanel) charts() []chart.Key {
	return []chart.Key{plotting.AntiSquatKey, plotting.CenterPathKey}
}

func (p *herePanel) wants() study.Wants { return 0 }

// refresh writes verdict and numbers.
func (p *herePanel) refresh() {
	r, u := p.study.Result(), p.study.Units()
	p.verdict.Set(words.CenterVerdict(r.CenterVerdict(), u))
	heading := "Now: " + u.Travel(p.study.Travel())
	if _, playing := p.study.Instant(); playing {
		heading = "Now: " + u.Format(units.Time, p.study.Time())
	}
	p.numbers.SetHeading(1, heading)
	p.column(0, r, &r.Ride, u)
	p.column(1, r, p.study.Station(), u)
}

// column writes one station.
func (p *herePanel) column(i int, r *analysis.Result, s *analysis.Station, u units.System) {
	set := func(row int, text string) { p.numbers.Set(row, i, text, "") }
	length := func(x float64) string { return u.Format(units.Length, x) }
	ahead, up, squat := "parallel bars", "—", "upright"
	if s.HasInstantCenter {
		ahead, up = length(s.InstantCenter.X), length(s.InstantCenter.Y)
	}
	set(tuneAhead, ahead)
	set(tuneUp, up)
	color := fyne.ThemeColorName("")
	if s.HasAntiSquat {
		squat = u.Format(units.Percent, s.AntiSquat)
		color = targetColor(r, s.AntiSquat)
	}
	p.numbers.Set(tuneSquat, i, squat, color)
	set(tunePinion, u.Nose(s.Pose.Turn))
	set(tuneJoint, "not given")
	if s.Joints.Given {
		set(tuneJoint, u.Nose(s.Joints.Pinion))
	}
	set(tuneShift, u.ForeAft(s.Pose.Shift))
	set(tuneCG, length(s.CG.Y))
	hooked := &s.Loads.Hooked
	spring, share := "—", "—"
	if hooked.Balanced {
		change := r.SpringChange(hooked)
		spring = u.Format(units.Force, math.Abs(change)) + map[bool]string{true: " less", false: " more"}[change < 0]
		share = units.WholePercent(hooked.BarsShare)
	}
	set(tuneSpring, spring)
	set(tuneShare, share)
	set(tuneThrust, u.Format(units.Force, hooked.Thrust))
	set(tuneFront, u.Format(units.Force, hooked.FrontLoad))
	set(tuneLimit, hooked.Governs.String())
	if _, playing := p.study.Instant(); playing && i == 1 {
		for _, row := range []int{tuneJoint, tuneThrust, tuneFront, tuneLimit} {
			set(row, "—") // an instant of the launch is no load case
		}
	}
}
