package chart

import (
	"math"
	"slices"
	"strings"

	"bowline/model/units"
)

// several is what a chart of several setups is about: the same of each.
type several struct {
	list   []Subject
	names  []string // of the setups
	shorts []string // cut to NameLength
}

// Readout implements Subject: the values of all.
func (v several) Readout(at float64, s units.System) []Reading {
	readouts := make([][]Reading, len(v.list))
	for i, about := range v.list {
		readouts[i] = about.Readout(at, s)
	}
	// Beyond the end of some launches only the others go on.
	places, nearest := v.places(at)
	for i := range places {
		if over(&places[i], &places[nearest]) {
			readouts[i] = []Reading{readouts[nearest][0], Plain("over at " + readouts[i][0].Value)}
		}
	}
	return v.join(readouts)
}

// places returns where each stands at a position, and which comes nearest to it.
func (v several) places(at float64) (list []Place, nearest int) {
	list = make([]Place, len(v.list))
	least := math.Inf(1)
	for i, about := range v.list {
		list[i] = about.Place(at)
		if off := math.Abs(list[i].X - at); list[i].Line && off < least {
			nearest, least = i, off
		}
	}
	return list, nearest
}

// over reports whether one's values end before the position at which another
// one stands.
func over(one, other *Place) bool { return one.Line && other.Line && one.X != other.X }

// ReadoutAt implements Subject.
func (v several) ReadoutAt(l *Layout, px, py float64, s units.System) []Reading {
	readouts := make([][]Reading, len(v.list))
	for i, about := range v.list {
		readouts[i] = about.ReadoutAt(l, px, py, s)
	}
	return v.join(readouts)
}

// join puts the readouts of one position together, and what happens there behind
// the values. What only some of them have comes with the setup's name.
func (v several) join(readouts [][]Reading) []Reading {
	values, events := make([][]Reading, len(readouts)), make([][]Reading, len(readouts))
	for i, list := range readouts {
		for _, r := range list {
			if r.Event {
				events[i] = append(events[i], r)
			} else {
				values[i] = append(values[i], r)
			}
		}
	}
	return append(v.joinValues(values), v.joinEvents(events)...)
}

// joinEvents lists each event of any setup: of all in one, of some with their names.
func (v several) joinEvents(readouts [][]Reading) []Reading {
	var list []Reading
	known := map[string]bool{}
	for _, events := range readouts {
		for _, e := range events {
			if known[e.Name] {
				continue
			}
			known[e.Name] = true
			var row, named []Reading
			for i := range readouts {
				if k := slices.IndexFunc(readouts[i], func(r Reading) bool { return r.Name == e.Name }); k >= 0 {
					row = append(row, readouts[i][k])
					named = append(named, Plain(v.shorts[i]+": "+readouts[i][k].String()))
				}
			}
			if text, same := versusReadings(row); same && len(row) == len(readouts) {
				named = []Reading{Plain(text)}
			}
			list = append(list, named...)
		}
	}
	return list
}

// joinValues puts the values of one position together.
func (v several) joinValues(readouts [][]Reading) []Reading {
	var of []int // those that say anything
	for i := range readouts {
		if len(readouts[i]) > 0 {
			of = append(of, i)
		}
	}
	if len(of) == 0 {
		return nil
	}
	first := readouts[of[0]]
	alike := func(same func(list []Reading) bool) bool {
		return !slices.ContainsFunc(of, func(i int) bool { return !same(readouts[i]) })
	}
	switch {
	case len(of) == 1:
		return first
	case !alike(func(list []Reading) bool { return list[0] == first[0] }):
		return v.each(readouts, of, 0, math.MaxInt)
	}
	var names []string
	for _, i := range of {
		names = append(names, v.shorts[i])
	}
	list := []Reading{Plain(first[0].String() + ", " + strings.Join(names, " vs "))}
	if !alike(func(list []Reading) bool { return len(list) == len(first) }) {
		return append(list, v.each(readouts, of, 1, math.MaxInt)...)
	}
	for k := 1; k < len(first); k++ {
		row := make([]Reading, 0, len(of))
		for _, i := range of {
			row = append(row, readouts[i][k])
		}
		if text, ok := versusReadings(row); ok {
			list = append(list, Plain(text))
			continue
		}
		list = append(list, v.each(readouts, of, k, k+1)...)
	}
	return list
}

// each lists the readings of each setup from one to another, with its name.
func (v several) each(readouts [][]Reading, of []int, from, to int) []Reading {
	var named []Reading
	for _, i := range of {
		for _, r := range readouts[i][from:min(to, len(readouts[i]))] {
			named = append(named, Plain(v.shorts[i]+": "+r.String()))
		}
	}
	return named
}

// Place implements Subject: the dots of all. Where some launches are over, only
// the others have any.
func (v several) Place(at float64) Place {
	places, nearest := v.places(at)
	all := Place{Line: places[nearest].Line, X: places[nearest].X}
	for i := range places {
		if over(&places[i], &places[nearest]) {
			continue
		}
		for _, d := range places[i].Dots {
			d.Setup = i
			all.Dots = append(all.Dots, d)
		}
	}
	return all
}

// PositionAt implements Subject: the position of the setup that comes nearest to
// a pixel.
func (v several) PositionAt(l *Layout, px, py float64) (at, off float64, ok bool) {
	off = math.Inf(1)
	for _, about := range v.list {
		if there, apart, known := about.PositionAt(l, px, py); known && (!ok || apart < off) {
			at, off, ok = there, apart, true
		}
	}
	return at, off, ok
}

// Table implements Subject: the columns of all, each with its setup's name, and
// the rows of one position in one.
func (v several) Table(s units.System, _ string) Table {
	table := v.list[0].Table(s, v.names[0])
	for i := 1; i < len(v.list); i++ {
		if further := v.list[i].Table(s, v.names[i]); table.keyed && further.keyed {
			table = table.aligned(further)
		} else {
			table = table.beside(further)
		}
	}
	return table
}

// notes returns the notes of all, each with the names of its setups in front
// unless it holds for all.
func (v several) notes(charts []*Chart) []Note {
	says := func(i int, text string, shown Frame) bool {
		return slices.ContainsFunc(charts[i].Notes, func(n Note) bool { return n(shown) == text })
	}
	var list []Note
	for i := range charts {
		for _, n := range charts[i].Notes {
			list = append(list, func(shown Frame) string {
				text := n(shown)
				if text == "" {
					return ""
				}
				var by []string
				for k := range charts {
					switch {
					case !says(k, text, shown):
					case k < i:
						return "" // said with the earlier one
					default:
						by = append(by, v.shorts[k])
					}
				}
				if len(by) == len(charts) {
					return text
				}
				return strings.Join(by, ", ") + ": " + strings.ToLower(text[:1]) + text[1:]
			})
		}
	}
	return list
}
