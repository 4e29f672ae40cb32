package window

import (
	"strings"
	"testing"

	"bowline/model/units"
)

// Every chart over travel draws the setup that the current one is held against,
// as soon as it is chosen, and no longer than that.
func TestChartsDrawBothSetups(t *testing.T) {
	d, _ := openDesk(t)
	d.show(panelHere)
	d.frame()
	both := func() bool {
		return strings.Contains(strings.Join(d.charts.pen.charts["anti-squat"].Readout(0, units.US), "\n"), " vs ")
	}
	if both() {
		t.Fatal("two setups are drawn at first")
	}
	d.study.Compare(1)
	d.frame()
	if !both() || !strings.Contains(d.charts.chart("bar-force").Title, "baseline vs lower bar up") {
		t.Errorf("both %v, title %q", both(), d.charts.chart("bar-force").Title)
	}
	d.study.Compare()
	d.frame()
	if both() {
		t.Error("the setup is still drawn")
	}
}
