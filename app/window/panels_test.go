package window

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"bowline/app/look"
	"bowline/app/readout"
	"bowline/app/words"
	"bowline/assets"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// panelWidth is what a panel has at least: its tables ask for it.
const panelWidth = 416

// pageWidth is what a page has at least: a panel and the bar beside it.
const pageWidth = panelWidth + barRoom

// Parts of a table's width, without the room that one text leaves before the
// next [px].
const (
	textGap   = 4
	nameRoom  = panelWidth*0.34 - textGap
	valueRoom = panelWidth*0.66/2 - textGap
)

// A bar that the pointer is on lies beside what a page holds.
func TestBarsLieBesideThePage(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	if bar := theme.ScrollBarSize(); bar > barRoom {
		t.Errorf("a bar is %v wide and has %v", bar, barRoom)
	}
}

// tables returns the tables of all panels, written anew, with their names.
func (d *desk) tables() map[*readout.Table][]string {
	tune, check := d.panels[panelHere].(*herePanel), d.panels[panelCheck].(*checkPanel)
	for _, p := range d.panels {
		p.refresh()
	}
	return map[*readout.Table][]string{tune.numbers: tuneNames[:], check.numbers: checkNames[:], check.strengths: strengthNames[:]}
}

// wantRoom sees to it that a text is no wider than its room.
func wantRoom(t *testing.T, what, text string, bold bool, room float32) {
	t.Helper()
	if w := fyne.MeasureText(text, theme.TextSize(), fyne.TextStyle{Bold: bold}).Width; w > room {
		t.Errorf("%s: %q is %.1f wide and has %.1f", what, text, w, room)
	}
}

// Every table is legible in the width that the window gives it, with any of the
// example cars, at any travel, in any units.
func TestTablesFitTheirPanel(t *testing.T) {
	d := newDesk(t)
	for _, name := range assets.CarNames() {
		d.openExample(name)
		k := d.doc.Car().Springs
		for _, u := range []units.System{units.US, units.SI} {
			d.doc.SetUnits(u)
			for _, q := range []float64{-k.RearDroop, -0.0987, 0, 0.0333, k.RearBump} {
				d.study.SetTravel(q)
				d.study.SetFront(-q)
				for table, names := range d.tables() {
					for row, what := range names {
						wantRoom(t, name, what, false, nameRoom-theme.Padding())
						wantRoom(t, name+", "+what, table.Text(row, 0), false, valueRoom)
						wantRoom(t, name+", "+what, table.Text(row, 1), false, valueRoom)
					}
				}
				wantRoom(t, "heading", "At "+u.Travel(d.study.Travel()), true, valueRoom)
			}
		}
	}
	for _, heading := range []string{"At ride height", "Upper, each", "Upper, failing", "Lower, failing"} {
		wantRoom(t, "heading", heading, true, valueRoom)
	}
}

// So are the longest words and numbers that other cars bring.
func TestTheLongestWordsFit(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	for k := column.Kind(0); !strings.HasPrefix(k.String(), "Kind("); k++ {
		wantRoom(t, "governed by", words.FailureCell(k), false, valueRoom)
	}
	for _, text := range []string{
		"parallel bars", "−123,456.7 mm", "−1,234.5 %", "12.34° nose down", "123.4 mm forward", "123,456 N more",
		"front wheels off", "push 234,567 N", "234,567 N, 1234 %", "123.4, limit 123.4",
	} {
		wantRoom(t, "value", text, false, valueRoom)
	}
}

// The numbers of the racer's panel, from the bars' lines alone: the reference
// car's upper bar runs from (2.5, 22.5) to (22.5, 17.0) in, its lower one from
// (2.5, 11.0) to (25.5, 11.5) in; wheelbase 105 in, CG at 19.5 in.
func TestTuneTellsTheInstantCenter(t *testing.T) {
	d, _ := openDesk(t)
	d.tables()
	table := d.panels[panelHere].(*herePanel).numbers
	upper, lower := (17-22.5)/20.0, (11.5-11)/23.0
	x := 2.5 + (22.5-11)/(lower-upper)
	z := 11 + lower*(x-2.5)
	for row, want := range map[int]string{
		tuneAhead: fmt.Sprintf("%.2f in", x), tuneUp: fmt.Sprintf("%.2f in", z),
		tuneSquat: fmt.Sprintf("%.1f %%", 100*z/x*105/19.5), tunePinion: "0.00°", tuneJoint: "not given",
		tuneShift: "0.00 in", tuneCG: "19.50 in",
	} {
		for column := range 2 {
			if got := table.Text(row, column); got != want {
				t.Errorf("%s: %q, want %q", tuneNames[row], got, want)
			}
		}
	}
	// Away from ride height only the second column changes.
	d.study.SetTravel(-2 * inch)
	before := table.Text(tuneAhead, 0)
	d.settle()
	d.tables()
	if table.Text(tuneAhead, 0) != before || table.Text(tuneAhead, 1) == before {
		t.Errorf("at 2 in of droop the instant center is at %q, at ride height %q", table.Text(tuneAhead, 1), table.Text(tuneAhead, 0))
	}
	ahead := d.study.Station().InstantCenter.X
	if want := fmt.Sprintf("%.2f in", ahead/inch); table.Text(tuneAhead, 1) != want {
		t.Errorf("at 2 in of droop the instant center is at %q, want %q", table.Text(tuneAhead, 1), want)
	}
}

