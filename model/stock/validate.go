package stock

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Problem is one thing wrong with a table.
type Problem struct {
	Path  string // Entry of the table file; list items count from 0, as in "material.2.yield".
	Wrong string // What is wrong.
	Right string // What would be right.
}

// Key writes the path for people, counting from 1 as they do: "material 3: yield".
func (p Problem) Key() string {
	table, rest, _ := strings.Cut(p.Path, ".")
	number, field, _ := strings.Cut(rest, ".")
	index, err := strconv.Atoi(number)
	if err != nil {
		return p.Path
	}
	return fmt.Sprintf("%s %d: %s", table, index+1, field)
}

// String writes the problem in one line.
func (p Problem) String() string { return fmt.Sprintf("%s: %s; %s", p.Key(), p.Wrong, p.Right) }

// Validate returns everything wrong with the tables: names missing or given
// twice, numbers that aren't finite and positive, an ultimate strength below
// the yield strength, an as-welded yield strength above it, a wall of half the OD
// or more, and a handbook formula that is incomplete or has no strength left at
// its transition.
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

func (p *problems) add(path, field, wrong, right string) {
	*p = append(*p, Problem{Path: path + "." + field, Wrong: wrong, Right: right})
}

// positive checks one number; zero stands for a missing one.
func (p *problems) positive(path, field string, value float64) bool {
	if value > 0 && !math.IsInf(value, 1) {
		return true
	}
	p.add(path, field, "is not a finite number above 0", "give one")
	return false
}

// names checks that each entry of a table has a name of its own.
func (p *problems) names(table string, all []string) {
	seen := map[string]int{}
	for i, name := range all {
		path := fmt.Sprintf("%s.%d", table, i)
		first, twice := seen[name]
		switch {
		case name == "":
			p.add(path, "name", "is empty", "give the name that car files use")
		case twice:
			p.add(path, "name", fmt.Sprintf("%q is the name of %s %d already", name, table, first+1), "give each its own")
		default:
			seen[name] = i
		}
	}
}

func (p *problems) material(path string, m Material) {
	p.positive(path, "elastic_modulus", m.E)
	p.positive(path, "density", m.Density)
	yield := p.positive(path, "yield", m.Yield)
	ultimate := p.positive(path, "ultimate", m.Ultimate)
	if yield && ultimate && m.Ultimate < m.Yield {
		p.add(path, "ultimate", "is below the yield strength", "give at least the yield strength")
	}
	if m.WeldedYield != 0 && p.positive(path, "welded_yield", m.WeldedYield) && yield && m.WeldedYield > m.Yield {
		p.add(path, "welded_yield", "is above the yield strength", "give at most the yield strength, or leave it out")
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
		p.add(path, "transition", "lies beyond max_slenderness", "give at most max_slenderness")
	}
	if !(h.Coefficient*math.Pow(h.Transition, h.Exponent) < h.Short) {
		p.add(path, "coefficient", "leaves no strength at the transition", "coefficient × transition^exponent must be less than short")
	}
}

func (p *problems) tube(path string, t Tube) {
	od := p.positive(path, "od", t.OD)
	wall := p.positive(path, "wall", t.Wall)
	if od && wall && t.Wall >= t.OD/2 {
		p.add(path, "wall", "is half the OD or more", "give less than half the OD")
	}
}
