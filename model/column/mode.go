package column

import "fmt"

// Direction is the way a bar is loaded.
type Direction int

// The two directions.
const (
	Push Direction = iota
	Pull
)

// Directions lists both.
var Directions = [...]Direction{Push, Pull}

// String returns "push" or "pull".
func (d Direction) String() string {
	if d == Pull {
		return "pull"
	}
	return "push"
}

// Kind is a way a bar can fail.
type Kind int

// The ways a bar can fail. Each has an entry in ways.
const (
	JohnsonBuckling  Kind = iota // Column buckling by Johnson's parabola, up to the transition.
	EulerBuckling                // Elastic column buckling, beyond the transition.
	AISCBuckling                 // Column buckling by AISC 360-22 E3.
	HandbookBuckling             // Column buckling by the handbook formula of the material.
	BowYield                     // First yield of the most stressed fiber under the initial bow.
	LocalBuckling                // Local buckling of a thin tube's wall.
	TubeYield                    // Tension yield of the gross section.
	WeldYield                    // Tension yield of the gross section beside the welds at its ends.
	kinds
)

// ways holds what is known of each way a bar can fail, in the order of the
// constants: strength returns the load at failure [N], and false for a bar that
// it isn't looked at for.
var ways = [kinds]struct {
	name      string
	direction Direction
	source    string
	strength  func(Strengths) (float64, bool)
}{
	JohnsonBuckling: {
		"column buckling (Johnson)", Push, "Wentzell, Machine Design, ch. 3",
		func(s Strengths) (float64, bool) {
			return s.Critical, s.curve == JohnsonEuler && shortColumn(s.Squash, s.Euler)
		},
	},
	EulerBuckling: {
		"column buckling (Euler)", Push, "Wentzell, Machine Design, ch. 3",
		func(s Strengths) (float64, bool) {
			return s.Critical, s.curve == JohnsonEuler && !shortColumn(s.Squash, s.Euler)
		},
	},
	AISCBuckling: {
		"column buckling (AISC E3)", Push, "AISC 360-22, section E3",
		func(s Strengths) (float64, bool) { return s.Critical, s.curve == AISCCurve },
	},
	HandbookBuckling: {
		"column buckling (handbook)", Push, "the material's column formula",
		func(s Strengths) (float64, bool) { return s.Critical, s.curve == HandbookCurve },
	},
	BowYield: {
		"first yield under initial bow", Push, "Case, Chilver & Ross, Strength of Materials and Structures, Eqs 18.32–18.36",
		func(s Strengths) (float64, bool) { return s.FirstYield, true },
	},
	LocalBuckling: {
		"local buckling of the wall", Push, "AISC 360-22, section E7.2",
		func(s Strengths) (float64, bool) { return s.Wall.Effective * s.Critical, s.Wall.Slender() },
	},
	TubeYield: {
		"tension yield of the tube", Pull, "the yield strength times the area, as defined",
		func(s Strengths) (float64, bool) { return s.Squash, true },
	},
	WeldYield: {
		"tension yield at the weld", Pull, "the as-welded yield strength times the area, as defined",
		func(s Strengths) (float64, bool) { return s.Welded, s.Welded > 0 },
	},
}

func (k Kind) valid() bool { return k >= 0 && k < kinds }

// String returns the kind in words for the screen.
func (k Kind) String() string {
	if !k.valid() {
		return fmt.Sprintf("Kind(%d)", int(k))
	}
	return ways[k].name
}

// Direction returns the way that a bar is loaded when it fails so. It panics for
// a Kind that is none of the constants.
func (k Kind) Direction() Direction { return ways[k].direction }

// Source returns where the strength comes from: author, title, section or
// equation. It panics for a Kind that is none of the constants.
func (k Kind) Source() string { return ways[k].source }

// Mode is one way a bar can fail, and the load at which it does.
type Mode struct {
	Kind     Kind
	Strength float64 // Load at failure, without a safety factor [N].
}

// modes is a list of fixed size, so that a capacity allocates nothing.
type modes struct {
	list  [kinds]Mode
	count int
}

// collect lists the ways that a bar of these strengths can fail.
func (m *modes) collect(s Strengths) {
	for k := range kinds {
		if strength, looked := ways[k].strength(s); looked {
			m.list[m.count] = Mode{k, strength}
			m.count++
		}
	}
}

// least returns the weakest mode of a direction; of equal ones the first.
func (m *modes) least(direction Direction) Mode {
	var weakest Mode
	found := false
	for _, mode := range m.list[:m.count] {
		if mode.Kind.Direction() == direction && (!found || mode.Strength < weakest.Strength) {
			weakest, found = mode, true
		}
	}
	return weakest
}
