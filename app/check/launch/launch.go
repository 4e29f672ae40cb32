// Package launch is the panel that checks the bars over time: the load of each of
// the four as the car leaves, and what a turn of preload does.
package launch

import (
	"strings"

	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/readout"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Panel is the tab Check while the launch is looked at.
type Panel struct {
	panel.Face
	study   *study.Study
	verdict *form.Prose
	basis   *form.Prose
	went    *form.Prose
	events  *form.Prose
	assumed *assumed
	bars    *readout.Table
	car     *readout.Table
	sides   *readout.Table
	scales  *form.Prose
	preload *readout.Table
}

// Rows of the numbers of the whole car, and of its left and right side.
const (
	rowSixty = iota
	rowRelease
	rowPitch
	rowRoll
	carRows
)

const (
	rowRear = iota
	rowFront
	rowTire
	sideRows
)

var (
	carNames  = [carRows]string{rowSixty: "60 ft", rowRelease: "From release", rowPitch: "Pitch", rowRoll: "Roll"}
	sideNames = [sideRows]string{rowRear: "Rear travel", rowFront: "Front travel", rowTire: "Rear tire"}
)

// New returns the panel: words and the four bars over their chart, the car and what
// happens to it over its charts, and the preload.
func New(host panel.Host) panel.Panel {
	p := &Panel{
		study:   host.Study,
		verdict: form.Words(theme.ColorNameForeground),
		basis:   form.Caption("", theme.ColorNamePlaceHolder),
		went:    form.Words(theme.ColorNameForeground),
		events:  form.Words(theme.ColorNameForeground),
		scales:  form.Words(theme.ColorNameForeground),
		assumed: newAssumed(host.Study, host.Page),
		bars:    readout.New([]string{"Now", "Worst push", "Worst pull"}, words.BarNames()),
		car:     readout.New([]string{"Whole car"}, carNames[:]),
		sides:   readout.New([]string{"Left", "Right"}, sideNames[:]),
		preload: readout.New(append([]string{"RL tire", "RR tire"}, words.BarInitials()...), words.BarNames()),
	}
	before := form.Heading("On the scales, before the start")
	title := form.Heading("One turn longer, at rest: what tires and bars gain (bars: toward pull)")
	p.Face = panel.Face{
		Name:     "Launch",
		Said:     container.NewVBox(p.verdict, p.basis, p.went, p.bars, p.car, p.sides, p.events, before, p.scales, title, p.preload, p.assumed.object),
		Shown:    panel.Gallery(host.Charts(plotting.LaunchBarsKey, plotting.LaunchWheelsKey, plotting.LaunchAttitudeKey, plotting.LaunchTiresKey)...),
		Drawn:    []chart.Key{plotting.LaunchBarsKey, plotting.LaunchWheelsKey, plotting.LaunchAttitudeKey, plotting.LaunchTiresKey},
		Computed: study.WantsLaunch | study.WantsOtherLaunches | study.WantsWorth,
	}
	p.Refresh()
	return p
}

// Refresh writes words and numbers.
func (p *Panel) Refresh() {
	r, u := p.study.Launch(), p.study.Units()
	v := p.study.LoadVerdict()
	p.verdict.Set(words.LoadVerdict(v, u))
	p.verdict.SetColor(panel.StandingColor(v.Standing))
	p.basis.Set(words.Basis(p.study.Basis()))
	if r == nil {
		p.went.Set("The launch is being computed.")
		return
	}
	text := words.LaunchVerdict(r, u)
	if v.Demand.Source != analysis.FromLaunch {
		text += " " + words.NearestInLaunch(p.study.Result(), r)
	}
	p.went.Set(strings.TrimSpace(text + p.othersWords(u)))
	text = ""
	if events := words.Events(r, u); len(events) > 0 {
		text = "• " + strings.Join(events, "\n• ")
	}
	p.events.Set(text)
	p.writeBars(r, u)
	p.writeCar(r, u)
	p.scales.Set(words.Preload(p.study.Result(), r, u))
	p.writePreload(r, u)
	p.assumed.write(r, u)
}

// othersWords says the same of the setups that the current one is compared with,
// each with its 60-ft time.
func (p *Panel) othersWords(u units.System) string {
	text := ""
	for _, o := range p.study.Others() {
		if o.Launch != nil {
			text += "\n" + words.OtherLaunch(words.Setup{Name: o.Name, Result: o.Result, Launch: o.Launch}, u)
		}
	}
	return text
}

// writeBars writes what each bar carries now and at worst.
func (p *Panel) writeBars(r *launch.Result, u units.System) {
	i, ok := p.study.Instant()
	for row, b := range launch.Bars {
		now, color := "—", fyne.ThemeColorName("")
		if ok {
			now, color = p.held(b, r.Tension[b][i], u)
		}
		p.bars.Set(row, 0, now, color)
		peak := r.Peaks[b]
		for way, tension := range [...]float64{column.Push: -peak.Push, column.Pull: peak.Pull} {
			use, _ := p.study.Result().Hold(b.Pair(), tension)
			p.bars.Set(row, 1+way, words.Use(use, u), panel.LoadColor(column.Direction(way), use.Share))
		}
	}
}

// held writes a tension as push or pull.
func (p *Panel) held(b launch.RodID, tension float64, u units.System) (string, fyne.ThemeColorName) {
	use, way := p.study.Result().Hold(b.Pair(), tension)
	return words.Load(way, use, u), panel.LoadColor(way, use.Share)
}

// writeCar writes where the car is now.
func (p *Panel) writeCar(r *launch.Result, u units.System) {
	p.car.Set(rowSixty, 0, words.SixtyFeet(r, u), "")
	p.car.Set(rowRelease, 0, words.FromRelease(r, u), "")
	i, ok := p.study.Instant()
	if !ok {
		return
	}
	p.car.Set(rowPitch, 0, u.Nose(r.Pitch[i]), "")
	p.car.Set(rowRoll, 0, u.Directed(units.Angle, r.Roll[i], "left up", "right up"), "")
	for side := range launch.Sides {
		p.sides.Set(rowRear, side, u.Travel(r.RearTravel[side][i]), "")
		p.sides.Set(rowFront, side, u.Travel(r.FrontTravel[side][i]), "")
		p.sides.Set(rowTire, side, u.Format(units.Force, r.RearLoad[side][i]), "")
	}
}

// writePreload writes what a turn of each bar changes at rest.
func (p *Panel) writePreload(r *launch.Result, u units.System) {
	for row := range launch.Bars {
		turn := &r.PerTurn[row]
		for column, x := range []float64{turn.RearLoad[0], turn.RearLoad[1], turn.Tension[0], turn.Tension[1], turn.Tension[2], turn.Tension[3]} {
			p.preload.Set(row, column, units.Signed(u.FromSI(units.Force, x), 0), "")
		}
	}
}
