package report_test

import (
	"bytes"
	"encoding/json"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/report"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
)

// written returns the JSON document of a result, read back strictly.
func written(t *testing.T, r *analysis.Result, s units.System) *report.Document {
	t.Helper()
	return documentOf(t, r, nil, s)
}

// atRide returns the row at ride height.
func atRide(t *testing.T, d *report.Document) *report.TravelRow {
	t.Helper()
	i := slices.IndexFunc(d.Travel, func(row report.TravelRow) bool { return row.Travel == 0 })
	if i < 0 {
		t.Fatal("travel does not include 0")
	}
	return &d.Travel[i]
}

// The names are what other programs read.
func TestJSONNames(t *testing.T) {
	r, s := load(t, referenceSI)
	var out bytes.Buffer
	if err := report.WriteJSON(&out, r, nil, nil, s); err != nil {
		t.Fatal(err)
	}
	var document map[string]any
	if err := json.Unmarshal(out.Bytes(), &document); err != nil {
		t.Fatal(err)
	}
	names := func(what string, value any, want string) map[string]any {
		t.Helper()
		object, ok := value.(map[string]any)
		if !ok {
			t.Fatalf("%s is %T, not an object", what, value)
		}
		fields := strings.Fields(want)
		slices.Sort(fields)
		if got := slices.Sorted(maps.Keys(object)); !slices.Equal(got, fields) {
			t.Errorf("%s has\n%v, want\n%v", what, got, fields)
		}
		return object
	}
	names("the document", document, "schema units car setup note holes front_travel factor bars travel limits verdict warnings")
	names("holes", document["holes"], "chassis_upper chassis_lower housing_upper housing_lower")
	bars := names("bars", document["bars"], "upper lower")
	for _, pair := range []string{"upper", "lower"} {
		bar := names(pair, bars[pair], "od wall material length slenderness euler johnson first_yield capacity_push capacity_pull governs_push governs_pull modes worst")
		names("worst", bar["worst"], "push pull")
	}
	names("a use", bars["lower"].(map[string]any)["worst"].(map[string]any)["push"], "force share travel case")
	limits := names("limits", document["limits"], "closure travel worst")
	worst := names("the worst of all", limits["worst"], "upper_left upper_right lower_left lower_right all")
	for what, demand := range worst {
		names(what, demand, "bar direction force share source travel")
	}
	travel, ok := document["travel"].([]any)
	if !ok || len(travel) < 41 {
		t.Fatalf("travel is %T of %d", document["travel"], len(travel))
	}
	row := names("a row", travel[0], "travel instant_center anti_squat pinion_change axle_shift cg_height joints hooked hit")
	names("joints", row["joints"], "pinion transmission")
	for _, c := range []string{"hooked", "hit"} {
		load := names(c, row[c], "thrust axle_torque accel_g rear_load front_load upper lower spring governs spring_change bars_share hole_forces")
		names("hole_forces", load["hole_forces"], "chassis_upper chassis_lower housing_upper housing_lower")
	}
}

