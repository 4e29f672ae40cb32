package side_test

import (
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"
)

// Whatever can be picked has a name: of a car with all there is, at ride height,
// at another travel, in both load cases and in a launch, held against a setup.
func TestEverythingNamesItself(t *testing.T) {
	r := demo(t)
	if !r.Car.Driveline.Given || r.Car.Launch.WheelieBar.Reach == 0 {
		t.Fatal("the car lacks a driveshaft or a wheelie bar: the test proves less than it could")
	}
	cloud := cloudOf(t, r)
	for _, c := range []analysis.Case{analysis.Hit, analysis.Hooked} {
		for _, launch := range []*side.Instant{nil, {}} {
			for _, s := range []*analysis.Station{&r.Ride, &r.Travel[0]} {
				o := options()
				o.Case, o.Launch, o.Tuning, o.Forces, o.Cloud = c, launch, true, true, cloud
				o.Ghosts = []side.Ghost{{Name: "one", Result: r, Station: s}, {Name: "two", Result: r, Station: &r.Ride}}
				for _, d := range picture(r, s, o).Drawn {
					id := d.ID
					if d.Shape == scene.Swarm {
						id.Index = d.Dots.List[0].Index
					}
					if words := side.Describe(id, r, s, o); d.Pick > 0 && (len(words) == 0 || slices.Contains(words, "")) {
						t.Errorf("%+v is named %q", id, words)
					}
				}
			}
		}
	}
}

// What is not there, or not any more, has no name.
func TestWhatIsNotThereHasNoName(t *testing.T) {
	r := reference(t)
	for _, id := range []scene.ID{
		{}, {Kind: scene.Hole, Row: car.ChassisLower, Index: 40}, {Kind: scene.Combination, Index: 3},
		{Kind: scene.UpperBar, Ghost: 1}, {Kind: scene.Pivot, Ghost: 2},
	} {
		if words := side.Describe(id, r, &r.Ride, options()); words != nil {
			t.Errorf("%+v is named %q", id, words)
		}
	}
}

func TestBarsTellTheirForce(t *testing.T) {
	r := reference(t)
	words := say(scene.ID{Kind: scene.LowerBar}, r, &r.Ride, options())
	if !strings.Contains(words, "23.01 in pin to pin") || !strings.Contains(words, "push 9,475 lb each (hit)") {
		t.Error(words)
	}
	o := options()
	o.Launch = &side.Instant{Tension: [2][2]float64{{}, {-20000, -40000}}}
	words = say(scene.ID{Kind: scene.LowerBar}, r, &r.Ride, o)
	for _, want := range []string{"left: push 4,496 lb", "right: push 8,992 lb", "of " + o.Units.Format(units.Force, r.Bars[car.Lower].Push.Allowable)} {
		if !strings.Contains(words, want) {
			t.Errorf("%q lacks %q", words, want)
		}
	}
}

func TestHolesTellTheirPlaceInWords(t *testing.T) {
	r := reference(t)
	for id, want := range map[scene.ID]string{
		{Kind: scene.Pivot, Row: car.HousingLower}:          "2.5 in forward, 5 in below the axle",
		{Kind: scene.Hole, Row: car.HousingUpper, Index: 1}: "2.5 in forward, 5.75 in above the axle",
		{Kind: scene.Hole, Row: car.ChassisUpper}:           "22.5 in forward, 18.5 in above the ground",
	} {
		if got := side.Describe(id, r, &r.Ride, options()); got[1] != want {
			t.Errorf("%+v: %q, want %q", id, got[1], want)
		}
	}
}

// While something is dragged it is named without what a drag would do.
func TestADragNeedsNoAdvice(t *testing.T) {
	r := reference(t)
	o := options()
	o.Tuning = true
	for _, id := range []scene.ID{
		{Kind: scene.Pivot, Row: car.ChassisLower, Index: 1}, {Kind: scene.Hole, Row: car.ChassisLower},
		{Kind: scene.ChassisBody}, {Kind: scene.HousingBody}, {Kind: scene.TargetBox, Index: int(side.AllEdges)}, {Kind: scene.TargetBox, Index: int(side.RearEdge)},
	} {
		hover := side.Describe(id, r, &r.Ride, o)
		held := o
		held.Held = true
		drag := side.Describe(id, r, &r.Ride, held)
		if !strings.Contains(hover[len(hover)-1], "drag") || slices.ContainsFunc(drag, func(s string) bool { return strings.Contains(s, "drag") }) || len(drag) == 0 || drag[0] != hover[0] {
			t.Errorf("%+v: at rest %q, held %q", id, hover, drag)
		}
	}
}
