package launch

import (
	"math"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

// axes are the axes of a body in the world: a rotation, column by column.
type axes struct{ x, y, z r3.Vec }

// axesOf returns the axes of a body that is turned by a unit quaternion.
func axesOf(q quat.Number) axes {
	w, x, y, z := q.Real, q.Imag, q.Jmag, q.Kmag
	return axes{
		x: r3.Vec{X: 1 - 2*(y*y+z*z), Y: 2 * (x*y + w*z), Z: 2 * (x*z - w*y)},
		y: r3.Vec{X: 2 * (x*y - w*z), Y: 1 - 2*(x*x+z*z), Z: 2 * (y*z + w*x)},
		z: r3.Vec{X: 2 * (x*z + w*y), Y: 2 * (y*z - w*x), Z: 1 - 2*(x*x+y*y)},
	}
}

// world turns a direction of the body into the world.
func (a *axes) world(p r3.Vec) r3.Vec {
	return r3.Vec{
		X: a.x.X*p.X + a.y.X*p.Y + a.z.X*p.Z,
		Y: a.x.Y*p.X + a.y.Y*p.Y + a.z.Y*p.Z,
		Z: a.x.Z*p.X + a.y.Z*p.Y + a.z.Z*p.Z,
	}
}

// body turns a direction of the world into the body.
func (a *axes) body(p r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(a.x, p), Y: r3.Dot(a.y, p), Z: r3.Dot(a.z, p)}
}

// turning returns the rate of the quaternion of a body with the angular
// velocity w in its own axes, q (0, w)/2.
func turning(q quat.Number, w r3.Vec) quat.Number {
	return quat.Number{
		Real: 0.5 * (-q.Imag*w.X - q.Jmag*w.Y - q.Kmag*w.Z),
		Imag: 0.5 * (q.Real*w.X + q.Jmag*w.Z - q.Kmag*w.Y),
		Jmag: 0.5 * (q.Real*w.Y + q.Kmag*w.X - q.Imag*w.Z),
		Kmag: 0.5 * (q.Real*w.Z + q.Imag*w.Y - q.Jmag*w.X),
	}
}

// normal returns the unit quaternion along q.
func normal(q quat.Number) quat.Number {
	return quat.Scale(1/math.Sqrt(q.Real*q.Real+q.Imag*q.Imag+q.Jmag*q.Jmag+q.Kmag*q.Kmag), q)
}

// turned returns q after a small further turn by v, a rotation vector of the
// world.
func turned(q quat.Number, v r3.Vec) quat.Number {
	half := quat.Number{Imag: v.X / 2, Jmag: v.Y / 2, Kmag: v.Z / 2}
	return normal(quat.Mul(quat.Exp(half), q))
}

// along returns p + f·q.
func along(p r3.Vec, f float64, q r3.Vec) r3.Vec {
	return r3.Vec{X: p.X + f*q.X, Y: p.Y + f*q.Y, Z: p.Z + f*q.Z}
}

// length is the norm of p without r3.Norm's care for overflow.
func length(p r3.Vec) float64 { return math.Sqrt(p.X*p.X + p.Y*p.Y + p.Z*p.Z) }
