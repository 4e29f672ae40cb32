package statics

import (
	"math"
	"testing"

	"bowline/model/linkage"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// draw makes a random car that rests on its wheels, and a pose of it; nil when
// the four-link drawn does not reach the pose.
func draw(t *rapid.T) (*Vehicle, *linkage.Linkage, *linkage.Pose) {
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	g := linkage.Geometry{
		ChassisUpper: r2.Vec{X: f("cu.x", 0.3, 1.2), Y: f("cu.z", 0.3, 0.8)},
		ChassisLower: r2.Vec{X: f("cl.x", 0.3, 1.2), Y: f("cl.z", 0.1, 0.5)},
		HousingUpper: r2.Vec{X: f("hu.x", -0.1, 0.15), Y: f("hu.z", 0.05, 0.25)},
		HousingLower: r2.Vec{X: f("hl.x", -0.1, 0.15), Y: f("hl.z", -0.25, -0.05)},
		Wheelbase:    f("wheelbase", 2, 3.5), RearRadius: f("rear radius", 0.25, 0.45), FrontRadius: f("front radius", 0.25, 0.45),
	}
	v := whole(Vehicle{
		UnsprungRear: f("unsprung rear", 0, 300), UnsprungFront: f("unsprung front", 0, 100),
		RearSpinInertia: f("rear inertia", 0, 20), FrontSpinInertia: f("front inertia", 0, 5),
		Grip: f("grip", 0.3, 4), AxleTorque: f("torque", 10, 40000),
		SpringAxleMount:   r2.Vec{X: f("mount x", -0.2, 0.1), Y: f("mount z", -0.1, 0.1)},
		SpringChassisSide: r2.Vec{X: f("top x", -0.3, 0.2), Y: f("top z", 0.7, 1.2)},
	}, f("mass", 700, 2500), r2.Vec{X: f("cg x", 0.4, 0.6) * g.Wheelbase, Y: f("cg z", 0.3, 0.8)}, g)
	l, err := linkage.New(g)
	if err != nil {
		return nil, nil, nil
	}
	q := f("travel", -0.08, 0.08)
	if lo, hi := l.Range(); q < lo+0.01 || q > hi-0.01 {
		return nil, nil, nil
	}
	p, err := l.Pose(q, f("front travel", -0.1, 0.05))
	if err != nil {
		t.Fatal(err)
	}
	return &v, l, &p
}

// Forces and moments on the axle assembly add up to its mass times
// acceleration, to 1e-9 of the largest force, about a point of no special use.
func TestAxleAssemblyIsInBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, _, p := draw(t)
		if v == nil {
			return
		}
		about := r2.Vec{X: 0.3, Y: -0.2}
		for name, l := range cases(v.Solve(p)) {
			if !l.Balanced {
				continue
			}
			axle := p.Ground.Point(p.Axle)
			mount := p.Ground.Point(r2.Add(p.Axle, r2.NewRotation(p.Turn, r2.Vec{}).Rotate(v.SpringAxleMount)))
			push := r2.Scale(l.Spring, r2.Unit(r2.Sub(mount, p.Ground.Point(v.SpringChassisSide))))
			var sum r2.Vec
			var moment, largest float64
			apply := func(at, f r2.Vec) {
				sum = r2.Add(sum, f)
				moment += r2.Cross(r2.Sub(at, about), f)
				largest = math.Max(largest, r2.Norm(f))
			}
			apply(p.Ground.Point(p.HousingUpper), r2.Scale(2, l.Upper.OnHousing))
			apply(p.Ground.Point(p.HousingLower), r2.Scale(2, l.Lower.OnHousing))
			apply(mount, push)
			apply(r2.Vec{}, r2.Vec{X: l.Thrust, Y: l.RearLoad})
			apply(axle, r2.Vec{X: -v.UnsprungRear * l.Accel, Y: -v.UnsprungRear * units.Gravity})
			// The wheels take up T − F r as spin, forward and so nose-down.
			moment += l.AxleTorque - l.Thrust*v.RearRadius
			largest = math.Max(largest, l.AxleTorque)
			if r2.Norm(sum) > 1e-9*largest || math.Abs(moment) > 1e-9*largest {
				t.Fatalf("%s: force %v and moment %v left over of %v", name, sum, moment, largest)
			}
			if got := r2.Norm(l.Upper.OnHousing); math.Abs(got-math.Abs(l.Upper.Tension)) > 1e-9*largest {
				t.Fatalf("%s: bar force %v along the bar is %v", name, l.Upper.Tension, got)
			}
		}
	})
}

