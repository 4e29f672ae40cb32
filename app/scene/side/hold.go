package side

import (
	"bowline/app/scene"
	"bowline/app/study"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
)

// heldHole is a hole that moves, or the bar's end that goes to another one.
type heldHole struct {
	study.Drag
	id    scene.ID
	moves bool   // the hole itself
	grip  r2.Vec // from the pointer to the hole [px]
}

func (v *Viewpoint) holdHole(p *scene.Picture, id scene.ID, at r2.Vec, shift bool) *heldHole {
	v.study.Select(id.Row)
	h := &heldHole{Drag: study.Drag{Study: v.study}, id: id, moves: v.study.Moving() || shift}
	h.Label = "Use another " + id.Row.String() + " hole"
	if h.moves {
		h.Label = "Move " + id.Row.String() + " hole"
	}
	if center, ok := p.Find(id); ok {
		h.grip = r2.Sub(center, at)
	}
	return h
}

// To implements scene.Hold: the bar's end snaps to the nearest hole of its row.
func (h *heldHole) To(v scene.View, at r2.Vec) (scene.ID, []car.Problem) {
	h.Begin()
	p := flat(v.World(r2.Add(at, h.grip)))
	if h.moves {
		return h.id, h.Study.Move(h.id.Row, h.id.Index, p)
	}
	problems := h.Study.Choose(h.id.Row, h.Study.Nearest(h.id.Row, p))
	return scene.ID{Kind: scene.Pivot, Row: h.id.Row, Index: h.Study.Hole(h.id.Row)}, problems
}

// heldBracket is a bracket with all its holes.
type heldBracket struct {
	study.Drag
	id     scene.ID
	row    car.Row  // one of its rows
	from   r2.Vec   // where it was taken hold of, in its own frame [m]
	before *car.Car // as it was then
}

func (v *Viewpoint) holdBracket(p *scene.Picture, id scene.ID, at r2.Vec) *heldBracket {
	h := &heldBracket{Drag: study.Drag{Study: v.study, Label: "Move housing bracket"}, id: id, row: car.HousingUpper, before: v.study.Document().Car()}
	if id.Kind == scene.ChassisBody {
		h.Label, h.row = "Move chassis bracket", car.ChassisUpper
	}
	h.from = v.study.Local(h.row, flat(p.View.World(at)))
	return h
}

// To implements scene.Hold.
func (h *heldBracket) To(v scene.View, at r2.Vec) (scene.ID, []car.Problem) {
	h.Begin()
	to := h.Study.Local(h.row, flat(v.World(at)))
	return h.id, h.Study.MoveBracket(h.row.OnChassis(), h.before, r2.Sub(to, h.from))
}

// heldTarget is the target for the instant center, or some of its edges.
type heldTarget struct {
	study.Drag
	id     scene.ID
	from   r2.Vec   // where it was taken hold of, in side view [m]
	before *car.Car // as it was then
}

func (v *Viewpoint) holdTarget(p *scene.Picture, id scene.ID, at r2.Vec) *heldTarget {
	h := &heldTarget{Drag: study.Drag{Study: v.study, Label: "Move target"}, id: id, from: flat(p.View.World(at)), before: v.study.Document().Car()}
	if Edges(id.Index) != AllEdges {
		h.Label = "Resize target"
	}
	return h
}

// To implements scene.Hold.
func (h *heldTarget) To(v scene.View, at r2.Vec) (scene.ID, []car.Problem) {
	h.Begin()
	low, high := Edges(h.id.Index).corners(r2.Sub(flat(v.World(at)), h.from))
	return h.id, h.Study.MoveTarget(h.before, low, high)
}
