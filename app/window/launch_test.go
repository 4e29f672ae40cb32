package window

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"bowline/app/readout"
	"bowline/assets"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"

	"fyne.io/fyne/v2/widget"
)

// leaving opens the demo car and looks at its launch.
func leaving(t *testing.T) *desk {
	t.Helper()
	d := newDesk(t)
	d.study.SetLaunching(true)
	d.settle()
	d.frame()
	if d.study.Launch() == nil {
		t.Fatal("there is no launch")
	}
	return d
}

func (d *desk) launchPanel() *launchPanel { return d.panels[panelLaunch].(*launchPanel) }

func TestLaunchIsShownInWordsNumbersAndCharts(t *testing.T) {
	d := leaving(t)
	r, p := d.study.Launch(), d.launchPanel()
	if text := p.verdict.Text(); !strings.Contains(text, "lower right bar") || !strings.Contains(text, "60 ft in") {
		t.Errorf("the verdict is %q", text)
	}
	peak := units.US.Format(units.Force, r.Peaks[launch.LowerRight].Push)
	if got := p.bars.Text(3, 1); !strings.HasPrefix(got, peak+", ") {
		t.Errorf("the lower right bar's worst push is %q, want %s", got, peak)
	}
	for _, key := range launchCharts {
		if v := d.charts.views[key]; v.Frame().X == v.Frame().Y {
			t.Errorf("%s is not drawn", key)
		}
	}
	// Another instant, other numbers.
	before := p.bars.Text(3, 0)
	d.study.SetTime(0.3)
	d.settle()
	i, _ := d.study.Instant()
	want := "push " + units.US.Format(units.Force, -r.Tension[launch.LowerRight][i])
	if got := p.bars.Text(3, 0); got != want || got == before {
		t.Errorf("at 0.3 s the lower right bar shows %q, want %q; before %q", got, want, before)
	}
	// The preload table has what the model found.
	if got, want := p.preload.Text(2, 0), fmt.Sprintf("+%.0f", units.US.FromSI(units.Force, r.PerTurn[launch.LowerLeft].RearLoad[launch.Left])); got != want || got == "+0" {
		t.Errorf("a turn of the lower left bar changes the left tire by %q, want %q", got, want)
	}
}

// Of an instant of the launch the tuner's numbers tell when it is, and nothing
// of load cases, which it is none of.
func TestTuneTellsTheInstantOfTheLaunch(t *testing.T) {
	d := leaving(t)
	d.study.SetTime(0.3)
	d.settle()
	p := d.panels[panelHere].(*herePanel)
	p.refresh()
	if got := p.numbers.Heading(1); got != "Now: 0.300 s" {
		t.Errorf("the heading is %q", got)
	}
	for _, row := range []int{tuneJoint, tuneSpring, tuneShare, tuneThrust, tuneFront, tuneLimit} {
		if got := p.numbers.Text(row, 1); got != "—" {
			t.Errorf("%s is %q", tuneNames[row], got)
		}
	}
	d.study.SetLaunching(false)
	if p.refresh(); p.numbers.Heading(1) != "Now: ride height" {
		t.Errorf("after the launch the heading is %q", p.numbers.Heading(1))
	}
}

// Its tables are legible in the width of a panel, with any example car.
func TestTablesOfTheLaunchFitTheirPanel(t *testing.T) {
	d := leaving(t)
	for _, name := range assets.CarNames() {
		d.openExample(name)
		for _, u := range []units.System{units.US, units.SI} {
			d.doc.SetUnits(u)
			d.settle()
			p := d.launchPanel()
			p.refresh()
			for table, columns := range map[*readout.Table]int{p.bars: 3, p.preload: 6} {
				for row, name := range []string{"Upper left", "Upper right", "Lower left", "Lower right"} {
					wantRoom(t, name, name, false, panelWidth*0.2-textGap)
					for i := range columns {
						wantRoom(t, name, table.Text(row, i), false, panelWidth*0.8/float32(columns)-textGap)
						wantRoom(t, "heading", table.Heading(i), true, panelWidth*0.8/float32(columns)-textGap)
					}
				}
			}
		}
	}
}

func TestAnEditBringsANewLaunch(t *testing.T) {
	d := leaving(t)
	first := d.study.Launch()
	if problems := d.study.Choose(car.ChassisLower, 0); problems != nil {
		t.Fatal(problems)
	}
	d.settle()
	if second := d.study.Launch(); second == first || d.study.LaunchOutdated() || second.Car != d.doc.Car() {
		t.Error("the launch did not follow the edit")
	}
	d.study.SetLaunching(false)
	d.edit()
	if last := d.study.Launch(); !d.study.LaunchOutdated() || last.Car == d.doc.Car() {
		t.Error("a launch was computed though nobody looks at it")
	}
}

