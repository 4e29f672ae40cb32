package inputs

import (
	"math"

	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/stock"
)

// fillBars fills the section of one pair of bars.
func fillBars(s *section, pair car.Pair) {
	s.owned = true
	bar := func(c *car.Car) *car.Bar { return pair.Bar(c) }
	l := s.of.library
	s.pick(s.action("Tube"), form.About{Label: "Tube", Help: "A size from the tube table; it sets OD and wall. Any other size can be typed below."},
		l.TubeNames(), func(c *car.Car) string { return tubeName(l, bar(c)) },
		func(c *car.Car, i int) { bar(c).OD, bar(c).Wall = l.Tubes[i].OD, l.Tubes[i].Wall })
	s.numbers(pair.Table())
	s.choice(s.action("Material"), form.About{Path: pair.Table() + ".material", Label: "Material", Help: "A name in the material table. A weld changes the steel beside it."},
		l.MaterialNames(), func(c *car.Car) *string { return &bar(c).Material })
	s.text(s.action("Rod end"), form.About{Path: pair.Table() + ".rod_end", Label: "Rod end", Help: "Thread of the rod ends, such as 3/4-16. May be left empty."},
		func(c *car.Car) *string { return &bar(c).RodEnd })
	s.text(s.action("Adapter"), form.About{Path: pair.Table() + ".adapter", Label: "Adapter", Help: "The weld-in tube adapter that takes the rod end. May be left empty."},
		func(c *car.Car) *string { return &bar(c).Adapter })
}

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
