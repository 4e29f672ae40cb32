package side

import (
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/model/car"
)

// While something is dragged it is named without what a drag would do.
func TestADragNeedsNoAdvice(t *testing.T) {
	r := reference(t)
	o := options()
	o.Tuning = true
	for _, id := range []scene.ID{
		{Kind: scene.Pivot, Row: car.ChassisLower, Index: 1}, {Kind: scene.Hole, Row: car.ChassisLower},
		{Kind: scene.ChassisBody}, {Kind: scene.HousingBody}, {Kind: scene.TargetBox, Index: int(AllEdges)}, {Kind: scene.TargetBox, Index: int(RearEdge)},
	} {
		hover := Describe(id, r, &r.Ride, o)
		held := o
		held.Held = true
		drag := Describe(id, r, &r.Ride, held)
		if !strings.Contains(hover[len(hover)-1], "drag") || slices.ContainsFunc(drag, func(s string) bool { return strings.Contains(s, "drag") }) || len(drag) == 0 || drag[0] != hover[0] {
			t.Errorf("%+v: at rest %q, held %q", id, hover, drag)
		}
	}
}
