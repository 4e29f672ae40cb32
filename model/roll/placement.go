package roll

import (
	"math"

	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r3"
)

// Freedoms of the axle, in the order of a placement. Travel and roll are given.
const (
	foreAft = iota
	sideways
	pitch
	yaw
	rolling

	free  = rolling
	count = rolling + 1
)

// placement is where the axle is: fore-aft and sideways shift [m], pitch, yaw and
// roll [rad], at a travel [m].
type placement struct {
	at     [count]float64
	travel float64
}

// turned are the axle's axes in the chassis frame.
type turned struct{ x, y, z r3.Vec }

// of returns a place on the axle, from its middle and along its axes.
func (t *turned) of(v r3.Vec) r3.Vec {
	return r3.Vec{
		X: v.X*t.x.X + v.Y*t.y.X + v.Z*t.z.X,
		Y: v.X*t.x.Y + v.Y*t.y.Y + v.Z*t.z.Y,
		Z: v.X*t.x.Z + v.Y*t.y.Z + v.Z*t.z.Z,
	}
}

// turn returns the axle's axes: yaw after roll after pitch about its own axis, so
// that the roll is the angle of its centerline above the chassis's x-y plane.
func (p *placement) turn() turned {
	sp, cp := math.Sincos(-p.at[pitch]) // nose-up turns against +y
	sr, cr := math.Sincos(p.at[rolling])
	sy, cy := math.Sincos(p.at[yaw])
	yawed := func(v r3.Vec) r3.Vec { return r3.Vec{X: cy*v.X - sy*v.Y, Y: sy*v.X + cy*v.Y, Z: v.Z} }
	return turned{
		x: yawed(r3.Vec{X: cp, Y: sr * sp, Z: -cr * sp}),
		y: yawed(r3.Vec{Y: cr, Z: sr}),
		z: yawed(r3.Vec{X: sp, Y: -sr * cp, Z: cr * cp}),
	}
}

// middle returns the middle of the axle centerline.
func (l *Linkage) middle(p *placement) r3.Vec {
	return r3.Vec{X: p.at[foreAft], Y: p.at[sideways], Z: l.height + p.travel}
}

// stretches returns by how much each rod is longer than at ride height [m], and how
// that changes with the axle's freedoms.
func (l *Linkage) stretches(p *placement) (stretch [launch.RodCount]float64, change [launch.RodCount][count]float64) {
	axes, middle := p.turn(), l.middle(p)
	// The axis that the roll turns about; the pitch turns about −y of the axle, the yaw
	// about z of the chassis.
	sy, cy := math.Sincos(p.at[yaw])
	ahead := r3.Vec{X: cy, Y: sy}
	for k := range l.rods {
		rod := &l.rods[k]
		arm := axes.of(rod.Housing)
		way := r3.Sub(r3.Add(middle, arm), rod.Chassis)
		length := r3.Norm(way)
		way = r3.Scale(1/length, way)
		stretch[k] = length - rod.Length
		// way·(axis × arm) is axis·(arm × way).
		about := r3.Cross(arm, way)
		change[k] = [count]float64{
			foreAft: way.X, sideways: way.Y,
			pitch: -r3.Dot(axes.y, about), yaw: about.Z, rolling: r3.Dot(ahead, about),
		}
	}
	return stretch, change
}