// The reference point, to the digits it is stated with.
func TestJSONOfTheReferencePoint(t *testing.T) {
	r, s := load(t, reference)
	d := written(t, r, s)
	if d.Schema != 1 || d.Units != "us" || d.Car != "Reference" || d.Setup != "baseline" || d.Note != "" || d.Factor != 2 || d.FrontTravel != 0 {
		t.Errorf("head %+v", *d)
	}
	if d.Holes != (report.HoleNumbers{ChassisUpper: 3, ChassisLower: 2, HousingUpper: 1, HousingLower: 1}) {
		t.Errorf("holes %+v", d.Holes)
	}
	row := atRide(t, d)
	near(t, "instant center, x", row.InstantCenter[0], 41.25, 0.005)
	near(t, "instant center, z", row.InstantCenter[1], 11.84, 0.005)
	near(t, "anti-squat", *row.AntiSquat, 154.6, 0.05)
	near(t, "CG height", row.CGHeight, 19.5, 1e-9)
	near(t, "pinion change", row.PinionChange, 0, 1e-9)
	near(t, "axle shift", row.AxleShift, 0, 1e-9)
	if row.Joints != nil {
		t.Errorf("joints %+v of a car without a driveline", row.Joints)
	}
	hooked, hit := &row.Hooked, &row.Hit
	near(t, "hooked thrust", hooked.Thrust, 6825, 0.5)
	near(t, "hooked torque", hooked.AxleTorque, 9384, 0.5)
	near(t, "hooked upper", *hooked.Upper, 3524, 0.5)
	near(t, "hooked lower", *hooked.Lower, -6309, 0.5)
	near(t, "hooked acceleration", hooked.AccelG, 6825./2650, 0.5/2650)
	near(t, "hooked tires", hooked.RearLoad+hooked.FrontLoad, 2650, 1e-6)
	near(t, "hooked grip", hooked.RearLoad, 6825/2.6, 0.5/2.6)
	near(t, "hit thrust", hit.Thrust, 6890, 0.5)
	near(t, "hit torque", hit.AxleTorque, 15808, 0.5)
	near(t, "hit upper", *hit.Upper, 6777, 0.5)
	near(t, "hit lower", *hit.Lower, -9475, 0.5)
	near(t, "hit front", hit.FrontLoad, 0, 0)
	near(t, "hit rear", hit.RearLoad, 2650, 1e-6)
	if hooked.Governs != "grip" || hit.Governs != "front wheels off" {
		t.Errorf("governed by %q and %q", hooked.Governs, hit.Governs)
	}
	// At rest the springs carry the rear tires' load less the axle's weight.
	near(t, "spring change", *hooked.SpringChange, *hooked.Spring-(1325-390), 1e-6)
	if len(d.Travel) != 41 || d.Travel[0].Travel != -4 || d.Travel[40].Travel != 3 {
		t.Errorf("%d travels from %v to %v", len(d.Travel), d.Travel[0].Travel, d.Travel[len(d.Travel)-1].Travel)
	}
	if d.Limits.Travel != [2]float64{-4, 3} || !(d.Limits.Closure[0] < -4) || !(d.Limits.Closure[1] > 3) {
		t.Errorf("limits %+v", d.Limits)
	}
	if len(d.Verdict) != 2 || len(d.Warnings) == 0 {
		t.Errorf("words %q %q", d.Verdict, d.Warnings)
	}
}

// What holes and spring put on the axle holds it: forward, up and about the
// axle centerline, in the ground's frame at ride height, where the springs of
// the reference car stand upright over the axle.
func TestJSONHoleForcesHoldTheAxle(t *testing.T) {
	r, s := load(t, reference)
	row := atRide(t, written(t, r, s))
	for _, l := range []*report.LoadData{&row.Hooked, &row.Hit} {
		h := l.HoleForces
		near(t, "forward", 2*(h.HousingUpper[0]+h.HousingLower[0])+l.Thrust, 390*l.AccelG, 1e-6)
		near(t, "up", 2*(h.HousingUpper[1]+h.HousingLower[1])+l.RearLoad-*l.Spring, 390, 1e-6)
		// Nose up: a hole ahead of the axle pushed up, one above it pushed back.
		moment := 2 * (2.5*h.HousingUpper[1] - 6.5*h.HousingUpper[0] + 2.5*h.HousingLower[1] + 5*h.HousingLower[0])
		near(t, "moment", moment/12, -l.AxleTorque, 1e-6)
		for i := range 2 {
			near(t, "upper bar", h.ChassisUpper[i], -h.HousingUpper[i], 0)
			near(t, "lower bar", h.ChassisLower[i], -h.HousingLower[i], 0)
		}
		near(t, "upper pull", math.Hypot(h.HousingUpper[0], h.HousingUpper[1]), *l.Upper, 1e-6)
		near(t, "lower push", math.Hypot(h.HousingLower[0], h.HousingLower[1]), -*l.Lower, 1e-6)
		// Down on the axle: the bars' and the springs' part make the transfer.
		transfer := l.RearLoad - 1325
		near(t, "bars' share", *l.BarsShare*transfer+*l.SpringChange, transfer, 1e-6)
	}
}