func TestToolbarSwitchesToTheLaunch(t *testing.T) {
	d := newDesk(t)
	bar := find(d, func(*widget.RadioGroup) bool { return true })
	bar.SetSelected(launchWord)
	d.settle()
	if !d.study.Launching() || d.study.Launch() == nil || d.shown != panelLaunch {
		t.Fatal("the launch is not shown")
	}
	bar.SetSelected("Hooked")
	d.settle()
	if d.study.Launching() || d.shown != panelCheck {
		t.Error("the launch is still shown")
	}
}

func TestPlaying(t *testing.T) {
	d := leaving(t)
	c := d.clock
	c.pace.SetSelected("1/5 speed")
	c.toggle()
	if c.stop == nil {
		t.Fatal("it does not play")
	}
	start := c.last
	c.step(c.stop, start.Add(100*time.Millisecond))
	if got := d.study.Time(); math.Abs(got-0.02) > 1e-9 {
		t.Errorf("after 0.1 s at 1/5 speed it is %v s", got)
	}
	stale := c.stop
	c.toggle()
	c.step(stale, start.Add(time.Second))
	if got := d.study.Time(); math.Abs(got-0.02) > 1e-9 || c.stop != nil {
		t.Errorf("paused, it is %v s", got)
	}
	// To its end it stops, and begins anew from there.
	c.toggle()
	c.step(c.stop, c.last.Add(time.Hour))
	if d.study.Time() != d.study.LaunchEnd() || c.stop != nil {
		t.Errorf("at %v of %v s it still plays", d.study.Time(), d.study.LaunchEnd())
	}
	c.toggle()
	if d.study.Time() != 0 {
		t.Errorf("it begins anew at %v s", d.study.Time())
	}
	// The hand on the slider stops it.
	c.slider.OnChanged(0.1)
	if c.stop != nil || d.study.Time() != 0.1 {
		t.Errorf("scrubbed to 0.1 s it is %v s, playing %v", d.study.Time(), c.stop != nil)
	}
	if want := "0.100 s, "; !strings.HasPrefix(c.value.Text, want) {
		t.Errorf("the time reads %q", c.value.Text)
	}
}

func TestPointingAtAChartOfTheLaunchMovesTime(t *testing.T) {
	d := leaving(t)
	v := d.charts.views["launch-bars"]
	if v.At() != d.study.Time() {
		t.Errorf("the marker stands at %v, time is %v", v.At(), d.study.Time())
	}
	d.study.SetTime(0.25)
	if v.At() != 0.25 {
		t.Errorf("the marker stands at %v", v.At())
	}
}

// Held against another setup, the other one's launch follows the first, on the
// same worker, and is drawn with it.
func TestTheLaunchOfAnotherSetupIsComputedToo(t *testing.T) {
	d := leaving(t)
	v := d.charts.views["launch-bars"]
	alone := strings.Join(d.charts.chart("launch-bars").Readout(0.1, units.US), "\n")
	d.study.Compare(1)
	if !d.study.LaunchOutdated() {
		t.Error("the other launch is there at once")
	}
	d.settle()
	other := otherOf(d.study)
	if d.study.LaunchOutdated() || other.Launch == nil || other.Launch.Car != d.doc.Car() {
		t.Fatal("there is no launch of the other setup")
	}
	if both := strings.Join(d.charts.chart("launch-bars").Readout(0.1, units.US), "\n"); both == alone || !strings.Contains(both, " vs ") {
		t.Errorf("with two setups the readout is %q, alone it is %q", both, alone)
	}
	d.frame()
	if v.Frame().X == v.Frame().Y || !d.charts.pen.launched() {
		t.Error("the chart on show is not that of both")
	}
	first, second := d.study.Launch(), other.Launch
	d.edit()
	if other := otherOf(d.study); d.study.LaunchOutdated() || d.study.Launch() == first || other.Launch == second {
		t.Error("an edit has not brought two new launches")
	}
	// The same one, taken up again, is computed again.
	d.study.Compare()
	d.study.Compare(1)
	d.settle()
	if d.study.LaunchOutdated() {
		t.Error("taken up again, the other setup has no launch")
	}
}

// launched tells whether the pen draws two launches.
func (p *pen) launched() bool {
	return p.first.Launch != nil && len(p.others) > 0 && p.others[0].Launch != nil
}
