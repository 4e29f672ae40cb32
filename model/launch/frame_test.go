package launch

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Whatever is drawn holds together: in every frame the bars' holes are as far
// apart as the bar with its tension is long, wheels sit on their axle, travels
// and angles are those of the history.
func TestFramesAgreeWithTheHistory(t *testing.T) {
	c := reference(t)
	c.Drive.Torque *= 0.6
	// Without damping, forces follow from the places alone.
	c.Launch.UpperBar.Damping, c.Launch.LowerBar.Damping, c.Launch.Locator.Damping, c.Launch.Tires.RearDamping = 0, 0, 0, 0
	r := run(t, c, Options{Limit: 0.6})
	p := &r.Parameters
	if r.Lift.Height == 0 || math.Abs(last(r.Roll)) == 0 {
		t.Fatal("the launch is to lift the front wheels and roll the car")
	}
	near := func(i int, what string, got, want, off float64) {
		t.Helper()
		if math.Abs(got-want) > off {
			t.Fatalf("frame %d: %s %v, want %v", i, what, got, want)
		}
	}
	// How far the driveshaft has turned, by the trapezoid rule over its speed and by
	// the wheels' angle against the housing, whose nose-up turn adds to it.
	turned, nose := 0.0, func(f Frame) float64 { return math.Asin(r3.Sub(f.Axle.At(r3.Vec{X: 1}), f.Axle.Origin).Z) }
	for i := 1; i < len(r.Frames); i++ {
		turned += (r.Driveshaft[i-1] + r.Driveshaft[i]) / 2 * (r.Time[i] - r.Time[i-1])
		by := c.Drive.Axle * (r.Frames[i].Spin + nose(r.Frames[i]) - nose(r.Frames[0]))
		near(i, "driveshaft turns", turned, by, 1e-3*(1+by))
	}
	for i, f := range r.Frames {
		for k, rod := range p.Rods {
			span := r3.Norm(r3.Sub(f.Chassis.At(rod.Chassis), f.Axle.At(rod.Housing)))
			near(i, RodID(k).String(), span, rod.Free+r.Tension[k][i]/rod.Rate, 1e-9)
		}
		near(i, "rear track", r3.Norm(r3.Sub(f.RearWheels[Left], f.RearWheels[Right])), c.Body.TrackRear, 1e-9)
		for _, side := range Sides {
			near(i, "rear travel", f.Chassis.From(f.RearWheels[side]).Z-c.Tires.RearRadius, r.RearTravel[side][i], 1e-9)
			front := f.Chassis.From(f.FrontWheels[side])
			near(i, "front travel", front.Z-c.Tires.FrontRadius, r.FrontTravel[side][i], 1e-9)
			near(i, "front wheel", front.X, c.Body.Wheelbase, 1e-9)
			load := math.Max(0, p.RearTires[side].Rate*(p.RearTires[side].Radius-f.RearWheels[side].Z))
			near(i, "rear load", load, r.RearLoad[side][i], 1e-6)
		}
		near(i, "pitch", f.Pitch(), r.Pitch[i], 1e-12)
		near(i, "roll", f.Roll(), r.Roll[i], 1e-12)
		ahead := f.Chassis.At(r3.Vec{X: 1})
		near(i, "nose", math.Asin(ahead.Z-f.Chassis.Origin.Z), r.Pitch[i], 1e-9)
		view := r.SideView(i)
		near(i, "side view pitch", view.Pose.Ground.Pitch(), math.Atan2(math.Sin(r.Pitch[i]), math.Cos(r.Pitch[i])*math.Cos(r.Roll[i])), 1e-9)
		near(i, "side view travel", view.Pose.Travel, (r.RearTravel[Left][i]+r.RearTravel[Right][i])/2, 1e-9)
		near(i, "side view front travel", view.Pose.FrontTravel, (r.FrontTravel[Left][i]+r.FrontTravel[Right][i])/2, 1e-9)
	}
	if spin := r.Frames[len(r.Frames)-1].Spin; spin < last(r.Distance)/c.Tires.RearRadius {
		t.Errorf("the wheels turn %v rad over %v m", spin, last(r.Distance))
	}
}

// Between two frames everything moves evenly, and rotations stay rotations.
func TestFrameAt(t *testing.T) {
	r := run(t, reference(t), Options{Limit: 0.3})
	for _, c := range []struct {
		at   float64
		want Frame
	}{{-1, r.Frames[0]}, {0, r.Frames[0]}, {9, r.Frames[300]}, {math.NaN(), r.Frames[0]}} {
		if got := r.FrameAt(c.at); got != c.want {
			t.Errorf("at %v s %+v", c.at, got)
		}
	}
	a, b := r.Frames[200], r.Frames[201]
	half := r.FrameAt(0.2005)
	if got, want := half.Axle.Origin, r3.Scale(0.5, r3.Add(a.Axle.Origin, b.Axle.Origin)); r3.Norm(r3.Sub(got, want)) > 1e-9 {
		t.Errorf("axle at %v, want %v", got, want)
	}
	point := r3.Vec{X: 2, Y: 0.5, Z: 0.3}
	if got, want := half.Chassis.At(point), r3.Scale(0.5, r3.Add(a.Chassis.At(point), b.Chassis.At(point))); r3.Norm(r3.Sub(got, want)) > 1e-6 {
		t.Errorf("a point of the chassis at %v, want %v", got, want)
	}
	if back := half.Chassis.From(half.Chassis.At(point)); r3.Norm(r3.Sub(back, point)) > 1e-12 {
		t.Errorf("%v comes back as %v", point, back)
	}
	if math.Abs(half.Spin-(a.Spin+b.Spin)/2) > 1e-12 {
		t.Errorf("wheels turned by %v", half.Spin)
	}
}

// The front wheels are off the ground while neither tire carries anything, as
// high as their lowest points are.
func TestLift(t *testing.T) {
	c := reference(t)
	c.Drive.Torque *= 0.45
	r := run(t, c, Options{Limit: 2.5, Distance: 1000})
	most, off, first := 0.0, 0, 0.0
	for i, f := range r.Frames {
		for _, side := range Sides {
			most = math.Max(most, f.FrontWheels[side].Z-r.Parameters.Corners[side].Radius)
		}
		if r.FrontLoad[Left][i] == 0 && r.FrontLoad[Right][i] == 0 {
			if off++; off == 1 {
				first = r.Time[i]
			}
		}
	}
	if math.Abs(r.Lift.Height-most) > 1e-5 || most < 0.05 {
		t.Errorf("lift %v m, the frames show %v m", r.Lift.Height, most)
	}
	if math.Abs(r.Lift.Duration-float64(off)*1e-3) > 5e-3 || math.Abs(r.Lift.Start-first) > 1.1e-3 || off < 100 {
		t.Errorf("off the ground from %v s for %v s, the history shows %v s for %v ms", r.Lift.Start, r.Lift.Duration, first, off)
	}
}
