package report_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"bowline/app/report"
	"bowline/app/words"
	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/roll"
	"bowline/model/units"
)

// What is said of roll and of the side view over the launch is what the model finds.
func TestJSONOfRoll(t *testing.T) {
	c, _ := read(t, reference)
	c.UpperBar.RodEndAngle = 4 * math.Pi / 180
	l, err := launch.Run(context.Background(), c, 0, carfile.Stock(), launch.Options{Limit: 0.2, Hold: true})
	if err != nil {
		t.Fatal(err)
	}
	d := documentOf(t, analyze(t, c), l, units.US)
	axle := roll.New(&l.Parameters)
	k, err := axle.Stiffness(0)
	if err != nil {
		t.Fatal(err)
	}
	// Pound-feet over a degree.
	near(t, "stiffness", *d.Roll.Stiffness, k*math.Pi/180/(lbf*12*inch), 1e-6*k)
	// Springs of the reference car stand upright.
	b := c.Launch.Suspension.RearSpread
	springs := c.Springs.RearRate*b*b/2 + c.Launch.Suspension.RearAntiRoll
	near(t, "springs", d.Roll.Springs, springs*math.Pi/180/(lbf*12*inch), 1e-6*springs)
	angle, end, ok := axle.Limit(0, roll.Limits{c.UpperBar.RodEndAngle, c.UpperBar.RodEndAngle})
	if !ok || end.String() != d.Roll.LimitEnd {
		t.Errorf("limited by %q, want %v", d.Roll.LimitEnd, end)
	}
	near(t, "limit", *d.Roll.Limit, math.Abs(angle)*180/math.Pi, 1e-9)
	if len(d.Roll.Misalignment) != 9 {
		t.Fatalf("%d misalignments", len(d.Roll.Misalignment))
	}
	at := d.Roll.Misalignment[8]
	pose, err := axle.Pose(3*inch, 3*math.Pi/180)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "travel", at.Travel, 3, 1e-9)
	near(t, "roll", at.Roll, 3, 0)
	near(t, "misalignment", at.Ends.LowerRight[1], pose.Misalignment[launch.LowerRight][1]*180/math.Pi, 1e-6)
	if n := len(d.Launch.InstantCenter); n != len(l.Time) || len(d.Launch.AntiSquat) != n {
		t.Fatalf("%d instant centers, %d times", n, len(l.Time))
	}
	view := l.SideView(100)
	near(t, "instant center", d.Launch.InstantCenter[100][1], view.InstantCenter.Y/inch, 1e-9)
	near(t, "anti-squat", *d.Launch.AntiSquat[100], 100*view.AntiSquat, 1e-9)
	if c.UpperBar.RodEndAngle = 0; documentOf(t, analyze(t, c), l, units.US).Roll.Limit != nil {
		t.Error("a limit though no rod end has one")
	}
}

// The text says what the window says of roll, with the misalignment of all rod ends;
// nothing where there was no launch.
func TestTextOfRoll(t *testing.T) {
	c, _ := read(t, reference)
	c.LowerBar.RodEndAngle = 4 * math.Pi / 180
	r := analyze(t, c)
	l, err := launch.Run(context.Background(), c, 0, carfile.Stock(), launch.Options{Limit: 0.2, Hold: true})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := report.WriteText(&out, r, l, nil, units.US); err != nil {
		t.Fatal(err)
	}
	want, err := roll.Of(c, 0, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	flat := strings.Join(strings.Fields(out.String()), " ")
	for _, sentence := range words.RollVerdict(want, units.US) {
		if !strings.Contains(flat, sentence) {
			t.Errorf("%q is not said", sentence)
		}
	}
	for i, name := range words.RodEnds() {
		figures := name
		for _, m := range []*roll.Misalignment{&want.Ride.Level, &want.Most.Level, &want.Ride.Tilted, &want.Most.Tilted} {
			figures += fmt.Sprintf(" %.2f", m[i/2][i%2]*180/math.Pi)
		}
		if !strings.Contains(flat, figures) {
			t.Errorf("%q is missing", figures)
		}
	}
	if strings.Contains(text(t, r, units.US), "\nROLL\n") {
		t.Error("roll without a launch")
	}
}
