package launch_test

import (
	"fmt"
	"strings"
	"testing"

	panel "bowline/app/check/launch"
	"bowline/app/panel/paneltest"
	"bowline/app/words"
	"bowline/assets"
	"bowline/model/launch"
	"bowline/model/units"
)

// leaving looks at the launch of the demo car.
func leaving(t *testing.T) *paneltest.Desk {
	t.Helper()
	d := paneltest.Demo(t, panel.New)
	d.Study.SetLaunching(true)
	d.Settle()
	if d.Study.Launch() == nil {
		t.Fatal("there is no launch")
	}
	return d
}

func TestLaunchIsShownInWordsAndNumbers(t *testing.T) {
	d := leaving(t)
	r := d.Study.Launch()
	text := d.Says()
	for _, want := range []string{words.LoadVerdict(d.Study.LoadVerdict(), units.US), words.LaunchVerdict(r, units.US), words.NearestInLaunch(d.Study.Result(), r)} {
		if !strings.Contains(text, want) {
			t.Errorf("it says %q, not %q", text, want)
		}
	}
	if bar, _, _ := d.Study.Result().NearestInLaunch(r); bar != launch.LowerRight || r.Outcome != launch.Finished {
		t.Errorf("nearest to its limit is the %s, the launch %s", bar, r.Outcome)
	}
	peak := units.US.Format(units.Force, r.Peaks[launch.LowerRight].Push)
	if got := d.Cell("Lower right", "Worst push"); !strings.HasPrefix(got, peak+", ") {
		t.Errorf("the lower right bar's worst push is %q, want %s", got, peak)
	}
	events := words.Events(r, units.US)
	if len(events) == 0 {
		t.Error("nothing happens in the demo car's launch")
	}
	for _, want := range events {
		if !strings.Contains(d.Says(), want) {
			t.Errorf("it does not say %q", want)
		}
	}
	if got, want := d.Cell("From release", "Whole car"), words.FromRelease(r, units.US); got != want || got == d.Cell("60 ft", "Whole car") {
		t.Errorf("the time from release is %q, want %q", got, want)
	}
	// Another instant, other numbers.
	before := d.Cell("Lower right", "Now")
	d.Study.SetTime(0.3)
	d.Settle()
	i, _ := d.Study.Instant()
	want := "push " + units.US.Format(units.Force, -r.Tension[launch.LowerRight][i])
	if got := d.Cell("Lower right", "Now"); got != want || got == before {
		t.Errorf("at 0.3 s the lower right bar shows %q, want %q; before %q", got, want, before)
	}
	// What the scales read stands over what a turn changes.
	if want := words.Preload(d.Study.Result(), r, units.US); want == "" || !strings.Contains(d.Says(), want) {
		t.Errorf("it does not say %q", want)
	}
	// The preload table has what the model found.
	if got, want := d.Cell("Lower left", "RL tire"), fmt.Sprintf("+%.0f", units.US.FromSI(units.Force, r.PerTurn[launch.LowerLeft].RearLoad[launch.Left])); got != want || got == "+0" {
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
			d.WantTablesFit(name)
		}
	}
}

// In launch mode the words tell of the setup held against as well.
func TestLaunchPanelNamesTheOtherSetup(t *testing.T) {
	d := leaving(t)
	if strings.Contains(d.Says(), "more bite") {
		t.Errorf("alone it says %q", d.Says())
	}
	d.Study.Compare(1)
	d.Settle()
	other := d.Study.Others()[0]
	want := "\n" + words.OtherLaunch(words.Setup{Name: "more bite", Result: other.Result, Launch: other.Launch}, units.US)
	if got := d.Says(); !strings.Contains(got, want+"\n") {
		t.Errorf("it says %q, want %q in it", got, want)
	}
	// Each figure stands under a heading that it belongs to.
	for i, side := range []string{"Left", "Right"} {
		at, _ := d.Study.Instant()
		if got, want := d.Cell("Rear tire", side), units.US.Format(units.Force, d.Study.Launch().RearLoad[i][at]); got != want {
			t.Errorf("%s tire: %q, want %q", side, got, want)
		}
	}
	if got, want := d.Cell("60 ft", "Whole car"), fmt.Sprintf("%.3f s", d.Study.Launch().Elapsed); got != want {
		t.Errorf("60 ft: %q, want %q", got, want)
	}
}

func TestTheFontHasEveryLetter(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := leaving(t)
	d.Study.Compare(1)
	for _, system := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(system)
		for _, at := range []float64{0, 0.2, 0.6} {
			d.Study.SetTime(at)
			d.Settle()
			check(d.Says())
		}
	}
	if *letters < 2000 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
