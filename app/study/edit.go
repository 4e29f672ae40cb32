package study

import (
	"fmt"
	"math"

	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// dragGrid is what a dragged hole is rounded to, in shop units.
var dragGrid = map[units.System]float64{units.US: 0.01, units.SI: 0.25}

// nudgeStep is what one arrow key moves a pivot by, in shop units.
var nudgeStep = map[units.System]float64{units.US: 1.0 / 16, units.SI: 1}

// NudgeFast is how much farther an arrow key goes with shift.
const NudgeFast = 10

// Local turns a point of the ground's frame into the frame of a row's holes:
// the chassis frame, or from the axle centerline [m].
func (s *Study) Local(row car.Row, p r2.Vec) r2.Vec {
	pose := &s.station.Pose
	q := pose.Ground.Chassis(p)
	if row.OnChassis() {
		return q
	}
	return r2.Rotate(r2.Sub(q, pose.Axle), -pose.Turn, r2.Vec{})
}

// Nearest returns the hole of a row that is nearest to a point of the ground's
// frame.
func (s *Study) Nearest(row car.Row, p r2.Vec) int {
	at, best, distance := s.Local(row, p), 0, math.Inf(1)
	for i, h := range *row.In(s.doc.Car()) {
		if d := r2.Norm2(r2.Sub(h, at)); d < distance {
			best, distance = i, d
		}
	}
	return best
}

// Hole returns the hole that the current setup uses in a row.
func (s *Study) Hole(row car.Row) int {
	return *row.Of(&s.doc.Car().Setups[s.doc.Setup()].Holes)
}

// Choose puts the bar's end into another hole of a row.
func (s *Study) Choose(row car.Row, hole int) []car.Problem {
	setup := s.doc.Setup()
	return s.doc.Apply(fmt.Sprintf("Use %s hole %d", row, hole+1), func(c *car.Car) {
		*row.Of(&c.Setups[setup].Holes) = hole
	})
}

// Move puts a hole's center at a point of the ground's frame, rounded to the
// grid of the unit system.
func (s *Study) Move(row car.Row, hole int, p r2.Vec) []car.Problem {
	to := s.rounded(s.Local(row, p))
	return s.doc.Apply(fmt.Sprintf("Move %s hole %d", row, hole+1), func(c *car.Car) {
		(*row.In(c))[hole] = to
	})
}

// rounded brings a point onto the grid of the unit system.
func (s *Study) rounded(p r2.Vec) r2.Vec {
	u := s.Units()
	grid := dragGrid[u]
	on := func(x float64) float64 {
		n := math.Round(u.FromSI(units.Length, x) / grid)
		// Through the shortest decimal, so that 22.53 is stored as it would
		// be typed.
		return u.ToSI(units.Length, math.Round(n*grid*1e6)/1e6)
	}
	return r2.Vec{X: on(p.X), Y: on(p.Y)}
}

// Nudge moves the hole that the selected pivot uses by whole steps, 1/16 in or
// 1 mm each.
func (s *Study) Nudge(forward, up float64) []car.Problem {
	row, hole := s.pivot, s.Hole(s.pivot)
	u := s.Units()
	shift := func(x, steps float64) float64 {
		if steps == 0 {
			return x
		}
		return u.ToSI(units.Length, u.Exact(units.Length, x)+steps*nudgeStep[u])
	}
	return s.doc.Apply(fmt.Sprintf("Nudge %s hole %d", row, hole+1), func(c *car.Car) {
		h := &(*row.In(c))[hole]
		*h = r2.Vec{X: shift(h.X, forward), Y: shift(h.Y, up)}
	})
}

// SetSpread moves the left and right bars apart or together where they are held in a row
// of holes, to a distance from center to center [m], rounded to 1/16 in or 1 mm.
func (s *Study) SetSpread(row car.Row, spread float64) []car.Problem {
	u := s.Units()
	step := nudgeStep[u]
	to := u.ToSI(units.Length, math.Round(u.FromSI(units.Length, spread)/step)*step)
	return s.doc.Apply(SpreadLabel(row), func(c *car.Car) { *row.Spread(c) = to })
}

// SpreadLabel names the step of moving the bars in a row of holes apart or together.
func SpreadLabel(row car.Row) string { return "Move " + row.String() + " holes apart" }

// MoveBracket moves all holes of the chassis or the housing bracket from where
// they were in before by a distance in the bracket's own frame [m], rounded to
// the grid.
func (s *Study) MoveBracket(chassis bool, before *car.Car, d r2.Vec) []car.Problem {
	d = s.rounded(d)
	name := map[bool]string{true: "chassis", false: "housing"}[chassis]
	u := s.Units()
	sum := func(a, b float64) float64 {
		return u.ToSI(units.Length, math.Round((u.Exact(units.Length, a)+u.Exact(units.Length, b))*1e6)/1e6)
	}
	return s.doc.Apply("Move "+name+" bracket", func(c *car.Car) {
		for _, row := range car.Rows {
			if row.OnChassis() != chassis {
				continue
			}
			holes := *row.In(c)
			for i, h := range *row.In(before) {
				holes[i] = r2.Vec{X: sum(h.X, d.X), Y: sum(h.Y, d.Y)}
			}
		}
	})
}
