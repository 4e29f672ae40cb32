package roll_test

import (
	"math"
	"slices"
	"testing"

	"bowline/model/carfile"
	"bowline/model/internal/cartest"
	"bowline/model/launch"
	"bowline/model/roll"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

const degree = math.Pi / 180

func parameters(t testing.TB, path string) launch.Parameters {
	t.Helper()
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	p, err := launch.New(f.Car, 0, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return p
}

var cars = []string{
	"../../testdata/reference.toml", "../../assets/cars/saltgrass-7.toml", "../../assets/cars/saltgrass-heavy.toml",
	"../../assets/cars/saltgrass-light.toml", "../../testdata/mujoco/odd.toml",
}

// place puts a rod's two ends so many meters from the axle's middle and sets its length.
func place(p *launch.Parameters, k launch.RodID, chassis, housing r3.Vec) {
	rod := &p.Rods[k]
	rod.Chassis, rod.Housing = r3.Add(chassis, r3.Vec{Z: p.Axle.Height}), housing
	rod.Length = r3.Norm(r3.Sub(chassis, housing))
}

// Bars that are parallel in plan, upper and lower ones with slopes of their own, bind
// in roll: with the stretches (s φ + ψ) y cos α of a bar at the distance y from the
// car's middle, under a yaw ψ that is free, least energy gives
//
//	K = a b/(a + b) (s_u − s_l)², a = 2 k_u y_u² cos² α_u, b likewise
//
// (derived here). Bars with one slope do not bind.
func TestRollStiffnessOfParallelBars(t *testing.T) {
	p := parameters(t, cars[0])
	set := func(upper, lower, yu, yl float64) (want float64) {
		for side, sign := range []float64{1, -1} {
			for pair, bar := range []struct{ slope, y, z float64 }{{upper, yu, 0.16}, {lower, yl, -0.13}} {
				k := launch.RodID(2*pair + side)
				foot := r3.Vec{X: 0.06, Y: sign * bar.y, Z: bar.z}
				place(&p, k, r3.Add(foot, r3.Vec{X: 0.5, Z: 0.5 * bar.slope}), foot)
			}
		}
		part := func(k launch.RodID, y, slope float64) float64 {
			return 2 * p.Rods[k].Rate * y * y / (1 + slope*slope)
		}
		a, b := part(launch.UpperLeft, yu, upper), part(launch.LowerLeft, yl, lower)
		return a * b / (a + b) * (upper - lower) * (upper - lower)
	}
	for _, c := range []struct{ upper, lower, yu, yl float64 }{{0, 0, 0.45, 0.45}, {0.2, 0.2, 0.45, 0.3}, {-0.15, 0.05, 0.45, 0.45}, {-0.3, 0.2, 0.3, 0.5}} {
		want := set(c.upper, c.lower, c.yu, c.yl)
		got, err := roll.New(&p).Stiffness(0)
		if err != nil || math.Abs(got-want) > 1e-9*want+1e-6 {
			t.Errorf("%+v: %v N·m/rad, want %v; %v", c, got, want, err)
		}
	}
}

// least finds the least elastic energy at a travel and a roll from the energy alone,
// written in quaternions, and returns it.
func least(p *launch.Parameters, travel, angle float64) float64 {
	unit := func(axis r3.Vec, by float64) quat.Number {
		s, c := math.Sincos(by / 2)
		return quat.Number{Real: c, Imag: s * axis.X, Jmag: s * axis.Y, Kmag: s * axis.Z}
	}
	energy := func(x []float64) float64 {
		// Lengths in millimeters and angles in milliradians, of like size.
		turn := quat.Mul(unit(r3.Vec{Z: 1}, x[3]/1e3), quat.Mul(unit(r3.Vec{X: 1}, angle), unit(r3.Vec{Y: 1}, x[2]/1e3)))
		sum := 0.0
		for _, rod := range p.Rods {
			foot := r3.Add(r3.Vec{X: x[0] / 1e3, Y: x[1] / 1e3, Z: p.Axle.Height + travel}, r3.Rotation(turn).Rotate(rod.Housing))
			stretch := r3.Norm(r3.Sub(foot, rod.Chassis)) - rod.Length
			sum += rod.Rate / 2 * stretch * stretch
		}
		return sum
	}
	// Newton's method on differences of the energy alone.
	const n, h = 4, 0.05
	x := make([]float64, n)
	at := func(i int, di float64, j int, dj float64) float64 {
		y := slices.Clone(x)
		y[i] += di
		y[j] += dj
		return energy(y)
	}
	for range 30 {
		hessian, gradient := mat.NewDense(n, n, nil), mat.NewVecDense(n, nil)
		for i := range n {
			gradient.SetVec(i, -(at(i, h, i, 0)-at(i, -h, i, 0))/(2*h))
			for j := range n {
				hessian.Set(i, j, (at(i, h, j, h)-at(i, h, j, -h)-at(i, -h, j, h)+at(i, -h, j, -h))/(4*h*h))
			}
		}
		var step mat.VecDense
		if err := step.SolveVec(hessian, gradient); err != nil {
			return math.NaN()
		}
		for i := range x {
			x[i] += step.AtVec(i)
		}
	}
	return energy(x)
}

// The energy in the rods is the least there is, the torque is what it grows by with
// the roll, and the stiffness is how the torque grows.
func TestTorqueIsTheSlopeOfTheLeastEnergy(t *testing.T) {
	for _, path := range cars {
		p := parameters(t, path)
		l := roll.New(&p)
		energy := func(travel, angle float64) (sum float64) {
			pose, err := l.Pose(travel, angle)
			if err != nil {
				t.Fatal(path, err)
			}
			for k, rod := range p.Rods {
				sum += pose.Tension[k] * pose.Tension[k] / rod.Rate / 2
			}
			return sum
		}
		for _, at := range []struct{ travel, angle float64 }{{0, degree}, {0, -2 * degree}, {0.03, 1.5 * degree}, {-0.04, -degree}} {
			want := least(&p, at.travel, at.angle)
			if got := energy(at.travel, at.angle); !(math.Abs(got-want) <= 1e-5*want+1e-9) {
				t.Errorf("%s at %+v: %v J in the rods, the least is %v", path, at, got, want)
			}
			const h = 1e-4
			pose, _ := l.Pose(at.travel, at.angle)
			slope := (energy(at.travel, at.angle+h) - energy(at.travel, at.angle-h)) / (2 * h)
			if math.Abs(pose.Torque-slope) > 1e-5*math.Abs(slope)+1e-3 || pose.Torque == 0 {
				t.Errorf("%s at %+v: torque %v N·m, energy grows by %v", path, at, pose.Torque, slope)
			}
		}
		for _, travel := range []float64{0, 0.04, -0.05} {
			const h = 1e-4
			more, _ := l.Pose(travel, h)
			less, _ := l.Pose(travel, -h)
			want := (more.Torque - less.Torque) / (2 * h)
			if got, err := l.Stiffness(travel); err != nil || math.Abs(got-want) > 1e-3*want+1 {
				t.Errorf("%s at %v m: stiffness %v N·m/rad, torque grows by %v; %v", path, travel, got, want, err)
			}
		}
	}
}

// Without roll the axle follows its side view: symmetric bars do not stretch, and rod
// ends with bolts across the car do not tilt.
func TestNoRollIsTheSideView(t *testing.T) {
	f, err := carfile.Read(cars[0], carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	side, err := f.Car.Linkage(0)
	if err != nil {
		t.Fatal(err)
	}
	p := parameters(t, cars[0])
	// A locator so long that it does not swing the axle aside.
	p.Rods[launch.Locator].Chassis.Y += 1e4
	p.Rods[launch.Locator].Length += 1e4
	l := roll.New(&p)
	for _, travel := range []float64{0, 0.03, 0.07, -0.1} {
		got, err := l.Pose(travel, 0)
		if err != nil {
			t.Fatal(err)
		}
		want, err := side.Pose(travel, 0)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got.Shift-want.Shift) > 1e-6 || math.Abs(got.Pitch-want.Turn) > 1e-6 {
			t.Errorf("at %v m: shift %v, turn %v; the side view has %v and %v", travel, got.Shift, got.Pitch, want.Shift, want.Turn)
		}
		for k, ends := range got.Misalignment {
			if math.Max(ends[0], ends[1]) > 1e-5 {
				t.Errorf("at %v m: bar %d tilts by %v", travel, k, ends)
			}
		}
	}
}

// Level parallel bars do not bind. The housing end of a bar, y from the car's middle
// and z above the axle, goes aside by d = a − z sin φ − y (1 − cos φ) and rises by
// y sin φ − z (1 − cos φ), with a the axle's shift; so the chassis end tilts by
// asin d/L, and the housing end, whose bolt rolls with the axle, by what of both lies
// along (0, cos φ, sin φ).
func TestMisalignment(t *testing.T) {
	p := parameters(t, cars[0])
	const long = 0.5
	for side, sign := range []float64{1, -1} {
		for pair, z := range []float64{0.16, -0.13} {
			foot := r3.Vec{X: 0.06, Y: sign * 0.4, Z: z}
			place(&p, launch.RodID(2*pair+side), r3.Add(foot, r3.Vec{X: long}), foot)
		}
	}
	const angle = 3 * degree
	pose, err := roll.New(&p).Pose(0, angle)
	if err != nil {
		t.Fatal(err)
	}
	sin, cos := math.Sincos(angle)
	for k, ends := range pose.Misalignment {
		at := p.Rods[k].Housing
		aside, rise := pose.Aside-at.Z*sin-at.Y*(1-cos), at.Y*sin-at.Z*(1-cos)
		want := [2]float64{math.Asin(math.Abs(aside) / long), math.Asin(math.Abs(aside*cos+rise*sin) / long)}
		for end := range want {
			if math.Abs(ends[end]-want[end]) > 0.01*degree || want[0] < 0.5*degree {
				t.Errorf("bar %d, end %d tilts by %v°, want %v°", k, end, ends[end]/degree, want[end]/degree)
			}
		}
	}
}

// At the limit the named end is at it, and no other is beyond; without limits there is
// none.
func TestLimit(t *testing.T) {
	for _, path := range cars {
		p := parameters(t, path)
		l := roll.New(&p)
		if _, _, ok := l.Limit(0, roll.Limits{}); ok {
			t.Errorf("%s has a limit though no rod end has", path)
		}
		limits := roll.Limits{2 * degree, 2 * degree, 3 * degree, 3 * degree}
		angle, end, ok := l.Limit(0, limits)
		if !ok || angle == 0 {
			t.Errorf("%s: no limit", path)
			continue
		}
		pose, err := l.Pose(0, angle)
		if err != nil {
			t.Fatal(err)
		}
		for k, ends := range pose.Misalignment {
			for which, tilt := range ends {
				named := launch.RodID(k) == end.Bar && (which == 1) == end.Housing
				if off := tilt - limits[k]; off > 1e-4*degree+1e-7 || named && off < -1e-3*degree {
					t.Errorf("%s at %v°: bar %d tilts by %v°, of %v°", path, angle/degree, k, tilt/degree, limits[k]/degree)
				}
			}
		}
		t.Logf("%s: %.2f° by %v", path, angle/degree, end)
	}
}

// Rolled the other way, a car made its mirror image does the mirror image.
func TestMirrorImage(t *testing.T) {
	p := parameters(t, cars[4])
	q := p
	flip := func(v r3.Vec) r3.Vec { return r3.Vec{X: v.X, Y: -v.Y, Z: v.Z} }
	for a, b := range map[launch.RodID]launch.RodID{0: 1, 1: 0, 2: 3, 3: 2, launch.Locator: launch.Locator} {
		q.Rods[a] = p.Rods[b]
		q.Rods[a].Chassis, q.Rods[a].Housing = flip(p.Rods[b].Chassis), flip(p.Rods[b].Housing)
	}
	a, err := roll.New(&p).Pose(0.03, 2*degree)
	if err != nil {
		t.Fatal(err)
	}
	b, err := roll.New(&q).Pose(0.03, -2*degree)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(a.Torque+b.Torque) > 1e-6*math.Abs(a.Torque) || math.Abs(a.Misalignment[0][1]-b.Misalignment[1][1]) > 1e-9 || math.Abs(a.Aside+b.Aside) > 1e-9 {
		t.Errorf("%+v\n%+v", a, b)
	}
}

// Any car has a finite stiffness that is not below zero.
func TestAnyCarRolls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, carfile.Stock())
		p, err := launch.New(c, 0, carfile.Stock())
		if err != nil {
			return
		}
		k, err := roll.New(&p).Stiffness(0)
		if err != nil || !(k >= 0) || math.IsInf(k, 0) {
			t.Fatalf("%v N·m/rad, %v", k, err)
		}
	})
}
