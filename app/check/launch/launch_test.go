package launch

import (
	"fmt"
	"strings"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/app/readout"
	"bowline/app/tune/compare"
	"bowline/app/words"
	"bowline/assets"
	"bowline/model/launch"
	"bowline/model/units"
)

// leaving looks at the launch of the demo car.
func leaving(t *testing.T) *paneltest.Desk {
	t.Helper()
	d := paneltest.Demo(t, New)
	d.Study.SetLaunching(true)
	d.Settle()
	if d.Study.Launch() == nil {
		t.Fatal("there is no launch")
	}
	return d
}

func TestLaunchIsShownInWordsAndNumbers(t *testing.T) {
	d := leaving(t)
	r, p := d.Study.Launch(), d.Panel.(*Panel)
	if text, want := p.verdict.Text(), words.LaunchVerdict(r, units.US)+" "+words.NearestInLaunch(d.Study.Result(), r); text != want {
		t.Errorf("the verdict is %q, want %q", text, want)
	}
	if bar, _, _ := d.Study.Result().NearestInLaunch(r); bar != launch.LowerRight || r.Outcome != launch.Finished {
		t.Errorf("nearest to its limit is the %s, the launch %s", bar, r.Outcome)
	}
	peak := units.US.Format(units.Force, r.Peaks[launch.LowerRight].Push)
	if got := p.bars.Text(3, 1); !strings.HasPrefix(got, peak+", ") {
		t.Errorf("the lower right bar's worst push is %q, want %s", got, peak)
	}
	// Another instant, other numbers.
	before := p.bars.Text(3, 0)
	d.Study.SetTime(0.3)
	d.Settle()
	i, _ := d.Study.Instant()
	want := "push " + units.US.Format(units.Force, -r.Tension[launch.LowerRight][i])
	if got := p.bars.Text(3, 0); got != want || got == before {
		t.Errorf("at 0.3 s the lower right bar shows %q, want %q; before %q", got, want, before)
	}
	// The preload table has what the model found.
	if got, want := p.preload.Text(2, 0), fmt.Sprintf("+%.0f", units.US.FromSI(units.Force, r.PerTurn[launch.LowerLeft].RearLoad[launch.Left])); got != want || got == "+0" {
		t.Errorf("a turn of the lower left bar changes the left tire by %q, want %q", got, want)
	}
}

// Its tables are legible in the width of a panel, with any example car.
func TestTablesOfTheLaunchFitTheirPanel(t *testing.T) {
	d := leaving(t)
	for _, name := range assets.CarNames() {
		d.Example(name)
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			d.Settle()
			p := d.Panel.(*Panel)
			for table, columns := range map[*readout.Table]int{p.bars: 3, p.preload: 6} {
				for row, name := range []string{"Upper left", "Upper right", "Lower left", "Lower right"} {
					paneltest.WantRoom(t, name, name, false, paneltest.PanelWidth*0.2-paneltest.TextGap)
					for i := range columns {
						paneltest.WantRoom(t, name, table.Text(row, i), false, paneltest.PanelWidth*0.8/float32(columns)-paneltest.TextGap)
						paneltest.WantRoom(t, "heading", table.Heading(i), true, paneltest.PanelWidth*0.8/float32(columns)-paneltest.TextGap)
					}
				}
			}
		}
	}
}

// In launch mode the words tell of the setup held against as well.
func TestLaunchPanelNamesTheOtherSetup(t *testing.T) {
	d := leaving(t)
	p := d.Panel.(*Panel)
	if strings.Contains(p.verdict.Text(), "more bite") {
		t.Errorf("alone it says %q", p.verdict.Text())
	}
	d.Study.Compare(1)
	d.Settle()
	other := compare.Other(d.Study)
	want := "\n" + words.OtherLaunch(words.Setup{Name: "more bite", Result: other.Result, Launch: other.Launch}, units.US)
	if got := p.verdict.Text(); !strings.HasSuffix(got, want) {
		t.Errorf("it says %q, want %q at its end", got, want)
	}
	// Each figure stands under a heading that it belongs to.
	for i, side := range []string{"Left", "Right"} {
		if p.sides.Heading(i) != side {
			t.Errorf("heading %q", p.sides.Heading(i))
		}
		at, _ := d.Study.Instant()
		if got, want := p.sides.Text(rowTire, i), units.US.Format(units.Force, d.Study.Launch().RearLoad[i][at]); got != want {
			t.Errorf("%s tire: %q, want %q", side, got, want)
		}
	}
	if got, want := p.car.Text(rowSixty, 0), fmt.Sprintf("%.3f s", d.Study.Launch().Elapsed); got != want {
		t.Errorf("60 ft: %q, want %q", got, want)
	}
}

func TestTheFontHasEveryLetter(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := leaving(t)
	d.Study.Compare(1)
	table := func(x *readout.Table, rows, columns int) {
		for row := range rows {
			for column := range columns {
				check(x.Text(row, column))
			}
		}
	}
	for _, system := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(system)
		for _, at := range []float64{0, 0.2, 0.6} {
			d.Study.SetTime(at)
			d.Settle()
			p := d.Panel.(*Panel)
			check(p.verdict.Text() + p.assumed.Text())
			table(p.bars, 4, 3)
			table(p.car, len(carNames), 1)
			table(p.sides, len(sideNames), 2)
			table(p.preload, 4, 6)
		}
	}
	if *letters < 2000 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
