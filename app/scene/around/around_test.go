package around_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"bowline/app/document"
	"bowline/app/runner/runnertest"
	"bowline/app/scene"
	"bowline/app/scene/around"
	"bowline/app/study"
	"bowline/assets"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

const inch = units.Inch

// views are all there are, by name.
var views = map[string]around.From{"above": around.Above, "behind": around.Behind, "around": around.Around}

// rig is a study with its queue.
type rig struct {
	*study.Study
	queue *runnertest.Queue
	list  scene.List
}

// open studies an example car.
func open(t testing.TB, name string) *rig {
	t.Helper()
	data, err := assets.Cars.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	file, err := carfile.Decode("car.toml", data, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	r := &rig{queue: runnertest.NewQueue()}
	r.Study = study.New(document.New(carfile.Stock(), t.TempDir(), file), study.Options{Library: carfile.Stock(), Post: r.queue.Post})
	t.Cleanup(r.Close)
	return r
}

// launch looks at an instant of the launch.
func (r *rig) launch(at float64) {
	r.SetLaunching(true)
	r.queue.Settle(r.Busy)
	r.SetTime(at)
}

// look fills and projects what is seen.
func (r *rig) look(v *around.Viewpoint, fit int) *scene.Picture {
	v.Fill(&r.list, scene.Pointer{})
	p := new(scene.Picture)
	p.Project(r.list.Items, v.Fits()[fit].Framing(1000, 700).View)
	return p
}

// tube returns a bar's tube, which is what is picked of it.
func tube(t *testing.T, p *scene.Picture, kind scene.Kind, side scene.Side) scene.Drawn {
	t.Helper()
	for _, d := range p.Drawn {
		if d.ID.Kind == kind && d.ID.Side == side && d.Girth > 0 && d.Pick > 0 {
			return d
		}
	}
	t.Fatalf("there is no bar of kind %v on side %v", kind, side)
	return scene.Drawn{}
}

// From above left is up, from behind right is to the right, and the eye is where the names
// say; turned or not, a view's axes are at right angles.
func TestPlanes(t *testing.T) {
	s := open(t, assets.DemoCar)
	if p := around.New(s.Study, around.Above).Plane(); p.On(r3.Vec{X: 1, Y: 2, Z: 3}) != (r2.Vec{X: 1, Y: 2}) || p.Eye().Z != 1 {
		t.Errorf("above: %+v", p)
	}
	if p := around.New(s.Study, around.Behind).Plane(); p.On(r3.Vec{X: 1, Y: 2, Z: 3}) != (r2.Vec{X: -2, Y: 3}) || p.Eye().X != -1 {
		t.Errorf("behind: %+v", p)
	}
	v := around.New(s.Study, around.Around)
	for range 40 {
		p := v.Plane()
		if e := p.Eye(); math.Abs(r3.Norm(p.Right)-1) > 1e-12 || math.Abs(r3.Norm(p.Up)-1) > 1e-12 || math.Abs(r3.Dot(p.Right, p.Up)) > 1e-12 || math.Abs(r3.Norm(e)-1) > 1e-12 || p.Right.Z != 0 {
			t.Fatalf("%+v with the eye toward %v", p, e)
		}
		v.Press(scene.RightKey, false)
		v.Press(scene.UpKey, false)
	}
}

// Pivots stand where the car file says, left and right, in every view.
func TestPivotsAreWhereTheFileSays(t *testing.T) {
	s := open(t, assets.DemoCar)
	c := s.Document().Car()
	for name, from := range views {
		v := around.New(s.Study, from)
		p := s.look(v, around.FitBars)
		for _, row := range car.Rows {
			h, spread := row.Hole(c, 0), c.Chassis
			up := 0.0
			if !row.OnChassis() {
				spread, up = c.Housing, c.Tires.RearRadius
			}
			half := spread.SpreadUpper / 2
			if row.Pair() == car.Lower {
				half = spread.SpreadLower / 2
			}
			for side, y := range map[scene.Side]float64{scene.Left: half, scene.Right: -half} {
				want := p.View.Screen(r3.Vec{X: h.X, Y: y, Z: h.Y + up})
				id := scene.ID{Kind: scene.Pivot, Side: side, Row: row, Index: *row.Of(&c.Setups[0].Holes)}
				if at, ok := p.Find(id); !ok || r2.Norm(r2.Sub(at, want)) > 1e-6 {
					t.Errorf("%s: %s on side %v is drawn at %v, want %v", name, row, side, at, want)
				}
			}
		}
	}
}

// The bars of both sides are picked along their tubes and named with their side, and the
// picture holds the four-link and, fitted to the car, all tires.
func TestBarsArePicked(t *testing.T) {
	s := open(t, assets.DemoCar)
	for name, from := range views {
		v := around.New(s.Study, from)
		p := s.look(v, around.FitBars)
		for _, side := range []scene.Side{scene.Left, scene.Right} {
			for _, kind := range []scene.Kind{scene.UpperBar, scene.LowerBar} {
				bar := tube(t, p, kind, side)
				middle := r2.Scale(0.5, r2.Add(bar.Points[0], bar.Points[1]))
				got := p.Pick(middle)
				if from == around.Around && (got.Kind != kind || got.Side != side) {
					t.Errorf("%s: on the bar of kind %v and side %v is %+v", name, kind, side, got)
				}
				if middle.X < 0 || middle.X > 1000 || middle.Y < 0 || middle.Y > 700 {
					t.Errorf("%s: a bar is out of the picture, at %v", name, middle)
				}
				word := map[scene.Side]string{scene.Left: "left", scene.Right: "right"}[side]
				if said := v.Describe(bar.ID, scene.Pointer{}); len(said) < 2 || !strings.HasSuffix(said[0], word) {
					t.Errorf("%s: %+v is named %q", name, bar.ID, said)
				}
			}
		}
		p = s.look(v, around.FitCar)
		for _, d := range p.Drawn {
			if d.ID.Kind != scene.RearTire && d.ID.Kind != scene.FrontTire {
				continue
			}
			for _, at := range d.Points {
				if at.X < 0 || at.X > 1000 || at.Y < 0 || at.Y > 700 {
					t.Errorf("%s: %+v leaves the picture at %v", name, d.ID, at)
				}
			}
		}
	}
}

// Whatever can be picked has a name, standing and in the launch.
func TestEverythingNamesItself(t *testing.T) {
	for _, launching := range []bool{false, true} {
		s := open(t, assets.DemoCar)
		if launching {
			s.launch(0.1)
		}
		for name, from := range views {
			v := around.New(s.Study, from)
			kinds := map[scene.Kind]bool{}
			for _, d := range s.look(v, around.FitBars).Drawn {
				kinds[d.ID.Kind] = true
				if d.Pick > 0 && len(v.Describe(d.ID, scene.Pointer{})) == 0 {
					t.Errorf("%s: %+v has no name", name, d.ID)
				}
			}
			for kind, want := range map[scene.Kind]bool{scene.BarForce: true, scene.Twist: launching, scene.RearTire: true, scene.Spring: true, scene.Driveshaft: true, scene.Locator: true} {
				if kinds[kind] != want {
					t.Errorf("%s, launching %v: kind %v is there: %v", name, launching, kind, kinds[kind])
				}
			}
		}
	}
}

// In a launch the bars keep their length but for their stretch, the axle rolls, and no part of
// a tire is below the ground: the picture is that of the launch.
func TestTheLaunchIsTrue(t *testing.T) {
	for _, name := range assets.CarNames() {
		s := open(t, name)
		s.launch(0.08)
		l := s.Launch()
		i, _ := s.Instant()
		p := s.look(around.New(s.Study, around.Around), around.FitBars)
		c := s.Document().Car()
		for _, bar := range launch.Bars {
			kind := [...]scene.Kind{scene.UpperBar, scene.LowerBar}[bar.Pair()]
			side := [...]scene.Side{scene.Left, scene.Right}[bar.Side()]
			var ends []r3.Vec
			for _, row := range car.Rows {
				if row.Pair() != bar.Pair() {
					continue
				}
				for _, d := range p.Drawn {
					if d.ID.Kind == scene.Pivot && d.ID.Side == side && d.ID.Row == row {
						ends = append(ends, d.Item.Points[0])
					}
				}
			}
			if len(ends) != 2 {
				t.Fatalf("%s: %d ends of the %s", name, len(ends), bar)
			}
			spread := func(b *car.Bracket) float64 {
				if bar.Pair() == car.Upper {
					return b.SpreadUpper
				}
				return b.SpreadLower
			}
			level := s.Result().Bars[bar.Pair()].Length
			length := math.Hypot(level, (spread(&c.Chassis)-spread(&c.Housing))/2)
			if got := r3.Norm(r3.Sub(ends[0], ends[1])); math.Abs(got-length) > 4e-3 {
				t.Errorf("%s: the %s is %v m long, at rest %v", name, bar, got, length)
			}
			_ = tube(t, p, kind, side)
		}
		roll := 0.0
		for _, d := range p.Drawn {
			if d.ID.Kind == scene.RearTire {
				for _, q := range d.Item.Points {
					if q.Z < -1e-9 {
						t.Fatalf("%s: a tire reaches %v m below the ground", name, -q.Z)
					}
				}
			}
		}
		roll = math.Abs(l.AxleRoll[i])
		left, right := l.Frames[i].RearWheels[0].Z, l.Frames[i].RearWheels[1].Z
		if got := math.Abs(math.Atan2(left-right, c.Body.TrackRear)); math.Abs(got-roll) > 1e-3 {
			t.Errorf("%s: the wheels roll by %v, the axle by %v", name, got, roll)
		}
	}
}

// A force's arrow is as long as the force, away from the rear for a bar that pushes.
func TestForcesAreToScale(t *testing.T) {
	s := open(t, assets.DemoCar)
	p := s.look(around.New(s.Study, around.Above), around.FitBars)
	load := &s.Station().Loads.Hit
	for _, d := range p.Drawn {
		if d.ID.Kind != scene.BarForce {
			continue
		}
		bar := launch.RodID(d.ID.Index)
		tension := analysis.Tension(bar.Pair(), load)
		arrow := r3.Sub(d.Item.Points[1], d.Item.Points[0])
		if want := math.Abs(tension) / (1000 * units.PoundForce) * 2 * inch; math.Abs(r3.Norm(arrow)-want) > 1e-9 {
			t.Errorf("%s: %v m long for %v N, want %v", bar, r3.Norm(arrow), tension, want)
		}
		if (arrow.X > 0) != (tension < 0) {
			t.Errorf("%s under %v N: its arrow goes %v", bar, tension, arrow)
		}
	}
}

// A drag turns the view about the four-link, Escape takes it back, and with Shift the picture
// moves as a whole.
func TestADragTurnsTheView(t *testing.T) {
	s := open(t, assets.DemoCar)
	v := around.New(s.Study, around.Around)
	p := s.look(v, around.FitBars)
	before := v.Plane()
	if v.Hold(p, r2.Vec{X: 500, Y: 350}, true) != nil {
		t.Error("with Shift it takes hold of something")
	}
	hold := v.Hold(p, r2.Vec{X: 500, Y: 350}, false)
	hold.To(p.View, r2.Vec{X: 600, Y: 350})
	after := v.Plane()
	if turned := math.Acos(r3.Dot(before.Right, after.Right)); math.Abs(turned-50*math.Pi/180) > 1e-9 {
		t.Errorf("100 px turn it by %v°", turned*180/math.Pi)
	}
	// What is nearest to the eye follows the pointer.
	near := r3.Add(before.Origin, before.Eye())
	if moved := after.On(near).X - before.On(near).X; moved <= 0 {
		t.Errorf("what is near moves by %v m to the right", moved)
	}
	if after.On(before.Origin) != before.On(before.Origin) {
		t.Error("it does not turn about its middle")
	}
	hold.To(p.View, r2.Vec{X: 600, Y: 5000})
	if e := v.Plane().Eye(); e.Z > 1 || e.Z < 0.9 {
		t.Errorf("as high as it goes the eye is toward %v", e)
	}
	hold.Cancel()
	if v.Plane() != before {
		t.Error("Escape does not take it back")
	}
	for name, from := range map[string]around.From{"above": around.Above, "behind": around.Behind} {
		if around.New(s.Study, from).Hold(p, r2.Vec{X: 500, Y: 350}, false) != nil {
			t.Errorf("%s: a drag turns the view", name)
		}
	}
}

// A click on a free hole puts the bar there.
func TestAFreeHoleIsChosen(t *testing.T) {
	s := open(t, assets.DemoCar)
	v := around.New(s.Study, around.Around)
	if problems := v.Click(scene.ID{Kind: scene.Hole, Side: scene.Left, Row: car.ChassisLower, Index: 0}, false); len(problems) > 0 {
		t.Fatal(problems)
	}
	if got := s.Document().Car().Setups[0].Holes.ChassisLower; got != 0 {
		t.Errorf("the bar is in hole %d", got+1)
	}
}

func BenchmarkFill(b *testing.B) {
	s := open(b, assets.DemoCar)
	s.launch(0.1)
	for name, from := range views {
		b.Run(fmt.Sprint(name), func(b *testing.B) {
			v := around.New(s.Study, from)
			var l scene.List
			p := new(scene.Picture)
			view := v.Fits()[0].Framing(820, 420).View
			b.ReportAllocs()
			for b.Loop() {
				v.Fill(&l, scene.Pointer{})
				p.Project(l.Items, view)
			}
		})
	}
}

// A double click beside the car brings the first view back; one on the car does not.
func TestADoubleClickTurnsBack(t *testing.T) {
	s := open(t, assets.DemoCar)
	v := around.New(s.Study, around.Around)
	first := v.Plane()
	v.Press(scene.RightKey, false)
	v.Press(scene.UpKey, false)
	turned := v.Plane()
	if v.Hands().DoubleClick(scene.ID{Kind: scene.RearTire}); turned == first || v.Plane() != turned {
		t.Errorf("a double click on a tire turns from %+v to %+v", turned, v.Plane())
	}
	if v.Hands().DoubleClick(scene.ID{}); v.Plane() != first {
		t.Errorf("a double click beside the car turns to %+v, want %+v", v.Plane(), first)
	}
}

// A bar that the launch takes over its limit says so where it stands, in the view of a travel.
func TestALimitCrossedElsewhereIsSaid(t *testing.T) {
	s := open(t, assets.DemoCar)
	s.Want(study.WantsLaunch)
	s.Document().Apply("Turns", func(c *car.Car) { c.Setups[0].Turns.UpperRight = -10 })
	s.queue.Settle(s.Busy)
	p := s.look(around.New(s.Study, around.Around), around.FitBars)
	said := map[scene.ID]string{}
	for i := range s.list.Items {
		if item := &s.list.Items[i]; item.Shape == scene.Label {
			said[item.ID] = item.Figure
		}
	}
	e := s.Envelope()
	if over := e.Of(launch.LowerRight); over.Share <= 1 {
		t.Fatalf("the example is another one: %+v", over)
	}
	right, left := said[scene.ID{Kind: scene.LowerBar, Side: scene.Right}], said[scene.ID{Kind: scene.LowerBar, Side: scene.Left}]
	if want := units.Share(e.Of(launch.LowerRight).Share); !strings.Contains(right, want) || strings.Contains(left, want) {
		t.Errorf("the lower bars say %q and %q, want %s on the right; %d things drawn", left, right, want, len(p.Drawn))
	}
}
