package car

import (
	"bowline/model/column"
	"bowline/model/units"
)

// Limits of what counts as a drag car's part: far beyond any real one, near
// enough that a slipped decimal point or a wrong unit is caught.
const (
	inch  = units.Inch
	pound = units.Pound
	foot  = units.Foot
	lbf   = units.PoundForce
)

// Sections lists every plain number of a car file, in file order. Holes,
// mounts, names, targets and setups have their own kinds of editor.
var Sections = []Section{
	{"car", "Car", []*Field{
		required("car.wheelbase", "Wheelbase", "Rear axle centerline to front wheel center at ride height.", units.Length, 40*inch, 400*inch, func(c *Car) *float64 { return &c.Body.Wheelbase }),
		required("car.weight", "Weight", "Race-ready, driver aboard, fuel as at the line.", units.Mass, 200*pound, 20000*pound, func(c *Car) *float64 { return &c.Body.Mass }),
		required("car.rear_weight", "Weight on rear tires", "Both rear scales together, race-ready.", units.Mass, 50*pound, 20000*pound, func(c *Car) *float64 { return &c.Body.RearMass }),
		required("car.cg_height", "CG height", "Whole car above the ground, race-ready; from weighing with one axle lifted.", units.Length, 2*inch, 100*inch, func(c *Car) *float64 { return &c.Body.CGHeight }),
		required("car.unsprung_rear", "Unsprung rear", "Housing, gears, axles, brakes, wheels and tires together.", units.Mass, 10*pound, 5000*pound, func(c *Car) *float64 { return &c.Body.UnsprungRear }),
		required("car.unsprung_front", "Unsprung front", "Both front wheels, tires, brakes and spindles together.", units.Mass, 2*pound, 3000*pound, func(c *Car) *float64 { return &c.Body.UnsprungFront }),
		required("car.track_rear", "Rear track", "Tire center to tire center.", units.Length, 10*inch, 150*inch, func(c *Car) *float64 { return &c.Body.TrackRear }),
		required("car.track_front", "Front track", "Tire center to tire center.", units.Length, 10*inch, 150*inch, func(c *Car) *float64 { return &c.Body.TrackFront }),
		ruled("car.pitch_inertia", "Pitch inertia", "Sprung mass about its CG; 0 takes mass times its distances from both axles.", units.SpinInertia, 1e6*pound*foot*foot, func(c *Car) *float64 { return &c.Launch.Inertia.Pitch }),
		ruled("car.yaw_inertia", "Yaw inertia", "Sprung mass about its CG; 0 takes mass times its distances from both axles.", units.SpinInertia, 1e6*pound*foot*foot, func(c *Car) *float64 { return &c.Launch.Inertia.Yaw }),
		ruled("car.roll_inertia", "Roll inertia", "Sprung mass about its CG; 0 takes 0.4 of the rear track as radius of gyration.", units.SpinInertia, 1e6*pound*foot*foot, func(c *Car) *float64 { return &c.Launch.Inertia.Roll }),
		ruled("car.axle_roll_inertia", "Axle roll inertia", "Axle assembly with wheels, in roll and yaw; 0 takes 0.4 of the rear track as radius of gyration.", units.SpinInertia, 1e6*pound*foot*foot, func(c *Car) *float64 { return &c.Launch.Inertia.AxleRoll }),
		ruled("car.housing_pitch_inertia", "Housing pitch inertia", "Axle assembly about the axle without what spins; 0 takes a quarter of the rear tire radius as radius of gyration.", units.SpinInertia, 1e6*pound*foot*foot, func(c *Car) *float64 { return &c.Launch.Inertia.HousingPitch }),
	}},
	{"tires", "Tires", []*Field{
		required("tires.rear_radius", "Rear radius, loaded", "Ground to axle centerline with the car on its wheels.", units.Length, 4*inch, 40*inch, func(c *Car) *float64 { return &c.Tires.RearRadius }),
		required("tires.front_radius", "Front radius, loaded", "Ground to spindle center with the car on its wheels.", units.Length, 4*inch, 40*inch, func(c *Car) *float64 { return &c.Tires.FrontRadius }),
		required("tires.grip", "Grip", "Peak thrust over tire load on the track as prepared.", units.Number, 0.05, 10, func(c *Car) *float64 { return &c.Tires.Grip }),
		optional("tires.rear_spin_inertia", "Rear spin inertia", "Both rear wheels, tires, axles and ring gear about the axle; at 0 the launch estimates it.", units.SpinInertia, 0, 1e5*pound*foot*foot, 0, func(c *Car) *float64 { return &c.Tires.RearSpinInertia }),
		optional("tires.front_spin_inertia", "Front spin inertia", "Both front wheels and tires about the spindle.", units.SpinInertia, 0, 1e5*pound*foot*foot, 0, func(c *Car) *float64 { return &c.Tires.FrontSpinInertia }),
		fine("tires.rear_rate", "Rear tire rate, each", "Up and down, at launch pressure: weight added to one tire over how far its axle end comes down.", units.SpringRate, 50*lbf/inch, 50000*lbf/inch, rate(1200), func(c *Car) *float64 { return &c.Launch.Tires.RearRate }),
		fine("tires.rear_damping", "Rear tire damping, each", "Up and down; a tire on its own bounces a few times before it stands.", units.Damping, 0, damping(1000), damping(3), func(c *Car) *float64 { return &c.Launch.Tires.RearDamping }),
		fine("tires.front_rate", "Front tire rate, each", "Up and down, measured as for a rear tire.", units.SpringRate, 50*lbf/inch, 50000*lbf/inch, rate(1000), func(c *Car) *float64 { return &c.Launch.Tires.FrontRate }),
		fine("tires.front_damping", "Front tire damping, each", "Up and down.", units.Damping, 0, damping(1000), damping(1), func(c *Car) *float64 { return &c.Launch.Tires.FrontDamping }),
		fine("tires.carcass_rate", "Carcass rate, each", "Rear tire fore and aft at the ground, wheel held: pull on the contact over how far the sidewall lets it go.", units.SpringRate, 50*lbf/inch, 50000*lbf/inch, rate(800), func(c *Car) *float64 { return &c.Launch.Tires.CarcassRate }),
		fine("tires.carcass_damping", "Carcass damping, each", "Rear tire fore and aft at the ground.", units.Damping, 0, damping(1000), damping(2), func(c *Car) *float64 { return &c.Launch.Tires.CarcassDamping }),
		fine("tires.peak_slip", "Slip at peak grip", "Of a rear tire that drives: slip speed over the speed of its tread, where it pulls hardest; 0.15 is 15 %.", units.Number, 0.02, 0.3, 0.15, func(c *Car) *float64 { return &c.Launch.Tires.PeakSlip }),
		fine("tires.sliding_grip", "Sliding grip", "Grip of a rear tire that spins on the spot over its peak grip; in between it falls with the slip.", units.Number, 0.1, 1, 0.75, func(c *Car) *float64 { return &c.Launch.Tires.SlidingGrip }),
		ruled("tires.relaxation_length", "Relaxation length", "How far a rear tire rolls until its thrust has followed a change of slip by 63 %; 0 takes it from the carcass rate.", units.Length, reach, func(c *Car) *float64 { return &c.Launch.Tires.RelaxationLength }),
		fine("tires.side_rate", "Side rate, each", "Any tire, sideways at the ground; it keeps the car in its lane.", units.SpringRate, 10*lbf/inch, 50000*lbf/inch, rate(1000), func(c *Car) *float64 { return &c.Launch.Tires.SideRate }),
		fine("tires.side_damping", "Side damping, each", "Any tire, sideways at the ground.", units.Damping, 0, damping(1000), damping(30), func(c *Car) *float64 { return &c.Launch.Tires.SideDamping }),
	}},
	{"chassis_bracket", "Chassis bracket", []*Field{
		required("chassis_bracket.spread_upper", "Upper bars apart", "Left to right upper bar at the chassis, center to center.", units.Length, 1*inch, 150*inch, func(c *Car) *float64 { return &c.Chassis.SpreadUpper }),
		required("chassis_bracket.spread_lower", "Lower bars apart", "Left to right lower bar at the chassis, center to center.", units.Length, 1*inch, 150*inch, func(c *Car) *float64 { return &c.Chassis.SpreadLower }),
	}},
	{"housing_bracket", "Housing bracket", []*Field{
		required("housing_bracket.spread_upper", "Upper bars apart", "Left to right upper bar at the housing, center to center.", units.Length, 1*inch, 150*inch, func(c *Car) *float64 { return &c.Housing.SpreadUpper }),
		required("housing_bracket.spread_lower", "Lower bars apart", "Left to right lower bar at the housing, center to center.", units.Length, 1*inch, 150*inch, func(c *Car) *float64 { return &c.Housing.SpreadLower }),
	}},
	{"upper_bar", "Upper bars", barFields(Upper)},
	{"lower_bar", "Lower bars", barFields(Lower)},
	{"springs", "Springs", []*Field{
		required("springs.rear_rate", "Rear rate, each", "Of one rear spring along its own line.", units.SpringRate, 1*lbf/inch, 10000*lbf/inch, func(c *Car) *float64 { return &c.Springs.RearRate }),
		required("springs.rear_droop", "Rear droop", "How far the rear wheel can fall from ride height.", units.Length, 0, 40*inch, func(c *Car) *float64 { return &c.Springs.RearDroop }),
		required("springs.rear_bump", "Rear bump", "How far the rear wheel can rise from ride height.", units.Length, 0, 40*inch, func(c *Car) *float64 { return &c.Springs.RearBump }),
		optional("springs.front_droop", "Front droop", "How far the front wheel can fall from ride height.", units.Length, 0, 40*inch, inches(4), func(c *Car) *float64 { return &c.Springs.FrontDroop }),
		optional("springs.front_bump", "Front bump", "How far the front wheel can rise from ride height.", units.Length, 0, 40*inch, inches(3), func(c *Car) *float64 { return &c.Springs.FrontBump }),
		required("springs.front_rate", "Front rate, each", "Of one front corner, measured at the wheel.", units.SpringRate, 1*lbf/inch, 10000*lbf/inch, func(c *Car) *float64 { return &c.Springs.FrontRate }),
		fine("springs.rear_spread", "Rear springs apart", "Left to right rear spring, center to center.", units.Length, 1*inch, 150*inch, inches(36), func(c *Car) *float64 { return &c.Launch.Suspension.RearSpread }),
		fine("springs.rear_bump_damping", "Rear bump damping, each", "Rear shock as it shortens, along its own line: force over speed from its dyno sheet.", units.Damping, 0, damping(1000), damping(8), func(c *Car) *float64 { return &c.Launch.Suspension.RearBumpDamping }),
		fine("springs.rear_rebound_damping", "Rear rebound damping, each", "Rear shock as it lengthens, along its own line.", units.Damping, 0, damping(1000), damping(15), func(c *Car) *float64 { return &c.Launch.Suspension.RearReboundDamping }),
		fine("springs.rear_anti_roll", "Rear anti-roll bar", "Torque that rolls the axle one degree against the chassis through the anti-roll bar alone; 0 without one.", units.RollRate, 0, rollRate(100000), 0, func(c *Car) *float64 { return &c.Launch.Suspension.RearAntiRoll }),
		fine("springs.front_bump_damping", "Front bump damping, each", "Front shock as it shortens, at the wheel.", units.Damping, 0, damping(1000), damping(10), func(c *Car) *float64 { return &c.Launch.Suspension.FrontBumpDamping }),
		fine("springs.front_rebound_damping", "Front rebound damping, each", "Front shock as it lengthens, at the wheel.", units.Damping, 0, damping(1000), damping(6), func(c *Car) *float64 { return &c.Launch.Suspension.FrontReboundDamping }),
		fine("springs.front_anti_roll", "Front anti-roll bar", "Torque that rolls the front wheels one degree against the chassis through the anti-roll bar alone; 0 without one.", units.RollRate, 0, rollRate(100000), 0, func(c *Car) *float64 { return &c.Launch.Suspension.FrontAntiRoll }),
		fine("springs.stop_rate", "Stop rate, each", "Bump and droop stops: rear along the spring, front at the wheel.", units.SpringRate, 10*lbf/inch, 100000*lbf/inch, rate(2000), func(c *Car) *float64 { return &c.Launch.Suspension.StopRate }),
	}},
	{"locator", "Axle locator", []*Field{
		fine("locator.od", "Tube OD", "Outside diameter of the bar that holds the axle sideways.", units.Length, 0.1*inch, 12*inch, inches(1), func(c *Car) *float64 { return &c.Launch.Locator.OD }),
		fine("locator.wall", "Wall", "Wall thickness; half the OD is a solid rod. The material is that of the lower bars.", units.Length, 0.01*inch, 6*inch, inches(0.083), func(c *Car) *float64 { return &c.Launch.Locator.Wall }),
		fine("locator.end_rate", "End rate", "Rod end, bolt and bracket at one end, along the bar.", units.SpringRate, 1000*lbf/inch, 1e7*lbf/inch, rate(200000), func(c *Car) *float64 { return &c.Launch.Locator.EndRate }),
		fine("locator.damping", "Damping", "The whole bar, along itself.", units.Damping, 0, damping(1000), damping(15), func(c *Car) *float64 { return &c.Launch.Locator.Damping }),
	}},
	{"wheelie_bar", "Wheelie bar", []*Field{
		fine("wheelie_bar.reach", "Reach", "Its wheel behind the rear axle centerline; 0 for a car without a wheelie bar.", units.Length, 0, 200*inch, 0, func(c *Car) *float64 { return &c.Launch.WheelieBar.Reach }),
		fine("wheelie_bar.height", "Height", "Its wheel's lowest point above the ground at ride height.", units.Length, 0, 60*inch, inches(4), func(c *Car) *float64 { return &c.Launch.WheelieBar.Height }),
		fine("wheelie_bar.rate", "Rate", "Up and down at its wheel: weight on it over how far it gives.", units.SpringRate, 10*lbf/inch, 100000*lbf/inch, rate(1500), func(c *Car) *float64 { return &c.Launch.WheelieBar.Rate }),
		fine("wheelie_bar.damping", "Damping", "Up and down at its wheel.", units.Damping, 0, damping(1000), damping(10), func(c *Car) *float64 { return &c.Launch.WheelieBar.Damping }),
	}},
	{"drive", "Drive", []*Field{
		required("drive.torque", "Engine torque at launch", "At the flywheel, at launch speed.", units.Torque, 1*lbf*foot, 20000*lbf*foot, func(c *Car) *float64 { return &c.Drive.Torque }),
		required("drive.rpm", "Engine speed at launch", "At the hit of the throttle or the transbrake's release.", units.Speed, units.US.ToSI(units.Speed, 100), units.US.ToSI(units.Speed, 30000), func(c *Car) *float64 { return &c.Drive.Speed }),
		required("drive.converter", "Converter torque ratio", "At stall; 1 for a clutch.", units.Number, 1, 5, func(c *Car) *float64 { return &c.Drive.Converter }),
		required("drive.gear", "First gear", "Transmission ratio at launch.", units.Number, 0.3, 10, func(c *Car) *float64 { return &c.Drive.Gear }),
		required("drive.axle", "Axle ratio", "Pinion turns per wheel turn.", units.Number, 0.5, 20, func(c *Car) *float64 { return &c.Drive.Axle }),
		required("drive.efficiency", "Driveline efficiency", "Axle torque over engine torque times the ratios.", units.Number, 0.1, 1, func(c *Car) *float64 { return &c.Drive.Efficiency }),
		fine("drive.engine_inertia", "Engine inertia", "Crank, flexplate and converter shell together.", units.SpinInertia, 0.1*pound*foot*foot, 1e4*pound*foot*foot, spin(7), func(c *Car) *float64 { return &c.Launch.Engine.Inertia }),
		ruled("drive.rev_limit", "Rev limit", "Engine speed at which ignition is cut; 0 takes the end of the torque curve, or 1.5 times the launch speed without one.", units.Speed, units.US.ToSI(units.Speed, 40000), func(c *Car) *float64 { return &c.Launch.Engine.RevLimit }),
		fine("drive.release_time", "Release time", "From the first torque on the axle to the full one as the transbrake or brake lets go.", units.Time, 0, 5, 0.03, func(c *Car) *float64 { return &c.Launch.Engine.ReleaseTime }),
	}},
	{"check", "Check", []*Field{
		optional("check.factor", "Factor", "Capacity is divided by this before a load is held against it.", units.Number, 1, 20, column.DefaultFactor, func(c *Car) *float64 { return &c.Check.Factor }),
		optional("check.crookedness", "Initial bow over length", "0.001 is a bow of one thousandth of the bar; measure yours with a straightedge.", units.Number, 0, 0.05, column.DefaultCrookedness, func(c *Car) *float64 { return &c.Check.Crookedness }),
		fine("check.rollout", "Rollout", "How far the car rolls until the front tires have left the starting beam and the clock starts; about a foot where it is not known.", units.Length, 0, 60*inch, inches(12), func(c *Car) *float64 { return &c.Check.Rollout }),
		fine("check.pinion_limit", "Pinion change limit", "Most that the pinion angle may change from full droop to full bump when holes are searched for; 0 for no limit.", units.Angle, 0, degrees(90), 0, func(c *Car) *float64 { return &c.Check.PinionLimit }),
		fine("check.lift_limit", "Front lift limit", "Most that the front tires may come off the ground in the launch when holes are searched for; 0 for no limit.", units.Length, 0, 60*inch, 0, func(c *Car) *float64 { return &c.Check.LiftLimit }),
	}},
}

