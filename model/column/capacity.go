package column

import (
	"fmt"
	"math"

	"bowline/model/stock"
)

// Defaults.
const (
	DefaultFactor      = 2.0   // Safety factor, strength over allowable load [1]: common practice.
	DefaultCrookedness = 0.001 // Initial bow over length [1]: AISC 360-22, Commentary C2.
)

// Options says how a bar is judged.
type Options struct {
	Curve       Curve
	Crookedness float64 // Initial bow over length, 0 for a straight bar [1].
	Factor      float64 // Safety factor that strengths are divided by, 1 or more [1].
}

// Limit is the load a bar may carry in one direction.
type Limit struct {
	Mode              // The mode that governs.
	Allowable float64 // Its strength over the safety factor [N].
}

// Strengths are the loads at failure that the ways to fail follow from, without a
// safety factor. In a member of several segments the weakest governs each.
type Strengths struct {
	Squash     float64 // Yield of the gross section, Fy·A [N].
	Welded     float64 // Yield in tension beside the welds at its ends, Fyw·A [N]; 0 without an as-welded yield.
	Euler      float64 // Elastic buckling [N].
	Johnson    float64 // Johnson's parabola up to the transition, Euler beyond [N].
	FirstYield float64 // First yield under the initial bow [N].
	Critical   float64 // By the chosen curve [N].
	Wall       Wall    // The wall nearest to its limit.

	curve Curve
}

// Result is what a bar can carry.
type Result struct {
	Member      Member  // The bar, not to be changed.
	Length      float64 // Ball center to ball center [m].
	Slenderness float64 // L/ρ of the segment with the least radius of gyration [1].
	Transition  float64 // Slenderness where Johnson's parabola meets Euler's curve, of the same segment [1].
	InitialBow  float64 // Crookedness times length [m].
	Strengths
	Push Limit
	Pull Limit

	modes modes
}

// Modes lists every way the bar can fail that was looked at.
func (r *Result) Modes() []Mode { return r.modes.list[:r.modes.count] }

// Bow returns the bow at mid-length [m] and the stress in the most stressed
// fiber [Pa] (compression positive) under a push [N]; a negative push is a pull.
// It refuses a push that reaches the Euler load, with Buckled.
func (r *Result) Bow(push float64) (bow, stress float64, err error) {
	bow, err = Bow(r.InitialBow, push, r.Euler)
	if err != nil {
		return 0, 0, err
	}
	return bow, r.Member.stress(push, bow), nil
}

// Capacity returns what a bar can carry. In push it is the least of the chosen
// curve, first yield under the initial bow and, where the wall is slender, the
// curve's strength on the effective area of AISC 360-22 section E7.2, all of the
// material as chosen, which the middle of the tube is made of. In pull it is the
// yield load Fy·A of the gross section or, where less, that beside the welds at the
// ends, Fyw·A with the material's as-welded yield; a material without one counts as
// chosen there too. Each is divided by the safety factor.
//
// It refuses, all at once as Problems: what Member.Check refuses, crookedness
// that isn't finite or below 0, a factor that isn't finite or below 1, a wall too
// thin for any formula (OD over wall beyond 0.45·E/Fy), a curve that doesn't hold
// for the bar or the material, segments of unlike bending stiffness E·I, whose
// buckling load has no closed form, and sizes so extreme that a strength is no
// longer a finite number.
func Capacity(member Member, options Options) (Result, error) {
	if wrong := inputProblems(member, options); wrong != nil {
		return Result{}, wrong
	}
	r := Result{Member: member}
	r.strengths(options)
	if wrong := rangeProblems(options, &r); wrong != nil {
		return Result{}, wrong
	}
	r.modes.collect(r.Strengths)
	r.Push = limit(r.modes.least(Push), options.Factor)
	r.Pull = limit(r.modes.least(Pull), options.Factor)
	return r, nil
}

func limit(mode Mode, factor float64) Limit {
	return Limit{Mode: mode, Allowable: mode.Strength / factor}
}

