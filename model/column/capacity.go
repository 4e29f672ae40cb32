package column

import (
	"fmt"
	"math"

	"bowline/model/stock"
)

// What a shop takes unless it knows better.
const (
	DefaultFactor      = 2.0   // Strength over allowable load [1].
	DefaultCrookedness = 0.001 // Initial bow over length [1]: AISC 360-22, Commentary C2.
)

// Bar is one bar: a round tube between two ball joints.
type Bar struct {
	OD       float64 // Outside diameter [m].
	Wall     float64 // Wall thickness [m]; half the OD is a solid rod.
	Material stock.Material
	Length   float64 // Pin to pin [m].
}

// Options says how a bar is judged.
type Options struct {
	Curve       Curve
	Crookedness float64 // Initial bow over length, 0 for a straight bar [1].
	Factor      float64 // Strengths are divided by this, 1 or more [1].
}

// Limit is the load a bar may carry in one direction.
type Limit struct {
	Mode              // The mode that governs.
	Allowable float64 // Its strength over the factor [N].
}

// Result is what a bar can carry. Strengths are loads at failure, without the
// factor.
type Result struct {
	Section     Section
	Slenderness float64 // Length over radius of gyration, L/ρ [1].
	Transition  float64 // Slenderness where Johnson's parabola meets Euler's curve [1].
	Euler       float64 // Elastic buckling [N].
	Johnson     float64 // Johnson's parabola up to the transition, Euler beyond [N].
	FirstYield  float64 // First yield under the initial bow [N].
	Critical    float64 // Strength by the chosen curve [N].
	InitialBow  float64 // Crookedness times length [m].
	Wall        Wall
	Push        Limit
	Pull        Limit

	squash float64 // Fy·A [N].
	modes  modes
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
	return bow, BowStress(r.Section, push, bow), nil
}

// Capacity returns what a bar can carry. In push it is the least of the chosen
// curve, first yield under the initial bow and, where the wall is slender, the
// curve's strength on the effective area of AISC 360-22 section E7.2; in pull the
// yield load Fy·A of the gross section in the material as chosen. Each is divided
// by the factor.
//
// It refuses, all at once as Problems: numbers that aren't finite and positive
// (crookedness may be 0), a wall of more than half the OD, a factor below 1, a
// wall too thin for any formula (OD over wall beyond 0.45·E/Fy), a curve that
// doesn't hold for the bar or the material, and sizes so extreme that a strength
// is no longer a finite number.
func Capacity(bar Bar, options Options) (Result, error) {
	if wrong := inputProblems(&bar, options); wrong != nil {
		return Result{}, wrong
	}
	var r Result
	r.strengths(&bar, options)
	if wrong := rangeProblems(&bar, options, &r); wrong != nil {
		return Result{}, wrong
	}
	r.collect(options.Curve)
	r.Push = limit(r.modes.least(Push), options.Factor)
	r.Pull = limit(r.modes.least(Pull), options.Factor)
	return r, nil
}

func limit(mode Mode, factor float64) Limit {
	return Limit{Mode: mode, Allowable: mode.Strength / factor}
}

// strengths computes everything but the modes.
func (r *Result) strengths(bar *Bar, options Options) {
	m := &bar.Material
	s := section(bar.OD, bar.Wall)
	r.Section = s
	r.Slenderness = bar.Length / s.Gyration
	r.Transition = Transition(m.E, m.Yield)
	r.Euler = Euler(m.E, s.I, bar.Length)
	r.InitialBow = options.Crookedness * bar.Length
	r.Wall = CheckWall(s, m.E, m.Yield)

	r.squash = m.Yield * s.Area
	r.Johnson = Johnson(r.squash, r.Euler)
	r.FirstYield = FirstYield(r.squash, r.Euler, r.InitialBow*s.C/(s.Gyration*s.Gyration))
	switch options.Curve {
	case JohnsonEuler:
		r.Critical = r.Johnson
	case PerryCurve:
		r.Critical = r.FirstYield
	case AISCCurve:
		r.Critical = AISC(r.squash, r.Euler)
	case HandbookCurve:
		r.Critical = s.Area * Handbook(m.Handbook, r.Slenderness)
	}
}

// collect lists the modes.
func (r *Result) collect(curve Curve) {
	if curve != PerryCurve {
		r.modes.add(buckling(curve, r.squash, r.Euler), Push, r.Critical)
	}
	r.modes.add(BowYield, Push, r.FirstYield)
	if r.Wall.Slender() {
		r.modes.add(LocalBuckling, Push, r.Wall.Effective*r.Critical)
	}
	r.modes.add(TubeYield, Pull, r.squash)
}

// buckling names the failure that a curve stands for.
func buckling(curve Curve, squash, euler float64) Kind {
	switch {
	case curve == AISCCurve:
		return AISCBuckling
	case curve == HandbookCurve:
		return HandbookBuckling
	case shortColumn(squash, euler):
		return JohnsonBuckling
	default:
		return EulerBuckling
	}
}

// inputProblems checks each number by itself.
func inputProblems(bar *Bar, options Options) Problems {
	wrong := sectionProblems(bar.OD, bar.Wall)
	if !finitePositive(bar.Material.E) || !finitePositive(bar.Material.Yield) {
		wrong.add("material", "has a modulus or yield strength that is not a finite number above 0", "choose a material of the table")
	}
	wrong.positive("length", bar.Length)
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
func rangeProblems(bar *Bar, options Options, r *Result) Problems {
	var wrong Problems
	if r.Wall.Ratio > r.Wall.Greatest {
		wrong.add("wall", fmt.Sprintf("is too thin: OD over wall is %.0f, and no formula holds beyond %.0f", r.Wall.Ratio, r.Wall.Greatest), "choose a thicker wall")
	}
	if options.Curve == HandbookCurve {
		wrong.handbook(&bar.Material, r)
	}
	if len(wrong) > 0 {
		return wrong
	}
	if !r.finite() {
		wrong.add("length", "and section are too extreme for a strength to be computed", "give the sizes of a bar")
	}
	return wrong
}

// finite reports whether no number has left the range of floating point.
func (r *Result) finite() bool {
	return finitePositive(r.Slenderness) && finitePositive(r.Transition) && finitePositive(r.Wall.Greatest) &&
		finitePositive(r.Euler) && finitePositive(r.Johnson) && finitePositive(r.FirstYield) && finitePositive(r.Critical) &&
		!math.IsInf(r.InitialBow, 1) && finitePositive(r.squash)
}

// handbook checks whether the material's column formula holds for the bar.
func (p *Problems) handbook(m *stock.Material, r *Result) {
	const instead = `choose "johnson-euler"`
	h := m.Handbook
	if !h.Given() {
		p.add("column", fmt.Sprintf("is %q, and %q has no such formula", HandbookCurve, m.Name), "choose normalized 4130 or \"johnson-euler\"")
		return
	}
	if !(r.Slenderness <= h.MaxSlenderness) {
		p.add("column", fmt.Sprintf("is %q, which holds to a slenderness of %g; this bar has %.1f", HandbookCurve, h.MaxSlenderness, r.Slenderness), instead)
	}
	if !(r.Wall.Ratio < h.MaxDiameterToWall) {
		p.add("column", fmt.Sprintf("is %q, which holds for an OD below %g walls; this tube has %.1f", HandbookCurve, h.MaxDiameterToWall, r.Wall.Ratio), instead)
	}
}
