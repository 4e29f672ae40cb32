package window

import (
	"fmt"
	"strings"

	"bowline/app/scene"
	"bowline/model/car"
	"bowline/model/launch"
)

// things say which of the car's inputs belong to what is drawn: the one that a click on
// it shows, and the beginnings of the paths whose fields light it up.
var things = []struct {
	kind scene.Kind
	path string
	of   []string
}{
	{scene.RearTire, "tires.rear_radius", []string{"tires.rear_", "tires.grip", "tires.carcass_", "tires.peak_slip", "tires.sliding_grip", "tires.relaxation_length", "tires.side_", "car.track_rear"}},
	{scene.FrontTire, "tires.front_radius", []string{"tires.front_", "car.track_front", "car.wheelbase"}},
	{scene.UpperBar, "upper_bar.od", []string{"upper_bar."}},
	{scene.LowerBar, "lower_bar.od", []string{"lower_bar."}},
	{scene.Spring, "springs.rear_rate", []string{"springs.rear_", "springs.stop_rate"}},
	{scene.Driveshaft, "driveline.pinion_joint", []string{"driveline."}},
	{scene.WheelieBar, "wheelie_bar.reach", []string{"wheelie_bar."}},
	{scene.Locator, "locator.kind", []string{"locator."}},
	{scene.HousingBody, "housing_bracket.upper.0", []string{"housing_bracket.", "car.housing_pitch_inertia", "car.axle_roll_inertia"}},
	{scene.ChassisBody, "chassis_bracket.upper.0", []string{"chassis_bracket."}},
	{scene.CG, "car.cg_height", []string{"car.cg_height", "car.weight", "car.rear_weight"}},
	{scene.TargetBox, "check.target_ic.x", []string{"check.target_ic."}},
	{scene.TargetRay, "check.target_anti_squat", []string{"check.target_anti_squat"}},
	{scene.InstantCenter, "check.target_ic.x", nil},
	{scene.Twist, "drive.direction", nil},
	{scene.AxleTorque, "drive.torque", []string{"drive.torque", "drive.converter", "drive.gear", "drive.axle", "drive.efficiency"}},
}

// pathOf returns the path of the input that belongs to what is drawn; empty for none.
func pathOf(id scene.ID) string {
	if id.Ghost > 0 {
		return ""
	}
	if id.Kind == scene.BarForce {
		return launch.RodID(id.Index).Pair().Table() + ".od"
	}
	for _, t := range things {
		if t.kind == id.Kind {
			return t.path
		}
	}
	return ""
}

// thingOf returns what a field of a car is about, among what is drawn; nothing for most.
func thingOf(path string, c *car.Car, setup int) scene.ID {
	for _, row := range car.Rows {
		if path == fmt.Sprintf("setup.%d.%s", setup, row.SetupKey()) {
			return scene.ID{Kind: scene.Pivot, Row: row, Index: *row.Of(&c.Setups[setup].Holes)}
		}
		for i := range *row.In(c) {
			if path == fmt.Sprintf("%s.%d", row.Path(), i) {
				return scene.ID{Kind: scene.Hole, Row: row, Index: i}
			}
		}
	}
	for _, t := range things {
		for _, begins := range t.of {
			if strings.HasPrefix(path, begins) {
				return scene.ID{Kind: t.kind}
			}
		}
	}
	return scene.ID{}
}

// showInputs shows the inputs of what has been clicked, unfolded if need be, and marks
// the first of them; a click on anything else takes the mark away.
func (w *Window) showInputs(id scene.ID) {
	path := pathOf(id)
	if path != "" && w.split.inputs.Folded() {
		w.split.inputs.Fold(false)
	}
	w.inputs.Reveal(path)
}
