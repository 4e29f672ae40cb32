package plotting

import (
	"math"
	"strings"

	"bowline/model/units"
)

// pair is what a chart of two setups is about: the same of both.
type pair struct {
	a, b   subject
	names  [2]string // of the setups
	shorts [2]string
}

// readout writes both values of everything.
func (p pair) readout(at float64, s units.System) []reading {
	a, b := p.a.readout(at, s), p.b.readout(at, s)
	// Beyond the end of one launch only the other one goes on.
	switch here, there := p.a.place(at), p.b.place(at); {
	case !here.line || !there.line || here.x == there.x:
	case math.Abs(there.x-at) < math.Abs(here.x-at):
		a = []reading{b[0], plainly("over at " + a[0].value)}
	default:
		b = []reading{a[0], plainly("over at " + b[0].value)}
	}
	return p.join(a, b)
}

func (p pair) readoutAt(l *Layout, px, py float64, s units.System) []reading {
	return p.join(p.a.readoutAt(l, px, py, s), p.b.readoutAt(l, px, py, s))
}

// join puts two readouts of one position together. What only one of them has
// comes with the setup's name.
func (p pair) join(a, b []reading) []reading {
	if len(a) == 0 || len(b) == 0 {
		return append(a, b...)
	}
	if a[0] != b[0] {
		return append(p.by(0, a), p.by(1, b)...)
	}
	list := []reading{plainly(a[0].String() + ", " + p.shorts[0] + " vs " + p.shorts[1])}
	if len(a) != len(b) {
		list = append(list, p.by(0, a[1:])...)
		return append(list, p.by(1, b[1:])...)
	}
	for i := range a[1:] {
		if text, ok := a[1+i].versus(b[1+i]); ok {
			list = append(list, plainly(text))
			continue
		}
		list = append(list, p.by(0, a[1+i:2+i])...)
		list = append(list, p.by(1, b[1+i:2+i])...)
	}
	return list
}

// by names the setup that readings are of.
func (p pair) by(setup int, list []reading) []reading {
	named := make([]reading, len(list))
	for i := range list {
		named[i] = plainly(p.shorts[setup] + ": " + list[i].String())
	}
	return named
}

// place takes the dots of both. Where one launch is over, only the other one
// has any.
func (p pair) place(at float64) place {
	a, b := p.a.place(at), p.b.place(at)
	for i := range b.dots {
		b.dots[i].second = true
	}
	switch {
	case a.line && b.line && a.x != b.x:
		if math.Abs(b.x-at) < math.Abs(a.x-at) {
			return b
		}
		return a
	case !a.line && b.line:
		a.line, a.x = true, b.x
	}
	a.dots = append(a.dots, b.dots...)
	return a
}

// positionAt returns the position of the setup that comes nearer to a pixel.
func (p pair) positionAt(l *Layout, px, py float64) (at, off float64, ok bool) {
	a, offA, okA := p.a.positionAt(l, px, py)
	b, offB, okB := p.b.positionAt(l, px, py)
	if okB && (!okA || offB < offA) {
		return b, offB, true
	}
	return a, offA, okA
}

// table has the columns of both, each with its setup's name, and the rows of
// one position in one.
func (p pair) table(s units.System, _ string) Table {
	a, b := p.a.table(s, p.names[0]), p.b.table(s, p.names[1])
	if a.keyed && b.keyed {
		return a.aligned(b)
	}
	return a.beside(b)
}

// remarks returns the remarks of both, each with its setup's name in front
// unless it holds for both.
func (p pair) remarks(a, b []remark) []remark {
	var list []remark
	says := func(notes []remark, text string, shown Frame) bool {
		for _, n := range notes {
			if n(shown) == text {
				return true
			}
		}
		return false
	}
	add := func(own, others []remark, setup int) {
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
