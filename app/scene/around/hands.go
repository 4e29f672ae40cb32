package around

import (
	"math"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/car"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r2"
)

// Describe implements scene.Viewpoint.
func (v *Viewpoint) Describe(id scene.ID, _ scene.Pointer) []string {
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
	lines := side.Describe(id, s.Result(), s.Station(), o)
	if name := map[scene.Side]string{scene.Left: "left", scene.Right: "right"}[id.Side]; name != "" && len(lines) > 0 {
		lines[0] += ", " + name
	}
	return lines
}

// Hands implements scene.Viewpoint.
func (v *Viewpoint) Hands() scene.Hands { return v }

// Cursor implements scene.Hands.
func (v *Viewpoint) Cursor(id scene.ID) scene.Cursor {
	if id.Kind == scene.Hole {
		return scene.Hand
	}
	return scene.Arrow
}

// Point implements scene.Hands.
func (v *Viewpoint) Point(scene.ID) {}

// Hold implements scene.Hands: it turns the view around the car; with Shift, and in the other
// views, the picture moves as a whole.
func (v *Viewpoint) Hold(_ *scene.Picture, at r2.Vec, shift bool) scene.Hold {
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

// DoubleClick implements scene.Hands.
func (v *Viewpoint) DoubleClick(scene.ID) []car.Problem { return nil }

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
