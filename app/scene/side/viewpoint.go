package side

import (
	"bowline/app/scene"
	"bowline/app/scene/parts"
	"bowline/app/study"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Viewpoint is the side view of a study.
type Viewpoint struct {
	study    *study.Study
	cloud    Cloud // of the study's combinations of holes, while they are looked at
	pointing bool  // the study has been told of a dot under the pointer
	fits     []scene.Fit

	// Memory that is used anew for each picture.
	instant Instant
	stance  parts.Stance
	memory  memory
	ghosts  []Ghost
	sights  []r3.Vec
}

// The fits of the side view, by their place among Fits.
const (
	FitBars    = iota // rear tire, brackets and instant center; the target too while the holes are searched
	FitCar            // both tires
	FitCenters        // target and most of the combinations of holes as well
)

// New returns the side view of a study, which it follows for good. What shows it
// is to listen to the study later than it does.
func New(s *study.Study) *Viewpoint {
	v := &Viewpoint{study: s}
	v.fits = []scene.Fit{
		FitBars:    {Key: "f", Framing: v.framingBars},
		FitCar:     {Key: "c", Framing: v.framingCar},
		FitCenters: {Key: "h", Framing: v.framingCenters},
	}
	v.gather(study.Ranking)
	s.Listen(v.gather)
	return v
}

// gather takes up the study's combinations of holes, while they are looked at,
// and which of them are marked.
func (v *Viewpoint) gather(c study.Change) {
	s := v.study
	if !s.Searching() {
		return
	}
	if c.Has(study.Ranking | study.Wanted | study.Units) {
		v.cloud.By, v.cloud.Units = s.DotColumn(), s.Units()
		v.cloud.Fill(s.Ranking(), s.IsListed, s.Result().Car.Check.TargetAntiSquat, s.TableOutdated())
	}
	v.cloud.Present, v.cloud.Pointed, v.cloud.Picked = s.Present(), s.Pointed(), s.Picked()
}

// Fill implements scene.Viewpoint.
func (v *Viewpoint) Fill(l *scene.List, p scene.Pointer) {
	Build(l, v.study.Result(), v.study.Station(), v.options(p))
}

// Plane implements scene.Viewpoint.
func (v *Viewpoint) Plane() scene.Plane { return Plane }

// Fits implements scene.Viewpoint.
func (v *Viewpoint) Fits() []scene.Fit { return v.fits }

// Describe implements scene.Viewpoint.
func (v *Viewpoint) Describe(id scene.ID, p scene.Pointer) []string {
	return Describe(id, v.study.Result(), v.study.Station(), v.options(p))
}

// Hands implements scene.Viewpoint.
func (v *Viewpoint) Hands() scene.Hands { return v }

// options say how the car is shown now.
func (v *Viewpoint) options(p scene.Pointer) Options {
	s := v.study
	o := Options{
		Units: s.Units(), Case: s.Case(), Selected: s.Pivot(), Hot: p.Hot, Held: p.Held,
		memory: &v.memory, Most: s.Envelope(), Labels: true, Moving: s.Moving(), Tuning: s.Searching(), Forces: s.Forces(),
	}
	if s.Searching() {
		o.Cloud = &v.cloud
	}
	if i, ok := s.Instant(); ok {
		r := s.Launch()
		v.stance = parts.Launched(r, i)
		v.instant = Instant{Stance: &v.stance, Tension: r.Tensions(i), Spin: r.Frames[i].Spin, Distance: r.Distance[i], CenterPath: s.CenterPath()}
		o.Launch = &v.instant
	}
	v.ghosts = v.ghosts[:0]
	for _, other := range s.Others() {
		v.ghosts = append(v.ghosts, GhostOf(s, other))
	}
	o.Ghosts = v.ghosts
	return o
}

// What a framing is fitted to.
const (
	ofBars = iota
	ofCar
	ofTarget
	ofCloud
)

// framingBars keeps the instant center in sight, and while the holes are searched
// two corners of the target.
func (v *Viewpoint) framingBars(width, height float64) scene.Framing {
	r := v.study.Result()
	if v.study.Searching() {
		return v.framing(ViewOfTarget(width, height, r), ofTarget, v.targetSights()...)
	}
	return v.framing(ViewOfBars(width, height, r), ofBars, r.Ride.InstantCenter)
}

// framingCar keeps the front of the car in sight.
func (v *Viewpoint) framingCar(width, height float64) scene.Framing {
	r := v.study.Result()
	front := r2.Vec{X: r.Ride.Pose.Ground.Wheelbase + r.Car.Tires.FrontRadius}
	return v.framing(ViewOfCar(width, height, r), ofCar, front)
}

// framingCenters keeps in sight what framingBars does. Without dots it is fitted to
// the target, until there are some.
func (v *Viewpoint) framingCenters(width, height float64) scene.Framing {
	if !v.study.Searching() || v.cloud.Empty() {
		return v.framingBars(width, height)
	}
	return v.framing(ViewOfCloud(width, height, v.study.Result(), &v.cloud), ofCloud, v.targetSights()...)
}

// targetSights returns the instant center and two corners of the target.
func (v *Viewpoint) targetSights() []r2.Vec {
	r := v.study.Result()
	box := targetCorners(r.Car)
	return []r2.Vec{r.Ride.InstantCenter, box[0], box[2]}
}

// framing returns what a fit shows.
func (v *Viewpoint) framing(view scene.View, of int, sights ...r2.Vec) scene.Framing {
	v.sights = v.sights[:0]
	for _, p := range sights {
		v.sights = append(v.sights, across(p, 0))
	}
	return scene.Framing{View: view, Sights: v.sights, Of: of}
}