// A second formulation: bars do no work, so the spring follows from virtual
// work along the linkage's own motion, found by central differences.
func TestSpringAgreesWithVirtualWork(t *testing.T) {
	checked := 0
	rapid.Check(t, func(t *rapid.T) {
		v, l, p := draw(t)
		if v == nil {
			return
		}
		const h = 1e-6
		lo, err1 := l.Pose(p.Travel-h, p.FrontTravel)
		hi, err2 := l.Pose(p.Travel+h, p.FrontTravel)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		length := func(p *linkage.Pose) float64 {
			m := r2.Add(p.Axle, r2.NewRotation(p.Turn, r2.Vec{}).Rotate(v.SpringAxleMount))
			return r2.Norm(r2.Sub(m, v.SpringChassisSide))
		}
		rate := (length(&hi) - length(&lo)) / (2 * h)
		turn := (hi.Turn - lo.Turn) / (2 * h)
		shift := (hi.Shift - lo.Shift) / (2 * h)
		if math.Abs(rate) < 0.1 || math.Abs(turn) > 10 {
			return // the spring hardly moves, or the linkage is near its end
		}
		checked++
		move := p.Ground.Direction(r2.Vec{X: shift, Y: 1})
		for name, c := range cases(v.Solve(p)) {
			net := r2.Vec{X: c.Thrust - v.UnsprungRear*c.Accel, Y: c.RearLoad - v.UnsprungRear*units.Gravity}
			want := -(r2.Dot(net, move) + c.AxleTorque*turn) / rate
			if math.Abs(c.Spring-want) > 1e-5*(math.Abs(want)+math.Abs(c.RearLoad)+math.Abs(c.AxleTorque*turn)) {
				t.Fatalf("%s: spring %v, by virtual work %v", name, c.Spring, want)
			}
		}
	})
	if checked < 20 {
		t.Errorf("only %d cars checked", checked)
	}
}

// The tire loads obey the whole car's balance, grip is never exceeded, and the
// named limit is the one that holds.
func TestLimitsAreWhatTheySay(t *testing.T) {
	seen := map[Limit]int{}
	rapid.Check(t, func(t *rapid.T) {
		v, _, p := draw(t)
		if v == nil {
			return
		}
		cg := v.CG(p)
		for name, l := range cases(v.Solve(p)) {
			for _, x := range []float64{l.Thrust, l.AxleTorque, l.RearLoad, l.FrontLoad, l.Upper.Tension, l.Lower.Tension, l.Spring, l.BarsShare} {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("%s: %+v", name, l)
				}
			}
			seen[l.Governs]++
			w := v.Mass() * units.Gravity
			if l.FrontLoad < 0 || math.Abs(l.RearLoad+l.FrontLoad-w) > 1e-9*w {
				t.Fatalf("%s: loads %v and %v of %v", name, l.RearLoad, l.FrontLoad, w)
			}
			if l.Thrust > v.Grip*l.RearLoad*(1+1e-9) {
				t.Fatalf("%s: thrust %v on a load of %v", name, l.Thrust, l.RearLoad)
			}
			spin := l.AxleTorque - l.Thrust*v.RearRadius
			front := (w*cg.X - v.Mass()*l.Accel*cg.Y - spin - v.FrontSpinInertia*l.Accel/v.FrontRadius) / p.Ground.Wheelbase
			switch l.Governs {
			case FrontWheelsOff:
				if front > 1e-9*w {
					t.Fatalf("%s: front wheels off, yet the balance leaves %v on them", name, front)
				}
			case Grip:
				if math.Abs(l.Thrust-v.Grip*l.RearLoad) > 1e-9*w {
					t.Fatalf("%s: grip governs but thrust is %v of %v", name, l.Thrust, v.Grip*l.RearLoad)
				}
			case Drive:
				// Torque that makes all the thrust it can: no wheelspin.
				if math.Abs(spin-v.RearSpinInertia*l.Accel/v.RearRadius) > 1e-6*l.AxleTorque {
					t.Fatalf("%s: drive governs but %v N·m spin the wheels up", name, spin)
				}
			}
			if l.Governs != FrontWheelsOff && math.Abs(front-l.FrontLoad) > 1e-9*w {
				t.Fatalf("%s: front load %v, by balance %v", name, l.FrontLoad, front)
			}
		}
	})
	for _, l := range []Limit{Drive, Grip, FrontWheelsOff} {
		if seen[l] == 0 {
			t.Errorf("no car was limited by %q", l)
		}
	}
}

