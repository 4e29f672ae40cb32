package linkage_test

import (
	"errors"
	"math"
	"testing"

	"bowline/model/linkage"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

const inch = 0.0254

// demo is a door car's four-link.
func demo() linkage.Geometry {
	return linkage.Geometry{
		ChassisUpper: r2.Vec{X: 22.5 * inch, Y: 17 * inch},
		ChassisLower: r2.Vec{X: 25.5 * inch, Y: 11.5 * inch},
		HousingUpper: r2.Vec{X: 2.5 * inch, Y: 6.5 * inch},
		HousingLower: r2.Vec{X: 2.5 * inch, Y: -5 * inch},
		Wheelbase:    105 * inch,
		RearRadius:   16 * inch,
		FrontRadius:  12.5 * inch,
	}
}

func mustNew(t testing.TB, g linkage.Geometry) *linkage.Linkage {
	t.Helper()
	l, err := linkage.New(g)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func near(t interface{ Errorf(string, ...any) }, what string, got, want, tolerance float64) {
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", what, got, want, tolerance)
	}
}

// At ride height everything is plain geometry: lengths by Pythagoras, the
// instant center by intersecting the two lines by hand.
func TestRideHeight(t *testing.T) {
	l := mustNew(t, demo())
	near(t, "upper length", l.UpperLength(), math.Hypot(20, 5.5)*inch, 1e-12)
	near(t, "lower length", l.LowerLength(), math.Hypot(23, 0.5)*inch, 1e-12)
	p, err := l.Pose(0, 0)
	if err != nil {
		t.Fatal(err)
	}
	ic, ok := p.InstantCenter().Point()
	if !ok {
		t.Fatal("no instant center")
	}
	// Upper: z = 22.5 − 0.275 (x − 2.5). Lower: z = 11 + (x − 2.5)/46.
	x := 2.5 + 11.5/(0.275+1.0/46)
	near(t, "instant center x", ic.X, x*inch, 1e-12)
	near(t, "instant center z", ic.Y, (11+(x-2.5)/46)*inch, 1e-12)
	near(t, "shift", p.Shift, 0, 0)
	near(t, "turn", p.Turn, 0, 0)
	near(t, "wheelbase on the ground", p.Ground.Wheelbase, 105*inch, 1e-12)
}

// One form of the textbook identity for a plane pair of links: lower link
// (0,9)–(24,10), upper link (0,20)–(20,16) in inches from the contact patch
// meet at (45.5172, 10.8966). Derived from statics.
func TestInstantCenterOfPlanePair(t *testing.T) {
	l := mustNew(t, linkage.Geometry{
		ChassisUpper: r2.Vec{X: 20 * inch, Y: 16 * inch}, ChassisLower: r2.Vec{X: 24 * inch, Y: 10 * inch},
		HousingUpper: r2.Vec{Y: 6 * inch}, HousingLower: r2.Vec{Y: -5 * inch},
		Wheelbase: 105 * inch, RearRadius: 14 * inch, FrontRadius: 14 * inch,
	})
	p, err := l.Pose(0, 0)
	if err != nil {
		t.Fatal(err)
	}
	ic, _ := p.InstantCenter().Point()
	near(t, "x", ic.X/inch, 45.5172, 5e-5)
	near(t, "z", ic.Y/inch, 10.8966, 5e-5)
}

// The instant center is the point of the housing that stands still, so the
// axle's first-order motion, found by central differences, follows from it:
// dturn/dq = −1/x and dshift/dq = (z_ic − z_axle)·dturn/dq.
func TestFirstOrderMotionTurnsAboutInstantCenter(t *testing.T) {
	l := mustNew(t, demo())
	for _, q := range []float64{-0.1, -0.03, 0, 0.05, 0.12} {
		const h = 1e-5
		at := func(q float64) linkage.Pose {
			p, err := l.Pose(q, 0)
			if err != nil {
				t.Fatal(err)
			}
			return p
		}
		p, lo, hi := at(q), at(q-h), at(q+h)
		c, ok := p.InstantCenter().Point()
		if !ok {
			t.Fatal("no instant center")
		}
		ic := p.Ground.Chassis(c)
		turn := (hi.Turn - lo.Turn) / (2 * h)
		shift := (hi.Shift - lo.Shift) / (2 * h)
		want := -1 / (ic.X - p.Axle.X)
		if math.Abs(want) < 0.1 {
			t.Fatalf("weak check: dturn/dq is only %v", want)
		}
		near(t, "dturn/dq", turn, want, 1e-6*math.Abs(want))
		near(t, "dshift/dq", shift, turn*(ic.Y-p.Axle.Y), 1e-6)
	}
}

// A second formulation: for a given turn the axle centerline is an
// intersection of two circles around the chassis holes.
func circles(g linkage.Geometry, l *linkage.Linkage, turn float64, near r2.Vec) (r2.Vec, bool) {
	rot := r2.NewRotation(turn, r2.Vec{})
	a := r2.Sub(g.ChassisUpper, rot.Rotate(g.HousingUpper))
	b := r2.Sub(g.ChassisLower, rot.Rotate(g.HousingLower))
	d := r2.Norm(r2.Sub(b, a))
	upper, lower := l.UpperLength(), l.LowerLength()
	x := (d*d + upper*upper - lower*lower) / (2 * d)
	y2 := upper*upper - x*x
	if y2 < 0 {
		return r2.Vec{}, false
	}
	e := r2.Scale(1/d, r2.Sub(b, a))
	foot := r2.Add(a, r2.Scale(x, e))
	n := r2.Scale(math.Sqrt(y2), r2.Vec{X: -e.Y, Y: e.X})
	p, q := r2.Add(foot, n), r2.Sub(foot, n)
	if r2.Norm(r2.Sub(p, near)) < r2.Norm(r2.Sub(q, near)) {
		return p, true
	}
	return q, true
}

func TestPoseAgreesWithCircleIntersection(t *testing.T) {
	g := demo()
	l := mustNew(t, g)
	for q := -0.15; q <= 0.15; q += 0.01 {
		p, err := l.Pose(q, 0)
		if err != nil {
			t.Fatal(err)
		}
		axle, ok := circles(g, l, p.Turn, p.Axle)
		if !ok {
			t.Fatalf("travel %v: circles do not meet", q)
		}
		near(t, "axle x", p.Axle.X, axle.X, 1e-9)
		near(t, "axle z", p.Axle.Y, axle.Y, 1e-9)
	}
}

// The travel limit, by brute force over the turn with the circles.
func TestRangeAgreesWithScanOverTurn(t *testing.T) {
	g := demo()
	l := mustNew(t, g)
	droop, bump := l.Range()
	scan := func(step float64) float64 {
		axle, z := r2.Vec{Y: g.RearRadius}, g.RearRadius
		for turn := step; ; turn += step {
			next, ok := circles(g, l, turn, axle)
			if !ok || (next.Y-axle.Y)*(axle.Y-z) < 0 {
				return axle.Y - g.RearRadius
			}
			axle, z = next, axle.Y
		}
	}
	near(t, "droop", droop, scan(1e-5), 1e-6)
	near(t, "bump", bump, scan(-1e-5), 1e-6)
	if !(droop < -0.1 && bump > 0.1) {
		t.Errorf("range %.4f to %.4f m does not hold a usual travel", droop, bump)
	}
}

func TestBeyondRangeIsRefusedWithTheLimit(t *testing.T) {
	l := mustNew(t, demo())
	droop, bump := l.Range()
	for _, q := range []float64{droop - 1e-6, bump + 1e-6, -10, 10} {
		_, err := l.Pose(q, 0)
		var c *linkage.ClosureError
		if !errors.As(err, &c) {
			t.Fatalf("travel %v: %v", q, err)
		}
		limit := bump
		if q < 0 {
			limit = droop
		}
		near(t, "limit", c.Reached, limit, 1e-7)
	}
	for _, q := range []float64{droop + 1e-7, bump - 1e-7} {
		if _, err := l.Pose(q, 0); err != nil {
			t.Errorf("travel %v is inside the range: %v", q, err)
		}
	}
	poses, err := l.Sweep([]float64{0, 0.05, 10, 0.06}, 0)
	if len(poses) != 2 || err == nil {
		t.Errorf("sweep kept %d positions, error %v", len(poses), err)
	}
}

func TestParallelBars(t *testing.T) {
	g := demo()
	// Equal bars, one above the other, rising 1 in 20: the housing never turns.
	g.HousingUpper, g.HousingLower = r2.Vec{Y: 6 * inch}, r2.Vec{Y: -5 * inch}
	g.ChassisUpper = r2.Vec{X: 20 * inch, Y: 23 * inch}
	g.ChassisLower = r2.Vec{X: 20 * inch, Y: 12 * inch}
	l := mustNew(t, g)
	p, err := l.Pose(0, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := p.InstantCenter().Point(); ok {
		t.Error("parallel bars have an instant center")
	}
	s, ok := p.InstantCenter().Slope()
	near(t, "slope", s, 0.05, 1e-12)
	if !ok {
		t.Error("parallel bars have no slope")
	}
	p, err = l.Pose(2*inch, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "turn", p.Turn, 0, 1e-12)
	// The axle moves on a circle of the bars' length √401 in: 2 in up, the bars
	// rise 1 − 2 = −1 in over a run of √(401 − 1) in.
	near(t, "shift", p.Shift, 20*inch-math.Sqrt(401-1)*inch, 1e-9)
}

// A near parallelogram comes to a change point when the bars line up with the
// brackets: there the axle could go on in two ways, and the travel ends however
// it is approached.
func TestTravelEndsAtAChangePoint(t *testing.T) {
	g := demo()
	g.ChassisUpper, g.ChassisLower = r2.Vec{X: 10.0634765625 * inch, Y: 22 * inch}, r2.Vec{X: 8.0625 * inch, Y: 20 * inch}
	g.HousingUpper, g.HousingLower = r2.Vec{X: 1.0009765625 * inch, Y: inch}, r2.Vec{X: -inch, Y: -inch}
	l := mustNew(t, g)
	droop, _ := l.Range()
	// Lower bar from (−1, 15) to (8.0625, 20); in line with the brackets' (2, 2)
	// slope its rise and run are √(L²/2) each.
	length := math.Hypot(9.0625, 5)
	near(t, "droop [in]", droop/inch, 5-length/math.Sqrt2, 5e-3)
	for _, steps := range []int{1, 3, 10, 41} {
		f := l.Follow()
		for i := 1; i <= steps; i++ {
			q := 1.2 * droop * float64(i) / float64(steps)
			_, err := f.To(q, 0)
			if inside := q > droop; inside != (err == nil) {
				t.Fatalf("%d steps, travel %v of %v: %v", steps, q, droop, err)
			}
			if err != nil {
				break
			}
		}
	}
}

func TestCrossingBarsMeetBetweenTheirHoles(t *testing.T) {
	g := demo()
	g.ChassisUpper.Y, g.ChassisLower.Y = 10*inch, 20*inch
	l := mustNew(t, g)
	p, err := l.Pose(0.01, 0)
	if err != nil {
		t.Fatal(err)
	}
	c, ok := p.InstantCenter().Point()
	if !ok || !(c.X > 2.5*inch && c.X < 25.5*inch) {
		t.Errorf("instant center at %v", c)
	}
}

func TestRefusals(t *testing.T) {
	g := demo()
	g.ChassisUpper = r2.Vec{X: 2.5 * inch, Y: 22.5 * inch}
	if _, err := linkage.New(g); !errors.Is(err, linkage.ErrShortBar) {
		t.Errorf("short bar: %v", err)
	}
	// Both lines meet straight above the axle.
	g = demo()
	g.HousingUpper, g.ChassisUpper = r2.Vec{X: -5 * inch}, r2.Vec{X: 20 * inch, Y: 41 * inch}
	g.HousingLower, g.ChassisLower = r2.Vec{X: -10 * inch}, r2.Vec{X: 20 * inch, Y: 31 * inch}
	g.ChassisUpper.Y = g.RearRadius + 25*inch
	g.ChassisLower.Y = g.RearRadius + 15*inch
	if _, err := linkage.New(g); !errors.Is(err, linkage.ErrDeadPoint) {
		t.Errorf("dead point: %v", err)
	}
}

func TestGroundIsTangentToBothWheels(t *testing.T) {
	l := mustNew(t, demo())
	p, err := l.Pose(-0.08, 0.05)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rear axle height", p.Ground.Point(p.Axle).Y, 16*inch, 1e-12)
	near(t, "rear axle x", p.Ground.Point(p.Axle).X, 0, 1e-12)
	near(t, "front wheel height", p.Ground.Point(p.FrontWheel).Y, 12.5*inch, 1e-12)
	near(t, "front wheel x", p.Ground.Point(p.FrontWheel).X, p.Ground.Wheelbase, 1e-12)
	if !(p.Ground.Pitch() < 0) {
		t.Errorf("tail high and nose low, yet pitch is %v", p.Ground.Pitch())
	}
	back := p.Ground.Chassis(p.Ground.Point(r2.Vec{X: 1, Y: 2}))
	near(t, "there and back x", back.X, 1, 1e-12)
	near(t, "there and back z", back.Y, 2, 1e-12)
}

// geometries draws plausible and odd four-links alike.
func geometries(t *rapid.T) linkage.Geometry {
	v := func(name string, x0, x1, y0, y1 float64) r2.Vec {
		return r2.Vec{X: rapid.Float64Range(x0, x1).Draw(t, name+" x"), Y: rapid.Float64Range(y0, y1).Draw(t, name+" z")}
	}
	return linkage.Geometry{
		ChassisUpper: v("chassis upper", 0.2, 1.5, 0.1, 0.8),
		ChassisLower: v("chassis lower", 0.2, 1.5, 0.1, 0.5),
		HousingUpper: v("housing upper", -0.15, 0.15, 0.02, 0.3),
		HousingLower: v("housing lower", -0.15, 0.15, -0.3, -0.02),
		Wheelbase:    rapid.Float64Range(1.5, 4).Draw(t, "wheelbase"),
		RearRadius:   rapid.Float64Range(0.2, 0.5).Draw(t, "rear radius"),
		FrontRadius:  rapid.Float64Range(0.2, 0.5).Draw(t, "front radius"),
	}
}

// assembly is a four-link put somewhere by hand.
type assembly struct {
	upper, lower float64 // distances between the holes of its bars [m]
	scale        float64 // their mean [m]
	// sine is of the angle between the two bars' constraints on shift and turn,
	// turns taken as lengths by scale. Its sign is that of the way of assembly.
	sine float64
}

// assemble puts the axle assembly of g somewhere.
func assemble(g linkage.Geometry, shift, travel, turn float64) assembly {
	axle := r2.Vec{X: shift, Y: g.RearRadius + travel}
	rot := r2.NewRotation(turn, r2.Vec{})
	bar := func(chassis, housing r2.Vec) (length float64, along, arm r2.Vec) {
		arm = rot.Rotate(housing)
		d := r2.Sub(r2.Add(axle, arm), chassis)
		return r2.Norm(d), r2.Unit(d), arm
	}
	var a assembly
	var u, w, armU, armW r2.Vec
	a.upper, u, armU = bar(g.ChassisUpper, g.HousingUpper)
	a.lower, w, armW = bar(g.ChassisLower, g.HousingLower)
	a.scale = (a.upper + a.lower) / 2
	upper := r2.Vec{X: u.X, Y: r2.Cross(armU, u) / a.scale}
	lower := r2.Vec{X: w.X, Y: r2.Cross(armW, w) / a.scale}
	a.sine = r2.Cross(upper, lower) / (r2.Norm(upper) * r2.Norm(lower))
	return a
}

func TestBarLengthsHoldOverTheWholeRange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := geometries(t)
		l, err := linkage.New(g)
		if err != nil {
			return
		}
		droop, bump := l.Range()
		if !(droop <= 0 && bump >= 0) || math.IsInf(bump-droop, 0) {
			t.Fatalf("range %v to %v", droop, bump)
		}
		last := l.Follow()
		steps := rapid.IntRange(1, 40).Draw(t, "steps")
		for i := 0; i <= steps; i++ {
			q := droop + (bump-droop)*(0.001+0.998*float64(i)/float64(steps))
			p, err := l.Pose(q, rapid.Float64Range(-0.1, 0.1).Draw(t, "front travel"))
			if err != nil {
				t.Fatalf("travel %v in %v to %v: %v", q, droop, bump, err)
			}
			upper := r2.Norm(r2.Sub(p.HousingUpper, p.ChassisUpper))
			lower := r2.Norm(r2.Sub(p.HousingLower, p.ChassisLower))
			if math.Abs(upper-l.UpperLength()) > 1e-9 || math.Abs(lower-l.LowerLength()) > 1e-9 {
				t.Fatalf("travel %v: lengths off by %v, %v", q, upper-l.UpperLength(), lower-l.LowerLength())
			}
			// The housing is rigid and the axle as high as asked.
			near(t, "housing", r2.Norm(r2.Sub(p.HousingUpper, p.HousingLower)), r2.Norm(r2.Sub(g.HousingUpper, g.HousingLower)), 1e-12)
			if p.Axle.Y != g.RearRadius+q {
				t.Fatalf("axle height %v for travel %v", p.Axle.Y, q)
			}
			if s, ok := p.InstantCenter().Slope(); ok && (math.IsNaN(s) || math.IsInf(s, 0)) {
				t.Fatalf("slope %v", s)
			}
			// The branch is the one of ride height, however it was reached.
			if here, ride := assemble(g, p.Shift, q, p.Turn), assemble(g, 0, 0, 0); here.sine*ride.sine <= 0 {
				t.Fatalf("travel %v: on the other branch", q)
			}
			again, err := last.To(q, 0)
			if err != nil || math.Abs(again.Turn-p.Turn) > 1e-6 {
				t.Fatalf("travel %v: turn %v from ride height, %v from the travel before (%v)", q, p.Turn, again.Turn, err)
			}
		}
	})
}

