package column

import (
	"fmt"
	"math"

	"bowline/model/stock"
)

// Segment is a part of a member that has one round section and one material.
type Segment struct {
	Length   float64 // Along the member [m].
	OD       float64 // Outside diameter [m].
	Wall     float64 // Wall thickness [m]; half the OD is solid.
	Material stock.Material
}

// section returns the cross section.
func (s *Segment) section() Section { return section(s.OD, s.Wall) }

// bending returns the bending stiffness E·I [N·m²].
func (s *Segment) bending() float64 { return s.Material.E * s.section().I }

// Member is one bar from ball center to ball center: its segments in order, end
// to end on one line, pinned at both ends. One of no segments is no bar.
type Member []Segment

// Length returns the length from ball center to ball center, Σ L [m].
func (m Member) Length() float64 {
	sum := 0.0
	for i := range m {
		sum += m[i].Length
	}
	return sum
}

// Flexibility returns how much the member stretches over its tension,
// Σ L/(E·A) [m/N]: its segments are springs in series, of stiffness E·A/L each.
func (m Member) Flexibility() float64 {
	sum := 0.0
	for i := range m {
		s := &m[i]
		sum += s.Length / (s.Material.E * s.section().Area)
	}
	return sum
}

// Check returns the Problems of the member's numbers, all at once, or nil:
// no segments, sizes, moduli and yield strengths that aren't finite and positive
// (an as-welded one may be 0), and a wall of more than half the OD.
func (m Member) Check() error {
	if wrong := m.problems(); wrong != nil {
		return wrong
	}
	return nil
}

func (m Member) problems() Problems {
	var wrong Problems
	if len(m) == 0 {
		wrong.add("length", "is not given: there is no segment", "give one segment or more")
	}
	for i := range m {
		s := &m[i]
		found := sectionProblems(s.OD, s.Wall)
		if m := &s.Material; !finitePositive(m.E) || !finitePositive(m.Yield) || m.WeldedYield != 0 && !finitePositive(m.WeldedYield) {
			found.add("material", fmt.Sprintf("%q has a modulus or yield strength that is not a finite number above 0", s.Material.Name), "choose a material of the table")
		}
		found.positive("length", s.Length)
		wrong = append(wrong, m.located(i, found)...)
	}
	return wrong
}

// located says in which segment the problems are, where there are several.
func (m Member) located(segment int, found Problems) Problems {
	if len(m) > 1 {
		for i := range found {
			found[i].Wrong = fmt.Sprintf("of segment %d of %d ", segment+1, len(m)) + found[i].Wrong
		}
	}
	return found
}

// The elastic buckling load and the buckled shape below are closed forms, which
// hold for one bending stiffness from end to end.

// prismatic reports whether the bending stiffness is the same in all segments.
func (m Member) prismatic() bool {
	for i := range m {
		if m[i].bending() != m[0].bending() {
			return false
		}
	}
	return true
}

// euler returns the elastic buckling load of a prismatic member [N].
func (m Member) euler() float64 {
	return Euler(m[0].Material.E, m[0].section().I, m.Length())
}

// shape returns the greatest ordinate of the buckled shape of a prismatic member
// of a length between two places along it [m], over that at mid-length [1]: a
// half sine.
func shape(from, to, length float64) float64 {
	if middle := length / 2; from <= middle && middle <= to {
		return 1
	}
	return math.Max(math.Sin(math.Pi*from/length), math.Sin(math.Pi*to/length))
}

// stress returns the largest stress in any segment under a push [N] and a bow at
// mid-length [m], as BowStress does [Pa].
func (m Member) stress(push, bow float64) float64 {
	most, from, length := 0.0, 0.0, m.Length()
	for i := range m {
		to := from + m[i].Length
		stress := BowStress(m[i].section(), push, bow*shape(from, to, length))
		if i == 0 || math.Abs(stress) > math.Abs(most) {
			most = stress
		}
		from = to
	}
	return most
}
