package side

import (
	"bowline/app/scene"
	"bowline/app/study"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
)

// step is a drag of the study's car as one step to undo.
type step struct {
	study *study.Study
	label string
	begun bool // the document has been told
}

// begin begins the step when the drag first moves something.
func (s *step) begin() {
	if !s.begun {
		s.begun = true
		s.study.Document().Begin(s.label)
	}
}

// End implements scene.Hold.
func (s *step) End() {
	if s.begun {
		s.study.Document().End()
	}
}

// Cancel implements scene.Hold.
func (s *step) Cancel() {
	if s.begun {
		s.study.Document().Cancel()
	}
}

// heldHole is a hole that moves, or the bar's end that goes to another one.
type heldHole struct {
	step
	id    scene.ID
	moves bool   // the hole itself
	grip  r2.Vec // from the pointer to the hole [px]
}

func (v *Viewpoint) holdHole(p *scene.Picture, id scene.ID, at r2.Vec, shift bool) *heldHole {
	v.study.Select(id.Row)
	h := &heldHole{step: step{study: v.study}, id: id, moves: v.study.Moving() || shift}
	h.label = "Use another " + id.Row.String() + " hole"
	if h.moves {
		h.label = "Move " + id.Row.String() + " hole"
	}
	if center, ok := p.Find(id); ok {
		h.grip = r2.Sub(center, at)
	}
	return h
}

// To implements scene.Hold: the bar's end snaps to the nearest hole of its row.
func (h *heldHole) To(v scene.View, at r2.Vec) (scene.ID, []car.Problem) {
	h.begin()
	p := flat(v.World(r2.Add(at, h.grip)))
	if h.moves {
		return h.id, h.study.Move(h.id.Row, h.id.Index, p)
	}
	problems := h.study.Choose(h.id.Row, h.study.Nearest(h.id.Row, p))
	return scene.ID{Kind: scene.Pivot, Row: h.id.Row, Index: h.study.Hole(h.id.Row)}, problems
}

// heldBracket is a bracket with all its holes.
type heldBracket struct {
	step
	id     scene.ID
	row    car.Row  // one of its rows
	from   r2.Vec   // where it was taken hold of, in its own frame [m]
	before *car.Car // as it was then
}

func (v *Viewpoint) holdBracket(p *scene.Picture, id scene.ID, at r2.Vec) *heldBracket {
	h := &heldBracket{step: step{study: v.study, label: "Move housing bracket"}, id: id, row: car.HousingUpper, before: v.study.Document().Car()}
	if id.Kind == scene.ChassisBody {
		h.label, h.row = "Move chassis bracket", car.ChassisUpper
	}
	h.from = v.study.Local(h.row, flat(p.View.World(at)))
	return h
}

// To implements scene.Hold.
func (h *heldBracket) To(v scene.View, at r2.Vec) (scene.ID, []car.Problem) {
	h.begin()
	to := h.study.Local(h.row, flat(v.World(at)))
	return h.id, h.study.MoveBracket(h.row.OnChassis(), h.before, r2.Sub(to, h.from))
}

// heldTarget is the target for the instant center, or some of its edges.
type heldTarget struct {
	step
	id     scene.ID
	from   r2.Vec   // where it was taken hold of, in side view [m]
	before *car.Car // as it was then
}

func (v *Viewpoint) holdTarget(p *scene.Picture, id scene.ID, at r2.Vec) *heldTarget {
	h := &heldTarget{step: step{study: v.study, label: "Move target"}, id: id, from: flat(p.View.World(at)), before: v.study.Document().Car()}
	if Edges(id.Index) != AllEdges {
		h.label = "Resize target"
	}
	return h
}

// To implements scene.Hold.
func (h *heldTarget) To(v scene.View, at r2.Vec) (scene.ID, []car.Problem) {
	h.begin()
	low, high := Edges(h.id.Index).corners(r2.Sub(flat(v.World(at)), h.from))
	return h.id, h.study.MoveTarget(h.before, low, high)
}
