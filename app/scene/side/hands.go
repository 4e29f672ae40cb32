package side

import (
	"bowline/app/scene"
	"bowline/app/study"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
)

// Cursor implements scene.Hands.
func (v *Viewpoint) Cursor(id scene.ID) scene.Cursor {
	if id.Ghost > 0 {
		return scene.Arrow
	}
	switch id.Kind {
	case scene.Pivot, scene.Hole, scene.Combination:
		return scene.Hand
	case scene.ChassisBody, scene.HousingBody:
		return scene.Cross
	case scene.TargetBox:
		return Edges(id.Index).cursor()
	}
	return scene.Arrow
}

// Point implements scene.Hands: it has the study point at the combination under
// the pointer, and at none when it leaves one.
func (v *Viewpoint) Point(id scene.ID) {
	switch on := id.Kind == scene.Combination; {
	case on:
		v.study.Point(id.Index)
		v.pointing = true
	case v.pointing:
		v.study.Point(study.None)
		v.pointing = false
	}
}

// Hold implements scene.Hands: it takes hold of a hole, of a bracket and, while
// the holes are searched, of the target. A dot stays where it is: a drag takes
// the target behind it.
func (v *Viewpoint) Hold(p *scene.Picture, at r2.Vec, shift bool) scene.Hold {
	id := p.Pick(at)
	if id.Kind == scene.Combination {
		if id = p.PickBehind(at); id.Kind != scene.TargetBox {
			return nil
		}
	}
	if id.Ghost > 0 {
		return nil
	}
	switch id.Kind {
	case scene.Pivot, scene.Hole:
		return v.holdHole(p, id, at, shift)
	case scene.ChassisBody, scene.HousingBody:
		return v.holdBracket(p, id, at)
	case scene.TargetBox:
		if v.study.Searching() {
			return v.holdTarget(p, id, at)
		}
	}
	return nil
}

// Click implements scene.Hands: a free hole takes the bar, and a dot is looked
// at closely.
func (v *Viewpoint) Click(id scene.ID, shift bool) []car.Problem {
	switch {
	case id.Kind == scene.Hole && !shift && !v.study.Moving():
		return v.study.Choose(id.Row, id.Index)
	case id.Kind == scene.Combination:
		v.study.Pick(id.Index)
	}
	return nil
}

// DoubleClick implements scene.Hands: it puts the bars into the holes of a dot.
func (v *Viewpoint) DoubleClick(id scene.ID) []car.Problem {
	if id.Kind == scene.Combination {
		return v.use(id.Index)
	}
	return nil
}

// use puts the bars into the holes of a combination, while they are looked at.
func (v *Viewpoint) use(index int) []car.Problem {
	if p := v.study.Place(index); p != nil && v.study.Searching() {
		return v.study.UseHoles(p.Holes())
	}
	return nil
}

// Press implements scene.Hands: digits select a pivot and arrows nudge its hole,
// M has drags move holes or choose them, O shows the forces on the axle, and Enter puts the bars into the holes of
// the combination that is looked at closely.
func (v *Viewpoint) Press(k scene.Key, shift bool) []car.Problem {
	step := 1.0
	if shift {
		step = study.NudgeFast
	}
	switch k {
	case scene.LeftKey:
		return v.study.Nudge(-step, 0)
	case scene.RightKey:
		return v.study.Nudge(step, 0)
	case scene.UpKey:
		return v.study.Nudge(0, step)
	case scene.DownKey:
		return v.study.Nudge(0, -step)
	case scene.EnterKey:
		return v.use(v.study.Picked())
	case "m":
		v.study.SetMoving(!v.study.Moving())
	case "o":
		v.study.SetForces(!v.study.Forces())
	case "1", "2", "3", "4":
		v.study.Select(car.Rows[k[0]-'1'])
	}
	return nil
}
