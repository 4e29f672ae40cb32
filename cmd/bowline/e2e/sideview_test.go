//go:build e2e

package e2e

import (
	"math"
	"testing"
)

const (
	inch = 0.0254 // [m].

	pixelTolerance     = 1.5  // Half a pixel of rounding in each of two places, and the slant between them [pixels].
	scaleTolerance     = 0.02 // Between the scales across and up, read from pivots rounded to pixels [1].
	centerTolerance    = 1e-6 // Of the instant center [m].
	antiSquatTolerance = 1e-4 // [%].
)

// place is a point of the car's side view: x ahead of the rear axle, z above the ground [in].
type place struct{ x, z float64 }

// choice is where the four pivots sit at ride height.
type choice struct{ upperChassis, lowerChassis, upperHousing, lowerHousing place }

// The holes of testdata/drag.toml, whose axle centerline is 16 in above the ground: its setup, and the lower bar one chassis hole higher.
var (
	baseline = choice{place{22.5, 17}, place{25.5, 11.5}, place{2.5, 22.5}, place{2.5, 11}}
	raised   = choice{baseline.upperChassis, place{25.5, 12.25}, baseline.upperHousing, baseline.lowerHousing}
)

// The wheelbase and the height of the center of gravity in testdata/drag.toml [in].
const wheelbase, cgHeight = 105, 19.5

// center returns where the lines of the two bars meet.
func (c choice) center() place {
	upper := (c.upperChassis.z - c.upperHousing.z) / (c.upperChassis.x - c.upperHousing.x)
	lower := (c.lowerChassis.z - c.lowerHousing.z) / (c.lowerChassis.x - c.lowerHousing.x)
	x := (c.lowerHousing.z - lower*c.lowerHousing.x - c.upperHousing.z + upper*c.upperHousing.x) / (upper - lower)
	return place{x, c.upperHousing.z + upper*(x-c.upperHousing.x)}
}

// antiSquat returns 100 % times the slope from the rear contact to the instant center over that of the 100 % line, which rises to the
// height of the center of gravity over the wheelbase (common practice).
func (c choice) antiSquat() float64 {
	center := c.center()
	return 100 * center.z / center.x * wheelbase / cgHeight
}

// checkSideView compares what the window shows with the closed form for pivots at ride height.
func checkSideView(t *testing.T, got State, want choice) {
	t.Helper()
	if got.InstantCenter == nil {
		t.Fatal("no instant center, though the bars are not parallel")
	}
	center := want.center()
	if d := math.Hypot(got.InstantCenter[0]-center.x*inch, got.InstantCenter[1]-center.z*inch); d > centerTolerance {
		t.Errorf("instant center %v m, want (%.6f, %.6f) m", *got.InstantCenter, center.x*inch, center.z*inch)
	}
	if d := math.Abs(got.AntiSquat - want.antiSquat()); d > antiSquatTolerance {
		t.Errorf("anti-squat %.4f %%, want %.4f %%", got.AntiSquat, want.antiSquat())
	}
	v := viewOf(t, got, want)
	for _, p := range []struct {
		name string
		at   place
	}{{"lower_chassis", want.lowerChassis}, {"upper_housing", want.upperHousing}} {
		if d := distance(got.Pivot(p.name), v.pixel(p.at)); d > pixelTolerance {
			t.Errorf("%s is drawn at %.1f, %.1f pixels from its place at %.1f", p.name, got.Pivot(p.name), d, v.pixel(p.at))
		}
	}
}

// view maps the side view to the window: a scale [pixels/in] for each axis and where the origin lies.
type view struct {
	scaleX, scaleZ float64
	origin         Point
}

// viewOf reads the map off two pivots, the upper one at the chassis and the lower one at the housing, and sees to it that the picture is
// drawn upright and to scale.
func viewOf(t *testing.T, s State, c choice) view {
	t.Helper()
	a, b := s.Pivot("upper_chassis"), s.Pivot("lower_housing")
	v := view{
		scaleX: (a.X - b.X) / (c.upperChassis.x - c.lowerHousing.x),
		scaleZ: (b.Y - a.Y) / (c.upperChassis.z - c.lowerHousing.z),
	}
	v.origin = Point{b.X - v.scaleX*c.lowerHousing.x, b.Y + v.scaleZ*c.lowerHousing.z}
	if v.scaleZ <= 0 || math.Abs(math.Abs(v.scaleX)/v.scaleZ-1) > scaleTolerance {
		t.Fatalf("the side view is not drawn to scale: %.3f pixels/in across, %.3f up", v.scaleX, v.scaleZ)
	}
	return v
}

// pixel returns where a place is drawn.
func (v view) pixel(p place) Point {
	return Point{v.origin.X + v.scaleX*p.x, v.origin.Y - v.scaleZ*p.z}
}