// Strengths by the formulas in inches and pounds, first yield by bisection of
// σ·(1 + η/(1 − σ/σe)) = Fy, the form in which Perry's formula is derived.
func TestJSONBars(t *testing.T) {
	const e, yield, welded, od, id = 29e6, 75e3, 60e3, 1.25, 1.25 - 2*0.095
	area := math.Pi / 4 * (od*od - id*id)
	inertia := math.Pi / 64 * (math.Pow(od, 4) - math.Pow(id, 4))
	r, s := load(t, reference)
	d := written(t, r, s)
	for _, c := range []struct {
		name   string
		bar    report.BarData
		length float64
	}{{"upper", d.Bars.Upper, math.Hypot(20, 5.5)}, {"lower", d.Bars.Lower, math.Hypot(23, 0.5)}} {
		b := c.bar
		euler := math.Pi * math.Pi * e * inertia / c.length / c.length
		slenderness := c.length / math.Sqrt(inertia/area)
		johnson := yield * area * (1 - yield*slenderness*slenderness/(4*math.Pi*math.Pi*e))
		eta, lo, hi := c.length/1000*od/2*area/inertia, 0.0, euler/area
		for range 200 {
			if mid := (lo + hi) / 2; mid*(1+eta/(1-mid*area/euler)) < yield {
				lo = mid
			} else {
				hi = mid
			}
		}
		near(t, c.name+" length", b.Length, c.length, 1e-9)
		near(t, c.name+" slenderness", b.Slenderness, slenderness, 1e-9)
		near(t, c.name+" Euler", b.Euler, euler, 1e-6)
		near(t, c.name+" Johnson", b.Johnson, johnson, 1e-6)
		near(t, c.name+" first yield", b.FirstYield, lo*area, 1e-6)
		near(t, c.name+" push", b.CapacityPush, math.Min(johnson, lo*area)/2, 1e-6)
		near(t, c.name+" pull", b.CapacityPull, welded*area/2, 1e-6)
		if b.OD != 1.25 || b.Wall != 0.095 || b.Material != "4130 normalized" {
			t.Errorf("%s: %+v", c.name, b)
		}
		if b.GovernsPush != "column buckling (Johnson)" || b.GovernsPull != "tension yield at the weld" {
			t.Errorf("%s governed by %q, %q", c.name, b.GovernsPush, b.GovernsPull)
		}
		// Every way to fail is there: buckling and first yield, the tube and its weld.
		for i, want := range []report.ModeData{
			{Mode: b.GovernsPush, Direction: "push", Strength: johnson},
			{Mode: "first yield under initial bow", Direction: "push", Strength: lo * area},
			{Mode: "tension yield of the tube", Direction: "pull", Strength: yield * area},
			{Mode: b.GovernsPull, Direction: "pull", Strength: welded * area},
		} {
			if len(b.Modes) != 4 || b.Modes[i].Mode != want.Mode || b.Modes[i].Direction != want.Direction || b.Modes[i].Source == "" {
				t.Fatalf("%s fails by %+v, want %+v", c.name, b.Modes, want)
			}
			near(t, c.name+" "+want.Mode, b.Modes[i].Strength, want.Strength, 1e-6)
			near(t, c.name+" "+want.Mode+" allowed", b.Modes[i].Allowable, want.Strength/2, 1e-6)
		}
	}
}

// The worst use is the largest of all rows.
func TestJSONWorst(t *testing.T) {
	r, s := load(t, reference)
	d := written(t, r, s)
	if d.Bars.Upper.Worst.Push != nil || d.Bars.Lower.Worst.Pull != nil {
		t.Errorf("the upper bars push %+v, the lower pull %+v", d.Bars.Upper.Worst.Push, d.Bars.Lower.Worst.Pull)
	}
	var pull, push float64
	for i := range d.Travel {
		for _, l := range []*report.LoadData{&d.Travel[i].Hooked, &d.Travel[i].Hit} {
			pull, push = math.Max(pull, *l.Upper), math.Max(push, -*l.Lower)
		}
	}
	for _, c := range []struct {
		name            string
		use             *report.UseData
		force, capacity float64
	}{{"upper pull", d.Bars.Upper.Worst.Pull, pull, d.Bars.Upper.CapacityPull}, {"lower push", d.Bars.Lower.Worst.Push, push, d.Bars.Lower.CapacityPush}} {
		near(t, c.name, c.use.Force, c.force, 1e-6)
		near(t, c.name+" share", c.use.Share, c.force/c.capacity, 1e-9)
		if c.use.Case != "hit" {
			t.Errorf("%s in the %s case", c.name, c.use.Case)
		}
	}
}

// The same car in other units is the same car.
func TestJSONInSI(t *testing.T) {
	us, inUS := load(t, reference)
	si, inSI := load(t, referenceSI)
	a, b := written(t, us, inUS), written(t, si, inSI)
	if b.Units != "si" || b.Note == "" {
		t.Errorf("units %q, note %q", b.Units, b.Note)
	}
	const newton, millimeter, newtonMeter = lbf, 25.4, lbf * 0.3048
	same := func(what string, us, si, factor float64) {
		t.Helper()
		near(t, what, si, us*factor, 2e-6*math.Abs(us*factor)+1e-6)
	}
	same("euler", a.Bars.Lower.Euler, b.Bars.Lower.Euler, newton)
	same("capacity", a.Bars.Upper.CapacityPush, b.Bars.Upper.CapacityPush, newton)
	same("length", a.Bars.Upper.Length, b.Bars.Upper.Length, millimeter)
	same("closure", a.Limits.Closure[0], b.Limits.Closure[0], millimeter)
	for i := range a.Travel {
		p, q := &a.Travel[i], &b.Travel[i]
		same("travel", p.Travel, q.Travel, millimeter)
		same("instant center", p.InstantCenter[1], q.InstantCenter[1], millimeter)
		same("anti-squat", *p.AntiSquat, *q.AntiSquat, 1)
		same("pinion", p.PinionChange, q.PinionChange, 1)
		same("shift", p.AxleShift, q.AxleShift, millimeter)
		same("thrust", p.Hooked.Thrust, q.Hooked.Thrust, newton)
		same("torque", p.Hit.AxleTorque, q.Hit.AxleTorque, newtonMeter)
		same("acceleration", p.Hit.AccelG, q.Hit.AccelG, 1)
		same("lower", *p.Hit.Lower, *q.Hit.Lower, newton)
		near(t, "springs", *q.Hooked.Spring, *p.Hooked.Spring*newton, 0.01)
	}
	// By hand: the shaft falls 6.4 mm over 1020 mm toward the transmission.
	slope := math.Atan2(-6.4, 1020) * 180 / math.Pi
	joints := atRide(t, b).Joints
	near(t, "pinion joint", joints.Pinion, -1.5-slope, 1e-9)
	near(t, "transmission joint", joints.Transmission, slope+3, 1e-9)
}

