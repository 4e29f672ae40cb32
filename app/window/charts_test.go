package window

import (
	"strings"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/model/car"
)

// Every chart over travel draws the setup that the current one is held against,
// as soon as it is chosen, and no longer than that.
func TestChartsDrawBothSetups(t *testing.T) {
	d, _ := openDesk(t)
	d.show("Here")
	d.frame()
	both := func() bool {
		return strings.Contains(paneltest.Texts(d.charts.View("anti-squat")), " vs ")
	}
	if both() {
		t.Fatal("two setups are drawn at first")
	}
	d.study.Compare(1)
	d.frame()
	if !both() || !strings.Contains(d.charts.Chart("bar-force").Heading(), "baseline vs lower bar up") {
		t.Errorf("both %v, title %q", both(), d.charts.Chart("bar-force").Heading())
	}
	d.study.Compare()
	d.frame()
	if both() {
		t.Error("the setup is still drawn")
	}
}

// The chart of the run log stands beside it and follows it.
func TestTheLogsChartFollows(t *testing.T) {
	d, _ := openDesk(t)
	d.show("Setups")
	d.exhibit(2)
	v := d.charts.View("sixty-foot")
	if v.Frame().X == v.Frame().Y {
		t.Fatal("the chart is not drawn")
	}
	before := v.Frame()
	if p := d.doc.LogRun(0, car.Run{Date: "2031-05-17", SixtyFoot: 2.41, AntiSquat: 1.3}); p != nil {
		t.Fatal(p)
	}
	d.frame()
	if v.Frame() == before || !v.Frame().Y.Contains(2.41) {
		t.Errorf("the chart shows %+v, before %+v", v.Frame(), before)
	}
}
