package car

import (
	"errors"

	"bowline/model/linkage"
	"bowline/model/statics"
	"bowline/model/units"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// ErrNotHeld is returned for a setup whose bars and rear springs have lines
// that meet in one point: nothing holds the axle at ride height.
var ErrNotHeld = errors.New("the bars and the rear springs do not hold the axle at ride height: their lines meet in one point")

// Rod counts: the four bars in the order of BarTurns, then the locator.
const (
	locatorRod = len(BarTurns)
	rodCount   = locatorRod + 1
)

// Rest is how a car stands at ride height without preload. Of two values the left
// side's comes first.
type Rest struct {
	Rear, Front [2]float64        // loads of the tires [N]
	RearSpring  [2]float64        // push of each rear spring along its line [N]
	FrontSpring [2]float64        // push of each front spring, at the wheel [N]
	Tension     [rodCount]float64 // of the bars in the order of BarTurns, then of the locator, pull positive [N]
}

// Joints are the ends of a part between chassis and axle: x forward, y left of the
// car's middle, z up.
type Joints struct {
	Chassis r3.Vec // in the chassis frame [m]
	Axle    r3.Vec // from the middle of the axle centerline [m]
}

// span is the vector from the end on the axle to that on the chassis at ride height
// [m].
func (j *Joints) span(c *Car) r3.Vec {
	return r3.Sub(j.Chassis, r3.Add(j.Axle, r3.Vec{Z: c.Tires.RearRadius}))
}

// leftRight are the signs of y on each side.
var leftRight = [2]float64{1, -1}

// Rods returns the ends of a setup's bars in the order of BarTurns and, last, of its
// locator. It panics when the setup or one of its holes does not exist.
func (c *Car) Rods(setup int) (rods [rodCount]Joints) {
	for k := range BarTurns {
		pair, side := Pair(k/2), leftRight[k%2]/2
		front, rear := pair.Rows()
		chassis, housing := c.Chassis.SpreadUpper, c.Housing.SpreadUpper
		if pair == Lower {
			chassis, housing = c.Chassis.SpreadLower, c.Housing.SpreadLower
		}
		rods[k] = Joints{across(front.Hole(c, setup), side*chassis), across(rear.Hole(c, setup), side*housing)}
	}
	rods[locatorRod].Chassis, rods[locatorRod].Axle = c.LocatorEnds(setup)
	return rods
}

// RearSprings returns the mounts of the rear springs, left and right.
func (c *Car) RearSprings() (springs [2]Joints) {
	for k, side := range leftRight {
		y := side * c.Launch.Suspension.RearSpread / 2
		springs[k] = Joints{across(c.Springs.RearChassisMount, y), across(c.Springs.RearAxleMount, y)}
	}
	return springs
}

// Rest returns how the car stands in one of its setups: as its scales read, or
// without readings alike on both sides. It fails as Linkage does and with ErrNotHeld.
func (c *Car) Rest(setup int) (Rest, error) {
	l, err := c.Linkage(setup)
	if err != nil {
		return Rest{}, err
	}
	return c.rest(setup, l)
}

func (c *Car) rest(setup int, l *linkage.Linkage) (Rest, error) {
	flat, err := c.flatRest(l)
	if err != nil {
		return Rest{}, err
	}
	r := c.even(setup, &flat)
	if c.Body.Scales.Given {
		if err := r.weigh(c, setup); err != nil {
			return Rest{}, err
		}
	}
	for k := range r.Front {
		r.FrontSpring[k] = r.Front[k] - c.Body.UnsprungFront/2*units.Gravity
	}
	return r, nil
}

// flatRest returns what bars and springs carry at rest in side view.
func (c *Car) flatRest(l *linkage.Linkage) (statics.Load, error) {
	pose, err := l.Pose(0, 0)
	if err != nil {
		return statics.Load{}, err
	}
	v := c.Vehicle()
	flat := v.Rest(&pose)
	if !flat.Balanced {
		return statics.Load{}, ErrNotHeld
	}
	return flat, nil
}

// even splits the side view's loads evenly between left and right. A bar's tension is
// its part in the car's middle plane times its length over that part's.
func (c *Car) even(setup int, flat *statics.Load) (r Rest) {
	rods := c.Rods(setup)
	for k, tension := range [...]float64{flat.Upper.Tension, flat.Upper.Tension, flat.Lower.Tension, flat.Lower.Tension} {
		d := rods[k].span(c)
		r.Tension[k] = tension * r3.Norm(d) / r2.Norm(r2.Vec{X: d.X, Y: d.Z})
	}
	for k := range leftRight {
		r.Rear[k], r.Front[k], r.RearSpring[k] = flat.RearLoad/2, flat.FrontLoad/2, flat.Spring/2
	}
	return r
}

// springYield is how much easier a rear spring's seat takes up what the scales read
// than a bar does [1]: assumption. As it grows, bars and locator keep what they carry
// in an even car, unless they alone can hold what the springs leave.
const springYield = 1e3

// weigh takes the tire loads from the scales and finds what holds the axle assembly at
// ride height under them: of all tensions and spring pushes that balance it, those
// nearest to an even car's, the springs counting for next to nothing. There is one
// more of them than equations: what turns of a bar change. It fails with ErrNotHeld.
func (r *Rest) weigh(c *Car, setup int) error {
	s := &c.Body.Scales
	r.Rear = [2]float64{s.LeftRear * units.Gravity, s.RightRear * units.Gravity}
	r.Front = [2]float64{s.LeftFront * units.Gravity, s.RightFront * units.Gravity}
	const unknowns, equations = rodCount + len(leftRight), 6
	balance := mat.NewDense(equations, unknowns, nil)
	missing := mat.NewVecDense(equations, nil)
	// apply lets a force of the present size act on the axle; k names it among the
	// unknowns, whose unit is yield newtons; −1 for one that is known.
	apply := func(k int, yield float64, at, along r3.Vec, present float64) {
		moment := r3.Cross(at, along)
		for row, x := range [equations]float64{along.X, along.Y, along.Z, moment.X, moment.Y, moment.Z} {
			if k >= 0 {
				balance.Set(row, k, yield*x)
			}
			missing.SetVec(row, missing.AtVec(row)-present*x)
		}
	}
	rods, springs := c.Rods(setup), c.RearSprings()
	for k := range rods {
		apply(k, 1, rods[k].Axle, r3.Unit(rods[k].span(c)), r.Tension[k])
	}
	for k, side := range leftRight {
		apply(rodCount+k, springYield, springs[k].Axle, r3.Scale(-1, r3.Unit(springs[k].span(c))), r.RearSpring[k])
		apply(-1, 0, r3.Vec{Y: side * c.Body.TrackRear / 2}, r3.Vec{Z: 1}, r.Rear[k])
	}
	apply(-1, 0, r3.Vec{}, r3.Vec{Z: -1}, c.Body.UnsprungRear*units.Gravity)
	// The least x with balance·x = missing is balanceᵀ y, balance·balanceᵀ y = missing.
	var square mat.Dense
	square.Mul(balance, balance.T())
	var y, x mat.VecDense
	if err := y.SolveVec(&square, missing); err != nil {
		if _, poor := err.(mat.Condition); !poor {
			return ErrNotHeld
		}
	}
	x.MulVec(balance.T(), &y)
	for k := range r.Tension {
		r.Tension[k] += x.AtVec(k)
	}
	for k := range r.RearSpring {
		r.RearSpring[k] += springYield * x.AtVec(rodCount+k)
	}
	return nil
}
