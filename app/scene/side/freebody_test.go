package side_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/analysis"

	"gonum.org/v1/gonum/spatial/r2"
)

// newtonsPerMeter is the scale that the picture states: 10,000 lb as long as 10 in.
const newtonsPerMeter = 10000 * 0.45359237 * 9.80665 / (10 * inch)

// seenArrow is an arrow of the axle's free body as it is drawn.
type seenArrow struct {
	id     scene.ID
	points []r2.Vec // ground's frame, forward and up [m]
}

// vector returns the force that an arrow stands for [N].
func (a seenArrow) vector() r2.Vec {
	return r2.Scale(newtonsPerMeter, r2.Sub(a.points[len(a.points)-1], a.points[0]))
}

// torque returns the torque that an arc about a center stands for, counterclockwise and so
// nose-up positive: the force that its length stands for, at its radius [N·m].
func (a seenArrow) torque(center r2.Vec) float64 {
	radius, angle := r2.Norm(r2.Sub(a.points[0], center)), 0.0
	for i := 1; i < len(a.points); i++ {
		p, q := r2.Sub(a.points[i-1], center), r2.Sub(a.points[i], center)
		angle += math.Atan2(r2.Cross(p, q), r2.Dot(p, q))
	}
	return angle * radius * newtonsPerMeter * radius
}

// freeBody lists the arrows drawn of the axle's free body.
func freeBody(r *analysis.Result, s *analysis.Station, o side.Options) (list []seenArrow) {
	for _, d := range picture(r, s, o).Drawn {
		if d.Shape == scene.Force && (d.ID.Kind == scene.AxleForce || d.ID.Kind == scene.AxleTorque) {
			a := seenArrow{id: d.ID}
			for _, p := range d.Item.Points {
				a.points = append(a.points, r2.Vec{X: p.X, Y: p.Z})
			}
			list = append(list, a)
		}
	}
	return list
}

// The arrows drawn on the axle add up to nothing, forces as well as moments about the axle
// center, with the torque that spins the wheels up; the axle torque is that and what the
// thrust asks for at the tire's radius. In both load cases, over the whole travel.
func TestTheFreeBodyDrawnIsInBalance(t *testing.T) {
	for name, r := range map[string]*analysis.Result{"reference": reference(t), "demo": demo(t)} {
		stations := append(slices.Clone(r.Travel), r.Ride)
		for i := range stations {
			s := &stations[i]
			center := s.Pose.Ground.Point(s.Pose.Axle)
			for _, c := range []analysis.Case{analysis.Hit, analysis.Hooked} {
				o := options()
				o.Case, o.Forces = c, true
				var sum r2.Vec
				var moment, largest, whole, thrust float64
				var arcs []float64
				for _, a := range freeBody(r, s, o) {
					if a.id.Kind == scene.AxleTorque {
						arcs = append(arcs, a.torque(center))
						continue
					}
					f := a.vector()
					sum, largest = r2.Add(sum, f), math.Max(largest, r2.Norm(f))
					moment += r2.Cross(r2.Sub(a.points[0], center), f)
					if a.points[0] == (r2.Vec{}) && math.Abs(f.Y) < 1e-6 {
						thrust = f.X
					}
				}
				if len(arcs) != 2 {
					t.Fatalf("%s, %v: %d arcs of torque", name, c, len(arcs))
				}
				whole, moment = math.Max(arcs[0], arcs[1]), moment+math.Min(arcs[0], arcs[1])
				if largest == 0 || r2.Norm(sum) > 1e-6*largest || math.Abs(moment) > 1e-6*largest {
					t.Fatalf("%s, travel %.3f m, %v: force %v N and moment %v N·m left over, largest %v N", name, s.Pose.Travel, c, sum, moment, largest)
				}
				load := c.Of(&s.Loads)
				if math.Abs(thrust-load.Thrust) > 1e-6*largest || math.Abs(whole-load.AxleTorque) > 1e-6*load.AxleTorque {
					t.Errorf("%s, %v: thrust %v N, torque %v N·m; want %v and %v", name, c, thrust, whole, load.Thrust, load.AxleTorque)
				}
			}
		}
	}
}

// The reference car's hit at ride height, from the mechanics that it was worked out with:
// upper bars pull 6777 lb each, lower ones push 9475 lb each, thrust 6890 lb, of 2650 lb on
// the tires.
func TestForcesOfTheReferenceHit(t *testing.T) {
	r := reference(t)
	o := options()
	o.Forces = true
	const lbf = 0.45359237 * 9.80665
	var got []float64
	for _, a := range freeBody(r, &r.Ride, o) {
		if a.id.Kind == scene.AxleForce {
			got = append(got, r2.Norm(a.vector())/lbf)
		}
	}
	for i, want := range map[int]float64{0: 2 * 6777, 1: 2 * 9475, 3: 6890, 4: 2650, 5: 390} {
		if i >= len(got) || math.Abs(got[i]-want) > 2 {
			t.Errorf("force %d of %.0f lb, want %v", i, got, want)
		}
	}
	stated := false
	for _, d := range picture(r, &r.Ride, o).Drawn {
		stated = stated || d.Shape == scene.Label && strings.Contains(d.Text, "10,000 lb as long as 10 in")
	}
	if !stated {
		t.Error("the scale is not stated")
	}
}

// The forces are shown when they are asked for, and not in a launch or where nothing holds
// the axle.
func TestForcesAreSwitchedOn(t *testing.T) {
	r := reference(t)
	o := options()
	if n := len(freeBody(r, &r.Ride, o)); n > 0 {
		t.Errorf("%d arrows before they are asked for", n)
	}
	o.Forces = true
	free := r.Ride
	free.Loads.Hit.Balanced = false
	if n := len(freeBody(r, &free, o)); n > 0 {
		t.Errorf("%d arrows where nothing holds the axle", n)
	}
	o.Launch = &side.Instant{}
	if n := len(freeBody(r, &r.Ride, o)); n > 0 {
		t.Errorf("%d arrows in a launch", n)
	}
}
