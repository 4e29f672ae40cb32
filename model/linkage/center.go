package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// parallel is the sine of the angle between the bars below which they count
// as parallel: their lines then meet beyond a billion bar lengths.
const parallel = 1e-9

// Center is the instant center in homogeneous coordinates of the ground's
// frame, so that parallel bars, which have none, are an ordinary case.
type Center struct {
	x, y, w float64 // the point is (x/w, y/w)
}

// InstantCenter intersects the lines of the upper and the lower bar.
func (p *Pose) InstantCenter() Center {
	direction := func(housing, chassis r2.Vec) (d r2.Vec, moment float64) {
		bar := r2.Sub(chassis, housing)
		d = p.Ground.Direction(r2.Scale(1/norm(bar), bar))
		return d, r2.Cross(d, p.Ground.Point(housing))
	}
	u, mu := direction(p.HousingUpper, p.ChassisUpper)
	l, ml := direction(p.HousingLower, p.ChassisLower)
	// A point (x, y) lies on a line when cross(d, point) equals its moment.
	return Center{x: mu*l.X - ml*u.X, y: mu*l.Y - ml*u.Y, w: r2.Cross(u, l)}
}

// Point returns the instant center ahead of the rear contact and above the
// ground [m], and false for parallel bars.
func (c Center) Point() (r2.Vec, bool) {
	if math.Abs(c.w) < parallel {
		return r2.Vec{}, false
	}
	return r2.Vec{X: c.x / c.w, Y: c.y / c.w}, true
}

// Slope returns the rise over run of the line of action from the rear contact
// through the instant center, z/x; with parallel bars it has the bars' slope.
// It returns false where the line stands upright.
func (c Center) Slope() (float64, bool) {
	if math.Abs(c.x) <= parallel*math.Hypot(c.y, c.w) {
		return 0, false
	}
	return c.y / c.x, true
}
