package around_test

import (
	"math"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/around"
	"bowline/app/scene/side"
	"bowline/assets"
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r3"
)

// Another setup launches beside the one shown, in every view: its bars end in its own
// holes where its own launch has chassis and axle at that instant, and its tires stand
// around its wheels.
func TestTheOtherSetupLaunchesBeside(t *testing.T) {
	s := open(t, assets.DemoCar)
	s.Compare(1)
	s.launch(0.35)
	at, ok := s.Instant()
	other := s.Others()[0]
	if !ok || other.Launch == nil {
		t.Fatal("there is no launch of the other setup")
	}
	c, f := s.Document().Car(), other.Launch.Frames[at]
	if own := s.Launch().Frames[at]; r3.Norm(r3.Sub(own.Chassis.Origin, f.Chassis.Origin)) < 1e-4 {
		t.Fatal("both setups stand alike: the test proves nothing")
	}
	along := r3.Vec{X: -f.Axle.Origin.X}
	for name, v := range map[string]scene.Viewpoint{
		"side": side.New(s.Study), "above": around.New(s.Study, around.Above), "behind": around.New(s.Study, around.Behind), "around": around.New(s.Study, around.Around),
	} {
		var list scene.List
		v.Fill(&list, scene.Pointer{})
		bars, tires, named, pictured := 0, 0, false, false
		for _, i := range list.Items {
			if i.ID.Ghost != 1 {
				continue
			}
			if i.Pick > 0 {
				words := v.Describe(i.ID, scene.Pointer{})
				named = named || strings.Contains(strings.Join(words, "\n"), other.Name)
			}
			y := map[scene.Side]float64{scene.Left: 0.5, scene.Right: -0.5}[i.ID.Side]
			switch {
			case i.Shape == scene.Label:
				pictured = pictured || i.Text == other.Name
			case i.ID.Kind == scene.UpperBar || i.ID.Kind == scene.LowerBar:
				bars++
				front, rear, chassis, housing := car.ChassisUpper, car.HousingUpper, c.Chassis.SpreadUpper, c.Housing.SpreadUpper
				if i.ID.Kind == scene.LowerBar {
					front, rear, chassis, housing = car.ChassisLower, car.HousingLower, c.Chassis.SpreadLower, c.Housing.SpreadLower
				}
				hf, hr := front.Hole(c, 1), rear.Hole(c, 1)
				want := []r3.Vec{f.Axle.At(r3.Vec{X: hr.X, Y: y * housing, Z: hr.Y}), f.Chassis.At(r3.Vec{X: hf.X, Y: y * chassis, Z: hf.Y})}
				for k, end := range want {
					if got := i.Points[k]; r3.Norm(r3.Sub(got, r3.Add(end, along))) > 1e-9 {
						t.Errorf("%s, %+v: end %d at %v, want %v", name, i.ID, k, got, r3.Add(end, along))
					}
				}
			case i.ID.Kind == scene.RearTire || i.ID.Kind == scene.FrontTire:
				tires++
				wheel := f.RearWheels
				if i.ID.Kind == scene.FrontTire {
					wheel = f.FrontWheels
				}
				center := r3.Add(wheel[map[scene.Side]int{scene.Left: 0, scene.Right: 1}[i.ID.Side]], along)
				low, high := i.Points[0], i.Points[0]
				for _, p := range i.Points {
					low = r3.Vec{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y), Z: math.Min(low.Z, p.Z)}
					high = r3.Vec{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y), Z: math.Max(high.Z, p.Z)}
				}
				if center.X < low.X || center.X > high.X || math.Abs(center.X-(low.X+high.X)/2) > 0.1*(high.X-low.X) || low.Z < -1e-9 {
					t.Errorf("%s, %+v: from %v to %v, its wheel is at %v", name, i.ID, low, high, center)
				}
				if !i.Dashed || i.Fill != scene.None {
					t.Errorf("%s, %+v: it hides the car", name, i.ID)
				}
			}
		}
		if bars != 4 || tires != 4 || !named || !pictured {
			t.Errorf("%s: %d bars, %d tires; named when pointed at: %v, in the picture: %v", name, bars, tires, named, pictured)
		}
	}
}

// At a travel the other setup's bars stand beside in the views around the car; its tires,
// which are the same, do not.
func TestTheOtherSetupAtATravel(t *testing.T) {
	s := open(t, assets.DemoCar)
	s.Compare(1)
	s.SetTravel(-0.03)
	count := map[scene.Kind]int{}
	var list scene.List
	around.New(s.Study, around.Around).Fill(&list, scene.Pointer{})
	for _, i := range list.Items {
		if i.ID.Ghost == 1 && i.Shape != scene.Label {
			count[i.ID.Kind]++
		}
	}
	if count[scene.UpperBar] != 2 || count[scene.LowerBar] != 2 || len(count) != 2 {
		t.Errorf("there are %v", count)
	}
}
