package carfile

import (
	"sync"

	"bowline/assets"
	"bowline/model/stock"
	"bowline/model/units"
)

// Stock returns the built-in tables: materials and round tube sizes.
func Stock() stock.Library { return builtIn() }

// StockWith returns the built-in tables with those of a person's own file over
// them; an empty path means none. It fails as reading a file and DecodeTables
// do.
func StockWith(path string) (stock.Library, error) {
	if path == "" {
		return Stock(), nil
	}
	data, err := ReadAll(path)
	if err != nil {
		return stock.Library{}, err
	}
	own, err := DecodeTables(path, data)
	if err != nil {
		return stock.Library{}, err
	}
	return Stock().Merge(own), nil
}

var builtIn = sync.OnceValue(func() stock.Library {
	return mustDecode("materials.toml", assets.Materials).Merge(mustDecode("tubes.toml", assets.Tubes))
})

// mustDecode panics when a built-in table is wrong, which a test rules out.
func mustDecode(name string, data []byte) stock.Library {
	library, err := DecodeTables(name, data)
	if err != nil {
		panic(err)
	}
	return library
}

// DecodeTables reads a table file in the form that the built-in ones document
// at their head. Merge the result into Stock to extend or override it.
//
// It refuses, all at once, as Problems with file, line and key: what is no
// valid TOML, a file over MaxSize, unknown and missing keys, wrong types, NaN
// and infinity, and whatever stock.Library.Validate refuses. The library is
// empty then.
func DecodeTables(name string, data []byte) (stock.Library, error) {
	root, err := parse(name, data)
	if err != nil {
		return stock.Library{}, err
	}
	library := readLibrary(root)
	for _, wrong := range library.Validate() {
		root.doc.note(wrong.Path, wrong.Key(), wrong.Wrong, wrong.Right)
	}
	if err := root.doc.err(); err != nil {
		return stock.Library{}, err
	}
	return library, nil
}

func readLibrary(root *table) stock.Library {
	var library stock.Library
	system, _ := units.Parse(root.choice("units", units.US.String(), units.SI.String()))
	for _, t := range root.tables("material") {
		library.Materials = append(library.Materials, readMaterial(t, system))
	}
	for _, t := range root.tables("tube") {
		library.Tubes = append(library.Tubes, readTube(t, system))
	}
	root.close()
	return library
}

func readMaterial(t *table, system units.System) stock.Material {
	stress := system.Factor(units.Stress)
	m := stock.Material{
		Name:        t.text("name"),
		E:           t.number("elastic_modulus") * stress,
		Yield:       t.number("yield") * stress,
		WeldedYield: t.numberOr("welded_yield", 0) * stress,
		Ultimate:    t.number("ultimate") * stress,
		Density:     t.number("density") * densityFactor(system),
		Source:      t.textOr("source", ""),
	}
	if t.has("welded_yield") && m.WeldedYield == 0 { // which stands for an unknown one
		t.problem("welded_yield", "is not a finite number above 0", "give one, or leave it out")
	}
	if column, ok := t.table("column"); ok {
		m.Handbook = readHandbook(column, stress)
	}
	t.close()
	return m
}

func readHandbook(t *table, stress float64) stock.Handbook {
	h := stock.Handbook{
		Short:             t.number("short") * stress,
		Coefficient:       t.number("coefficient") * stress,
		Exponent:          t.number("exponent"),
		Transition:        t.number("transition"),
		Long:              t.number("long") * stress,
		MaxSlenderness:    t.number("max_slenderness"),
		MaxDiameterToWall: t.number("max_diameter_to_wall"),
		Source:            t.textOr("source", ""),
	}
	t.close()
	return h
}

func readTube(t *table, system units.System) stock.Tube {
	length := system.Factor(units.Length)
	tube := stock.Tube{Name: t.text("name"), OD: t.number("od") * length, Wall: t.number("wall") * length}
	t.close()
	return tube
}

// densityFactor is the kg/m³ in one lb/in³, or 1.
func densityFactor(system units.System) float64 {
	if system == units.SI {
		return 1
	}
	return units.Pound / (units.Inch * units.Inch * units.Inch)
}
