package study

import (
	"math"

	"bowline/model/analysis"
	"bowline/model/car"
)

// Travel returns the rear travel looked at, bump positive [m].
func (s *Study) Travel() float64 { return s.travel }

// SetTravel looks at another rear travel [m]; beyond the springs' travel, at
// its end.
func (s *Study) SetTravel(q float64) {
	s.change(func() Change {
		s.travelVisit.end()
		return s.moveTo(q)
	})
}

// moveTo goes to a rear travel.
func (s *Study) moveTo(q float64) Change {
	k := s.doc.Car().Springs
	return set(&s.travel, within(q, -k.RearDroop, k.RearBump), Position)
}

// Front returns the front travel looked at, bump positive [m].
func (s *Study) Front() float64 { return s.front }

// SetFront looks at another front travel [m]; beyond the front's travel, at
// its end.
func (s *Study) SetFront(q float64) {
	s.change(func() Change {
		k := s.doc.Car().Springs
		return set(&s.front, within(q, -k.FrontDroop, k.FrontBump), Analysis|Position)
	})
}

// Case returns the load case looked at.
func (s *Study) Case() analysis.Case { return s.load }

// SetCase looks at another load case.
func (s *Study) SetCase(c analysis.Case) {
	s.change(func() Change { return set(&s.load, c, Choice) })
}

// Pivot returns the row whose pivot the keyboard moves.
func (s *Study) Pivot() car.Row { return s.pivot }

// Select has the keyboard move the pivot of a row.
func (s *Study) Select(row car.Row) {
	s.change(func() Change { return set(&s.pivot, row, Choice) })
}

// Moving reports whether dragging a pivot moves its hole rather than choosing
// another one.
func (s *Study) Moving() bool { return s.moving }

// SetMoving switches between choosing holes and moving them.
func (s *Study) SetMoving(on bool) {
	s.change(func() Change { return set(&s.moving, on, Choice) })
}

// Forces reports whether the forces on the axle are looked at.
func (s *Study) Forces() bool { return s.forces }

// SetForces shows the forces on the axle, or hides them.
func (s *Study) SetForces(on bool) {
	s.change(func() Change { return set(&s.forces, on, Choice) })
}

// set gives a value and returns c if it was another one.
func set[T comparable](value *T, to T, c Change) Change {
	if *value == to {
		return 0
	}
	*value = to
	return c
}

// within brings x into a range.
func within(x, low, high float64) float64 { return math.Max(low, math.Min(high, x)) }
