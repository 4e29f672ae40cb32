package chart

import (
	"math"
	"strings"

	"bowline/model/units"
)

// pair is what a chart of two setups is about: the same of both.
type pair struct {
	a, b   Subject
	names  [2]string // of the setups
	shorts [2]string
}

// Readout writes both values of everything.
func (p pair) Readout(at float64, s units.System) []Reading {
	a, b := p.a.Readout(at, s), p.b.Readout(at, s)
	// Beyond the end of one launch only the other one goes on.
	switch here, there := p.a.Place(at), p.b.Place(at); {
	case !here.Line || !there.Line || here.X == there.X:
	case math.Abs(there.X-at) < math.Abs(here.X-at):
		a = []Reading{b[0], Plain("over at " + a[0].Value)}
	default:
		b = []Reading{a[0], Plain("over at " + b[0].Value)}
	}
	return p.join(a, b)
}

func (p pair) ReadoutAt(l *Layout, px, py float64, s units.System) []Reading {
	return p.join(p.a.ReadoutAt(l, px, py, s), p.b.ReadoutAt(l, px, py, s))
}

// join puts two readouts of one position together. What only one of them has
// comes with the setup's name.
func (p pair) join(a, b []Reading) []Reading {
	if len(a) == 0 || len(b) == 0 {
		return append(a, b...)
	}
	if a[0] != b[0] {
		return append(p.by(0, a), p.by(1, b)...)
	}
	list := []Reading{Plain(a[0].String() + ", " + p.shorts[0] + " vs " + p.shorts[1])}
	if len(a) != len(b) {
		list = append(list, p.by(0, a[1:])...)
		return append(list, p.by(1, b[1:])...)
	}
	for i := range a[1:] {
		if text, ok := a[1+i].versus(b[1+i]); ok {
			list = append(list, Plain(text))
			continue
		}
		list = append(list, p.by(0, a[1+i:2+i])...)
		list = append(list, p.by(1, b[1+i:2+i])...)
	}
	return list
}

// by names the setup that readings are of.
func (p pair) by(setup int, list []Reading) []Reading {
	named := make([]Reading, len(list))
	for i := range list {
		named[i] = Plain(p.shorts[setup] + ": " + list[i].String())
	}
	return named
}

// Place takes the dots of both. Where one launch is over, only the other one
// has any.
func (p pair) Place(at float64) Place {
	a, b := p.a.Place(at), p.b.Place(at)
	for i := range b.Dots {
		b.Dots[i].Setup = 1
	}
	switch {
	case a.Line && b.Line && a.X != b.X:
		if math.Abs(b.X-at) < math.Abs(a.X-at) {
			return b
		}
		return a
	case !a.Line && b.Line:
		a.Line, a.X = true, b.X
	}
	a.Dots = append(a.Dots, b.Dots...)
	return a
}

// PositionAt returns the position of the setup that comes nearer to a pixel.
func (p pair) PositionAt(l *Layout, px, py float64) (at, off float64, ok bool) {
	a, offA, okA := p.a.PositionAt(l, px, py)
	b, offB, okB := p.b.PositionAt(l, px, py)
	if okB && (!okA || offB < offA) {
		return b, offB, true
	}
	return a, offA, okA
}

// Table has the columns of both, each with its setup's name, and the rows of
// one position in one.
func (p pair) Table(s units.System, _ string) Table {
	a, b := p.a.Table(s, p.names[0]), p.b.Table(s, p.names[1])
	if a.keyed && b.keyed {
		return a.aligned(b)
	}
	return a.beside(b)
}

// remarks returns the remarks of both, each with its setup's name in front
// unless it holds for both.
func (p pair) remarks(a, b []Note) []Note {
	var list []Note
	says := func(notes []Note, text string, shown Frame) bool {
		for _, n := range notes {
			if n(shown) == text {
				return true
			}
		}
		return false
	}
	add := func(own, others []Note, setup int) {
		for _, n := range own {
			list = append(list, func(shown Frame) string {
				text := n(shown)
				switch common := says(others, text, shown); {
				case text == "" || common && setup == 1:
					return ""
				case common:
					return text
				}
				return p.shorts[setup] + ": " + strings.ToLower(text[:1]) + text[1:]
			})
		}
	}
	add(a, b, 0)
	add(b, a, 1)
	return list
}