func TestTuneWithParallelBars(t *testing.T) {
	d, _ := openDesk(t)
	d.doc.Apply("Parallel", func(c *car.Car) {
		for i := range c.Chassis.Upper {
			c.Chassis.Upper[i].Y = 22.5 * inch
		}
		for i := range c.Chassis.Lower {
			c.Chassis.Lower[i].Y = 11 * inch
		}
	})
	d.tables()
	table := d.panels[panelHere].(*herePanel).numbers
	if a, u, q := table.Text(tuneAhead, 0), table.Text(tuneUp, 0), table.Text(tuneSquat, 0); a != "parallel bars" || u != "—" || q != "0.0 %" {
		t.Errorf("instant center %q, %q, anti-squat %q", a, u, q)
	}
}

// The builder's panel holds forces against what is allowed: with the factor,
// without the tube's strength.
func TestCheckHoldsLoadsAgainstLimits(t *testing.T) {
	d, _ := openDesk(t)
	d.tables()
	table, r := d.panels[panelCheck].(*checkPanel).numbers, d.study.Result()
	lower := &r.Bars[car.Lower]
	lb := func(n float64) string { return units.Group(fmt.Sprintf("%.0f", n/4.4482216152605)) + " lb" }
	worst := r.Worst[car.Lower][column.Push]
	for row, want := range map[int]string{
		checkLength:    "23.01 in",
		checkPush:      fmt.Sprintf("%s, %.0f %%", lb(worst.Force), 100*worst.Force/(lower.Push.Strength/r.Car.Check.Factor)),
		checkPushLimit: lb(lower.Push.Strength / r.Car.Check.Factor),
		checkPullLimit: lb(lower.Pull.Strength / r.Car.Check.Factor),
		checkHit:       "push " + lb(math.Abs(r.Ride.Loads.Hit.Lower.Tension)),
		checkHooked:    "push " + lb(math.Abs(r.Ride.Loads.Hooked.Lower.Tension)),
		checkPull:      "none",
	} {
		if got := table.Text(row, int(car.Lower)); got != want {
			t.Errorf("%s: %q, want %q", checkNames[row], got, want)
		}
	}
}

// A bar beyond its limit is warned of.
func TestCheckWarns(t *testing.T) {
	d, _ := openDesk(t)
	const words = "lower bars reach"
	check := d.panels[panelCheck].(*checkPanel)
	if strings.Contains(check.warnings.Text(), words) {
		t.Errorf("warnings %q", check.warnings.Text())
	}
	d.doc.Apply("Factor", func(c *car.Car) { c.Check.Factor = 10 })
	d.settle()
	if !strings.Contains(check.warnings.Text(), words) {
		t.Errorf("warnings %q", check.warnings.Text())
	}
}

// Verdicts are the analysis' own words.
func TestVerdicts(t *testing.T) {
	d, _ := openDesk(t)
	d.tables()
	r := d.study.Result()
	if got, want := d.panels[panelHere].(*herePanel).verdict.Text(), words.CenterVerdict(r.CenterVerdict(), units.US); got != want {
		t.Errorf("verdict %q, want %q", got, want)
	}
	if got, want := d.panels[panelCheck].(*checkPanel).verdict.Text(), words.LoadVerdict(r.LoadVerdict(), units.US); got != want {
		t.Errorf("verdict %q, want %q", got, want)
	}
}

// Only the panel on show follows a drag; the other one is right when its turn
// comes.
func TestThePanelOnShowFollows(t *testing.T) {
	d, _ := openDesk(t)
	tune, check := d.panels[panelHere].(*herePanel), d.panels[panelCheck].(*checkPanel)
	if d.shown != panelCheck {
		t.Fatalf("panel %d is on show first", d.shown)
	}
	length := check.numbers.Text(checkLength, 1)
	ahead := tune.numbers.Text(tuneAhead, 0)
	d.study.Choose(car.ChassisLower, 0)
	d.settle()
	if check.numbers.Text(checkLength, 1) == length {
		t.Error("the panel on show has not followed")
	}
	d.tabs().SelectIndex(0)
	d.settle()
	if tune.numbers.Text(tuneAhead, 0) == ahead {
		t.Error("the panel shown now is out of date")
	}
}
