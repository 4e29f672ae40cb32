package car

import (
	"fmt"
	"math"

	"bowline/model/units"
)

// Scales are the readings under the four tires, race-ready, with the driver aboard
// and no preload dialed in. They are optional: the zero value, with Given false, is
// a car that carries as much on the left as on the right.
type Scales struct {
	Given                                      bool
	LeftFront, RightFront, LeftRear, RightRear float64 // [kg]
}

// Total returns what the four scales read together [kg].
func (s *Scales) Total() float64 { return s.LeftFront + s.RightFront + s.Rear() }

// Rear returns what the rear scales read together [kg].
func (s *Scales) Rear() float64 { return s.LeftRear + s.RightRear }

// Left returns the part of the total on the left tires [1].
func (s *Scales) Left() float64 { return (s.LeftFront + s.LeftRear) / s.Total() }

// Cross returns the cross weight: the part of the total on the right front and the
// left rear tire [1].
func (s *Scales) Cross() float64 { return (s.RightFront + s.LeftRear) / s.Total() }

// ScaleAt is the place of one reading.
type ScaleAt struct {
	Key   string // in car.corner_weights of the car file
	Label string // on screen
	Of    func(*Scales) *float64
}

// ScalesAt lists the readings in file order.
var ScalesAt = [...]ScaleAt{
	{"lf", "Left front", func(s *Scales) *float64 { return &s.LeftFront }},
	{"rf", "Right front", func(s *Scales) *float64 { return &s.RightFront }},
	{"lr", "Left rear", func(s *Scales) *float64 { return &s.LeftRear }},
	{"rr", "Right rear", func(s *Scales) *float64 { return &s.RightRear }},
}

// FollowScales sets the car's weight and that on the rear tires to what the scales
// read; it leaves a car without readings as it is.
func (c *Car) FollowScales() {
	if s := &c.Body.Scales; s.Given {
		c.Body.Mass, c.Body.RearMass = s.Total(), s.Rear()
	}
}

// CGAside returns how far the whole car's center of gravity is to the left of its
// middle, from moments about the car's length; 0 without readings of the scales [m].
func (c *Car) CGAside() float64 {
	s := &c.Body.Scales
	if !s.Given {
		return 0
	}
	return ((s.LeftFront-s.RightFront)*c.Body.TrackFront + (s.LeftRear-s.RightRear)*c.Body.TrackRear) / 2 / s.Total()
}

// scalesTolerance is how far sums of the scales may be from the weights that are
// given beside them: what a sum of four rounded readings may be off [kg].
const scalesTolerance = 0.05 * pound

// scales checks the readings of the scales against the weights and what is not sprung.
func (v *validator) scales() {
	b := &v.car.Body
	s := &b.Scales
	if !s.Given {
		return
	}
	sound := true
	for _, at := range ScalesAt {
		if x := *at.Of(s); !(x > 0 && x <= maxMass()) {
			v.add("car.corner_weights."+at.Key, number(v.units, units.Mass, x)+" is out of range", "give more than 0 and at most "+bound(v.units, units.Mass, maxMass()))
			sound = false
		}
	}
	if !sound {
		return
	}
	for _, sum := range []struct {
		path, which string
		given, read float64
	}{{"car.weight", "the four scales", b.Mass, s.Total()}, {"car.rear_weight", "the rear scales", b.RearMass, s.Rear()}} {
		read := sum.which + " together read " + v.reading(sum.read)
		if f := FieldAt(sum.path); !(sum.read >= f.Min && sum.read <= f.Max) {
			v.add("car.corner_weights", read, "give readings that are "+f.Range(v.units)+" together")
		}
		if !(math.Abs(sum.given-sum.read) <= scalesTolerance) {
			v.add("car.corner_weights", fmt.Sprintf("%s, but %s is %s", read, sum.path, number(v.units, units.Mass, sum.given)), "weigh again, or leave one of the two out")
		}
	}
	v.apart("front", math.Abs(s.LeftFront-s.RightFront), s.LeftFront+s.RightFront-b.UnsprungFront)
}

// apart adds the problem that readings on one axle are no less apart than the most
// with which both of its springs push.
func (v *validator) apart(axle string, apart, most float64) {
	if most > 0 && apart >= most {
		v.add("car.corner_weights", fmt.Sprintf("left and right %s are %s apart, so that one spring would have to pull", axle, v.units.Format(units.Mass, apart)),
			"give readings less than "+v.units.Format(units.Mass, most)+" apart")
	}
}

// reading writes a sum of readings without what adding leaves behind their decimals.
func (v *validator) reading(x float64) string {
	rounded := math.Round(100*v.units.FromSI(units.Mass, x)) / 100
	return v.units.FormatExact(units.Mass, v.units.ToSI(units.Mass, rounded))
}

// maxMass is the greatest mass of a car [kg].
func maxMass() float64 { return FieldAt("car.weight").Max }
