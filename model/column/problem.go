package column

import (
	"math"
	"strings"
)

// Problem is one thing that keeps a bar from being computed.
type Problem struct {
	Field string // "od", "wall", "material", "length", "segments", "crookedness", "factor" or "column".
	Wrong string // What is wrong.
	Right string // What would be right.
}

// Problems is everything wrong with a bar. It is an error.
type Problems []Problem

// Error returns the problems in one line.
func (p Problems) Error() string {
	parts := make([]string, len(p))
	for i, problem := range p {
		parts[i] = problem.Field + " " + problem.Wrong + "; " + problem.Right
	}
	return strings.Join(parts, "; ")
}

func (p *Problems) add(field, wrong, right string) {
	*p = append(*p, Problem{Field: field, Wrong: wrong, Right: right})
}

func (p *Problems) positive(field string, value float64) {
	if !finitePositive(value) {
		p.add(field, "is not a finite number above 0", "give one")
	}
}

func finitePositive(value float64) bool { return value > 0 && !math.IsInf(value, 1) }
