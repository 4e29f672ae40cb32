package launch

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// The shift of tire load by the driveshaft's torque T_d on a solid axle, with
// Kf of the whole roll stiffness K in front:
//
//	W_y = (T_d/t) Kf/K on each wheel, left side down under an engine that turns clockwise
//
// T. D. Gillespie, Fundamentals of Vehicle Dynamics, SAE 1992, chapter 2 (from
// memory; re-derived from the moments about the car's length). It holds for an
// axle that only springs and torque act on in roll, so the bars here are level
// and parallel; for tires that do not give, so they are a thousand times
// stiffer than any; and for a car whose weight does not lean, so the roll
// stiffnesses of the book's example, 1150 and 280 ft-lb/deg, are taken twenty
// times; and for a car that thrust does not turn aside, so the tires have no grip:
// of two unevenly loaded ones the heavier pulls more. Of stiffness and lean a
// hundredth part is left. With the tires' roll stiffnesses Kt, those in front in
// series with Kf, the moments give W_y = (T_d/t)/(1 + Kr (1/Kf + 1/Kt)), and the lean
// alone is left.
func TestDriveshaftShiftsTireLoad(t *testing.T) {
	c := reference(t)
	c.Chassis.Upper = []r2.Vec{{X: 22.5 * inch, Y: 22.5 * inch}}
	c.Chassis.Lower = []r2.Vec{{X: 25.5 * inch, Y: 11 * inch}}
	c.Setups = c.Setups[:1]
	c.Setups[0].Holes.ChassisUpper, c.Setups[0].Holes.ChassisLower = 0, 0
	for _, share := range []struct{ front, rear float64 }{{1150, 280}, {280, 1150}} {
		p := parameters(t, c)
		const degree = math.Pi / 180
		front, rear := 20*share.front*lbf*foot/degree, 20*share.rear*lbf*foot/degree
		// A pair of springs of rate k at a distance b apart has k b²/2.
		pair := func(rate, apart float64) float64 { return rate * apart * apart / 2 }
		trackFront, trackRear := c.Body.TrackFront, c.Body.TrackRear
		p.FrontAntiRoll = front - pair(p.Corners[Left].Rate, trackFront)
		p.RearAntiRoll = rear - pair(p.Coils[Left].Rate, p.Coils[Left].Chassis.Y-p.Coils[Right].Chassis.Y)
		straighten(&p)
		stiffen(&p, 1000)
		for k := range Sides {
			p.Coils[k].Bump, p.Coils[k].Rebound, p.Corners[k].Bump, p.Corners[k].Rebound = 6000, 6000, 6000, 6000
			p.RearTires[k].Damping, p.Corners[k].TireDamping, p.RearTires[k].Grip = 1e4, 1e4, 0
		}
		soft := 1/front + 1/pair(p.Corners[Left].TireRate, trackFront) + 1/pair(p.RearTires[Left].Rate, trackRear)
		for _, turning := range []float64{1, -1} {
			p.Drive.Turning = turning
			push(&p, 100*lbf*foot, 0.5)
			r := simulate(t, p, Options{Distance: 1e6, Limit: 1.2})
			shift := (last(r.RearLoad[Left]) - last(r.RearLoad[Right])) / 2
			shaft := turning * last(r.Torque) / p.Drive.Axle
			within(t, "shift by the book", shift, shaft/trackRear*front/(front+rear), 1.5e-2)
			within(t, "shift with tires", shift, shaft/trackRear/(1+rear*soft), 5e-3)
			// What the rear tires shift one way the front ones take the other way.
			across := (last(r.FrontLoad[Right]) - last(r.FrontLoad[Left])) / 2 * trackFront
			within(t, "front couple", across, shift*trackRear, 5e-3)
		}
	}
}

// The engine's torque turns the axle against the chassis: with an engine that
// turns clockwise seen from the front, the left rear tire is pressed down, the
// chassis's left side comes up, and the right-hand bars carry more than the
// left-hand ones.
func TestWhichWayTheAxleTwists(t *testing.T) {
	c := reference(t)
	c.Drive.Torque *= 0.4
	r := run(t, c, Options{Limit: 0.12})
	n := len(r.Time) - 1
	if !(r.RearLoad[Left][n] > r.RearLoad[Right][n]+100 && r.Roll[n] > 0.001) {
		t.Errorf("rear loads %v and %v N, roll %v rad", r.RearLoad[Left][n], r.RearLoad[Right][n], r.Roll[n])
	}
	if p := &r.Peaks; !(p[UpperRight].Pull > 1.2*p[UpperLeft].Pull && p[LowerRight].Push > 1.1*p[LowerLeft].Push) {
		t.Errorf("peaks %+v", r.Peaks)
	}
}
