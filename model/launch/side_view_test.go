package launch

import (
	"math"
	"testing"

	"bowline/model/car"
	"bowline/model/statics"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// steady launches a car without the driveshaft's torque, with shocks that leave
// no bounce and a torque that comes up within a second, and returns the result
// after three: everything but the speed then stands still.
func steady(t *testing.T, c *car.Car, torque float64) *Result {
	t.Helper()
	p := parameters(t, c)
	p.Drive.Turning = 0
	straighten(&p)
	push(&p, torque, 1)
	for k := range Sides {
		p.RearTires[k].Grip = 20
		p.RearTires[k].Damping, p.RearTires[k].CarcassDamping, p.Corners[k].TireDamping = 3000, 1500, 3000
		p.Coils[k].Bump, p.Coils[k].Rebound = 6000, 6000
		p.Corners[k].Bump, p.Corners[k].Rebound = 4000, 4000
	}
	return simulate(t, p, Options{Distance: 1e6, Limit: 3})
}

// With the driveshaft's torque off and a symmetric car, a slowly applied torque
// reaches the side view's answer at the same pose and loaded radius, in every
// force. What is left, less than 2 parts in 10,000, is the pitching that still
// goes on after three seconds.
func TestSteadyLaunchIsTheSideView(t *testing.T) {
	for _, torque := range []float64{150, 300, 450} {
		c := reference(t)
		c.Tires.FrontSpinInertia = 1
		c.Springs.FrontDroop = 0.3
		r := steady(t, c, torque*lbf*foot)
		n := len(r.Time) - 1
		view := r.SideView(n)
		f := r.Frames[n]
		v := statics.Vehicle{
			UnsprungRear: c.Body.UnsprungRear, UnsprungFront: c.Body.UnsprungFront,
			RearRadius: f.RearWheels[Left].Z, FrontRadius: f.FrontWheels[Left].Z,
			RearSpinInertia: c.Tires.RearSpinInertia, FrontSpinInertia: c.Tires.FrontSpinInertia,
			Grip: 20, AxleTorque: r.Torque[n],
			SpringAxleMount: c.Springs.RearAxleMount, SpringChassisSide: c.Springs.RearChassisMount,
		}
		v.SprungMass, v.SprungCG = c.Sprung()
		want := v.Solve(&view.Pose).Hit
		if want.Governs != statics.Drive || want.FrontLoad <= 0 {
			t.Fatalf("%v lb-ft: %v governs", torque, want.Governs)
		}
		const part = 2e-4
		both := func(lists [2][]float64) float64 { return lists[Left][n] + lists[Right][n] }
		within(t, "torque", r.Torque[n], torque*lbf*foot*1.7*1.8*4.1*0.9, 1e-4)
		within(t, "thrust", r.Thrust[n], want.Thrust, part)
		within(t, "rear load", both(r.RearLoad), want.RearLoad, part)
		within(t, "front load", both(r.FrontLoad), want.FrontLoad, part)
		within(t, "acceleration", (r.Speed[n]-r.Speed[n-1])/(r.Time[n]-r.Time[n-1]), want.Accel, part)
		for _, b := range Bars {
			tension := want.Upper.Tension
			if b.Pair() == car.Lower {
				tension = want.Lower.Tension
			}
			within(t, b.String(), r.Tension[b][n], tension, part)
		}
		if r.Pitch[n] < 1e-3*torque/250 {
			t.Errorf("%v lb-ft: the car hardly pitches, by %v rad", torque, r.Pitch[n])
		}
	}
}

// At ride height the side view is that of the reference point of the mechanics:
// instant center (41.25, 11.84) in, anti-squat 154.6 %.
func TestSideViewAtRideHeight(t *testing.T) {
	r := run(t, reference(t), Options{Limit: 0.01})
	v := r.SideView(0)
	if off := r2.Norm(r2.Sub(v.InstantCenter, r2.Vec{X: 41.25 * inch, Y: 11.84 * inch})); off > 0.006*inch || !v.HasInstantCenter {
		t.Errorf("instant center %v m", v.InstantCenter)
	}
	within(t, "anti-squat", v.AntiSquat, 1.546, 5e-4)
	if math.Abs(v.CG.X-52.5*inch) > 1e-9 || math.Abs(v.CG.Y-19.5*inch) > 1e-9 {
		t.Errorf("CG %v m", v.CG)
	}
	if p := v.Pose; math.Abs(p.Travel)+math.Abs(p.FrontTravel)+math.Abs(p.Turn)+math.Abs(p.Shift)+math.Abs(p.Ground.Pitch()) > 1e-9 {
		t.Errorf("pose %+v", p)
	}
}

// The rigid linkage and the stiff three-dimensional one pass through the same
// pose: bars that give way a hundred times less turn the housing as the side
// view says, to the thousandth of the turn that is left to them.
func TestSideViewFollowsTheLinkage(t *testing.T) {
	c := reference(t)
	const stiff = 1e7 * lbf / inch
	c.Launch.UpperBar.EndRate, c.Launch.LowerBar.EndRate = stiff, stiff
	c.UpperBar.OD, c.UpperBar.Wall, c.LowerBar.OD, c.LowerBar.Wall = 0.2, 0.1, 0.2, 0.1
	r := steady(t, c, 900*lbf*foot)
	got := r.SideView(len(r.Time) - 1)
	l, err := c.Linkage(0)
	if err != nil {
		t.Fatal(err)
	}
	want, err := l.Pose(got.Pose.Travel, got.Pose.FrontTravel)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(got.Pose.Travel) < 0.5*inch {
		t.Errorf("the rear moves only %v m", got.Pose.Travel)
	}
	if math.Abs(got.Pose.Turn-want.Turn) > 1e-3*math.Abs(want.Turn)+1e-4 || math.Abs(got.Pose.Shift-want.Shift) > 2e-5 {
		t.Errorf("turn %v and shift %v, the rigid linkage has %v and %v", got.Pose.Turn, got.Pose.Shift, want.Turn, want.Shift)
	}
}

// Load transfer with the rear axle driving: R. N. Jazar, Vehicle Dynamics,
// p. 92 exercise 12: 2058.9 kg, wheelbase 2.7508 m, CG midway and 0.76 m high,
// 1.7 m/s²; from N_f L = m g x − m a h the fronts carry 9131.9 N and the rears
// 11,065.9 N (g 9.81; the book prints no answer). The suspension is held stiff,
// so that the CG stays where it is.
func TestLoadTransferOfATextbookCar(t *testing.T) {
	c := textbookCar(t, 2058.9, 2.7508, 0.76)
	p := textbookParameters(t, c)
	perThrust := c.Tires.RearRadius * (1 + p.Axle.Spin/(2058.9*c.Tires.RearRadius*c.Tires.RearRadius))
	push(&p, 2058.9*1.7*perThrust/(p.Drive.Stall*p.Drive.Gear*p.Drive.Axle*p.Drive.Efficiency), 1)
	r := simulate(t, p, Options{Distance: 1e6, Limit: 3})
	within(t, "acceleration", (last(r.Speed)-r.Speed[len(r.Speed)-101])/0.1, 1.7, 1e-3)
	within(t, "front load", last(r.FrontLoad[Left])+last(r.FrontLoad[Right]), 9131.9, 1e-3)
	within(t, "rear load", last(r.RearLoad[Left])+last(r.RearLoad[Right]), 11065.9, 1e-3)
}

// The most that rear tires give before they spin: R. N. Jazar, Vehicle Dynamics,
// p. 92 exercise 10: 1550 kg, wheelbase 2.620 m, CG midway and 0.720 m high,
// µ 0.8; µ g (a/L)/(1 − µ h/L) = 5.0298 m/s² (g 9.81; the book prints no
// answer). The torque comes up so slowly that the spin-up of the wheels adds
// nothing.
func TestTractionLimitOfATextbookCar(t *testing.T) {
	c := textbookCar(t, 1550, 2.620, 0.720)
	p := textbookParameters(t, c)
	for k := range Sides {
		p.RearTires[k].Grip, p.RearTires[k].Sliding = 0.8, 1
	}
	push(&p, 2*1550*5.03*c.Tires.RearRadius/(p.Drive.Stall*p.Drive.Gear*p.Drive.Axle*p.Drive.Efficiency), 6)
	r := simulate(t, p, Options{Distance: 1e6, Limit: 3})
	most := 0.0
	for i, slip := range r.Slip[Left] {
		if slip > 0.2 {
			break
		}
		most = math.Max(most, r.Thrust[i])
	}
	within(t, "acceleration at the limit", most/1550, 5.0298, 3e-3)
}

// textbookCar is a car with its CG midway between the axles; next to nothing of
// it is unsprung.
func textbookCar(t *testing.T, mass, wheelbase, height float64) *car.Car {
	c := reference(t)
	c.Body.Mass, c.Body.RearMass, c.Body.Wheelbase, c.Body.CGHeight = mass, mass/2, wheelbase, height
	c.Tires.RearSpinInertia = 0.5
	if problems := c.Validate(carLibrary, units.SI); len(problems) > 0 {
		t.Fatal(problems)
	}
	return c
}

// textbookParameters have stiff springs, much damping and the g of textbooks.
func textbookParameters(t *testing.T, c *car.Car) Parameters {
	const much = 40
	p := parameters(t, c)
	p.Drive.Turning = 0
	stiffen(&p, much)
	for k := range Sides {
		p.Coils[k].Rate *= much
		p.Corners[k].Rate *= much
		p.Coils[k].Bump, p.Coils[k].Rebound, p.Corners[k].Bump, p.Corners[k].Rebound = 3e4, 3e4, 3e4, 3e4
		p.RearTires[k].Grip, p.RearTires[k].CarcassDamping = 5, 3000
	}
	p.Gravity = 9.81
	return p
}
