// Package stock holds what a shop buys, as plain values in SI: materials and
// round tube sizes, with the names that car files refer to.
package stock

// Material is a metal in one condition. Strengths are the minimum that its
// source states.
type Material struct {
	Name        string
	E           float64  // Modulus of elasticity [Pa].
	Yield       float64  // Tensile yield strength [Pa].
	WeldedYield float64  // Tensile yield strength beside a weld, as welded [Pa]; 0: unknown, taken as Yield.
	Ultimate    float64  // Tensile ultimate strength [Pa].
	Density     float64  // [kg/m³].
	Source      string   // Where the numbers come from.
	Handbook    Handbook // Column formula printed for round tube; the zero value means none.
}

// Handbook is a column formula for round tube as design handbooks print it for
// one alloy and condition. With x the slenderness, pin to pin length over
// radius of gyration, the failing stress is
//
//	Short − Coefficient·x^Exponent   up to x = Transition
//	Long/x²                          beyond
type Handbook struct {
	Short             float64 // Column yield stress, Fco [Pa].
	Coefficient       float64 // [Pa].
	Exponent          float64 // [1].
	Transition        float64 // Slenderness between short and long [1].
	Long              float64 // [Pa].
	MaxSlenderness    float64 // Greatest slenderness it holds for [1].
	MaxDiameterToWall float64 // It holds for an OD over wall below this [1].
	Source            string
}

// Given reports whether there is a formula.
func (h Handbook) Given() bool { return h != Handbook{} }

// Tube is a round tube size.
type Tube struct {
	Name string  // As it is asked for at the counter, such as "1 1/4 x 0.095".
	OD   float64 // Outside diameter [m].
	Wall float64 // Wall thickness [m].
}

// Library is a set of tables. The zero value is empty.
type Library struct {
	Materials []Material
	Tubes     []Tube
}

// Material returns the material with a name, and whether there is one.
func (l Library) Material(name string) (Material, bool) {
	return find(l.Materials, name, materialName)
}

// Tube returns the tube size with a name, and whether there is one.
func (l Library) Tube(name string) (Tube, bool) {
	return find(l.Tubes, name, tubeName)
}

// MaterialNames lists the materials in table order.
func (l Library) MaterialNames() []string { return names(l.Materials, materialName) }

// TubeNames lists the tube sizes in table order.
func (l Library) TubeNames() []string { return names(l.Tubes, tubeName) }

// Merge returns l with the entries of other: one of a known name takes that
// one's place, a new one follows at the end. Neither l nor other changes.
func (l Library) Merge(other Library) Library {
	return Library{
		Materials: merge(l.Materials, other.Materials, materialName),
		Tubes:     merge(l.Tubes, other.Tubes, tubeName),
	}
}

func materialName(m Material) string { return m.Name }

func tubeName(t Tube) string { return t.Name }

func find[T any](list []T, name string, nameOf func(T) string) (T, bool) {
	for _, entry := range list {
		if nameOf(entry) == name {
			return entry, true
		}
	}
	var none T
	return none, false
}

func names[T any](list []T, nameOf func(T) string) []string {
	all := make([]string, len(list))
	for i, entry := range list {
		all[i] = nameOf(entry)
	}
	return all
}

func merge[T any](list, other []T, nameOf func(T) string) []T {
	merged := make([]T, 0, len(list)+len(other))
	place := map[string]int{}
	for _, entry := range append(append(merged, list...), other...) {
		at, known := place[nameOf(entry)]
		if known {
			merged[at] = entry
			continue
		}
		place[nameOf(entry)] = len(merged)
		merged = append(merged, entry)
	}
	return merged
}
