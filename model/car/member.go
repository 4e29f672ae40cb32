package car

import (
	"bowline/model/column"
	"bowline/model/stock"
)

// Member returns one bar of a pair, a length [m] from ball center to ball center:
// its tube all the way. A material that lib doesn't have has no modulus and no
// strength, which column refuses.
func (c *Car) Member(p Pair, length float64, lib stock.Library) column.Member {
	bar := p.Bar(c)
	return tube(bar.OD, bar.Wall, bar.Material, length, lib)
}

// LocatorMember returns the locator in the same way. Its material is that of the
// lower bars.
func (c *Car) LocatorMember(length float64, lib stock.Library) column.Member {
	locator := &c.Launch.Locator
	return tube(locator.OD, locator.Wall, c.LowerBar.Material, length, lib)
}

func tube(od, wall float64, name string, length float64, lib stock.Library) column.Member {
	material, _ := lib.Material(name)
	material.Name = name
	return column.Member{{Length: length, OD: od, Wall: wall, Material: material}}
}

// Capacity returns what one bar of a pair can carry at a length, ball center to
// ball center [m]. It fails with column.Problems as column.Capacity does, for an
// unknown material or curve too.
type Capacity func(p Pair, length float64) (column.Result, error)

// Capacity returns the capacity of c's bars, judged as c.Check says.
func (c *Car) Capacity(lib stock.Library) Capacity {
	return func(p Pair, length float64) (column.Result, error) {
		curve, err := column.ParseCurve(c.Check.Column)
		if err != nil {
			curve = -1
		}
		return column.Capacity(c.Member(p, length, lib), column.Options{Curve: curve, Crookedness: c.Check.Crookedness, Factor: c.Check.Factor})
	}
}

// Kept returns the same capacity, found once for each pair and length: many
// choices of holes share few lengths. It is for one goroutine, and holds as long
// as the car's bars and Check don't change.
func (find Capacity) Kept() Capacity {
	type bar struct {
		pair   Pair
		length float64
	}
	type found struct {
		column.Result
		error
	}
	kept := map[bar]found{}
	return func(p Pair, length float64) (column.Result, error) {
		b := bar{p, length}
		f, ok := kept[b]
		if !ok {
			f.Result, f.error = find(p, length)
			kept[b] = f
		}
		return f.Result, f.error
	}
}
