package holes_test

import (
	"context"
	"math"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/holes"
	"bowline/model/internal/cartest"
	"bowline/model/stock"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// What follows is written a second time from the formulas, without any of the
// model's: Newton on the squared bar lengths in steps of a millimeter, lines
// intersected in the chassis frame, forces by elimination, the grip limit by
// bisection.

// second is one choice of holes of a car at some travel.
type second struct {
	c            *car.Car
	chassis, arm [2]r2.Vec // by bar: chassis hole, housing hole from the axle
	length       [2]float64
	q, x, turn   float64 // travel, shift and turn of the axle
}

func newSecond(c *car.Car, h car.Holes) *second {
	b := &second{
		c:       c,
		chassis: [2]r2.Vec{c.Chassis.Upper[h.ChassisUpper], c.Chassis.Lower[h.ChassisLower]},
		arm:     [2]r2.Vec{c.Housing.Upper[h.HousingUpper], c.Housing.Lower[h.HousingLower]},
	}
	for i := range b.length {
		b.length[i] = r2.Norm(r2.Sub(r2.Add(b.arm[i], b.axle()), b.chassis[i]))
	}
	return b
}

func (b *second) axle() r2.Vec { return r2.Vec{X: b.x, Y: b.c.Tires.RearRadius + b.q} }

func (b *second) hole(bar int) r2.Vec {
	return r2.Add(b.axle(), r2.Rotate(b.arm[bar], b.turn, r2.Vec{}))
}

// move goes to a travel nearby, or fails and stays.
func (b *second) move(q float64) bool {
	to := *b
	to.q = q
	for range 50 {
		var f [2]float64
		var j [2][2]float64 // by shift and turn
		for i := range f {
			d, arm := r2.Sub(to.hole(i), to.chassis[i]), r2.Sub(to.hole(i), to.axle())
			f[i] = (r2.Norm2(d) - to.length[i]*to.length[i]) / (2 * to.length[i])
			j[i] = [2]float64{d.X / to.length[i], (arm.X*d.Y - arm.Y*d.X) / to.length[i]}
		}
		det := j[0][0]*j[1][1] - j[0][1]*j[1][0]
		dx, dturn := (f[0]*j[1][1]-f[1]*j[0][1])/det, (j[0][0]*f[1]-j[1][0]*f[0])/det
		to.x, to.turn = to.x-dx, to.turn-dturn
		if !(math.Abs(to.x-b.x)+math.Abs(to.turn-b.turn) < 0.05) {
			return false
		}
		if math.Abs(dx)+math.Abs(dturn) < 1e-10 { // and the next would be its square
			*b = to
			return true
		}
	}
	return false
}

// at goes from ride height to a travel; it tells how far it comes.
func (b *second) at(q float64) float64 {
	b.q, b.x, b.turn = 0, 0, 0
	for step := 1e-3; step > 1e-10 && b.q != q; {
		next := b.q + math.Copysign(step, q)
		if math.Abs(q-b.q) < step {
			next = q
		}
		if !b.move(next) {
			step /= 2
		}
	}
	return b.q
}

// endTolerance is how well the end of the travel that b is at is known [m]:
// less well where both bars and the brackets lie in one line, for there the
// travel ends early.
func (b *second) endTolerance() float64 {
	brackets := r2.Unit(r2.Sub(b.hole(1), b.hole(0)))
	off := 0.0
	for i := range b.chassis {
		off = math.Max(off, math.Abs(r2.Cross(brackets, r2.Unit(r2.Sub(b.hole(i), b.chassis[i])))))
	}
	if off < 0.02 {
		return 1e-4
	}
	return 1e-6
}

// ground is the direction of the ground, from the rear to the front contact.
func (b *second) ground() (along r2.Vec, wheelbase float64) {
	t := b.c.Tires
	d := r2.Sub(r2.Vec{X: b.c.Body.Wheelbase, Y: t.FrontRadius}, b.axle())
	angle := math.Atan2(d.Y, d.X) + math.Asin((t.RearRadius-t.FrontRadius)/r2.Norm(d))
	along = r2.Vec{X: math.Cos(angle), Y: math.Sin(angle)}
	return along, r2.Dot(along, d)
}

// seen turns a chassis point into the ground's frame.
func (b *second) seen(p r2.Vec) r2.Vec {
	along, _ := b.ground()
	up := r2.Vec{X: -along.Y, Y: along.X}
	contact := r2.Sub(b.axle(), r2.Scale(b.c.Tires.RearRadius, up))
	return r2.Vec{X: r2.Dot(along, r2.Sub(p, contact)), Y: r2.Dot(up, r2.Sub(p, contact))}
}

// center intersects the bars; apart is the sine of the angle between them.
func (b *second) center() (ic r2.Vec, apart float64) {
	du, dl := r2.Sub(b.chassis[0], b.hole(0)), r2.Sub(b.chassis[1], b.hole(1))
	part := r2.Cross(r2.Sub(b.chassis[1], b.chassis[0]), dl) / r2.Cross(du, dl)
	return b.seen(r2.Add(b.chassis[0], r2.Scale(part, du))), math.Abs(r2.Cross(du, dl)) / (b.length[0] * b.length[1])
}

// cg is the whole car's center of gravity on the ground.
func (b *second) cg() r2.Vec {
	body := b.c.Body
	// The whole at ride height, with the axle's mass moved along with it.
	x := body.Wheelbase * (1 - body.RearMass/body.Mass)
	p := r2.Vec{X: x + body.UnsprungRear/body.Mass*b.x, Y: body.CGHeight + body.UnsprungRear/body.Mass*b.q}
	return b.seen(p)
}

const gravity = 9.80665

// forces returns one bar's tension by bar for each load case, hooked and hit,
// and how well the three lines hold the axle: their determinant [m].
func (b *second) forces() (tension [2][2]float64, hold float64) {
	body, t, d := b.c.Body, b.c.Tires, b.c.Drive
	_, wheelbase := b.ground()
	cg, m, r := b.cg(), body.Mass, t.RearRadius
	engine := d.Torque * d.Converter * d.Gear * d.Axle * d.Efficiency
	accel := func(thrust float64) float64 { return thrust / (m + t.FrontSpinInertia/(t.FrontRadius*t.FrontRadius)) }
	need := func(thrust float64) float64 { return thrust*r + t.RearSpinInertia*accel(thrust)/r }
	front := func(thrust, torque float64) float64 {
		a := accel(thrust)
		return math.Max(0, (m*gravity*cg.X-m*a*cg.Y-(torque-thrust*r)-t.FrontSpinInertia*a/t.FrontRadius)/wheelbase)
	}
	bisect := func(excess func(float64) float64, most float64) float64 {
		least := 0.0
		for range 200 {
			if mid := (least + most) / 2; excess(mid) < 0 {
				least = mid
			} else {
				most = mid
			}
		}
		return least
	}
	drive := bisect(func(f float64) float64 { return need(f) - engine }, engine/r)
	for i := range tension {
		torque := func(f float64) float64 { return need(f) }
		if i == 1 {
			torque = func(float64) float64 { return engine }
		}
		thrust := math.Min(drive, bisect(func(f float64) float64 { return f - t.Grip*(m*gravity-front(f, torque(f))) }, 1.001*t.Grip*m*gravity))
		rear := m*gravity - front(thrust, torque(thrust))
		// Along, up and moment about the axle: upper, lower, spring and the rest.
		var rows [3][4]float64
		push := func(column int, from, toward r2.Vec) {
			e := r2.Unit(r2.Sub(toward, from))
			rows[0][column], rows[1][column], rows[2][column] = e.X, e.Y, r2.Cross(r2.Sub(from, b.seen(b.axle())), e)
		}
		push(0, b.seen(b.hole(0)), b.seen(b.chassis[0]))
		push(1, b.seen(b.hole(1)), b.seen(b.chassis[1]))
		mount := b.seen(r2.Add(b.axle(), r2.Rotate(b.c.Springs.RearAxleMount, b.turn, r2.Vec{})))
		push(2, mount, r2.Sub(r2.Scale(2, mount), b.seen(b.c.Springs.RearChassisMount)))
		rows[0][3] = body.UnsprungRear*accel(thrust) - thrust
		rows[1][3] = body.UnsprungRear*gravity - rear
		rows[2][3] = -torque(thrust)
		var solution [3]float64
		solution, hold = eliminate(rows)
		tension[0][i], tension[1][i] = solution[0]/2, solution[1]/2
	}
	return tension, math.Abs(hold)
}

// eliminate solves three equations by Gauss with row exchange.
func eliminate(a [3][4]float64) (x [3]float64, det float64) {
	det = 1
	for i := range a {
		best := i
		for k := i; k < 3; k++ {
			if math.Abs(a[k][i]) > math.Abs(a[best][i]) {
				best = k
			}
		}
		if best != i {
			a[i], a[best] = a[best], a[i]
			det = -det
		}
		det *= a[i][i]
		for k := i + 1; k < 3; k++ {
			f := a[k][i] / a[i][i]
			for j := range a[k] {
				a[k][j] -= f * a[i][j]
			}
		}
	}
	for i := 2; i >= 0; i-- {
		x[i] = a[i][3]
		for j := i + 1; j < 3; j++ {
			x[i] -= a[i][j] * x[j]
		}
		x[i] /= a[i][i]
	}
	return x, det
}

// allowable is what a straight-sided tube may carry in push and in pull by
// Johnson, Euler and first yield under the bow, in pull by yield of the tube and
// beside its welds, and false for a wall that may buckle by itself.
func (b *second) allowable(bar int, lib stock.Library) (push, pull float64, ok bool) {
	tube := b.c.UpperBar
	if bar == 1 {
		tube = b.c.LowerBar
	}
	m, _ := lib.Material(tube.Material)
	in := tube.OD - 2*tube.Wall
	area, inertia := math.Pi/4*(tube.OD*tube.OD-in*in), math.Pi/64*(math.Pow(tube.OD, 4)-math.Pow(in, 4))
	squash := m.Yield * area
	euler := math.Pi * math.Pi * m.E * inertia / (b.length[bar] * b.length[bar])
	push = euler
	if euler >= squash/2 {
		push = squash - squash*squash/(4*euler)
	}
	bow := 1 + b.c.Check.Crookedness*b.length[bar]*tube.OD/2*area/inertia
	half := (squash + bow*euler) / 2
	push = math.Min(push, half-math.Sqrt(half*half-squash*euler))
	pull = squash
	if m.WeldedYield != 0 {
		pull = math.Min(pull, m.WeldedYield*area)
	}
	return push / b.c.Check.Factor, pull / b.c.Check.Factor, tube.OD/tube.Wall < 0.11*m.E/m.Yield
}

// spaced are the travels: ride height and even steps to either side.
func spaced(droop, bump float64, n int) []float64 {
	below := math.Round(float64(n-1) * droop / (droop + bump))
	if droop > 0 && below == 0 {
		below = 1
	}
	if above := float64(n-1) - below; bump > 0 && above == 0 {
		below--
	}
	list := []float64{}
	for i := -below; i <= float64(n-1)-below; i++ {
		if i < 0 {
			list = append(list, droop*i/below)
		} else {
			list = append(list, bump*i/math.Max(1, float64(n-1)-below))
		}
	}
	return list
}

// closeTo compares with a tolerance in parts of 1 or the value.
func closeTo(t *rapid.T, what string, got, want, tolerance float64) {
	if !(math.Abs(got-want) <= tolerance*math.Max(1, math.Abs(want))) {
		t.Fatalf("%s: got %.12g, want %.12g", what, got, want)
	}
}

func TestSearchAgreesWithASecondFormulation(t *testing.T) {
	lib := carfile.Stock()
	forces, shares := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, lib)
		c.Check.Column = column.JohnsonEuler.String()
		travels := rapid.IntRange(3, 30).Draw(t, "travels")
		table, err := holes.Search(context.Background(), c, lib, holes.Options{Travels: travels})
		if err != nil {
			t.Fatal(err)
		}
		for _, got := range some(t, table, 5) {
			if got.Refused {
				continue
			}
			b := newSecond(c, got.Holes)
			closeTo(t, "droop the bars close to", got.Closure[0], b.at(-10), b.endTolerance())
			closeTo(t, "bump the bars close to", got.Closure[1], b.at(10), b.endTolerance())
			b.at(0)
			ic, apart := b.center()
			if apart > 1e-5 {
				// The center is as exact as the bars' lines are apart.
				closeTo(t, "IC x", got.InstantCenter.X, ic.X, 1e-12/(apart*apart))
				closeTo(t, "IC z", got.InstantCenter.Y, ic.Y, 1e-12/(apart*apart))
			}
			closeTo(t, "upper length", got.Length[0], b.length[0], 1e-12)
			closeTo(t, "lower length", got.Length[1], b.length[1], 1e-12)
			a, b2 := compareTravel(t, b, got, travels, lib)
			forces, shares = forces+a, shares+b2
		}
	})
	if forces < 200 || shares < 100 {
		t.Errorf("forces of only %d combinations were compared, shares of %d", forces, shares)
	}
}

