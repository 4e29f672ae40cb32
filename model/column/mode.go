package column

import "fmt"

// Direction is the way a bar is loaded.
type Direction int

// The two directions.
const (
	Push Direction = iota
	Pull
)

// String returns "push" or "pull".
func (d Direction) String() string {
	if d == Pull {
		return "pull"
	}
	return "push"
}

// Kind is a way a bar can fail.
type Kind int

// The ways a bar can fail.
const (
	JohnsonBuckling  Kind = iota // Column buckling by Johnson's parabola, up to the transition.
	EulerBuckling                // Elastic column buckling, beyond the transition.
	AISCBuckling                 // Column buckling by AISC 360-22 E3.
	HandbookBuckling             // Column buckling by the handbook formula of the material.
	BowYield                     // First yield of the most stressed fiber under the initial bow.
	LocalBuckling                // Local buckling of a thin tube's wall, AISC 360-22 E7.2.
	TubeYield                    // Tension yield of the gross section, AISC 360-22 D2.
	kinds
)

var kindNames = [kinds]string{
	JohnsonBuckling:  "column buckling (Johnson)",
	EulerBuckling:    "column buckling (Euler)",
	AISCBuckling:     "column buckling (AISC E3)",
	HandbookBuckling: "column buckling (handbook)",
	BowYield:         "first yield under initial bow",
	LocalBuckling:    "local buckling of the wall",
	TubeYield:        "tension yield of the tube",
}

// String returns the kind in words for the screen.
func (k Kind) String() string {
	if k < 0 || k >= kinds {
		return fmt.Sprintf("Kind(%d)", int(k))
	}
	return kindNames[k]
}

// Mode is one way a bar can fail, and the load at which it does.
type Mode struct {
	Kind      Kind
	Direction Direction
	Strength  float64 // Load at failure, without a safety factor [N].
}

// maxModes is room for every kind at once.
const maxModes = int(kinds)

// modes is a list of modes that needs no memory of its own.
type modes struct {
	list  [maxModes]Mode
	count int
}

func (m *modes) add(kind Kind, direction Direction, strength float64) {
	m.list[m.count] = Mode{kind, direction, strength}
	m.count++
}

// least returns the weakest mode of a direction; of equal ones the first.
func (m *modes) least(direction Direction) Mode {
	weakest := Mode{Direction: direction}
	found := false
	for _, mode := range m.list[:m.count] {
		if mode.Direction == direction && (!found || mode.Strength < weakest.Strength) {
			weakest, found = mode, true
		}
	}
	return weakest
}