// Travels that differ by rounding alone are as good as any.
func TestTheLeastStepOfTravel(t *testing.T) {
	l := mustNew(t, demo())
	for _, q := range []float64{0, 0.05, -0.1} {
		for _, d := range []float64{5e-324, 1e-17, 1e-14, 1e-12, 1e-10} {
			f := l.Follow()
			before, err := f.To(q, 0)
			if err != nil {
				t.Fatal(err)
			}
			for _, next := range []float64{q + d, q, math.Nextafter(q, 1), q - d} {
				p, err := f.To(next, 0)
				if err != nil {
					t.Fatalf("travel %v after %v: %v", next, q, err)
				}
				near(t, "turn", p.Turn, before.Turn, 1e-9)
			}
		}
	}
}

func BenchmarkPose(b *testing.B) {
	l := mustNew(b, demo())
	for i := 0; b.Loop(); i++ {
		if _, err := l.Pose(0.07*math.Sin(float64(i)), 0); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSweep41(b *testing.B) {
	l := mustNew(b, demo())
	travels := make([]float64, 41)
	for i := range travels {
		travels[i] = -4*inch + 7*inch*float64(i)/40
	}
	for b.Loop() {
		if _, err := l.Sweep(travels, 0); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRange(b *testing.B) {
	l := mustNew(b, demo())
	for b.Loop() {
		l.Range()
	}
}
