package charts_test

import (
	"slices"
	"testing"

	"bowline/app/charts"
	"bowline/app/internal/screen"
	"bowline/app/panel"
	"bowline/app/panel/paneltest"
	"bowline/app/runner/runnertest"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// nothing is a panel that shows nothing.
func nothing(panel.Host) panel.Panel { return paneltest.Part(container.NewStack(), func() {}, 0) }

// keys lists the keys of charts.
func keys(list []*chart.Chart) []chart.Key {
	var found []chart.Key
	for _, c := range list {
		found = append(found, c.Key)
	}
	return found
}

// Of two charts in sight the one that is said to be on show is drawn.
func TestWhatIsOnShowIsDrawn(t *testing.T) {
	d := paneltest.Demo(t, nothing)
	queue := runnertest.NewQueue()
	shown := []chart.Key{plotting.BarForceKey}
	c := charts.New(d.Study, queue.Post, func() []chart.Key { return shown }, func(chart.Key) {})
	t.Cleanup(c.Close)
	views := container.NewGridWithColumns(2, c.View(plotting.BarForceKey), c.View(plotting.BowKey))
	test.NewTempWindow(t, views).Resize(fyne.NewSize(900, 400))
	frame := func() {
		for _, o := range screen.Seen(views) {
			if r, ok := o.(*canvas.Raster); ok {
				r.Generator(int(r.Size().Width), int(r.Size().Height))
			}
		}
		queue.Settle(c.Busy)
	}
	want := func(forces, bow bool) {
		t.Helper()
		for key, want := range map[chart.Key]bool{plotting.BarForceKey: forces, plotting.BowKey: bow} {
			if got := c.View(key).Frame() != (chart.Frame{}); got != want {
				t.Errorf("%s is drawn: %v, want %v", key, got, want)
			}
		}
	}
	frame()
	want(true, false)
	shown = append(shown, plotting.BowKey)
	c.Draw()
	queue.Settle(c.Busy)
	want(true, true)
}

// Charts over the launch are there only while there is one of the car as it is.
func TestChartsOfTheLaunch(t *testing.T) {
	d := paneltest.Demo(t, nothing)
	c := charts.New(d.Study, runnertest.NewQueue().Post, func() []chart.Key { return nil }, func(chart.Key) {})
	t.Cleanup(c.Close)
	want := func(when string, launched bool) {
		t.Helper()
		if got := slices.Contains(keys(c.All()), plotting.LaunchBarsKey); got != launched || (c.Chart(plotting.LaunchBarsKey) != nil) != launched {
			t.Errorf("%s the launch is drawn: %v", when, got)
		}
		if !slices.Contains(keys(c.All()), plotting.BarForceKey) || c.Chart(plotting.BarForceKey) == nil {
			t.Errorf("%s the forces over travel are not drawn", when)
		}
	}
	want("at first", false)
	d.Study.SetLaunching(true)
	d.Settle()
	want("launched", true)
	d.Study.SetLaunching(false)
	d.Edit()
	want("after an edit", false)
}
