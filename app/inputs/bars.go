package inputs

import (
	"math"
	"strings"

	"bowline/model/car"
	"bowline/model/stock"
)

// fillBars fills the section of one pair of bars.
func fillBars(s *section, pair car.Pair) {
	s.owned = true
	bar := func(c *car.Car) *car.Bar { return pair.Bar(c) }
	s.choice(about{label: "Tube", help: "A size from the tube table; it sets OD and wall. Any other size can be typed below."},
		newChoice(
			func(v view) []string { return v.library.TubeNames() },
			func(v view) string { return tubeName(v.library, bar(v.car)) },
			func(c *choice, i int) {
				tube := c.row.panel.library.Tubes[i]
				c.set(func(to *car.Car) { bar(to).OD, bar(to).Wall = tube.OD, tube.Wall })
			}))
	s.numbers(pair.Table())
	s.choice(about{path: pair.Table() + ".material", label: "Material", help: "A name in the material table. A weld changes the steel beside it."},
		newChoice(
			func(v view) []string { return v.library.MaterialNames() },
			func(v view) string { return bar(v.car).Material },
			func(c *choice, i int) {
				material := c.row.panel.library.Materials[i].Name
				c.set(func(to *car.Car) { bar(to).Material = material })
			}))
	s.text(about{path: pair.Table() + ".rod_end", label: "Rod end", help: "Thread of the rod ends, such as 3/4-16. May be left empty."},
		func(c *car.Car) *string { return &bar(c).RodEnd })
	s.text(about{path: pair.Table() + ".adapter", label: "Adapter", help: "The weld-in tube adapter that takes the rod end. May be left empty."},
		func(c *car.Car) *string { return &bar(c).Adapter })
}

// isWall tells whether a path is that of a wall thickness.
func isWall(path string) bool { return strings.HasSuffix(path, ".wall") }

// sameSize is how near two lengths are that mean the same tube [m]: far less
// than a mill's tolerance, far more than a unit conversion leaves.
const sameSize = 1e-7

// otherTube stands for a size that is not in the table.
const otherTube = "Other size"

// tubeName returns the name of a bar's tube size.
func tubeName(l stock.Library, b *car.Bar) string {
	for _, t := range l.Tubes {
		if math.Abs(t.OD-b.OD) < sameSize && math.Abs(t.Wall-b.Wall) < sameSize {
			return t.Name
		}
	}
	return otherTube
}