// barFields are the numbers of one pair of bars.
func barFields(p Pair) []*Field {
	table, bar, ends, threads := p.Table(), p.Bar, p.Ends, p.Threads
	return []*Field{
		required(table+".od", "Tube OD", "Outside diameter.", units.Length, 0.1*inch, 12*inch, func(c *Car) *float64 { return &bar(c).OD }),
		required(table+".wall", "Wall", "Wall thickness; half the OD is a solid rod.", units.Length, 0.01*inch, 6*inch, func(c *Car) *float64 { return &bar(c).Wall }),
		fine(table+".end_rate", "End rate", "Rod end, bolt and bracket at one end, along the bar: load over how far all of it gives.", units.SpringRate, 1000*lbf/inch, 1e7*lbf/inch, rate(200000), func(c *Car) *float64 { return &ends(c).EndRate }),
		fine(table+".damping", "Damping", "The whole bar, along itself.", units.Damping, 0, damping(1000), damping(15), func(c *Car) *float64 { return &ends(c).Damping }),
		ruled(table+".thread_length", "Thread length", "Threaded part of one rod end's shank, from its shoulder to its tip; 0 takes a length from the thread's diameter.", units.Length, 12*inch, func(c *Car) *float64 { return &threads(c).Length }),
		ruled(table+".jam_nut", "Jam nut", "Thickness of one jam nut; 0 takes 9/16 of the thread's diameter.", units.Length, 4*inch, func(c *Car) *float64 { return &threads(c).JamNut }),
		fine(table+".shown_threads", "Threads showing", "At each end, between the rod end's shoulder and the jam nut, with the bar at its fitted length. Count them; parts of one count too.", units.Number, 0, 60, 2, func(c *Car) *float64 { return &threads(c).Shown }),
		fine(table+".rod_end_angle", "Rod-end angle", "Greatest misalignment of a rod end to either side, from its maker's page; 0 leaves it unchecked.", units.Angle, 0, degrees(60), 0, func(c *Car) *float64 { return &bar(c).RodEndAngle }),
		ruled(table+".fitted_length", "Fitted length", "Of the bar when its threads were counted, pin to pin; 0 takes the length in the first setup, and is replaced by it when bars go to other holes.", units.Length, reach, func(c *Car) *float64 { return &threads(c).Fitted }),
	}
}

// rate, damping, rollRate, spin and degrees convert a typed number.
func rate(x float64) float64     { return units.US.ToSI(units.SpringRate, x) }
func damping(x float64) float64  { return units.US.ToSI(units.Damping, x) }
func rollRate(x float64) float64 { return units.US.ToSI(units.RollRate, x) }
func spin(x float64) float64     { return units.US.ToSI(units.SpinInertia, x) }
func degrees(x float64) float64  { return units.US.ToSI(units.Angle, x) }
