// Package column finds what a four-link bar can carry: as a pinned column in
// push and by its sections in pull. A Member is the bar, its segments in order.
//
// Strengths and pushes are magnitudes [N] or, where a formula says so, stresses
// [Pa]. Nothing here knows a safety factor but Capacity.
package column

import "math"

// Section is the cross section of a round tube. A wall of half the OD is a
// solid rod.
type Section struct {
	OD       float64 // Outside diameter [m].
	Wall     float64 // Wall thickness [m].
	Area     float64 // A = π·t·(D − t) [m²].
	I        float64 // Second moment of area about a diameter, A·(D² + d²)/16 [m⁴].
	Gyration float64 // Radius of gyration ρ = √(I/A) = √(D² + d²)/4 [m].
	C        float64 // Center to outermost fiber, D/2 [m].
}

// NewSection returns the section of a round tube from outside diameter and wall
// [m]. It refuses numbers that aren't finite and positive, and a wall of more
// than half the OD.
func NewSection(od, wall float64) (Section, error) {
	if wrong := sectionProblems(od, wall); wrong != nil {
		return Section{}, wrong
	}
	return section(od, wall), nil
}

func section(od, wall float64) Section {
	id := od - 2*wall
	s := Section{OD: od, Wall: wall, C: od / 2}
	s.Area = math.Pi * wall * (od - wall)
	s.Gyration = math.Sqrt(od*od+id*id) / 4
	s.I = s.Area * s.Gyration * s.Gyration
	return s
}

func sectionProblems(od, wall float64) Problems {
	var wrong Problems
	wrong.positive("od", od)
	wrong.positive("wall", wall)
	if len(wrong) == 0 && wall > od/2 {
		wrong.add("wall", "is more than half the OD", "half the OD is a solid rod, a tube has less")
	}
	return wrong
}

// Wall compares a tube's OD over wall with the limits for round tube in
// compression of AISC 360-22, section E7.2.
type Wall struct {
	Ratio     float64 // OD over wall, D/t [1].
	Limit     float64 // 0.11·E/Fy: up to here the wall does not buckle before the tube yields [1].
	Greatest  float64 // 0.45·E/Fy: beyond it there is no formula [1].
	Effective float64 // Effective over gross area: 1 up to the limit, 0 beyond the greatest [1].
}

// Slender reports whether the wall is beyond the limit.
func (w Wall) Slender() bool { return w.Ratio > w.Limit }

// CheckWall compares a section's wall with the limits of a material of modulus
// e and yield strength yield [Pa]. The effective area is
// [0.038·E/(Fy·D/t) + 2/3]·A, and never more than A.
func CheckWall(s Section, e, yield float64) Wall {
	w := Wall{Ratio: s.OD / s.Wall, Limit: 0.11 * e / yield, Greatest: 0.45 * e / yield, Effective: 1}
	switch {
	case w.Ratio > w.Greatest:
		w.Effective = 0
	case w.Ratio > w.Limit:
		w.Effective = math.Min(1, 0.038*e/(yield*w.Ratio)+2./3)
	}
	return w
}
