package around

import (
	"math"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Describe implements scene.Viewpoint.
func (v *Viewpoint) Describe(id scene.ID, p scene.Pointer) []string {
	switch id.Kind {
	case scene.BarForce:
		return []string{"Force of the " + launch.RodID(id.Index).String() + " on the chassis, to scale"}
	case scene.Twist:
		return []string{"The driveshaft's torque twists the axle", "it presses the left rear tire down and lifts the right one"}
	}
	s := v.study
	o := side.Options{Units: s.Units(), Case: s.Case(), Most: s.Envelope(), Held: true}
	if i, ok := s.Instant(); ok {
		o.Launch = &side.Instant{Tension: s.Launch().Tensions(i)}
	}
	for _, other := range s.Others() {
		o.Ghosts = append(o.Ghosts, side.GhostOf(s, other))
	}
	lines := side.Describe(id, s.Result(), s.Station(), o)
	if name := map[scene.Side]string{scene.Left: "left", scene.Right: "right"}[id.Side]; name != "" && len(lines) > 0 {
		lines[0] += ", " + name
	}
	if v.spreads(id) && len(lines) > 0 {
		lines = append(lines, "left and right bars "+s.Units().FormatExact(units.Length, *id.Row.Spread(s.Result().Car))+" apart here")
		if !p.Held {
			lines = append(lines, "drag moves both apart or together")
		}
	}
	return lines
}

// spreads reports whether a drag of an item moves left and right bars apart or together.
func (v *Viewpoint) spreads(id scene.ID) bool {
	return v.from != Around && id.Ghost == 0 && (id.Kind == scene.Pivot || id.Kind == scene.Hole)
}

// Hands implements scene.Viewpoint.
func (v *Viewpoint) Hands() scene.Hands { return v }

// Cursor implements scene.Hands.
func (v *Viewpoint) Cursor(id scene.ID) scene.Cursor {
	switch {
	case id.Kind == scene.Hole:
		return scene.Hand
	case v.spreads(id):
		return map[From]scene.Cursor{Above: scene.Upright, Behind: scene.Across}[v.from]
	}
	return scene.Arrow
}

// Point implements scene.Hands.
func (v *Viewpoint) Point(scene.ID) {}

// Hold implements scene.Hands: it turns the view around the car, and from above and behind
// moves left and right bars apart or together by their holes. Elsewhere, and with Shift, the
// picture moves as a whole.
func (v *Viewpoint) Hold(p *scene.Picture, at r2.Vec, shift bool) scene.Hold {
	if id := p.Pick(at); v.spreads(id) && !shift {
		return v.holdSpread(p, id, at)
	}
	if v.from != Around || shift {
		return nil
	}
	return &turning{view: v, last: at, azimuth: v.azimuth, height: v.height}
}

// Click implements scene.Hands: a free hole takes the bar.
func (v *Viewpoint) Click(id scene.ID, shift bool) []car.Problem {
	if id.Kind == scene.Hole && !shift {
		return v.study.Choose(id.Row, id.Index)
	}
	return nil
}

// DoubleClick implements scene.Hands: beside the car it turns the view around it back to
// where it was first.
func (v *Viewpoint) DoubleClick(id scene.ID) []car.Problem {
	if id.Kind == scene.Nothing || id.Kind == scene.Ground {
		v.azimuth, v.height = firstAzimuth, firstHeight
	}
	return nil
}

// Press implements scene.Hands: arrows turn the view around the car.
func (v *Viewpoint) Press(k scene.Key, _ bool) []car.Problem {
	if v.from != Around {
		return nil
	}
	const step = 5 * degree
	switch k {
	case scene.LeftKey:
		v.turn(-step, 0)
	case scene.RightKey:
		v.turn(step, 0)
	case scene.UpKey:
		v.turn(0, step)
	case scene.DownKey:
		v.turn(0, -step)
	}
	return nil
}

// How far the eye goes up and down [rad], and how much a drag turns the view [rad/px].
const (
	highest = 88 * degree
	lowest  = -10 * degree
	perDot  = 0.5 * degree
)

// turn moves the eye around and up.
func (v *Viewpoint) turn(around, up float64) {
	v.azimuth = math.Remainder(v.azimuth+around, 2*math.Pi)
	v.height = math.Max(lowest, math.Min(highest, v.height+up))
}

// heldSpread is a hole on one side that moves with its like on the other.
type heldSpread struct {
	study.Drag
	id     scene.ID
	middle float64 // of the car, to the left in the ground's frame [m]
	grip   r2.Vec  // from the pointer to the hole [px]
}

func (v *Viewpoint) holdSpread(p *scene.Picture, id scene.ID, at r2.Vec) *heldSpread {
	h := &heldSpread{Drag: study.Drag{Study: v.study, Label: study.SpreadLabel(id.Row)}, id: id}
	hole := (*id.Row.In(v.study.Document().Car()))[id.Index]
	h.middle = (v.parts.Hole(id.Row, 1, hole).Y + v.parts.Hole(id.Row, -1, hole).Y) / 2
	if center, ok := p.Find(id); ok {
		h.grip = r2.Sub(center, at)
	}
	return h
}

// To implements scene.Hold: the hole stays on its side.
func (h *heldSpread) To(v scene.View, at r2.Vec) (scene.ID, []car.Problem) {
	h.Begin()
	out := v.World(r2.Add(at, h.grip)).Y - h.middle
	if h.id.Side == scene.Right {
		out = -out
	}
	return h.id, h.Study.SetSpread(h.id.Row, 2*out)
}

// turning is a drag that turns the view.
type turning struct {
	view            *Viewpoint
	last            r2.Vec
	azimuth, height float64 // at its beginning
}

// To implements scene.Hold: the car follows the pointer.
func (t *turning) To(_ scene.View, at r2.Vec) (scene.ID, []car.Problem) {
	d := r2.Sub(at, t.last)
	t.last = at
	t.view.turn(-perDot*d.X, perDot*d.Y)
	return scene.ID{}, nil
}

// End implements scene.Hold.
func (t *turning) End() {}

// Cancel implements scene.Hold.
func (t *turning) Cancel() { t.view.azimuth, t.view.height = t.azimuth, t.height }