// Numbers go back into SI without loss but the last bit, inputs without any.
func TestJSONKeepsTheDigits(t *testing.T) {
	r, s := load(t, reference)
	d := written(t, r, s)
	same := func(what string, got, want float64) {
		t.Helper()
		if got < math.Nextafter(want, math.Inf(-1)) || got > math.Nextafter(want, math.Inf(1)) {
			t.Errorf("%s %v, want %v", what, got, want)
		}
	}
	for i := range r.Travel {
		same("travel", d.Travel[i].Travel*inch, r.Travel[i].Pose.Travel)
		same("force", *d.Travel[i].Hit.Lower*lbf, r.Travel[i].Loads.Hit.Lower.Tension)
	}
	if d.Bars.Lower.Wall != 0.095 || d.Travel[0].Travel != -4 {
		t.Errorf("wall %v, droop %v", d.Bars.Lower.Wall, d.Travel[0].Travel)
	}
}

func TestJSONNullWhereThereIsNoValue(t *testing.T) {
	row := atRide(t, written(t, parallel(t), units.US))
	if row.InstantCenter != nil || row.AntiSquat == nil {
		t.Errorf("parallel bars: center %v, anti-squat %v", row.InstantCenter, row.AntiSquat)
	}

	row = atRide(t, written(t, unheld(t), units.US))
	for _, l := range []*report.LoadData{&row.Hooked, &row.Hit} {
		if l.Upper != nil || l.Lower != nil || l.Spring != nil || l.SpringChange != nil || l.BarsShare != nil || l.HoleForces != nil {
			t.Errorf("an axle that is not held: %+v", l)
		}
		if l.Thrust == 0 || l.RearLoad == 0 {
			t.Errorf("thrust %v, rear load %v", l.Thrust, l.RearLoad)
		}
	}

	upright, s := load(t, reference)
	changed := *upright
	changed.Travel = slices.Clone(upright.Travel)
	i := rideIndex(t, upright)
	changed.Travel[i].AntiSquat, changed.Travel[i].HasAntiSquat = 0, false
	if row := atRide(t, written(t, &changed, s)); row.AntiSquat != nil {
		t.Errorf("anti-squat %v of an upright line", *row.AntiSquat)
	}
}

// The worst of a launch names its bar, way, source and time; what only the side view
// asks keeps its travel.
func TestJSONOfTheWorst(t *testing.T) {
	r, _ := load(t, reference)
	l := &launch.Result{Car: r.Car, Outcome: launch.Finished}
	pushed := 2 * r.Limit(car.Lower, column.Push).Allowable
	l.Peaks[launch.LowerRight] = launch.Peak{Push: pushed, PushTime: 0.11}
	d := documentOf(t, r, l, units.US)
	worst := d.Limits.Worst
	if all := worst.All; all.Bar != "lower_right" || all.Direction != "push" || all.Source != "launch" || all.Travel != nil || *all.Time != 0.11 {
		t.Errorf("%+v", all)
	}
	near(t, "share", worst.All.Share, 2, 1e-12)
	near(t, "force", worst.All.Force, units.US.Exact(units.Force, pushed), 1e-9)
	left := worst.LowerLeft
	if left.Source != "hit" || left.Time != nil || left.Travel == nil || left.Direction != "push" {
		t.Errorf("%+v", left)
	}
	if d.Verdict[0] != words.LoadVerdict(r.LoadVerdict(l), units.US) || d.Verdict[0] == words.LoadVerdict(r.LoadVerdict(nil), units.US) {
		t.Errorf("the headline reads %q", d.Verdict[0])
	}
}
