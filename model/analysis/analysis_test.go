package analysis_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/statics"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	inch = 0.0254
	lbf  = 0.45359237 * 9.80665
)

// read loads a car file.
func read(t testing.TB, path string) *car.Car {
	t.Helper()
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

func reference(t testing.TB) *car.Car { return read(t, "../../testdata/reference.toml") }

func run(t testing.TB, c *car.Car, o analysis.Options) *analysis.Result {
	t.Helper()
	r, err := analysis.Run(context.Background(), c, carfile.Stock(), o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", what, got, want, tolerance)
	}
}

// From file to forces, the reference point comes out to the digits given.
func TestReferencePointThroughTheFile(t *testing.T) {
	r := run(t, reference(t), analysis.Options{})
	s := &r.Ride
	near(t, "IC x [in]", s.InstantCenter.X/inch, 41.25, 0.005)
	near(t, "IC z [in]", s.InstantCenter.Y/inch, 11.84, 0.005)
	near(t, "anti-squat [%]", 100*s.AntiSquat, 154.6, 0.05)
	near(t, "upper length [in]", r.Bars[car.Upper].Length/inch, math.Hypot(20, 5.5), 1e-9)
	near(t, "hooked upper [lbf]", s.Loads.Hooked.Upper.Tension/lbf, 3524, 0.6)
	near(t, "hooked lower [lbf]", s.Loads.Hooked.Lower.Tension/lbf, -6309, 0.6)
	near(t, "hit upper [lbf]", s.Loads.Hit.Upper.Tension/lbf, 6777, 0.6)
	near(t, "hit lower [lbf]", s.Loads.Hit.Lower.Tension/lbf, -9475, 0.6)
	if s.Loads.Hit.Governs != statics.FrontWheelsOff {
		t.Errorf("%v governs the hit", s.Loads.Hit.Governs)
	}
}

func TestTravelRunsFromDroopToBumpThroughRideHeight(t *testing.T) {
	for _, ends := range [][2]float64{{4, 3}, {0, 3}, {4, 0}, {0.001, 3}, {4, 0.001}} {
		for _, steps := range []int{0, 3, 4, 7, 41, 60} {
			c := reference(t).Clone()
			c.Springs.RearDroop, c.Springs.RearBump = ends[0]*inch, ends[1]*inch
			r := run(t, c, analysis.Options{Steps: steps})
			travels := make([]float64, len(r.Travel))
			for i, s := range r.Travel {
				travels[i] = s.Pose.Travel
			}
			want := steps
			if steps == 0 {
				want = 41
			}
			if len(travels) != want || !slices.Contains(travels, 0) || !slices.IsSorted(travels) || travels[0] != -c.Springs.RearDroop || travels[want-1] != c.Springs.RearBump {
				t.Errorf("droop %v, bump %v, %d steps: %v", ends[0], ends[1], steps, travels)
			}
		}
	}
}

func TestTooFewTravelsAreRefused(t *testing.T) {
	for _, steps := range []int{-1, 1, 2} {
		_, err := analysis.Run(context.Background(), reference(t), carfile.Stock(), analysis.Options{Steps: steps})
		if want := fmt.Sprintf("an analysis of %d travels leaves out an end or ride height; it takes at least 3", steps); err == nil || err.Error() != want {
			t.Errorf("%d travels: %v", steps, err)
		}
	}
}

// Every station of the sweep is the same as the position asked for by itself,
// with the front raised too.
func TestSweepAgreesWithSinglePositions(t *testing.T) {
	const front = 0.03
	r := run(t, reference(t), analysis.Options{FrontTravel: front})
	for i := range r.Travel {
		s := &r.Travel[i]
		alone, err := r.At(s.Pose.Travel, front)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "turn", alone.Pose.Turn, s.Pose.Turn, 1e-9)
		near(t, "anti-squat", alone.AntiSquat, s.AntiSquat, 1e-7)
		near(t, "lower bar", alone.Loads.Hit.Lower.Tension, s.Loads.Hit.Lower.Tension, 1e-3)
	}
	if r.Ride.Pose.FrontTravel != 0 {
		t.Error("ride height is without front travel")
	}
}

// The worst use is the largest over all travels and cases, by brute force.
func TestWorstUse(t *testing.T) {
	r := run(t, reference(t), analysis.Options{})
	var push, pull float64
	for _, s := range r.Travel {
		for _, l := range []statics.Load{s.Loads.Hooked, s.Loads.Hit} {
			push = max(push, -l.Lower.Tension)
			pull = max(pull, l.Upper.Tension)
		}
	}
	near(t, "lower push", r.Worst[car.Lower][column.Push].Force, push, 1e-9)
	near(t, "upper pull", r.Worst[car.Upper][column.Pull].Force, pull, 1e-9)
	near(t, "lower share", r.Worst[car.Lower][column.Push].Share, push/r.Bars[car.Lower].Push.Allowable, 1e-12)
	if d := r.LoadVerdict(nil).Demand; d.Bar.Pair() != car.Lower || d.Way != column.Push {
		t.Errorf("highest use is %v in %v", d.Bar, d.Way)
	}
	if w := r.Worst[car.Lower][column.Pull]; w.Force != 0 {
		t.Errorf("the lower bars never pull, yet %+v", w)
	}
}

