package stock

import (
	"fmt"
	"math"
)

// Problem is one thing wrong with a table.
type Problem struct {
	// Field is the entry's path with the names of the table files, counted
	// from 0, such as "material.2.yield".
	Field   string
	Message string // What is wrong and what would be right.
}

// Error returns the field and what is wrong with it.
func (p Problem) Error() string { return p.Field + ": " + p.Message }

// Validate returns everything wrong with the tables: names missing or given
// twice, numbers that aren't finite and positive, an ultimate strength below
// the yield strength, a wall of half the OD or more, and a handbook formula
// that is incomplete or has no strength left at its transition.
func (l Library) Validate() []Problem {
	var found problems
	found.names("material", l.MaterialNames())
	for i, m := range l.Materials {
		found.material(fmt.Sprintf("material.%d", i), m)
	}
	found.names("tube", l.TubeNames())
	for i, t := range l.Tubes {
		found.tube(fmt.Sprintf("tube.%d", i), t)
	}
	return found
}

type problems []Problem

func (p *problems) add(path, field, message string) {
	*p = append(*p, Problem{Field: path + "." + field, Message: message})
}

// positive checks one number; zero stands for a missing one.
func (p *problems) positive(path, field string, value float64) bool {
	if value > 0 && !math.IsInf(value, 1) {
		return true
	}
	p.add(path, field, "must be a finite number above 0")
	return false
}

func (p *problems) names(table string, all []string) {
	seen := map[string]int{}
	for i, name := range all {
		path := fmt.Sprintf("%s.%d", table, i)
		if name == "" {
			p.add(path, "name", "must not be empty")
			continue
		}
		if first, twice := seen[name]; twice {
			p.add(path, "name", fmt.Sprintf("%q is already the name of %s %d of this table; give each its own", name, table, first+1))
			continue
		}
		seen[name] = i
	}
}

func (p *problems) material(path string, m Material) {
	p.positive(path, "elastic_modulus", m.E)
	p.positive(path, "density", m.Density)
	yield := p.positive(path, "yield", m.Yield)
	ultimate := p.positive(path, "ultimate", m.Ultimate)
	if yield && ultimate && m.Ultimate < m.Yield {
		p.add(path, "ultimate", "must be no less than the yield strength")
	}
	if m.Handbook.Given() {
		p.handbook(path+".column", m.Handbook)
	}
}

func (p *problems) handbook(path string, h Handbook) {
	complete := true
	for _, number := range []struct {
		field string
		value float64
	}{
		{"short", h.Short}, {"coefficient", h.Coefficient}, {"exponent", h.Exponent},
		{"transition", h.Transition}, {"long", h.Long},
		{"max_slenderness", h.MaxSlenderness}, {"max_diameter_to_wall", h.MaxDiameterToWall},
	} {
		complete = p.positive(path, number.field, number.value) && complete
	}
	if !complete {
		return
	}
	if h.Transition > h.MaxSlenderness {
		p.add(path, "transition", "must not lie beyond max_slenderness")
	}
	if !(h.Coefficient*math.Pow(h.Transition, h.Exponent) < h.Short) {
		p.add(path, "coefficient", "leaves no strength at the transition: coefficient × transition^exponent must be less than short")
	}
}

func (p *problems) tube(path string, t Tube) {
	od := p.positive(path, "od", t.OD)
	wall := p.positive(path, "wall", t.Wall)
	if od && wall && t.Wall >= t.OD/2 {
		p.add(path, "wall", "must be less than half the OD")
	}
}
