package holes

import (
	"math"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"

	"gonum.org/v1/gonum/spatial/r2"
)

// Worth is what the hole of one row is worth in a setup: how anti-squat and
// instant center at ride height change as the hole moves, and what going to the
// next hole of its row does.
type Worth struct {
	Row car.Row

	// Rates at ride height by moving the hole forward (X) and up (Y), with the
	// bars turned to keep the axle where it is.
	HasInstantCenter bool   // false for parallel bars; Ahead and Above are then zero
	Ahead            r2.Vec // of the instant center's distance ahead of the rear contact [1]
	Above            r2.Vec // of its height above the ground [1]
	HasAntiSquat     bool   // false where the line of action stands upright; AntiSquat is then zero
	AntiSquat        r2.Vec // [1/m]

	Up, Down Step // to the next hole above and below
}

// Step is what going to the next hole does, exactly.
type Step struct {
	HasHole bool // there is such a hole
	Hole    int  // its place in the row, counted from 0
	Known   bool // what the step does is known: the holes can be used and have been searched

	// Changes against the setup's holes.
	HasInstantCenter bool    // both have one; InstantCenter is else zero
	InstantCenter    r2.Vec  // ahead of the rear contact and above the ground [m]
	HasAntiSquat     bool    // both have one; AntiSquat is else zero
	AntiSquat        float64 // at ride height, 1 is 100 % [1]
	LowerPush        float64 // of the largest push in one lower bar in the hit case over the travel [N]
}

// Sensitivity returns the worth of each row's hole in a setup of c, by car.Row.
// The steps are taken from a search of the same holes; with table nil they are
// not known. It panics when the setup or its holes do not exist.
//
// A bar from A at the housing to B at the chassis is the line of direction
// d = B − A and moment m = d × A. Upper bar u and lower bar l meet in
//
//	(X/W, Y/W),  X = m_u d_lx − m_l d_ux,  Y = m_u d_lz − m_l d_uz,  W = d_u × d_l
//
// and anti-squat is (Y/X) L/h, wheelbase over CG height. Moving B by δ changes d
// by δ and m by δ × A; moving A changes them by −δ and by B × δ. Neither moves
// the axle, the ground or the CG at ride height, so L/h stays, and the rates
// follow by differentiating: they hold for parallel bars (W = 0) too, whose
// anti-squat has a rate while the instant center has none.
func Sensitivity(c *car.Car, setup int, table *Table) [len(car.Rows)]Worth {
	var list [len(car.Rows)]Worth
	lines := linesOf(c, setup)
	for _, row := range car.Rows {
		w := lines.rates(row)
		w.Row = row
		w.AntiSquat = r2.Scale(c.Body.Wheelbase/c.Body.CGHeight, w.AntiSquat)
		w.Up, w.Down = step(c, setup, table, row, +1), step(c, setup, table, row, -1)
		list[row] = w
	}
	return list
}

// barLines are the lines of the upper and the lower bars at ride height, where
// the chassis frame is the ground's.
type barLines struct {
	housing, chassis [2]r2.Vec  // ends by car.Pair [m]
	direction        [2]r2.Vec  // from housing to chassis [m]
	moment           [2]float64 // of the direction at the housing end [m²]
}

func linesOf(c *car.Car, setup int) barLines {
	axle := r2.Vec{Y: c.Tires.RearRadius}
	b := barLines{
		housing: [2]r2.Vec{car.Upper: car.HousingUpper.Hole(c, setup), car.Lower: car.HousingLower.Hole(c, setup)},
		chassis: [2]r2.Vec{car.Upper: car.ChassisUpper.Hole(c, setup), car.Lower: car.ChassisLower.Hole(c, setup)},
	}
	for _, p := range car.Pairs {
		b.housing[p] = r2.Add(b.housing[p], axle)
		b.direction[p] = r2.Sub(b.chassis[p], b.housing[p])
		b.moment[p] = r2.Cross(b.direction[p], b.housing[p])
	}
	return b
}

// parallel is the sine of an angle below which two lines count as parallel, as
// package linkage has it.
const parallel = 1e-9