// strengths computes everything but the modes. The weakest segment governs each
// strength.
func (r *Result) strengths(options Options) {
	r.curve = options.Curve
	r.Length = r.Member.Length()
	r.Euler = r.Member.euler()
	r.InitialBow = options.Crookedness * r.Length

	r.Squash, r.FirstYield = math.Inf(1), math.Inf(1)
	handbook, welded := math.Inf(1), math.Inf(1)
	from := 0.0
	for i := range r.Member {
		segment := &r.Member[i]
		m, s := &segment.Material, segment.section()
		if slenderness := r.Length / s.Gyration; slenderness > r.Slenderness {
			r.Slenderness, r.Transition = slenderness, Transition(m.E, m.Yield)
		}
		if wall := CheckWall(s, m.E, m.Yield); i == 0 || wall.Ratio/wall.Limit > r.Wall.Ratio/r.Wall.Limit {
			r.Wall = wall
		}
		squash := m.Yield * s.Area
		bow := r.InitialBow * shape(from, from+segment.Length, r.Length)
		r.Squash = min(r.Squash, squash)
		if m.WeldedYield > 0 {
			welded = min(welded, m.WeldedYield*s.Area)
		}
		r.FirstYield = min(r.FirstYield, FirstYield(squash, r.Euler, bow*s.C/(s.Gyration*s.Gyration)))
		if options.Curve == HandbookCurve {
			handbook = min(handbook, s.Area*Handbook(m.Handbook, r.Length/s.Gyration))
		}
		from += segment.Length
	}
	if !math.IsInf(welded, 1) {
		r.Welded = welded
	}
	r.Johnson = Johnson(r.Squash, r.Euler)
	switch options.Curve {
	case JohnsonEuler:
		r.Critical = r.Johnson
	case PerryCurve:
		r.Critical = r.FirstYield
	case AISCCurve:
		r.Critical = AISC(r.Squash, r.Euler)
	case HandbookCurve:
		r.Critical = handbook
	}
}

// inputProblems checks each number by itself.
func inputProblems(member Member, options Options) Problems {
	wrong := member.problems()
	if !finitePositive(options.Crookedness) && options.Crookedness != 0 {
		wrong.add("crookedness", "is not a finite number of 0 or more", "0.001 is common")
	}
	if !finitePositive(options.Factor) || options.Factor < 1 {
		wrong.add("factor", "is not a finite number of 1 or more", "2 is common")
	}
	if !options.Curve.valid() {
		wrong.add("column", "is unknown", `choose "johnson-euler"`)
	}
	return wrong
}

// rangeProblems checks the numbers against the ranges of the formulas.
func rangeProblems(options Options, r *Result) Problems {
	var wrong Problems
	for i := range r.Member {
		wrong = append(wrong, r.Member.located(i, segmentProblems(&r.Member[i], options, r.Length))...)
	}
	if !r.Member.prismatic() {
		wrong.add("segments", "differ in bending stiffness, and their buckling load has no closed form", "give all of them one section and one modulus")
	}
	if len(wrong) > 0 {
		return wrong
	}
	if !r.finite() {
		wrong.add("length", "and section are too extreme for a strength to be computed", "give the sizes of a bar")
	}
	return wrong
}

// segmentProblems checks one segment of a member of a length.
func segmentProblems(segment *Segment, options Options, length float64) Problems {
	var wrong Problems
	m, s := &segment.Material, segment.section()
	wall := CheckWall(s, m.E, m.Yield)
	if wall.Ratio > wall.Greatest {
		wrong.add("wall", fmt.Sprintf("is too thin: OD over wall is %.0f, and no formula holds beyond %.0f", wall.Ratio, wall.Greatest), "choose a thicker wall")
	}
	if options.Curve == HandbookCurve {
		wrong.handbook(m, length/s.Gyration, wall.Ratio)
	}
	return wrong
}

// finite reports whether no number has left the range of floating point.
func (r *Result) finite() bool {
	return finitePositive(r.Slenderness) && finitePositive(r.Transition) && finitePositive(r.Wall.Greatest) &&
		finitePositive(r.Euler) && finitePositive(r.Johnson) && finitePositive(r.FirstYield) && finitePositive(r.Critical) &&
		!math.IsInf(r.InitialBow, 1) && finitePositive(r.Squash) && !math.IsInf(r.Welded, 1)
}

// handbook checks whether the material's column formula holds for a slenderness
// and an OD over wall.
func (p *Problems) handbook(m *stock.Material, slenderness, ratio float64) {
	const instead = `choose "johnson-euler"`
	h := m.Handbook
	if !h.Given() {
		p.add("column", fmt.Sprintf("is %q, and %q has no such formula", HandbookCurve, m.Name), "choose normalized 4130 or \"johnson-euler\"")
		return
	}
	if !(slenderness <= h.MaxSlenderness) {
		p.add("column", fmt.Sprintf("is %q, which holds to a slenderness of %g; this bar has %.1f", HandbookCurve, h.MaxSlenderness, slenderness), instead)
	}
	if !(ratio < h.MaxDiameterToWall) {
		p.add("column", fmt.Sprintf("is %q, which holds for an OD below %g walls; this tube has %.1f", HandbookCurve, h.MaxDiameterToWall, ratio), instead)
	}
}
