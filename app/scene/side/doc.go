// Package side is the side view of the car: its items, the parts of it that a
// picture is fitted to, the words for what is under the pointer, and what can be
// dragged there. The eye is on the car's right: forward is to the right.
package side

import (
	"bowline/app/scene"

	"gonum.org/v1/gonum/spatial/r3"
)

// Plane is what the side view projects onto.
var Plane = scene.Plane{Right: r3.Vec{X: 1}, Up: r3.Vec{Z: 1}, Across: "x", Upright: "z"}
