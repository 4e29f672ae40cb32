package window

import (
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/panel/paneltest"
	"bowline/model/car"
	"bowline/model/units"
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

// The charts of the launch are drawn while it is looked at.
func TestTheLaunchesChartsAreDrawn(t *testing.T) {
	d := leaving(t)
	if keys := d.panels.current().Charts(); len(keys) != 4 {
		t.Errorf("%q are on show", keys)
	}
	for i, key := range d.panels.current().Charts() {
		if d.exhibit(i); !d.drawn(key) {
			t.Errorf("%s is not drawn", key)
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
	// The verdict rests on the launch while a travel is looked at too.
	d.study.SetLaunching(false)
	d.edit()
	if last := d.study.Launch(); d.study.LaunchOutdated() || last.Car != d.doc.Car() {
		t.Error("the verdict rests on an old launch")
	}
}

func TestToolbarSwitchesToTheLaunch(t *testing.T) {
	d := newDesk(t)
	bar := find(d, func(*form.Radio) bool { return true })
	bar.SetSelected("Launch")
	d.settle()
	if !d.study.Launching() || d.study.Launch() == nil || d.panels.current().Title() != "Launch" {
		t.Fatal("the launch is not shown")
	}
	bar.SetSelected("Hooked")
	d.settle()
	if d.study.Launching() || d.panels.current().Title() != "Check" {
		t.Error("the launch is still shown")
	}
}

func TestPointingAtAChartOfTheLaunchMovesTime(t *testing.T) {
	d := leaving(t)
	v := d.charts.View("launch-bars")
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
	v := d.charts.View("launch-bars")
	alone := strings.Join(d.charts.Chart("launch-bars").Readout(0.1, units.US), "\n")
	d.study.Compare(1)
	if !d.study.LaunchOutdated() {
		t.Error("the other launch is there at once")
	}
	d.settle()
	other := d.study.Others()[0]
	if d.study.LaunchOutdated() || other.Launch == nil || other.Launch.Car != d.doc.Car() {
		t.Fatal("there is no launch of the other setup")
	}
	if both := strings.Join(d.charts.Chart("launch-bars").Readout(0.1, units.US), "\n"); both == alone || !strings.Contains(both, " vs ") {
		t.Errorf("with two setups the readout is %q, alone it is %q", both, alone)
	}
	d.frame()
	if v.Frame().X == v.Frame().Y || !strings.Contains(paneltest.Texts(v), " vs ") {
		t.Error("the chart on show is not that of both")
	}
	first, second := d.study.Launch(), other.Launch
	d.edit()
	if other := d.study.Others()[0]; d.study.LaunchOutdated() || d.study.Launch() == first || other.Launch == second {
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
