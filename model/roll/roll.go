package roll

import (
	"errors"
	"fmt"
	"math"

	"bowline/model/launch"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// ErrNoPose is returned where the linkage finds no position near the last one, since
// travel or roll are beyond what its bars reach.
var ErrNoPose = errors.New("the bars do not reach")

// Linkage is bars and locator between chassis and axle.
type Linkage struct {
	rods   [launch.RodCount]launch.Rod
	bolts  [len(launch.Bars)]r3.Vec // of both ends of a bar, at ride height
	height float64                  // of the axle centerline at ride height [m]
}

// New returns the linkage of a launch's parameters, without preload.
func New(p *launch.Parameters) *Linkage {
	l := &Linkage{rods: p.Rods, height: p.Axle.Height}
	for k, bar := range launch.Bars {
		rod := &l.rods[bar]
		along := r3.Sub(rod.Chassis, r3.Add(rod.Housing, r3.Vec{Z: l.height}))
		// A bar that stands upright has no plan; its bolt lies across the car.
		if l.bolts[k] = r3.Cross(r3.Vec{Z: 1}, along); r3.Norm(l.bolts[k]) == 0 {
			l.bolts[k] = r3.Vec{Y: 1}
		}
		l.bolts[k] = r3.Unit(l.bolts[k])
	}
	return l
}

// Freedoms of the axle, in the order of a placement. Travel and roll are given.
const (
	foreAft = iota
	sideways
	pitch
	yaw
	rolling

	free  = rolling
	count = rolling + 1
)

// placement is where the axle is: fore-aft and sideways shift [m], pitch, yaw and
// roll [rad], at a travel [m].
type placement struct {
	at     [count]float64
	travel float64
}

// turn returns the axle's rotation: yaw after roll after pitch about its own axis, so
// that the roll is the angle of its centerline above the chassis's x-y plane.
func (p *placement) turn() r3.Mat {
	sp, cp := math.Sincos(-p.at[pitch]) // nose-up turns against +y
	sr, cr := math.Sincos(p.at[rolling])
	sy, cy := math.Sincos(p.at[yaw])
	var rolls, pitches, yaws, m, all r3.Mat
	pitches = *r3.NewMat([]float64{cp, 0, sp, 0, 1, 0, -sp, 0, cp})
	rolls = *r3.NewMat([]float64{1, 0, 0, 0, cr, -sr, 0, sr, cr})
	yaws = *r3.NewMat([]float64{cy, -sy, 0, sy, cy, 0, 0, 0, 1})
	m.Mul(&rolls, &pitches)
	all.Mul(&yaws, &m)
	return all
}

// Pose is the linkage at a travel and a roll.
type Pose struct {
	Travel, Roll float64                      // of the axle [m, rad]
	Shift, Aside float64                      // of the middle of the centerline, forward and to the left [m]
	Pitch, Yaw   float64                      // of the axle, nose-up and to the left [rad]
	Tension      [launch.RodCount]float64     // pull positive [N]
	Torque       float64                      // that holds the roll, about the axis of Roll [N·m]
	Misalignment [len(launch.Bars)][2]float64 // of the rod ends by bar, at the chassis and at the housing [rad]
	placed       placement
}

// stretches returns by how much each rod is longer than at ride height [m], and how
// that changes with the axle's freedoms.
func (l *Linkage) stretches(p *placement) (stretch [launch.RodCount]float64, change [launch.RodCount][count]float64) {
	turn := p.turn()
	// The axes that the angles turn about.
	sy, cy := math.Sincos(p.at[yaw])
	about := [count]r3.Vec{pitch: r3.Scale(-1, turn.MulVec(r3.Vec{Y: 1})), yaw: {Z: 1}, rolling: {X: cy, Y: sy}}
	for k := range l.rods {
		rod := &l.rods[k]
		arm := turn.MulVec(rod.Housing)
		foot := r3.Add(r3.Vec{X: p.at[foreAft], Y: p.at[sideways], Z: l.height + p.travel}, arm)
		way := r3.Sub(foot, rod.Chassis)
		length := r3.Norm(way)
		way = r3.Scale(1/length, way)
		stretch[k] = length - rod.Length
		change[k][foreAft], change[k][sideways] = way.X, way.Y
		for _, angle := range []int{pitch, yaw, rolling} {
			change[k][angle] = r3.Dot(way, r3.Cross(about[angle], arm))
		}
	}
	return stretch, change
}

const (
	// settled is the last step of Newton's method [m, rad].
	settled = 1e-12
	// maxSteps bounds its steps to one pose.
	maxSteps = 50
	// travelStep and rollStep are the largest steps from one pose to the next, so that
	// each lies near the last [m, rad].
	travelStep, rollStep = 0.02, 0.03
	// reaching is the greatest step of Newton's method that does not mean that the
	// bars are beyond their reach [m, rad].
	reaching = 0.5
)

// relax moves the axle's free freedoms to least energy, by Gauss and Newton: the
// lengths' second derivatives count for nothing where bars hardly stretch.
func (l *Linkage) relax(p *placement) error {
	for range maxSteps {
		stretch, change := l.stretches(p)
		j, r := mat.NewDense(launch.RodCount, free, nil), mat.NewVecDense(launch.RodCount, nil)
		for k := range l.rods {
			weight := math.Sqrt(l.rods[k].Rate)
			r.SetVec(k, -weight*stretch[k])
			for f := range free {
				j.Set(k, f, weight*change[k][f])
			}
		}
		var step mat.VecDense
		if err := step.SolveVec(j, r); err != nil {
			if _, poor := err.(mat.Condition); !poor {
				return ErrNoPose
			}
		}
		size := mat.Norm(&step, math.Inf(1))
		if !(size < reaching) {
			return ErrNoPose
		}
		for f := range free {
			p.at[f] += step.AtVec(f)
		}
		if size < settled {
			return nil
		}
	}
	return ErrNoPose
}

// Pose returns the linkage at a travel [m] and a roll of the axle [rad], reached from
// ride height in small steps. It fails with ErrNoPose.
func (l *Linkage) Pose(travel, roll float64) (Pose, error) {
	var p placement
	steps := int(math.Ceil(math.Max(math.Abs(travel)/travelStep, math.Abs(roll)/rollStep)))
	for n := 0; n <= steps; n++ {
		part := 1.0
		if steps > 0 {
			part = float64(n) / float64(steps)
		}
		p.travel, p.at[rolling] = part*travel, part*roll
		if err := l.relax(&p); err != nil {
			return Pose{}, fmt.Errorf("at a travel of %v m and a roll of %v rad: %w", p.travel, p.at[rolling], err)
		}
	}
	return l.pose(&p), nil
}

// pose collects what follows from a placement.
func (l *Linkage) pose(p *placement) Pose {
	stretch, change := l.stretches(p)
	pose := Pose{
		Travel: p.travel, Roll: p.at[rolling], Shift: p.at[foreAft], Aside: p.at[sideways],
		Pitch: p.at[pitch], Yaw: p.at[yaw], placed: *p,
	}
	for k := range l.rods {
		pose.Tension[k] = l.rods[k].Rate * stretch[k]
		pose.Torque += pose.Tension[k] * change[k][rolling]
	}
	turn := p.turn()
	for k, bar := range launch.Bars {
		rod := &l.rods[bar]
		foot := r3.Add(r3.Vec{X: p.at[foreAft], Y: p.at[sideways], Z: l.height + p.travel}, turn.MulVec(rod.Housing))
		along := r3.Unit(r3.Sub(rod.Chassis, foot))
		for end, bolt := range [2]r3.Vec{l.bolts[k], turn.MulVec(l.bolts[k])} {
			pose.Misalignment[k][end] = math.Asin(math.Min(1, math.Abs(r3.Dot(along, bolt))))
		}
	}
	return pose
}

// Stiffness returns the linkage's own roll stiffness at a travel [m], the torque over
// a small roll: the second derivative of the least energy [N·m/rad]. It fails with
// ErrNoPose.
func (l *Linkage) Stiffness(travel float64) (float64, error) {
	at, err := l.Pose(travel, 0)
	if err != nil {
		return 0, err
	}
	// What is left of the roll's part in the rods' stretches, each times √k, after the
	// other freedoms have taken up what they can.
	_, change := l.stretches(&at.placed)
	j, r := mat.NewDense(launch.RodCount, free, nil), mat.NewVecDense(launch.RodCount, nil)
	for k := range l.rods {
		weight := math.Sqrt(l.rods[k].Rate)
		r.SetVec(k, weight*change[k][rolling])
		for f := range free {
			j.Set(k, f, weight*change[k][f])
		}
	}
	var taken, left mat.VecDense
	if err := taken.SolveVec(j, r); err != nil {
		if _, poor := err.(mat.Condition); !poor {
			return 0, ErrNoPose
		}
	}
	left.MulVec(j, &taken)
	left.SubVec(r, &left)
	return mat.Dot(&left, &left), nil
}

// End names a rod end.
type End struct {
	Bar     launch.RodID
	Housing bool // that on the housing; otherwise that on the chassis
}

// Limits are the greatest misalignments of the rod ends by bar [rad]; 0: not checked.
type Limits [len(launch.Bars)]float64

// String names the end, as in "lower right bar, housing".
func (e End) String() string {
	if e.Housing {
		return e.Bar.String() + ", housing"
	}
	return e.Bar.String() + ", chassis"
}

const (
	// limitStep is the roll from one pose to the next while the limit is looked for,
	// and maxRoll the greatest that is tried [rad].
	limitStep, maxRoll = math.Pi / 180 / 2, math.Pi / 180 * 45
	// limitBisections narrow a step down to less than a ten-thousandth of a degree.
	limitBisections = 14
)

// Limit returns how far the axle can roll at a travel [m], to the side where it goes
// less far, before a rod end comes to its limit, which end that is and to which side:
// above zero with the left side up [rad]. It reports false when no end has a limit, or
// none comes to it before the bars' reach ends or the axle has rolled by 45°.
func (l *Linkage) Limit(travel float64, limits Limits) (roll float64, end End, ok bool) {
	for _, side := range []float64{1, -1} {
		if angle, at, found := l.limit(travel, side, limits); found && (!ok || angle < math.Abs(roll)) {
			roll, end, ok = side*angle, at, true
		}
	}
	return roll, end, ok
}

// limit is Limit to one side.
func (l *Linkage) limit(travel, side float64, limits Limits) (float64, End, bool) {
	if limits == (Limits{}) {
		return 0, End{}, false
	}
	start, err := l.Pose(travel, 0)
	if err != nil {
		return 0, End{}, false
	}
	if end, over := start.over(limits); over {
		return 0, end, true
	}
	last := start.placed
	rolled := func(angle float64) (Pose, bool) {
		p := last
		p.at[rolling] = side * angle
		if l.relax(&p) != nil {
			return Pose{}, false
		}
		return l.pose(&p), true
	}
	for angle := limitStep; angle <= maxRoll; angle += limitStep {
		pose, ok := rolled(angle)
		if !ok {
			return 0, End{}, false
		}
		end, over := pose.over(limits)
		if !over {
			last = pose.placed
			continue
		}
		inside, outside := angle-limitStep, angle
		for range limitBisections {
			middle := (inside + outside) / 2
			if at, ok := rolled(middle); ok {
				if e, over := at.over(limits); over {
					outside, end = middle, e
				} else {
					inside = middle
				}
			}
		}
		return outside, end, true
	}
	return 0, End{}, false
}

// over returns the rod end that is farthest beyond its limit, and whether one is.
func (p *Pose) over(limits Limits) (worst End, over bool) {
	most := 0.0
	for k, bar := range launch.Bars {
		for end, angle := range p.Misalignment[k] {
			if beyond := angle - limits[k]; limits[k] > 0 && beyond >= most {
				most, worst, over = beyond, End{bar, end == 1}, true
			}
		}
	}
	return worst, over
}