// compareTravel compares what is the least or most over the travel, and counts
// the comparisons of forces and of shares.
func compareTravel(t *rapid.T, b *second, got *holes.Combination, travels int, lib stock.Library) (forces, shares int) {
	antiSquat := [2]float64{math.Inf(1), math.Inf(-1)}
	turn := antiSquat
	var peak [2][2][2]float64
	parallel, held, largest := false, math.Inf(1), 0.0
	list := spaced(b.c.Springs.RearDroop, b.c.Springs.RearBump, travels)
	if len(list) != travels {
		t.Fatalf("%d travels", len(list))
	}
	for _, q := range list {
		if b.at(q) != q {
			t.Fatalf("travel %v is not reached", q)
		}
		turn[0], turn[1] = math.Min(turn[0], b.turn), math.Max(turn[1], b.turn)
		ic, apart := b.center()
		_, wheelbase := b.ground()
		parallel = parallel || apart < 1e-4 || math.Abs(ic.X) < 1e-2
		squat := ic.Y / ic.X * wheelbase / b.cg().Y
		antiSquat[0], antiSquat[1] = math.Min(antiSquat[0], squat), math.Max(antiSquat[1], squat)
		if q == 0 && !parallel {
			closeTo(t, "anti-squat", got.AntiSquat, squat, 1e-7)
		}
		tension, hold := b.forces()
		held = math.Min(held, hold)
		for p := range tension {
			for k, force := range tension[p] {
				peak[p][k][column.Pull] = math.Max(peak[p][k][column.Pull], force)
				peak[p][k][column.Push] = math.Max(peak[p][k][column.Push], -force)
				largest = math.Max(largest, math.Abs(force))
			}
		}
	}
	closeTo(t, "least turn", got.PinionRange[0], turn[0], 1e-9)
	closeTo(t, "most turn", got.PinionRange[1], turn[1], 1e-9)
	if !parallel {
		closeTo(t, "least anti-squat", got.AntiSquatRange[0], antiSquat[0], 1e-6)
		closeTo(t, "most anti-squat", got.AntiSquatRange[1], antiSquat[1], 1e-6)
	}
	if held < 1e-3 {
		return 0, 0
	}
	for p := range peak {
		push, pull, ok := b.allowable(p, lib)
		most := [2]float64{}
		for _, k := range analysis.Cases {
			for _, d := range column.Directions {
				closeTo(t, "peak over the largest force", got.Peak[p][k][d]/largest, peak[p][k][d]/largest, 1e-8/held)
				most[d] = math.Max(most[d], peak[p][k][d])
			}
		}
		if ok {
			closeTo(t, "share in push", got.Share[p][column.Push], most[column.Push]/push, 1e-6)
			closeTo(t, "share in pull", got.Share[p][column.Pull], most[column.Pull]/pull, 1e-6)
			shares++
		}
	}
	return 1, shares
}