// Twice the mass, inertia and torque is twice every force.
func TestForcesScaleWithMass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, _, p := draw(t)
		if v == nil {
			return
		}
		w := *v
		for _, x := range []*float64{&w.SprungMass, &w.UnsprungRear, &w.UnsprungFront, &w.RearSpinInertia, &w.FrontSpinInertia, &w.AxleTorque} {
			*x *= 2
		}
		a, b := v.Solve(p).Hit, w.Solve(p).Hit
		scale := math.Abs(a.Upper.Tension) + math.Abs(a.Lower.Tension) + a.RearLoad
		if math.Abs(2*a.Upper.Tension-b.Upper.Tension) > 1e-9*scale || math.Abs(2*a.RearLoad-b.RearLoad) > 1e-9*scale {
			t.Fatalf("%+v doubled is %+v", a, b)
		}
	})
}

// Common practice: at launch the upper bars pull and the lower bars push, the
// lower ones harder.
func TestUpperPullsLowerPushesHarder(t *testing.T) {
	g, v := reference()
	for q := -0.1; q <= 0.08; q += 0.02 {
		for name, l := range cases(v.Solve(pose(t, g, q, 0))) {
			if name == "rest" {
				continue
			}
			if !(l.Upper.Tension > 0 && l.Lower.Tension < 0 && -l.Lower.Tension > l.Upper.Tension) {
				t.Errorf("travel %.2f m, %s: upper %.0f N, lower %.0f N", q, name, l.Upper.Tension, l.Lower.Tension)
			}
		}
	}
}

// Parallel bars that the spring is parallel to cannot hold the axle.
func TestConcurrentLinesCarryNothing(t *testing.T) {
	g, v := reference()
	g.ChassisUpper = r2.Vec{X: 22.5 * inch, Y: 22.5 * inch}
	g.ChassisLower = r2.Vec{X: 25.5 * inch, Y: 11 * inch}
	v.SpringAxleMount = r2.Vec{}
	v.SpringChassisSide = r2.Vec{X: 1, Y: g.RearRadius}
	for name, l := range cases(v.Solve(pose(t, g, 0, 0))) {
		if l.Balanced || l.Upper.Tension != 0 || l.RearLoad == 0 {
			t.Errorf("%s: %+v", name, l)
		}
	}
}

func cases(l Loads) map[string]Load {
	return map[string]Load{"rest": l.Rest, "hooked": l.Hooked, "hit": l.Hit}
}

func BenchmarkPoseWithLoads(b *testing.B) {
	g, v := reference()
	l, err := linkage.New(g)
	if err != nil {
		b.Fatal(err)
	}
	for i := 0; b.Loop(); i++ {
		p, err := l.Pose(0.07*math.Sin(float64(i)), 0)
		if err != nil {
			b.Fatal(err)
		}
		v.Solve(&p)
	}
}
