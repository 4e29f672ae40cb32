package here_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/app/tune/here"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/roll"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

const degree = math.Pi / 180

// angles are the panel's misalignments in a column.
func angles(d *paneltest.Desk, heading string) (list []string) {
	for _, name := range words.RodEnds() {
		list = append(list, d.Cell(name, heading))
	}
	return list
}

// written are misalignments as the panel writes them.
func written(m *roll.Misalignment) (list []string) {
	for _, ends := range m {
		for _, angle := range ends {
			list = append(list, fmt.Sprintf("%.2f°", angle/degree))
		}
	}
	return list
}

// Roll stands at ride height and at the travel looked at, with what stops it and the
// misalignment of all rod ends.
func TestRoll(t *testing.T) {
	d := paneltest.Reference(t, here.New)
	if got := d.Row("Roll, rod ends allow"); got[0] != "not checked" || got[1] != "not checked" {
		t.Errorf("without a limit: %q", got)
	}
	d.Doc.Apply("Rod ends", func(c *car.Car) { c.UpperBar.RodEndAngle, c.LowerBar.RodEndAngle = 12*degree, 12*degree })
	const travel = -2 * paneltest.Inch
	d.Study.SetTravel(travel)
	d.Settle()
	p, err := launch.New(d.Doc.Car(), d.Doc.Setup(), d.Study.Library())
	if err != nil {
		t.Fatal(err)
	}
	l := roll.New(&p)
	for column, at := range []float64{0, travel} {
		stiffness, err := l.Stiffness(at)
		if err != nil {
			t.Fatal(err)
		}
		limit, end, ok := l.Limit(at, roll.Limits{12 * degree, 12 * degree, 12 * degree, 12 * degree})
		if got, want := d.Row("Roll, bars alone")[column], units.Group(fmt.Sprintf("%.0f", stiffness*degree/(4.4482216152605*12*paneltest.Inch)))+" lb-ft/°"; got != want {
			t.Errorf("at %v m: %q, want %q", at, got, want)
		}
		if got, want := d.Row("Roll, rod ends allow")[column], fmt.Sprintf("%.2f°, %s", math.Abs(limit)/degree, words.RodEnd(end)); got != want || !ok {
			t.Errorf("at %v m: %q, want %q", at, got, want)
		}
	}
	left, err := l.Pose(travel, 3*degree)
	if err != nil {
		t.Fatal(err)
	}
	right, err := l.Pose(travel, -3*degree)
	if err != nil {
		t.Fatal(err)
	}
	worse := left.Misalignment
	for k := range worse {
		for e := range worse[k] {
			worse[k][e] = max(worse[k][e], right.Misalignment[k][e])
		}
	}
	if got, want := angles(d, "Rolled 3°, here"), written(&worse); fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("rolled here: %v, want %v", got, want)
	}
	r, err := d.Study.Roll(0)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := angles(d, "Level, most"), written(&r.Most.Level); fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("level: %v, want %v", got, want)
	}
	if got, want := angles(d, "Rolled 3°, most"), written(&r.Most.Tilted); fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("rolled: %v, want %v", got, want)
	}
	if want := strings.Join(words.RollVerdict(r, units.US), " "); !strings.Contains(d.Says(), want) {
		t.Errorf("it says %q, want %q in it", d.Says(), want)
	}
}

// A setup in which nothing holds the axle at ride height has no roll, and the panel
// says why.
func TestRollOfACarThatIsNotHeld(t *testing.T) {
	d := paneltest.Reference(t, here.New)
	d.Doc.Apply("Level", func(c *car.Car) {
		// Level bars meet nowhere; a level spring is as parallel as they are.
		for i := range c.Chassis.Upper {
			c.Chassis.Upper[i].Y = 22.5 * paneltest.Inch
		}
		for i := range c.Chassis.Lower {
			c.Chassis.Lower[i].Y = 11 * paneltest.Inch
		}
		c.Springs.RearChassisMount = r2.Vec{X: 20 * paneltest.Inch, Y: c.Tires.RearRadius + c.Springs.RearAxleMount.Y}
	})
	d.Settle()
	if _, err := d.Study.Roll(0); err == nil {
		t.Error("it is held")
	} else if want := words.RollUnknown(err); !strings.Contains(d.Says(), want) {
		t.Errorf("it says %q, want %q in it", d.Says(), want)
	}
	if got := d.Row("Roll, bars alone"); got[0] != "—" || got[1] != "—" {
		t.Errorf("roll %q", got)
	}
	if got := d.Cell("UL chassis", "Level, most"); got != "—" {
		t.Errorf("misalignment %q", got)
	}
}

// The values have room.
func TestRollFits(t *testing.T) {
	for _, text := range []string{"23.45°, UR housing", "123,456 N·m/°", "not checked"} {
		paneltest.WantRoom(t, "value", text, false, paneltest.ValueRoom)
	}
}