// rates differentiates the instant center and the slope of the line of action,
// Y/X, which AntiSquat holds, by moving the hole of a row.
func (b *barLines) rates(row car.Row) Worth {
	x, y, w := intersect(b.direction, b.moment)
	// Of directions without length, for telling parallel bars as linkage does.
	scale := r2.Norm(b.direction[car.Upper]) * r2.Norm(b.direction[car.Lower])
	worth := Worth{
		HasInstantCenter: math.Abs(w) >= parallel*scale,
		HasAntiSquat:     math.Abs(x) > parallel*math.Hypot(y, w),
	}
	moved := func(by r2.Vec) (ahead, above, slope float64) {
		dx, dy, dw := b.moved(row, by)
		if worth.HasInstantCenter {
			ahead, above = (dx*w-x*dw)/(w*w), (dy*w-y*dw)/(w*w)
		}
		if worth.HasAntiSquat {
			slope = (dy*x - y*dx) / (x * x)
		}
		return ahead, above, slope
	}
	worth.Ahead.X, worth.Above.X, worth.AntiSquat.X = moved(r2.Vec{X: 1})
	worth.Ahead.Y, worth.Above.Y, worth.AntiSquat.Y = moved(r2.Vec{Y: 1})
	return worth
}

// intersect returns the homogeneous point in which two lines meet.
func intersect(direction [2]r2.Vec, moment [2]float64) (x, y, w float64) {
	u, l := direction[car.Upper], direction[car.Lower]
	x = moment[car.Upper]*l.X - moment[car.Lower]*u.X
	y = moment[car.Upper]*l.Y - moment[car.Lower]*u.Y
	return x, y, r2.Cross(u, l)
}

// moved returns how the homogeneous intersection changes when a row's hole moves.
func (b *barLines) moved(row car.Row, by r2.Vec) (dx, dy, dw float64) {
	p := row.Pair()
	turn, moment := by, r2.Cross(by, b.housing[p])
	if !row.OnChassis() {
		turn, moment = r2.Scale(-1, by), r2.Cross(b.chassis[p], by)
	}
	// X, Y and W are linear in the direction and moment of either line.
	direction, moments := b.direction, b.moment
	direction[p], moments[p] = turn, moment
	return intersect(direction, moments)
}

// next returns the hole of a row nearest above (+1) or below (−1) one of its
// holes; of several at that height the one nearest along the car.
func next(row []r2.Vec, from int, way float64) (int, bool) {
	best, found := 0, false
	rise := func(i int) float64 { return way * (row[i].Y - row[from].Y) }
	aside := func(i int) float64 { return math.Abs(row[i].X - row[from].X) }
	for i := range row {
		if rise(i) > 0 && (!found || rise(i) < rise(best) || rise(i) == rise(best) && aside(i) < aside(best)) {
			best, found = i, true
		}
	}
	return best, found
}

// step looks a step up in the table.
func step(c *car.Car, setup int, table *Table, row car.Row, way float64) Step {
	holes := c.Setups[setup].Holes
	from := *row.Of(&holes)
	var s Step
	if s.Hole, s.HasHole = next(*row.In(c), from, way); !s.HasHole || table == nil {
		return s
	}
	here := &table.Combinations[table.Index(holes)]
	*row.Of(&holes) = s.Hole
	there := &table.Combinations[table.Index(holes)]
	if !here.Usable() || !there.Usable() {
		return s
	}
	s.Known = true
	if s.HasInstantCenter = here.HasInstantCenter && there.HasInstantCenter; s.HasInstantCenter {
		s.InstantCenter = r2.Sub(there.InstantCenter, here.InstantCenter)
	}
	if s.HasAntiSquat = here.HasAntiSquat && there.HasAntiSquat; s.HasAntiSquat {
		s.AntiSquat = there.AntiSquat - here.AntiSquat
	}
	push := func(c *Combination) float64 { return c.Peak[car.Lower][analysis.Hit][column.Push] }
	s.LowerPush = push(there) - push(here)
	return s
}
