package launch

import (
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// standing is how a car stands at ride height without preload.
type standing struct {
	rear, front [2]float64        // on the tires, by Side [N]
	push        [2]float64        // of the rear springs, by Side [N]
	tension     [RodCount]float64 // [N]
}

// evenly splits the side view's loads evenly between left and right. A rod's tension
// is its part in the car's middle plane times its length over that part's.
func (b *builder) evenly() {
	b.stand.tension[Locator] = 0
	for _, bar := range Bars {
		rod := &b.p.Rods[bar]
		d := b.span(rod.Chassis, rod.Housing)
		b.stand.tension[bar] = tensionAtRest(&b.rest, bar.Pair()) * rod.Length / length(r3.Vec{X: d.X, Z: d.Z})
	}
	for _, side := range Sides {
		b.stand.rear[side], b.stand.front[side] = b.rest.RearLoad/2, b.rest.FrontLoad/2
		b.stand.push[side] = b.rest.Spring / 2
	}
}

// springYield is how much easier a rear spring's seat takes up what the scales read
// than a bar does [1]: assumption. As it grows, bars and locator keep what they carry
// in an even car, unless they alone can hold what the springs leave.
const springYield = 1e3

// unevenly takes the tire loads from the scales and finds what holds the axle
// assembly at ride height under them: of all tensions and spring pushes that balance
// it, those nearest to an even car's, the springs counting for next to nothing. There
// is one more of them than equations: what turns of a bar change. It fails with
// ErrNotHeld.
func (b *builder) unevenly() error {
	s := &b.car.Body.Scales
	b.stand.rear = [2]float64{s.LeftRear * units.Gravity, s.RightRear * units.Gravity}
	b.stand.front = [2]float64{s.LeftFront * units.Gravity, s.RightFront * units.Gravity}
	const unknowns, equations = RodCount + 2, 6
	balance := mat.NewDense(equations, unknowns, nil)
	missing := mat.NewVecDense(equations, nil)
	scale := func(k int) float64 {
		if k >= RodCount {
			return springYield
		}
		return 1
	}
	apply := func(k int, at, force r3.Vec, present float64) {
		moment := r3.Cross(at, force)
		for row, x := range []float64{force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z} {
			if k >= 0 {
				balance.Set(row, k, scale(k)*x)
			}
			missing.SetVec(row, missing.AtVec(row)-present*x)
		}
	}
	for k := range b.p.Rods {
		rod := &b.p.Rods[k]
		apply(k, rod.Housing, r3.Scale(1/rod.Length, b.span(rod.Chassis, rod.Housing)), b.stand.tension[k])
	}
	for k := range b.p.Coils {
		coil := &b.p.Coils[k]
		apply(RodCount+k, coil.Axle, r3.Scale(-1/coil.Length, b.span(coil.Chassis, coil.Axle)), b.stand.push[k])
		apply(-1, b.p.RearTires[k].Center, r3.Vec{Z: 1}, b.stand.rear[k])
	}
	apply(-1, r3.Vec{}, r3.Vec{Z: -1}, b.p.Axle.Mass*units.Gravity)
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
	for k := range b.stand.tension {
		b.stand.tension[k] += x.AtVec(k)
	}
	for k := range b.stand.push {
		b.stand.push[k] += springYield * x.AtVec(RodCount+k)
	}
	return nil
}

// ride sets what each part carries at ride height, and the lengths and radii without
// load that follow.
func (b *builder) ride() {
	c := b.car
	for k := range b.p.Rods {
		rod := &b.p.Rods[k]
		rod.Ride = b.stand.tension[k]
		rod.Free = rod.Length - rod.Ride/rod.Rate
		if bar := RodID(k); bar != Locator {
			rod.Free += rod.Lead * *car.BarTurns[bar].Of(&c.Setups[b.setup].Turns)
		}
	}
	for k := range Sides {
		b.p.Coils[k].Ride = b.stand.push[k]
		rear, front := &b.p.RearTires[k], &b.p.Corners[k]
		rear.Radius = c.Tires.RearRadius + b.stand.rear[k]/rear.Rate
		front.Radius = c.Tires.FrontRadius + b.stand.front[k]/front.TireRate
		front.Ride = b.stand.front[k] - front.Mass*b.p.Gravity
	}
}
