package linkage_test

import (
	"math"
	"testing"

	"bowline/model/linkage"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// crank is a four-link moved by turning one of its bars a little at a time,
// with the other bar's hole on the intersection of two circles.
type crank struct {
	pivot, hole    [2]r2.Vec // by bar, upper and lower
	length         [2]float64
	bracket, along float64 // between the housing holes; the axle's place from the first
	across         float64
}

func newCrank(g linkage.Geometry) *crank {
	axle := r2.Vec{Y: g.RearRadius}
	c := &crank{pivot: [2]r2.Vec{g.ChassisUpper, g.ChassisLower}, hole: [2]r2.Vec{r2.Add(axle, g.HousingUpper), r2.Add(axle, g.HousingLower)}}
	for i := range c.pivot {
		c.length[i] = math.Hypot(c.hole[i].X-c.pivot[i].X, c.hole[i].Y-c.pivot[i].Y)
	}
	d := r2.Sub(c.hole[1], c.hole[0])
	c.bracket = math.Hypot(d.X, d.Y)
	to := r2.Sub(axle, c.hole[0])
	c.along, c.across = r2.Dot(to, d)/c.bracket, r2.Cross(d, to)/c.bracket
	return c
}

func (c *crank) height() float64 {
	d := r2.Scale(1/c.bracket, r2.Sub(c.hole[1], c.hole[0]))
	return c.hole[0].Y + c.along*d.Y + c.across*d.X
}

// hold is the sine of the angle between the brackets and the bar that is not
// turned: near 0 that bar does not say where its hole goes.
func (c *crank) hold(turned int) float64 {
	other := 1 - turned
	return math.Abs(r2.Cross(r2.Sub(c.hole[other], c.pivot[other]), r2.Sub(c.hole[1], c.hole[0]))) / (c.length[other] * c.bracket)
}

// turn turns a bar and returns the holes' new places.
func (c *crank) turn(bar int, angle float64) (holes [2]r2.Vec, ok bool) {
	other := 1 - bar
	a := r2.Rotate(c.hole[bar], angle, c.pivot[bar])
	d := r2.Sub(c.pivot[other], a)
	n := math.Hypot(d.X, d.Y)
	x := (n*n + c.bracket*c.bracket - c.length[other]*c.length[other]) / (2 * n)
	y2 := c.bracket*c.bracket - x*x
	if y2 < 0 {
		return holes, false
	}
	e := r2.Scale(1/n, d)
	foot, off := r2.Add(a, r2.Scale(x, e)), r2.Scale(math.Sqrt(y2), r2.Vec{X: -e.Y, Y: e.X})
	b := r2.Add(foot, off)
	if q := r2.Sub(foot, off); r2.Norm2(r2.Sub(q, c.hole[other])) < r2.Norm2(r2.Sub(b, c.hole[other])) {
		b = q
	}
	holes[bar], holes[other] = a, b
	return holes, true
}

// extreme cranks up or down until the axle's height turns back. It gives up
// near a change point, where neither bar leads the other.
func (c *crank) extreme(direction float64) (height float64, ok bool) {
	const step = 2e-4 // [rad]
	var last [2]r2.Vec
	for n := 0; n < 200000; n++ {
		bar := 0
		if c.hold(1) > c.hold(0) {
			bar = 1
		}
		if c.hold(bar) < 0.1 {
			return 0, false
		}
		at := *c
		forward := func(angle float64) bool {
			holes, ok := at.turn(bar, angle)
			if !ok {
				return false
			}
			c.hole = holes
			if n == 0 {
				return (c.height()-at.height())*direction > 0
			}
			return r2.Dot(r2.Sub(holes[bar], at.hole[bar]), r2.Sub(at.hole[bar], last[bar])) > 0
		}
		if !forward(step) && !forward(-step) {
			return 0, false
		}
		if (c.height()-at.height())*direction <= 0 {
			return at.height(), true
		}
		last = at.hole
	}
	return 0, false
}

// The ends of the travel, by cranking through it in steps of a fifth of a
// milliradian.
func TestRangeAgreesWithCranking(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		g := geometries(t)
		l, err := linkage.New(g)
		if err != nil {
			return
		}
		droop, bump := l.Range()
		for _, end := range []struct{ direction, got float64 }{{-1, droop}, {1, bump}} {
			// A step is at most this long.
			tolerance := 1e-6 * (1 + (l.UpperLength()+l.LowerLength())/2)
			if want, ok := newCrank(g).extreme(end.direction); ok {
				near(t, "end of the travel", end.got, want-g.RearRadius, tolerance)
				compared++
			}
		}
	})
	if compared < 100 {
		t.Errorf("only %d ends were compared", compared)
	}
}

// Where the axle's height dips by little before it goes on, the travel ends at the
// dip: a step that is longer than the dip must not pass over it.
func TestTravelEndsAtAShortDip(t *testing.T) {
	for _, g := range []linkage.Geometry{
		{
			ChassisUpper: r2.Vec{X: 0.338541, Y: 0.632617}, ChassisLower: r2.Vec{X: 0.853098, Y: 0.177530},
			HousingUpper: r2.Vec{X: 0.038502, Y: 0.083075}, HousingLower: r2.Vec{X: 0.110029, Y: -0.035634},
			Wheelbase: 2.7, RearRadius: 0.221037, FrontRadius: 0.3,
		},
		{
			ChassisUpper: r2.Vec{X: 0.322217, Y: 0.669529}, ChassisLower: r2.Vec{X: 0.719032, Y: 0.429540},
			HousingUpper: r2.Vec{X: -0.122107, Y: 0.259156}, HousingLower: r2.Vec{X: 0.015738, Y: -0.234519},
			Wheelbase: 2.7, RearRadius: 0.391783, FrontRadius: 0.3,
		},
		{
			ChassisUpper: r2.Vec{X: 0.695435, Y: 0.655647}, ChassisLower: r2.Vec{X: 1.454121, Y: 0.301712},
			HousingUpper: r2.Vec{X: -0.144514, Y: 0.240779}, HousingLower: r2.Vec{X: 0.090440, Y: -0.040284},
			Wheelbase: 2.7, RearRadius: 0.332351, FrontRadius: 0.3,
		},
	} {
		want, ok := newCrank(g).extreme(1)
		if !ok {
			t.Fatal("no crank leads to the end")
		}
		l := mustNew(t, g)
		_, bump := l.Range()
		near(t, "bump", bump, want-g.RearRadius, 1e-6)
		if _, err := l.Pose(bump+1e-5, 0); err == nil {
			t.Errorf("there is a position beyond %v", bump)
		}
	}
}

// Positions are found up to the ends of the travel and not beyond.
func TestPosesReachTheEndsOfTheRange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, err := linkage.New(geometries(t))
		if err != nil {
			return
		}
		droop, bump := l.Range()
		for _, end := range []float64{droop, bump} {
			if _, err := l.Pose(end*(1-1e-3), 0); err != nil {
				t.Errorf("travel of %v to %v: %v", droop, bump, err)
			}
			if _, err := l.Pose(end+math.Copysign(2e-4, end), 0); end != 0 && err == nil {
				t.Errorf("travel of %v to %v, yet there is a position beyond %v", droop, bump, end)
			}
		}
	})
}
