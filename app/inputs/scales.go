package inputs

import (
	"math"

	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2/theme"
)

// fillCar fills the section of the car as a whole.
func fillCar(s *section) {
	s.text("Rename car", form.About{Path: "car.name", Label: "Name", Help: "What the car is called, on screen and on paper."},
		func(c *car.Car) *string { return &c.Body.Name })
	for _, f := range fieldsOf("car") {
		r := s.field(f)
		switch f.Path {
		case "car.weight":
			s.follows(r)
		case "car.rear_weight":
			s.follows(r)
			fillScales(s)
		}
	}
}

// follows says below a weight that the scales give it, while they do.
func (s *section) follows(r *form.Row) {
	r.PutRemark(theme.ColorNamePlaceHolder, func() string {
		if s.of.doc.Car().Body.Scales.Given {
			return "Follows the corner weights below."
		}
		return ""
	})
}

// fillScales adds the readings of the scales, as the tires stand seen from above, and
// what follows from them.
func fillScales(s *section) {
	given := s.given("Set corner weights", "Corner weights are given", "The four scales, race-ready, driver aboard, with no preload dialed in. They give both weights above, the CG's place sideways, and what the launch starts from. Without them both sides carry alike.",
		func(c *car.Car) bool { return c.Body.Scales.Given }, weighEvenly)
	add := func(r *form.Row) { r.Wanted = given }
	heading := func(text string) form.Editor { return form.NewReadout(func() string { return text }) }
	add(s.Row(form.About{Label: "Scales", Help: "What each scale reads, as the car stands, seen from above."}, heading("left"), heading("right")))
	for i, end := range []string{"Front", "Rear"} {
		left, right := car.ScalesAt[2*i], car.ScalesAt[2*i+1]
		r := s.Row(form.About{Label: end, Help: left.Label + " and " + lower(right.Label) + " scale, driver aboard, no preload dialed in.", Allowed: scaleRange}, s.scale(left), s.scale(right))
		r.Quantity = units.Mass
		add(r)
	}
	percent := func(label, help string, share func(*car.Scales) float64) {
		add(s.readout(form.About{Label: label, Help: help}, units.Percent, func(c *car.Car) float64 {
			if !given() {
				return 0 // and the row is hidden
			}
			return share(&c.Body.Scales)
		}))
	}
	number := func(q units.Quantity, more int, value func(*car.Car) float64) form.Editor {
		return form.NewReadout(func() string { return s.of.doc.Units().Figure(q, value(s.of.doc.Car()), more) })
	}
	all := s.Row(form.About{Label: "All four", Help: "What the scales read together."}, number(units.Mass, 1, func(c *car.Car) float64 { return c.Body.Scales.Total() }))
	all.Quantity = units.Mass
	add(all)
	percent("Cross weight", "Right front and left rear together over all four; at 50 % neither diagonal carries more.", (*car.Scales).Cross)
	percent("Left weight", "Left front and left rear together over all four.", (*car.Scales).Left)
	percent("Rear weight", "Left rear and right rear together over all four.", func(s *car.Scales) float64 { return s.Rear() / s.Total() })
	aside := s.Row(form.About{Label: "CG sideways", Help: "Where the whole car's center of gravity is beside the middle of the car, from moments about the car's length."},
		form.NewReadout(func() string { return sideways(s.of.doc.Car().CGAside(), s.of.doc.Units()) }),
		number(units.Length, 0, func(c *car.Car) float64 { return math.Abs(c.CGAside()) }))
	aside.Quantity = units.Length
	add(aside)
}

// sideways names the side that a distance to the left is on; neither for one that
// reads as none.
func sideways(left float64, u units.System) string {
	switch {
	case u.ReadsZero(units.Length, left):
		return ""
	case left < 0:
		return "right"
	}
	return "left"
}

// weighEvenly gives a car readings alike on both sides, or takes them away.
func weighEvenly(c *car.Car, on bool) {
	b := &c.Body
	b.Scales = car.Scales{}
	if on {
		front, rear := (b.Mass-b.RearMass)/2, b.RearMass/2
		b.Scales = car.Scales{Given: true, LeftFront: front, RightFront: front, LeftRear: rear, RightRear: rear}
		c.FollowScales()
	}
}

// scale returns the entry of one reading, which both weights follow.
func (s *section) scale(at car.ScaleAt) *form.Entry {
	return form.NewNumber(form.Number{
		Quantity: units.Mass, Units: s.of.doc.Units,
		Get: func() float64 { return *at.Of(&s.of.doc.Car().Body.Scales) },
		Set: func(x float64) []form.Fault {
			return s.of.edit("Set "+lower(at.Label)+" scale", func(c *car.Car) {
				*at.Of(&c.Body.Scales) = x
				c.FollowScales()
			})
		},
	})
}

// scaleRange writes the readings allowed.
func scaleRange(u units.System) string {
	return "More than 0, and together " + car.FieldAt("car.weight").Range(u)
}
