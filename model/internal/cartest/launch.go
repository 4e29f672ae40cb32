package cartest

import (
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// launch draws what only the launch asks for; a third of the cars leave all of
// it to the defaults.
func launch(t *rapid.T, track float64, drive car.Drive) car.Launch {
	if rapid.IntRange(0, 2).Draw(t, "default launch") == 0 {
		return car.Defaults().Launch
	}
	rate := func(least, most float64) float64 { return number(t, least, most, units.US.Factor(units.SpringRate)) }
	damping := func(most float64) float64 { return number(t, 0, most, units.US.Factor(units.Damping)) }
	inertia := func(most float64) float64 {
		if rapid.Bool().Draw(t, "by rule") {
			return 0
		}
		return number(t, most/10, most, units.US.Factor(units.SpinInertia))
	}
	ends := func() car.BarEnds { return car.BarEnds{EndRate: rate(50000, 1e6), Damping: damping(30)} }
	roll := units.US.Factor(units.RollRate)
	return car.Launch{
		Inertia: car.Inertia{Pitch: inertia(50000), Yaw: inertia(50000), Roll: inertia(10000), AxleRoll: inertia(2000), HousingPitch: inertia(100)},
		Tires: car.TireRates{
			RearRate: rate(500, 3000), RearDamping: damping(10), FrontRate: rate(500, 2000), FrontDamping: damping(5),
			CarcassRate: rate(300, 3000), CarcassDamping: damping(5),
			PeakSlip: number(t, 0.05, 0.25, 1), SlidingGrip: number(t, 0.5, 1, 1), RelaxationLength: relaxation(t),
			SideRate: rate(100, 3000), SideDamping: damping(30),
		},
		UpperBar: ends(), LowerBar: ends(),
		Suspension: car.Suspension{
			RearSpread: number(t, 10, 45, inch), RearBumpDamping: damping(40), RearReboundDamping: damping(60), RearAntiRoll: number(t, 0, 4000, roll),
			FrontBumpDamping: damping(40), FrontReboundDamping: damping(40), FrontAntiRoll: number(t, 0, 1000, roll), StopRate: rate(500, 10000),
		},
		Locator:    locator(t, track, ends()),
		WheelieBar: wheelieBar(t, rate(200, 4000), damping(30)),
		Engine:     engine(t, drive),
	}
}

// relaxation draws a relaxation length; half of the tires leave it to the rule.
func relaxation(t *rapid.T) float64 {
	if rapid.Bool().Draw(t, "carcass rate") {
		return 0
	}
	return number(t, 4, 60, inch)
}

func locator(t *rapid.T, track float64, ends car.BarEnds) car.Locator {
	l := car.Locator{
		Kind: rapid.SampledFrom(car.LocatorKinds).Draw(t, "locator"),
		OD:   number(t, 0.75, 1.5, inch), Wall: number(t, 0.058, 0.25, inch), BarEnds: ends,
	}
	end := func(side, least, most float64) car.End {
		if rapid.Bool().Draw(t, "usual end") {
			return car.End{}
		}
		return car.End{Given: true, At: r3.Vec{X: number(t, -10, 10, inch), Y: side * number(t, 0.1, 0.4, track), Z: number(t, least, most, inch)}}
	}
	l.Chassis, l.Housing = end(1, 8, 20), end(-1, -4, 4)
	return l
}

func wheelieBar(t *rapid.T, rate, damping float64) car.WheelieBar {
	w := car.WheelieBar{Height: number(t, 0, 10, inch), Rate: rate, Damping: damping}
	if rapid.Bool().Draw(t, "wheelie bar") {
		w.Reach = number(t, 20, 80, inch)
	}
	return w
}

func engine(t *rapid.T, drive car.Drive) car.Engine {
	e := car.Engine{
		Inertia:     number(t, 2, 20, units.US.Factor(units.SpinInertia)),
		ReleaseTime: number(t, 0, 0.2, 1),
		Direction:   rapid.SampledFrom(car.Directions).Draw(t, "direction"),
	}
	if rapid.Bool().Draw(t, "rev limit") {
		e.RevLimit = drive.Speed * number(t, 1.1, 2, 1)
	}
	if rapid.Bool().Draw(t, "curve") {
		n := rapid.IntRange(2, 5).Draw(t, "points")
		speed := 0.5 * drive.Speed
		for range n {
			e.Curve = append(e.Curve, car.TorquePoint{Speed: speed, Torque: drive.Torque * number(t, 0.5, 1.2, 1)})
			speed += drive.Speed * number(t, 0.1, 0.5, 1)
		}
	}
	if rapid.Bool().Draw(t, "ramp") {
		time := number(t, 0, 0.2, 1)
		for range rapid.IntRange(1, 4).Draw(t, "points") {
			e.Ramp = append(e.Ramp, car.RampPoint{Time: time, Share: number(t, 0, 1.5, 1)})
			time += number(t, 0.01, 0.5, 1)
		}
	}
	return e
}

// turns draws a preload; half of the setups have none.
func turns(t *rapid.T) car.Turns {
	var turns car.Turns
	if rapid.Bool().Draw(t, "no preload") {
		return turns
	}
	for _, bar := range car.BarTurns {
		*bar.Of(&turns) = number(t, -3, 3, 1)
	}
	return turns
}
