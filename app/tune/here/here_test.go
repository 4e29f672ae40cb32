package here_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/app/tune/here"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/units"
)

// The numbers from the bars' lines alone: the reference car's upper bar runs from
// (2.5, 22.5) to (22.5, 17.0) in, its lower one from (2.5, 11.0) to (25.5, 11.5)
// in; wheelbase 105 in, CG at 19.5 in.
func TestNumbersOfTheInstantCenter(t *testing.T) {
	d := paneltest.Reference(t, here.New)
	upper, lower := (17-22.5)/20.0, (11.5-11)/23.0
	x := 2.5 + (22.5-11)/(lower-upper)
	z := 11 + lower*(x-2.5)
	for row, want := range map[string]string{
		"IC ahead, swing arm": fmt.Sprintf("%.2f in", x), "IC up": fmt.Sprintf("%.2f in", z),
		"Anti-squat": fmt.Sprintf("%.1f %%", 100*z/x*105/19.5), "Pinion angle change": "0.00°", "Pinion joint": "not given",
		"Axle moves": "0.00 in", "CG height": "19.50 in",
	} {
		if got := d.Row(row); !slices.Equal(got, []string{want, want}) {
			t.Errorf("%s: %q, want %q", row, got, want)
		}
	}
	// Away from ride height only the second column changes.
	before := d.Row("IC ahead, swing arm")
	d.Study.SetTravel(-2 * paneltest.Inch)
	d.Settle()
	want := fmt.Sprintf("%.2f in", d.Study.Station().InstantCenter.X/paneltest.Inch)
	if got := d.Row("IC ahead, swing arm"); got[0] != before[0] || got[1] == before[1] || got[1] != want {
		t.Errorf("at 2 in of droop the instant center is at %q, before at %q, want %q", got, before, want)
	}
}

func TestParallelBars(t *testing.T) {
	d := paneltest.Reference(t, here.New)
	d.Doc.Apply("Parallel", func(c *car.Car) {
		for i := range c.Chassis.Upper {
			c.Chassis.Upper[i].Y = 22.5 * paneltest.Inch
		}
		for i := range c.Chassis.Lower {
			c.Chassis.Lower[i].Y = 11 * paneltest.Inch
		}
	})
	d.Settle()
	if a, u, q := d.Row("IC ahead, swing arm")[0], d.Row("IC up")[0], d.Row("Anti-squat")[0]; a != "parallel bars" || u != "—" || q != "0.0 %" {
		t.Errorf("instant center %q, %q, anti-squat %q", a, u, q)
	}
}

// Every number is legible in the least width of a panel, with any of the
// example cars, at any travel, in any units.
func TestTheTableFits(t *testing.T) {
	d := paneltest.Demo(t, here.New)
	d.EveryTravel(d.WantTablesFit)
	for _, text := range []string{
		"parallel bars", "−123,456.7 mm", "−1,234.5 %", "12.34° nose down", "123.4 mm forward", "123,456 N more", "front wheels off",
	} {
		paneltest.WantRoom(t, "value", text, false, paneltest.ValueRoom)
	}
}

// The verdict is the analysis' own.
func TestVerdict(t *testing.T) {
	d := paneltest.Reference(t, here.New)
	if got, want := d.Says(), words.CenterVerdict(d.Study.Result().CenterVerdict(), units.US); !strings.HasPrefix(got, want+"\n") {
		t.Errorf("it says %q, want %q first", got, want)
	}
}

// At an instant of the launch the second column says which, and is empty where it
// would be of a load case.
func TestAnInstantOfTheLaunch(t *testing.T) {
	d := paneltest.Demo(t, here.New)
	d.Study.SetLaunching(true)
	d.Settle()
	d.Study.SetTime(0.3)
	d.Settle()
	for _, row := range []string{"Pinion joint", "Springs, hooked", "Through the bars", "Thrust, hooked", "Front tires, hooked", "Limit, hooked"} {
		if got := d.Cell(row, "Now: 0.300 s"); got != "—" {
			t.Errorf("%s is %q", row, got)
		}
	}
	d.Study.SetLaunching(false)
	d.Settle()
	if got := d.Cell("Limit, hooked", "Now: ride height"); got == "—" {
		t.Error("after the launch the column is empty")
	}
}

func TestTheFontHasEveryLetter(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := paneltest.Demo(t, here.New)
	d.Study.SetLaunching(true)
	for _, system := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(system)
		for _, at := range []float64{0, 0.2, 0.6} {
			d.Study.SetTime(at)
			d.Settle()
			check(d.Says())
		}
	}
	if *letters < 500 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