// Halving the factor halves every share and leaves the strengths.
func TestFactorScalesShares(t *testing.T) {
	c := reference(t)
	d := c.Clone()
	d.Check.Factor = 1
	a, b := run(t, c, analysis.Options{}), run(t, d, analysis.Options{})
	near(t, "share", b.Worst[car.Lower][column.Push].Share, a.Worst[car.Lower][column.Push].Share/2, 1e-12)
	near(t, "strength", b.Bars[car.Lower].Push.Strength, a.Bars[car.Lower].Push.Strength, 0)
}

func TestSetupsUseTheirOwnHoles(t *testing.T) {
	c := reference(t)
	a, b := run(t, c, analysis.Options{Setup: 0}), run(t, c, analysis.Options{Setup: 1})
	// The lower bar's front end 0.75 in up: by hand, its slope is (12.25 − 11)/23.
	x := 2.5 + 11.5/(0.275+1.25/23)
	near(t, "IC x [in]", b.Ride.InstantCenter.X/inch, x, 1e-9)
	if !(b.Ride.AntiSquat > a.Ride.AntiSquat) {
		t.Errorf("anti-squat %v, then %v", a.Ride.AntiSquat, b.Ride.AntiSquat)
	}
	if _, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{Setup: 2}); err == nil || err.Error() != "the car has no setup 3; it has 2" {
		t.Errorf("setup 3: %v", err)
	}
}

func TestRunStopsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := analysis.Run(ctx, reference(t), carfile.Stock(), analysis.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

// The pinion joint is the pinion's angle less the driveshaft's, by hand.
func TestJoints(t *testing.T) {
	c := reference(t).Clone()
	c.Driveline = car.Driveline{
		Given:             true,
		TransmissionJoint: r2.Vec{X: 55 * inch, Y: 18 * inch},
		PinionJoint:       r2.Vec{X: 11 * inch},
		TransmissionAngle: -3 * math.Pi / 180,
		PinionAngle:       2 * math.Pi / 180,
	}
	r := run(t, c, analysis.Options{})
	shaft := math.Atan(2.0 / 44)
	near(t, "pinion joint", r.Ride.Joints.Pinion, 2*math.Pi/180-shaft, 1e-12)
	near(t, "transmission joint", r.Ride.Joints.Transmission, shaft+3*math.Pi/180, 1e-12)
	s, err := r.At(0.05, 0)
	if err != nil {
		t.Fatal(err)
	}
	// Both joints and the two shafts close the polygon at every travel.
	near(t, "sum of joints", s.Joints.Pinion+s.Joints.Transmission, 5*math.Pi/180+s.Pose.Turn, 1e-12)
}

func TestSpringsLetGoWhenTheRearRises(t *testing.T) {
	r := run(t, reference(t), analysis.Options{})
	hooked := &r.Ride.Loads.Hooked
	if change := r.SpringChange(hooked); !(change < 0) {
		t.Errorf("at 155 %% anti-squat the springs gain %v N", change)
	}
	if v := r.CenterVerdict(); v.Rear != analysis.RearRises {
		t.Errorf("%+v", v)
	}
	// The bars' center just above the ground makes next to no anti-squat.
	low := reference(t).Clone()
	low.Chassis.Upper[2], low.Chassis.Lower[1] = r2.Vec{X: 22.5 * inch, Y: 22.5 * inch}, r2.Vec{X: 25.5 * inch, Y: 10 * inch}
	if v := run(t, low, analysis.Options{}).CenterVerdict(); v.Rear != analysis.RearSquats || v.Against != analysis.Below {
		t.Errorf("%+v", v)
	}
}

func TestWarnings(t *testing.T) {
	for _, c := range []struct {
		change func(*car.Car)
		want   analysis.Warning
	}{
		{func(c *car.Car) { c.Check.Factor = 3 }, analysis.Warning{Kind: analysis.OverCapacity, Demand: analysis.Demand{Bar: launch.LowerLeft, Way: column.Push, Source: analysis.FromHit, Share: 1.40, Travel: -4 * inch}}},
		{func(c *car.Car) {
			c.LowerBar.OD, c.LowerBar.Wall = 1.625*inch, 0.02*inch
		}, analysis.Warning{Kind: analysis.ThinWall, Pair: car.Lower, Value: 81.25, Limit: 42.5}},
		{func(c *car.Car) { c.LowerBar.OD, c.LowerBar.Wall = 0.3*inch, 0.05*inch }, analysis.Warning{Kind: analysis.Slender, Pair: car.Lower, Value: 255, Limit: 200}},
		{func(c *car.Car) { c.Check.TargetAntiSquat = [2]float64{0.5, 1} }, analysis.Warning{Kind: analysis.OffTarget, Value: 1.546, Limit: 1}},
		{func(c *car.Car) { c.Check.TargetICX = [2]float64{1, 1.01} }, analysis.Warning{Kind: analysis.CenterOffTarget}},
		{func(c *car.Car) {}, analysis.Warning{Kind: analysis.WheelsOff, Case: analysis.Hit}},
		{func(c *car.Car) {
			c.Chassis.Upper[2], c.Chassis.Lower[1] = r2.Vec{X: 22.5 * inch, Y: 22.5 * inch}, r2.Vec{X: 25.5 * inch, Y: 11 * inch}
		}, analysis.Warning{Kind: analysis.NoCenter}},
	} {
		d := reference(t).Clone()
		c.change(d)
		list := run(t, d, analysis.Options{}).Warnings(nil)
		if !slices.ContainsFunc(list, func(w analysis.Warning) bool {
			near := func(a, b float64) bool { return math.Abs(a-b) <= 5e-3*math.Abs(b) }
			d, want := w.Demand, c.want.Demand
			same := near(w.Value, c.want.Value) && near(w.Limit, c.want.Limit) && near(w.Travel, c.want.Travel) && near(d.Share, want.Share) && near(d.Travel, want.Travel)
			w.Value, w.Limit, w.Travel = c.want.Value, c.want.Limit, c.want.Travel
			w.Demand.Force, w.Demand.Share, w.Demand.Travel = 0, want.Share, want.Travel
			return same && w == c.want
		}) {
			t.Errorf("want %+v among\n%+v", c.want, list)
		}
	}
}

// Turns that a thread does not have are said before anything else, each bar's by
// itself, and the rest is computed all the same.
func TestTurnsBeyondTheThreadComeFirst(t *testing.T) {
	c := reference(t)
	c.Check.Factor = 3 // so that a bar is over its limit too
	c.Setups[0].Turns = car.Turns{UpperRight: 10, LowerLeft: 1}
	r := run(t, c, analysis.Options{})
	warnings := r.Warnings(nil)
	first := warnings[0]
	if first.Kind != analysis.BeyondThread || first.Bar != launch.UpperRight || first.Value != 10 {
		t.Errorf("the first warning is %+v", first)
	}
	// By hand: 2 threads in sight; 1.687 in − 0.125 in − 0.421875 in − 0.75 in at 16 an inch.
	near(t, "turns shorter", first.Room.Shorter, 2, 1e-6)
	near(t, "turns longer", first.Room.Longer, 6.242, 1e-6)
	if second := warnings[1]; second.Kind != analysis.OverCapacity {
		t.Errorf("the second is %+v", second)
	}
	if !slices.ContainsFunc(warnings, func(w analysis.Warning) bool {
		return w.Kind == analysis.LittleThread && w.Bar == launch.LowerLeft && w.Value == 1 && w.Limit == 1.5
	}) {
		t.Errorf("little thread is not among %+v", warnings)
	}
	c.Setups[0].Turns = car.Turns{UpperRight: -2}
	if w, ok := analysis.ThreadWarning(c, 0, launch.UpperRight); ok {
		t.Errorf("of all the threads in sight is said %+v", w)
	}
}

func TestVerdicts(t *testing.T) {
	c := reference(t)
	r := run(t, c, analysis.Options{})
	v := r.CenterVerdict()
	if !v.HasInstantCenter || !v.HasAntiSquat || math.Abs(v.InstantCenter.X-41.25*inch) > 0.005*inch || math.Abs(v.InstantCenter.Y-11.84*inch) > 0.005*inch || math.Abs(v.AntiSquat-1.546) > 5e-4 ||
		v.Target != [2]float64{1, 1.6} || v.Against != analysis.Inside {
		t.Errorf("%+v", v)
	}
	d := c.Clone()
	d.Check.Factor = 1
	d.Drive.Torque *= 3
	if v := run(t, d, analysis.Options{}).LoadVerdict(nil); v.Standing != analysis.Failing || v.Margin >= 1 || v.Factor != 1 {
		t.Errorf("%+v", v)
	}
	d.Check.Factor = 20
	d.Drive.Torque /= 3
	if v := run(t, d, analysis.Options{}).LoadVerdict(nil); v.Standing != analysis.FactorShort || v.Margin <= 1 || v.Demand.Share <= 1 || v.Demand.Bar.Pair() != car.Lower || v.Demand.Way != column.Push {
		t.Errorf("%+v", v)
	}
}

func BenchmarkRun(b *testing.B) {
	c, lib := reference(b), carfile.Stock()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := analysis.Run(context.Background(), c, lib, analysis.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
