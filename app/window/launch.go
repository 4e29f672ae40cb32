package window

import (
	"fmt"
	"strings"

	"bowline/app/readout"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// launchPanel answers the builder over time: what each of the four bars
// carries as the car leaves, and what a turn of preload does.
type launchPanel struct {
	study   *study.Study
	verdict *readout.Prose
	assumed *readout.Prose
	bars    *readout.Table
	car     *readout.Table
	sides   *readout.Table
	preload *readout.Table
	object  fyne.CanvasObject
}

// launchCharts are the keys of the charts over time.
var launchCharts = []chart.Key{plotting.LaunchBarsKey, plotting.LaunchAttitudeKey, plotting.LaunchTiresKey}

// Rows of the numbers of the whole car, and of its left and right side.
const (
	launchSixty = iota
	launchPitch
	launchRoll
	launchCarRows
)

const (
	launchRear = iota
	launchFront
	launchTire
	launchSideRows
)

var (
	launchCarNames  = [launchCarRows]string{launchSixty: "60 ft", launchPitch: "Pitch", launchRoll: "Roll"}
	launchSideNames = [launchSideRows]string{launchRear: "Rear travel", launchFront: "Front travel", launchTire: "Rear tire"}
)

// newLaunchPanel returns the panel: words, the four bars, their chart, the car
// and its charts, and the preload.
func newLaunchPanel(s *study.Study, bars, attitude, tires fyne.CanvasObject) *launchPanel {
	p := &launchPanel{
		study:   s,
		verdict: prose(theme.ColorNameForeground),
		assumed: readout.NewProse("", theme.SizeNameCaptionText, theme.ColorNamePlaceHolder, fyne.TextStyle{}),
		bars:    readout.New([]string{"Now", "Worst push", "Worst pull"}, []string{"Upper left", "Upper right", "Lower left", "Lower right"}),
		car:     readout.New([]string{"Whole car"}, launchCarNames[:]),
		sides:   readout.New([]string{"Left", "Right"}, launchSideNames[:]),
		preload: readout.New([]string{"RL tire", "RR tire", "UL", "UR", "LL", "LR"}, []string{"Upper left", "Upper right", "Lower left", "Lower right"}),
	}
	title := readout.NewProse("One turn longer, at rest: what tires and bars gain (bars: toward pull)", theme.SizeNameText, theme.ColorNameForeground, fyne.TextStyle{Bold: true})
	p.object = scrolled(p.verdict, p.bars, bars, p.car, p.sides, attitude, tires, title, p.preload, p.assumed)
	p.refresh()
	return p
}

func (p *launchPanel) charts() []chart.Key { return launchCharts }

func (p *launchPanel) wants() study.Wants { return study.WantsLaunch | study.WantsOtherLaunches }

// refresh writes words and numbers.
func (p *launchPanel) refresh() {
	r, u := p.study.Launch(), p.study.Units()
	if r == nil {
		p.verdict.Set("The launch is being computed.")
		return
	}
	text := words.LaunchVerdict(r, u) + " " + words.NearestInLaunch(p.study.Result(), r) + p.otherWords(u)
	p.verdict.Set(strings.TrimSpace(text))
	p.writeBars(r, u)
	p.writeCar(r, u)
	p.writePreload(r, u)
	text = ""
	for _, a := range r.Assumed {
		text += "Assumed: " + words.Assumption(a, u) + "\n"
	}
	p.assumed.Set(text)
}

// otherWords says the same of the setup that the current one is held against,
// with its 60-ft time.
func (p *launchPanel) otherWords(u units.System) string {
	other := otherOf(p.study)
	if other == nil || other.Launch == nil {
		return ""
	}
	return "\n" + words.OtherLaunch(words.Setup{Name: other.Name, Result: other.Result, Launch: other.Launch}, u)
}

// writeBars writes what each bar carries now and at worst.
func (p *launchPanel) writeBars(r *launch.Result, u units.System) {
	i, ok := p.study.Instant()
	for row, b := range launch.Bars {
		now, color := "—", fyne.ThemeColorName("")
		if ok {
			now, color = p.held(b, r.Tension[b][i], u)
		}
		p.bars.Set(row, 0, now, color)
		peak := r.Peaks[b]
		for column, tension := range []float64{-peak.Push, peak.Pull} {
			text, color := "none", fyne.ThemeColorName("")
			if tension != 0 {
				use, _ := p.study.Result().Hold(b.Pair(), tension)
				text = u.Format(units.Force, use.Force) + ", " + units.Share(use.Share)
				color = shareColor(use.Share)
			}
			p.bars.Set(row, 1+column, text, color)
		}
	}
}

// held writes a tension as push or pull.
func (p *launchPanel) held(b launch.RodID, tension float64, u units.System) (string, fyne.ThemeColorName) {
	use, way := p.study.Result().Hold(b.Pair(), tension)
	color := fyne.ThemeColorName("")
	if use.Share > 1 {
		color = theme.ColorNameError
	}
	return fmt.Sprintf("%s %s", way, u.Format(units.Force, use.Force)), color
}

// writeCar writes where the car is now.
func (p *launchPanel) writeCar(r *launch.Result, u units.System) {
	p.car.Set(launchSixty, 0, words.SixtyFeet(r, u), "")
	i, ok := p.study.Instant()
	if !ok {
		return
	}
	p.car.Set(launchPitch, 0, u.Nose(r.Pitch[i]), "")
	p.car.Set(launchRoll, 0, u.Directed(units.Angle, r.Roll[i], "left up", "right up"), "")
	for side := range launch.Sides {
		p.sides.Set(launchRear, side, u.Travel(r.RearTravel[side][i]), "")
		p.sides.Set(launchFront, side, u.Travel(r.FrontTravel[side][i]), "")
		p.sides.Set(launchTire, side, u.Format(units.Force, r.RearLoad[side][i]), "")
	}
}

// writePreload writes what a turn of each bar changes at rest.
func (p *launchPanel) writePreload(r *launch.Result, u units.System) {
	for row := range launch.Bars {
		turn := &r.PerTurn[row]
		for column, x := range []float64{turn.RearLoad[0], turn.RearLoad[1], turn.Tension[0], turn.Tension[1], turn.Tension[2], turn.Tension[3]} {
			p.preload.Set(row, column, units.Signed(u.FromSI(units.Force, x), 0), "")
		}
	}
}
