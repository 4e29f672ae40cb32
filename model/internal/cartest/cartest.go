// Package cartest draws random cars for property tests.
package cartest

import (
	"strings"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/stock"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// Random draws a car that Validate has nothing against: of a size that a drag
// car may have, some numbers round in inches and pounds, some with all the
// digits of a float64. Materials come from the library, which must have some.
func Random(t *rapid.T, library stock.Library) *car.Car {
	plausible := rapid.Custom(func(t *rapid.T) *car.Car { return draw(t, library) })
	valid := func(c *car.Car) bool { return len(c.Validate(library, units.US)) == 0 }
	return plausible.Filter(valid).Draw(t, "car")
}

const (
	inch  = units.Inch
	pound = units.Pound
)

func draw(t *rapid.T, library stock.Library) *car.Car {
	c := car.Defaults()
	c.Body = body(t)
	c.Tires = car.Tires{
		RearRadius:       number(t, 12, 18, inch),
		FrontRadius:      number(t, 9, 14, inch),
		Grip:             number(t, 1, 3.5, 1),
		RearSpinInertia:  number(t, 0, 300, pound*units.Foot*units.Foot),
		FrontSpinInertia: number(t, 0, 50, pound*units.Foot*units.Foot),
	}
	radius := c.Tires.RearRadius / inch
	c.Chassis = bracket(t, 16, 30, [2]float64{radius - 1, radius + 7}, [2]float64{radius - 8, radius - 2})
	c.Housing = bracket(t, -1, 5, [2]float64{2.5, 8}, [2]float64{-8, -2.5})
	c.UpperBar, c.LowerBar = bar(t, library), bar(t, library)
	c.Springs = springs(t)
	c.Drive = car.Drive{
		Torque:     number(t, 200, 2500, units.PoundForce*units.Foot),
		Speed:      units.US.ToSI(units.Speed, number(t, 2000, 9000, 1)),
		Converter:  number(t, 1, 2.5, 1),
		Gear:       number(t, 1, 3, 1),
		Axle:       number(t, 2.5, 6, 1),
		Efficiency: number(t, 0.8, 1, 1),
	}
	if rapid.Bool().Draw(t, "driveline") {
		c.Driveline = driveline(t, radius)
	}
	c.Check = check(t)
	c.Launch = launch(t, c.Body.TrackRear, c.Drive)
	c.Setups = setups(t, c)
	return c
}

// number draws a number of the given unit, as people write it or with all digits.
func number(t *rapid.T, least, most, unit float64) float64 {
	if rapid.Bool().Draw(t, "round") {
		const steps = 400 // so that most are written with a few digits
		return (least + (most-least)*float64(rapid.IntRange(0, steps).Draw(t, "steps"))/steps) * unit
	}
	return rapid.Float64Range(least, most).Draw(t, "number") * unit
}

func point(t *rapid.T, x, z [2]float64) r2.Vec {
	return r2.Vec{X: number(t, x[0], x[1], inch), Y: number(t, z[0], z[1], inch)}
}

func body(t *rapid.T) car.Body {
	mass := number(t, 1500, 4500, pound)
	b := car.Body{
		Name:          name().Draw(t, "car name"),
		Wheelbase:     number(t, 85, 140, inch),
		Mass:          mass,
		RearMass:      mass * number(t, 0.4, 0.65, 1),
		CGHeight:      number(t, 14, 30, inch),
		UnsprungRear:  number(t, 200, 550, pound),
		UnsprungFront: number(t, 60, 250, pound),
		TrackRear:     number(t, 40, 75, inch),
		TrackFront:    number(t, 40, 75, inch),
	}
	if rapid.IntRange(0, 3).Draw(t, "scales") == 0 {
		b.Scales = scales(t, &b)
		b.Mass, b.RearMass = b.Scales.Total(), b.Scales.Rear()
	}
	return b
}

// scales draws what four scales read of a car, nearly even.
func scales(t *rapid.T, b *car.Body) car.Scales {
	reading := func(of float64) float64 { return of / pound / 2 * number(t, 0.95, 1.05, 1) * pound }
	front := b.Mass - b.RearMass
	return car.Scales{Given: true, LeftFront: reading(front), RightFront: reading(front), LeftRear: reading(b.RearMass), RightRear: reading(b.RearMass)}
}

func bracket(t *rapid.T, back, front float64, upper, lower [2]float64) car.Bracket {
	row := func(z [2]float64) []r2.Vec {
		holes := make([]r2.Vec, rapid.IntRange(1, 6).Draw(t, "holes"))
		for i := range holes {
			holes[i] = point(t, [2]float64{back, front}, z)
		}
		return holes
	}
	return car.Bracket{
		Upper:       row(upper),
		Lower:       row(lower),
		SpreadUpper: number(t, 10, 45, inch),
		SpreadLower: number(t, 10, 45, inch),
	}
}

func bar(t *rapid.T, library stock.Library) car.Bar {
	b := car.Bar{
		OD:       number(t, 1, 2, inch),
		Wall:     number(t, 0.058, 0.25, inch),
		Material: rapid.SampledFrom(library.MaterialNames()).Draw(t, "material"),
		RodEnd:   rapid.SampledFrom([]string{"", "3/4-16", "1 1/4-12", "M20x1.5"}).Draw(t, "rod end"),
		Adapter:  rapid.SampledFrom([]string{"", "3/4-16 in 1.25 x 0.095", "of our own \"make\""}).Draw(t, "adapter"),
	}
	b.Threads = threads(t)
	if rapid.Bool().Draw(t, "rod-end angle known") {
		b.RodEndAngle = units.US.ToSI(units.Angle, number(t, 5, 30, 1))
	}
	if rapid.IntRange(0, 9).Draw(t, "solid") == 0 {
		b.Wall = b.OD / 2
	}
	return b
}

// threads draws the threads at a bar's ends; half of the bars leave them to the
// defaults.
func threads(t *rapid.T) car.Threads {
	if rapid.Bool().Draw(t, "default threads") {
		return car.Defaults().UpperBar.Threads
	}
	byRule := func(least, most float64) float64 {
		if rapid.Bool().Draw(t, "by rule") {
			return 0
		}
		return number(t, least, most, inch)
	}
	return car.Threads{Length: byRule(1, 4), JamNut: byRule(0.2, 0.6), Shown: number(t, 0, 30, 1), Fitted: byRule(10, 40)}
}

func springs(t *rapid.T) car.Springs {
	rate := units.PoundForce / inch
	return car.Springs{
		RearRate:         number(t, 60, 400, rate),
		RearAxleMount:    point(t, [2]float64{-6, 2}, [2]float64{-5, 2}),
		RearChassisMount: point(t, [2]float64{-6, 2}, [2]float64{26, 34}),
		RearDroop:        number(t, 0.5, 5, inch),
		RearBump:         number(t, 0, 4, inch),
		FrontDroop:       number(t, 0, 7, inch),
		FrontBump:        number(t, 0, 4, inch),
		FrontRate:        number(t, 60, 400, rate),
	}
}

func driveline(t *rapid.T, radius float64) car.Driveline {
	angle := func() float64 { return units.US.ToSI(units.Angle, number(t, -5, 5, 1)) }
	return car.Driveline{
		Given:             true,
		TransmissionJoint: point(t, [2]float64{35, 60}, [2]float64{radius - 3, radius + 3}),
		PinionJoint:       point(t, [2]float64{9, 14}, [2]float64{-2, 2}),
		TransmissionAngle: angle(),
		PinionAngle:       angle(),
	}
}

func check(t *rapid.T) car.Check {
	if rapid.IntRange(0, 3).Draw(t, "default check") == 0 {
		return car.Defaults().Check
	}
	ends := func(least, most, unit float64) [2]float64 {
		middle := (least + most) / 2
		return [2]float64{number(t, least, middle, unit), number(t, middle+1e-3, most, unit)}
	}
	return car.Check{
		Factor:          number(t, 1, 4, 1),
		Crookedness:     number(t, 0, 0.005, 1),
		Column:          rapid.SampledFrom(column.Curves()).Draw(t, "column").String(),
		TargetAntiSquat: ends(0, 3, 1),
		TargetICX:       ends(10, 200, inch),
		TargetICZ:       ends(-5, 30, inch),
		Rollout:         number(t, 0, 20, inch),
		PinionLimit:     units.US.ToSI(units.Angle, number(t, 0, 10, 1)),
		LiftLimit:       number(t, 0, 30, inch),
	}
}

func setups(t *rapid.T, c *car.Car) []car.Setup {
	names := rapid.SliceOfNDistinct(name(), 1, 5, rapid.ID[string]).Draw(t, "setup names")
	list := make([]car.Setup, len(names))
	for i, name := range names {
		list[i] = car.Setup{Name: name, Turns: turns(t), Note: rapid.SampledFrom([]string{"", "hit hard, \"then\"\nspun"}).Draw(t, "note")}
		list[i].Runs = runs(t)
		for _, row := range car.Rows {
			*row.Of(&list[i].Holes) = rapid.IntRange(0, len(*row.In(c))-1).Draw(t, "hole")
		}
	}
	return list
}

// name generates texts that people, and worse, may type.
func name() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.StringMatching(`[A-Z][a-z]{2,8} [1-9]`),
		rapid.StringN(1, 12, -1),
	).Filter(func(s string) bool { return strings.TrimSpace(s) != "" })
}
