package window

import (
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/model/units"
)

func TestTheFontHasEveryLetterOfTheCharts(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := leaving(t)
	d.study.Compare(1)
	d.settle()
	for _, u := range []units.System{units.US, units.SI} {
		for _, c := range d.charts.All() {
			check(c.Heading())
			for _, line := range c.Readout(0.1, u) {
				check(line)
			}
		}
	}
	if *letters < 500 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
