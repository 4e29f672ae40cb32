package here

import (
	"fmt"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/app/words"
	"bowline/assets"
	"bowline/model/car"
	"bowline/model/units"
)

// The numbers of the racer's panel, from the bars' lines alone: the reference
// car's upper bar runs from (2.5, 22.5) to (22.5, 17.0) in, its lower one from
// (2.5, 11.0) to (25.5, 11.5) in; wheelbase 105 in, CG at 19.5 in.
func TestTuneTellsTheInstantCenter(t *testing.T) {
	d := paneltest.Reference(t, New)
	d.Settle()
	table := d.Panel.(*Panel).numbers
	upper, lower := (17-22.5)/20.0, (11.5-11)/23.0
	x := 2.5 + (22.5-11)/(lower-upper)
	z := 11 + lower*(x-2.5)
	for row, want := range map[int]string{
		rowAhead: fmt.Sprintf("%.2f in", x), rowUp: fmt.Sprintf("%.2f in", z),
		rowSquat: fmt.Sprintf("%.1f %%", 100*z/x*105/19.5), rowPinion: "0.00°", rowJoint: "not given",
		rowShift: "0.00 in", rowCG: "19.50 in",
	} {
		for column := range 2 {
			if got := table.Text(row, column); got != want {
				t.Errorf("%s: %q, want %q", rowNames[row], got, want)
			}
		}
	}
	// Away from ride height only the second column changes.
	d.Study.SetTravel(-2 * paneltest.Inch)
	before := table.Text(rowAhead, 0)
	d.Settle()
	d.Settle()
	if table.Text(rowAhead, 0) != before || table.Text(rowAhead, 1) == before {
		t.Errorf("at 2 in of droop the instant center is at %q, at ride height %q", table.Text(rowAhead, 1), table.Text(rowAhead, 0))
	}
	ahead := d.Study.Station().InstantCenter.X
	if want := fmt.Sprintf("%.2f in", ahead/paneltest.Inch); table.Text(rowAhead, 1) != want {
		t.Errorf("at 2 in of droop the instant center is at %q, want %q", table.Text(rowAhead, 1), want)
	}
}

func TestTuneWithParallelBars(t *testing.T) {
	d := paneltest.Reference(t, New)
	d.Doc.Apply("Parallel", func(c *car.Car) {
		for i := range c.Chassis.Upper {
			c.Chassis.Upper[i].Y = 22.5 * paneltest.Inch
		}
		for i := range c.Chassis.Lower {
			c.Chassis.Lower[i].Y = 11 * paneltest.Inch
		}
	})
	d.Settle()
	table := d.Panel.(*Panel).numbers
	if a, u, q := table.Text(rowAhead, 0), table.Text(rowUp, 0), table.Text(rowSquat, 0); a != "parallel bars" || u != "—" || q != "0.0 %" {
		t.Errorf("instant center %q, %q, anti-squat %q", a, u, q)
	}
}

// Every number is legible in the least width of a panel, with any of the
// example cars, at any travel, in any units.
func TestTheTableFits(t *testing.T) {
	d := paneltest.Demo(t, New)
	table := d.Panel.(*Panel).numbers
	for _, name := range assets.CarNames() {
		d.Example(name)
		k := d.Doc.Car().Springs
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			for _, q := range []float64{-k.RearDroop, -0.0987, 0, 0.0333, k.RearBump} {
				d.Study.SetTravel(q)
				d.Study.SetFront(-q)
				d.Settle()
				paneltest.WantTable(t, name, table, rowNames[:])
				// In a window of the first size; in the least one the longest loses
				// a part of its last letter.
				paneltest.WantRoom(t, "heading", table.Heading(1), true, 430*0.33)
			}
		}
	}
	paneltest.WantRoom(t, "heading", table.Heading(0), true, paneltest.ValueRoom)
	for _, text := range []string{
		"parallel bars", "−123,456.7 mm", "−1,234.5 %", "12.34° nose down", "123.4 mm forward", "123,456 N more", "front wheels off",
	} {
		paneltest.WantRoom(t, "value", text, false, paneltest.ValueRoom)
	}
}

// The verdict is the analysis' own.
func TestVerdict(t *testing.T) {
	d := paneltest.Reference(t, New)
	if got, want := d.Panel.(*Panel).verdict.Text(), words.CenterVerdict(d.Study.Result().CenterVerdict(), units.US); got != want {
		t.Errorf("verdict %q, want %q", got, want)
	}
}

// Of an instant of the launch the tuner's numbers tell when it is, and nothing
// of load cases, which it is none of.
func TestTuneTellsTheInstantOfTheLaunch(t *testing.T) {
	d := paneltest.Demo(t, New)
	d.Study.SetLaunching(true)
	d.Settle()
	d.Study.SetTime(0.3)
	d.Settle()
	p := d.Panel.(*Panel)
	if got := p.numbers.Heading(1); got != "Now: 0.300 s" {
		t.Errorf("the heading is %q", got)
	}
	for _, row := range []int{rowJoint, rowSpring, rowShare, rowThrust, rowFront, rowLimit} {
		if got := p.numbers.Text(row, 1); got != "—" {
			t.Errorf("%s is %q", rowNames[row], got)
		}
	}
	d.Study.SetLaunching(false)
	if d.Settle(); p.numbers.Heading(1) != "Now: ride height" {
		t.Errorf("after the launch the heading is %q", p.numbers.Heading(1))
	}
}

func TestTheFontHasEveryLetter(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := paneltest.Demo(t, New)
	d.Study.SetLaunching(true)
	for _, system := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(system)
		for _, at := range []float64{0, 0.2, 0.6} {
			d.Study.SetTime(at)
			d.Settle()
			p := d.Panel.(*Panel)
			check(p.verdict.Text())
			for row := range rowNames {
				check(p.numbers.Text(row, 0) + p.numbers.Text(row, 1))
			}
		}
	}
	if *letters < 500 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
