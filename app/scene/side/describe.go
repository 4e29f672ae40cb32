package side

import (
	"fmt"

	"bowline/app/scene"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Describe says in a few words, a line each, what an item is and its numbers.
func Describe(id scene.ID, r *analysis.Result, s *analysis.Station, o Options) []string {
	if id.Ghost > 0 {
		if id.Ghost > len(o.Ghosts) {
			return nil
		}
		return o.Ghosts[id.Ghost-1].describe(id, o)
	}
	length := func(x float64) string { return o.Units.Format(units.Length, x) }
	switch id.Kind {
	case scene.UpperBar, scene.LowerBar:
		return describeBar(id.Pair(), r, s, o)
	case scene.Pivot, scene.Hole:
		return describeHole(id, r, s, o)
	case scene.InstantCenter:
		return []string{"Instant center", words.Center(s.InstantCenter, o.Units)}
	case scene.CenterPath:
		return []string{"Path of the instant center over the launch"}
	case scene.CG:
		return []string{"Center of gravity, whole car", words.Center(s.CG, o.Units)}
	case scene.ActionLine:
		if !s.HasAntiSquat {
			return []string{"Line of action: upright, anti-squat has no value"}
		}
		return []string{"Line of action", "anti-squat " + o.Units.Format(units.Percent, s.AntiSquat)}
	case scene.WholeLine:
		return []string{"100 % line", "to the CG height above the front contact"}
	case scene.BarLine:
		return []string{"Line of the " + id.Pair().Bars()}
	case scene.RearTire:
		if o.Launch != nil {
			return []string{"Rear tires"}
		}
		l := o.Case.Of(&s.Loads)
		return []string{"Rear tire, loaded radius " + length(r.Car.Tires.RearRadius), fmt.Sprintf("both carry %s, thrust %s (%s)", o.Units.Format(units.Force, l.RearLoad), o.Units.Format(units.Force, l.Thrust), o.Case)}
	case scene.FrontTire:
		if o.Launch != nil {
			return []string{"Front tires"}
		}
		return []string{"Front tire", "both carry " + o.Units.Format(units.Force, o.Case.Of(&s.Loads).FrontLoad) + " (" + o.Case.String() + ")"}
	case scene.Spring:
		return describeSpring(r, s, o)
	case scene.Driveshaft:
		return []string{"Driveshaft", "pinion joint " + o.Units.Nose(s.Joints.Pinion) + ", transmission joint " + o.Units.Nose(s.Joints.Transmission)}
	case scene.WheelieBar:
		w := r.Car.Launch.WheelieBar
		return []string{"Wheelie bar", length(w.Reach) + " behind the axle, " + length(w.Height) + " above the ground at ride height"}
	case scene.Locator:
		return []string{words.Capital(r.Car.Launch.Locator.Kind)}
	case scene.HousingBody:
		return o.hinted("drag moves all its holes", "Housing", "pinion "+o.Units.Nose(s.Pose.Turn)+" of ride height")
	case scene.ChassisBody:
		return o.hinted("drag moves all its holes", "Chassis bracket")
	case scene.TargetBox:
		return describeTarget(id, r.Car, o)
	case scene.TargetRay:
		lines := []string{targetWords(r.Car, o.Units), "lines of action of the least and the greatest"}
		if o.away(s) {
			lines[1] += "," + rideWords
		}
		return lines
	case scene.Combination:
		return o.Cloud.describe(id.Index, s, o)
	case scene.AxleForce, scene.AxleTorque:
		return describeForce(id, r, s, o)
	case scene.Ground:
		return []string{"Ground"}
	}
	return nil
}

// describeBar names a bar's length, force and limit, and the most that is asked of it.
func describeBar(p car.Pair, r *analysis.Result, s *analysis.Station, o Options) []string {
	lines := []string{words.Capital(p.String()) + ", " + o.Units.Format(units.Length, r.Bars[p].Length) + " pin to pin"}
	lines = append(lines, carried(p, r, s, o)...)
	if most := o.most(barID(p, 0)); most.Force > 0 {
		lines = append(lines, words.Most(most, o.Units))
	}
	return lines
}

// carried says what the bars of a pair carry now.
func carried(p car.Pair, r *analysis.Result, s *analysis.Station, o Options) (lines []string) {
	if o.Launch != nil {
		for side, tension := range o.Launch.Tension[p] {
			use, way := r.Hold(p, tension)
			lines = append(lines, fmt.Sprintf("%s: %s of %s", launch.Side(side), words.LoadAndShare(way, use, o.Units), o.Units.Format(units.Force, r.Limit(p, way).Allowable)))
		}
		return lines
	}
	if !o.Case.Of(&s.Loads).Balanced {
		return append(lines, "no force: bars and spring meet in one point")
	}
	use, way := r.Use(p, o.Case, s)
	return append(lines,
		fmt.Sprintf("%s each (%s)", words.Load(way, use, o.Units), o.Case),
		fmt.Sprintf("%s of %s: %s", units.Share(use.Share), o.Units.Format(units.Force, r.Limit(p, way).Allowable), r.Limit(p, way).Kind))
}

// describeHole names a hole and what a drag or click does.
func describeHole(id scene.ID, r *analysis.Result, s *analysis.Station, o Options) []string {
	holes := *id.Row.In(r.Car)
	if id.Index >= len(holes) {
		return nil
	}
	h := holes[id.Index]
	hint := "click to use it; shift-drag moves the hole"
	switch {
	case o.Moving:
		hint = "drag moves the hole"
	case id.Kind == scene.Pivot:
		hint = "drag to another hole; shift-drag moves the hole"
	}
	lines := []string{
		fmt.Sprintf("%s hole %d of %d", words.Capital(id.Row.String()), id.Index+1, len(holes)),
		placeWords(h, id.Row.OnChassis(), o.Units),
	}
	if l := o.Case.Of(&s.Loads); id.Kind == scene.Pivot && l.Balanced && o.Launch == nil && !o.Held {
		lines = append(lines, "one bar puts in "+forceWords(id.Row.Force(l), o.Units)+" ("+o.Case.String()+")")
	}
	return o.hinted(hint, lines...)
}

// hinted adds to lines what a drag or click does, unless one is going on.
func (o Options) hinted(hint string, lines ...string) []string {
	if o.Held {
		return lines
	}
	return append(lines, hint)
}

// placeWords writes where a hole is, from the rear axle centerline at ride
// height and the ground for a chassis hole, from the axle centerline for another.
func placeWords(h r2.Vec, onChassis bool, u units.System) string {
	side := func(x float64, positive, negative string) string {
		if x < 0 {
			return u.FormatExact(units.Length, -x) + " " + negative
		}
		return u.FormatExact(units.Length, x) + " " + positive
	}
	from := map[bool]string{true: "the ground", false: "the axle"}[onChassis]
	return side(h.X, "forward", "back") + ", " + side(h.Y, "above ", "below ") + from
}

// forceWords writes a force as a part along the ground and a part upright.
func forceWords(f r2.Vec, u units.System) string {
	return u.Directed(units.Force, f.X, "forward", "back") + ", " + u.Directed(units.Force, f.Y, "up", "down")
}

// describeSpring says what the springs do in the load case.
func describeSpring(r *analysis.Result, s *analysis.Station, o Options) []string {
	l := o.Case.Of(&s.Loads)
	if !l.Balanced {
		return []string{"Rear springs"}
	}
	if l.Spring < 0 {
		return []string{
			"Rear springs would have to pull " + o.Units.Format(units.Force, -l.Spring) + ", both (" + o.Case.String() + ")",
			"so the rear rises until its shocks stop it",
		}
	}
	return []string{
		"Rear springs, both " + o.Units.Format(units.Force, l.Spring) + " (" + o.Case.String() + ")",
		words.SpringChange(r.SpringChange(l), o.Units),
	}
}
