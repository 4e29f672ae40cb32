package analysis_test

import (
	"context"
	"math"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/internal/cartest"
	"bowline/model/statics"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// Every valid car is analyzed: nothing fails or is no number, bars keep their
// lengths to 1e-9 m, and the forces on the axle assembly are in balance to
// 1e-9 of the largest.
func TestAnyValidCar(t *testing.T) {
	lib := carfile.Stock()
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, lib)
		front := rapid.Float64Range(-c.Springs.FrontDroop, c.Springs.FrontBump).Draw(t, "front travel")
		setup := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "setup")
		r, err := analysis.Run(context.Background(), c, lib, analysis.Options{Setup: setup, FrontTravel: front})
		if err != nil {
			t.Fatal(err)
		}
		for i := range r.Travel {
			s := &r.Travel[i]
			lengths(t, r, s)
			finite(t, s)
			for _, l := range []*statics.Load{&s.Loads.Rest, &s.Loads.Hooked, &s.Loads.Hit} {
				balance(t, c, s, l)
			}
		}
		stands(t, r)
	})
}

// lengths measures the bars of a station.
func lengths(t *rapid.T, r *analysis.Result, s *analysis.Station) {
	p := &s.Pose
	upper, lower := r2.Norm(r2.Sub(p.HousingUpper, p.ChassisUpper)), r2.Norm(r2.Sub(p.HousingLower, p.ChassisLower))
	if math.Abs(upper-r.Bars[car.Upper].Length) > 1e-9 || math.Abs(lower-r.Bars[car.Lower].Length) > 1e-9 {
		t.Fatalf("travel %v: bars are %v and %v long", p.Travel, upper, lower)
	}
}

// finite looks at every number of a station.
func finite(t *rapid.T, s *analysis.Station) {
	values := []float64{s.Pose.Shift, s.Pose.Turn, s.InstantCenter.X, s.InstantCenter.Y, s.AntiSquat, s.CG.X, s.CG.Y, s.Joints.Pinion, s.Joints.Transmission}
	for _, l := range []statics.Load{s.Loads.Rest, s.Loads.Hooked, s.Loads.Hit} {
		values = append(values, l.Thrust, l.AxleTorque, l.Accel, l.RearLoad, l.FrontLoad, l.Upper.Tension, l.Lower.Tension, l.Spring, l.BarsShare)
	}
	for _, x := range values {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("travel %v: %+v", s.Pose.Travel, s)
		}
	}
}

// balance adds up what acts on the axle assembly, with moments about the rear
// contact.
func balance(t *rapid.T, c *car.Car, s *analysis.Station, l *statics.Load) {
	if !l.Balanced {
		return
	}
	p, g := &s.Pose, s.Pose.Ground
	axle := g.Point(p.Axle)
	mount := g.Point(r2.Add(p.Axle, r2.Rotate(c.Springs.RearAxleMount, p.Turn, r2.Vec{})))
	push := r2.Scale(l.Spring, r2.Unit(r2.Sub(mount, g.Point(c.Springs.RearChassisMount))))
	weight := r2.Vec{X: -c.Body.UnsprungRear * l.Accel, Y: -c.Body.UnsprungRear * units.Gravity}
	sum := r2.Vec{X: l.Thrust, Y: l.RearLoad}
	moment := l.AxleTorque - l.Thrust*c.Tires.RearRadius // the wheels' spin-up, taken out of the housing
	largest := math.Max(r2.Norm(sum), l.AxleTorque)
	for _, f := range []struct{ at, force r2.Vec }{
		{g.Point(p.HousingUpper), r2.Scale(2, l.Upper.OnHousing)},
		{g.Point(p.HousingLower), r2.Scale(2, l.Lower.OnHousing)},
		{mount, push}, {axle, weight},
	} {
		sum = r2.Add(sum, f.force)
		moment += r2.Cross(f.at, f.force)
		largest = math.Max(largest, r2.Norm(f.force))
	}
	if r2.Norm(sum) > 1e-9*largest || math.Abs(moment) > 1e-9*largest {
		t.Fatalf("travel %v: force %v and moment %v are left over of %v", p.Travel, sum, moment, largest)
	}
}

// stands holds the verdicts against the numbers that they are of.
func stands(t *rapid.T, r *analysis.Result) {
	load := r.LoadVerdict(nil)
	most := 0.0
	for _, p := range car.Pairs {
		for _, d := range column.Directions {
			most = max(most, r.Worst[p][d].Share)
		}
	}
	if load.Demand.Share != most || (load.Standing == analysis.Unloaded) != (most == 0) || (load.Standing == analysis.Within) != (most > 0 && most <= 1) {
		t.Fatalf("%+v of at most %v", load, most)
	}
	if most > 0 && math.Abs(load.Margin*most/load.Factor-1) > 1e-12 {
		t.Fatalf("%+v: the margin over the factor is not one over the share", load)
	}
	center := r.CenterVerdict()
	if inside := center.AntiSquat >= center.Target[0] && center.AntiSquat <= center.Target[1]; inside != (center.Against == analysis.Inside) {
		t.Fatalf("%+v", center)
	}
	if (center.Rear == analysis.RearUnknown) == r.Ride.Loads.Hooked.Balanced {
		t.Fatalf("%+v, balanced %v", center, r.Ride.Loads.Hooked.Balanced)
	}
}
