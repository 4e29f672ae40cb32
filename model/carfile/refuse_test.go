package carfile

import (
	"strings"
	"testing"
)

// Each rule, alone: one change to the example file, and all that is said of it.
func TestRefusals(t *testing.T) {
	text := fixture(t, "example.toml")
	for _, c := range []struct{ old, changed, want string }{
		// schema and units
		{"schema = 1\n", "", `a.toml:1: schema: is missing; give schema = 1`},
		{"schema = 1\n", "Schema = 1\n", `a.toml:1: Schema: is unknown here; did you mean "schema"?`},
		{"schema = 1\n", "schema = 1.0\n", `a.toml:1: schema: is a number but no whole number; give schema = 1`},
		{"schema = 1\n", "schema = 0\n", `a.toml:1: schema: is 0, which never was a form of the car file; give schema = 1`},
		{"schema = 1\n", "schema = -9223372036854775808\n", `a.toml:1: schema: is -9223372036854775808, which never was a form of the car file; give schema = 1`},
		{"schema = 1\n", "schema = 2\nfuture = 1\n", `a.toml:1: schema: is 2, a newer form than this program knows; open the file with a newer version of the program; this one reads up to 1`},
		{`units  = "us" `, `# `, `a.toml:1: units: is missing; give "us" or "si"`},
		{`units  = "us"`, `unit = "us"`, `a.toml:2: unit: is unknown here; did you mean "units"?`},
		{`"us"`, `"imperial"`, `a.toml:2: units: is "imperial"; give "us" or "si"`},
		{`"us"`, `1`, `a.toml:2: units: is a number; give "us" or "si"`},

		// numbers
		{"wheelbase = 105.0\n", "", `a.toml:4: car.wheelbase: is missing; give 40 in to 400 in`},
		{"wheelbase = 105.0", "wheelbase = -105.0", `a.toml:6: car.wheelbase: −105 in is out of range; give 40 in to 400 in`},
		{"wheelbase = 105.0", `wheelbase = "105"`, `a.toml:6: car.wheelbase: is a text; give 40 in to 400 in`},
		{"wheelbase = 105.0", `wheelbase = [105]`, `a.toml:6: car.wheelbase: is a list; give 40 in to 400 in`},
		{"wheelbase = 105.0", `wheelbase = true`, `a.toml:6: car.wheelbase: is true or false; give 40 in to 400 in`},
		{"wheelbase = 105.0", "wheelbase = nan", `a.toml:6: car.wheelbase: is not finite; give 40 in to 400 in`},
		{"wheelbase = 105.0", "wheelbase = -inf", `a.toml:6: car.wheelbase: is not finite; give 40 in to 400 in`},
		{"wheelbase = 105.0", "wheelbase = 1e400", `a.toml:6: is no valid TOML; 1e400 is out of range for float64`},
		{"rear_rate = 150.0", "rear_rate = 1e307", `a.toml:50: springs.rear_rate: an infinite value is out of range; give 1 lb/in to 10000 lb/in`},
		{"rear_radius = 16.0", "rear_radius = -3", `a.toml:16: tires.rear_radius: −3 in is out of range; give 4 in to 40 in`},
		{"efficiency = 0.90", "efficiency = 1.1", `a.toml:64: drive.efficiency: 1.1 is out of range; give 0.1 to 1`},

		// unknown, repeated and misplaced keys and tables
		{"wheelbase = 105.0", "Wheelbase = 105.0", `a.toml:6: car.Wheelbase: is unknown here; did you mean "wheelbase"?`},
		{"wheelbase = 105.0", "wheel_base = 105.0", `a.toml:6: car.wheel_base: is unknown here; did you mean "wheelbase"?`},
		{"wheelbase = 105.0", "wheelbase = 105.0\nWheelbase = 105.0", `a.toml:7: car.Wheelbase: is unknown here; known are name, wheelbase, weight, rear_weight, corner_weights, cg_height, unsprung_rear, unsprung_front, track_rear, track_front, pitch_inertia, yaw_inertia, roll_inertia, axle_roll_inertia, housing_pitch_inertia`},
		{"wheelbase = 105.0", "wheelbase = 105.0\n\"a.b\" = 1", `a.toml:7: car."a.b": is unknown here; known are name, wheelbase, weight, rear_weight, corner_weights, cg_height, unsprung_rear, unsprung_front, track_rear, track_front, pitch_inertia, yaw_inertia, roll_inertia, axle_roll_inertia, housing_pitch_inertia`},
		{"wheelbase = 105.0", "wheelbase = 105.0\nwheelbase = 106.0", `a.toml:7: is no valid TOML; Key 'car.wheelbase' has already been defined.`},
		{"[tires]", "[tire]", `a.toml:15: tire: is unknown here; did you mean "tires"?`},
		{"[tires]", "[Tires]", `a.toml:15: Tires: is unknown here; did you mean "tires"?`},
		{"[tires]", "[[tires]]", `a.toml:15: tires: is a list; give one table`},
		{"[tires]", "[car]", `a.toml:15: is no valid TOML; Key 'car' has already been defined.`},
		{"[drive]", "[engine_and_gears]", `a.toml:58: engine_and_gears: is unknown here; known are schema, units, car, tires, chassis_bracket, housing_bracket, upper_bar, lower_bar, springs, locator, wheelie_bar, drive, driveline, check, setup` +
			"\n" + `a.toml:78: drive: is missing; add the table with torque, rpm, converter, gear, axle, efficiency`},
		{"schema = 1\n", "schema = 1\ntires = 5\n[spare]\n", `a.toml:17: is no valid TOML; Key 'tires' has already been defined.`},

		// texts
		{`"Saltgrass No. 7"`, `7`, `a.toml:5: car.name: is a number; give a text in quotes`},
		{`"Saltgrass No. 7"`, `" "`, `a.toml:5: car.name: the name is empty; give the car a name`},
		{`"4130 normalized"  `, `"4130 normalised"  `, `a.toml:37: upper_bar.material: "4130 normalised" is unknown; did you mean "4130 normalized"?`},
		{`"4130 normalized"  `, `"wood"  `, `a.toml:37: upper_bar.material: material "wood" is not in the table; use one of "4130 normalized", "4130 as welded", "1020 DOM", "1026 DOM"`},
		{`rod_end = "3/4-16"  `, "thread_length = 13\nrod_end = \"3/4-16\"  ", `a.toml:38: upper_bar.thread_length: 13 in is out of range; give 0 in to 12 in`},
		{`rod_end = "3/4-16"  `, "jam_nut = -0.4\nrod_end = \"3/4-16\"  ", `a.toml:38: upper_bar.jam_nut: −0.4 in is out of range; give 0 in to 4 in`},
		{`rod_end = "3/4-16"  `, "shown_threads = 61\nrod_end = \"3/4-16\"  ", `a.toml:38: upper_bar.shown_threads: 61 is out of range; give 0 to 60`},
		{`rod_end = "3/4-16"  `, "fitted_length = 1e4\nrod_end = \"3/4-16\"  ", `a.toml:38: upper_bar.fitted_length: 10000 in is out of range; give 0 in to 400 in`},
		{"factor = 2.0", "pinion_limit = -1", `a.toml:67: check.pinion_limit: −1° is out of range; give 0° to 90°`},
		{`rod_end = "3/4-16"  `, `rod_end = 0.75  `, `a.toml:38: upper_bar.rod_end: is a number; give a text in quotes`},

		// cars that cannot be
		{"weight = 2650.0", "weight = 1000.0", `a.toml:8: car.rear_weight: 1325 lb on the rear tires puts the CG on or behind the rear axle; give less than the car's weight, 1000 lb`},
		{"unsprung_rear = 390.0", "unsprung_rear = 1390.0", `a.toml:10: car.unsprung_rear: 1390 lb leaves nothing for the rear springs to carry; give less than the weight on the rear tires, 1325 lb`},
		{"wall = 0.095", "wall = 0.7", `a.toml:36: upper_bar.wall: 0.7 in is more than half the OD; give at most 0.625 in`},
		{"[22.5, 17.0]", "[2.5, 22.5]", `a.toml:72: setup 1: in "baseline" the bar has no length: its chassis hole lies on its housing hole; choose other holes`},
		{"rear_droop = 4.0", "rear_droop = 30.0", `a.toml:72: setup 1: in "baseline" the bars do not reach the rear droop of 30 in: they close only to 25.81 in; choose other holes or allow less springs.rear_droop`},
		{"rear_droop = 4.0\nrear_bump = 3.0", "rear_droop = 0\nrear_bump = 0", `a.toml:54: springs.rear_bump: the rear has no travel; give droop or bump above zero`},

		// holes and mounts
		{"[22.5, 18.5]", "[22.5, 18.5, 3]", `a.toml:23: chassis_bracket.upper: hole 1: is a list of 3; give two numbers, [x, z]`},
		{"[22.5, 18.5]", "22.5", `a.toml:23: chassis_bracket.upper: holds a number; give 1 to 64 hole centers, [[x, z], [x, z]]`},
		{"[22.5, 18.5]", `[22.5, "18.5"]`, `a.toml:23: chassis_bracket.upper: hole 1: holds something that is a text; give two numbers, [x, z]`},
		{"[22.5, 18.5]", `[22.5, nan]`, `a.toml:23: chassis_bracket.upper: hole 1: holds something that is not finite; give two numbers, [x, z]`},
		{"[22.5, 18.5]", `[22.5, 2e4]`, `a.toml:23: chassis_bracket.upper: hole 1: [22.5 in, 20000 in] is out of range; give x and z from −400 in to 400 in`},
		{"[[2.5, 6.5], [2.5, 5.75]]", `"two"`, `a.toml:29: housing_bracket.upper: is a text; give 1 to 64 hole centers, [[x, z], [x, z]]`},
		{"[[2.5, 6.5], [2.5, 5.75]]", `[]`, `a.toml:29: housing_bracket.upper: there are 0 holes; give 1 to 64 hole centers as [x, z]`},
		{"[[2.5, 6.5], [2.5, 5.75]]", "[" + strings.Repeat("[2.5, 6.5], ", 65) + "]", `a.toml:29: housing_bracket.upper: there are 65 holes; give 1 to 64 hole centers, [[x, z], [x, z]]`},
		{"upper = [[2.5, 6.5], [2.5, 5.75]]\n", "", `a.toml:28: housing_bracket.upper: is missing; give 1 to 64 hole centers, [[x, z], [x, z]]`},
		{"[-2.0, -3.0]", "[-2.0, 1979-05-27]", `a.toml:51: springs.rear_axle_mount: holds something that is a date or time; give two numbers, [x, z]`},
		{"[-2.0, 29.0]", "[-2.0, 13.0]", `a.toml:52: springs.rear_chassis_mount: the spring is 0.00 in long at ride height, no longer than the bump travel; put the mounts farther apart than 3.39 in`},

		// setups
		{"chassis_upper = 3", "chassis_upper = 4", `a.toml:74: setup 1: chassis_upper: the upper chassis bracket has no hole 4; give a number from 1 to 3`},
		{"chassis_upper = 3", "chassis_upper = 0", `a.toml:74: setup 1: chassis_upper: the upper chassis bracket has no hole 0; give a number from 1 to 3`},
		{"chassis_upper = 3", "chassis_upper = 3.0", `a.toml:74: setup 1: chassis_upper: is no whole number; give the number of a hole without a decimal point, counted from 1`},
		{"chassis_upper = 3", `chassis_upper = "3"`, `a.toml:74: setup 1: chassis_upper: is a text; give the number of a hole without a decimal point, counted from 1`},
		{"chassis_upper = 3\n", "", `a.toml:72: setup 1: chassis_upper: is missing; give the number of a hole without a decimal point, counted from 1`},
		{"chassis_upper = 3", "chasis_upper = 3", `a.toml:74: setup 1: chasis_upper: is unknown here; did you mean "chassis_upper"?`},
		{`note = ""`, `note = 3`, `a.toml:78: setup 1: note: is a number; give a text in quotes`},
		{`note = ""`, "[setup.extra]\nn = 1", `a.toml:78: setup 1: extra: is unknown here; known are name, chassis_upper, chassis_lower, housing_upper, housing_lower, turns_upper_left, turns_upper_right, turns_lower_left, turns_lower_right, note, run`},
		{`name = "baseline"`, `name = " "`, `a.toml:73: setup 1: name: the name is empty; give each setup a name of its own`},
		{`note = ""`, "[[setup]]\nname = \"baseline\"\nchassis_upper = 1\nchassis_lower = 1\nhousing_upper = 1\nhousing_lower = 1",
			`a.toml:79: setup 2: name: "baseline" is the name of setup 1 too; give each setup a name of its own`},
		{"[[setup]]", "[setup]", `a.toml:72: setup: is a table; add [[setup]] tables with name, chassis_upper, chassis_lower, housing_upper, housing_lower`},
		{"[[setup]]", "[[setups]]", `a.toml:72: setups: is unknown here; did you mean "setup"?`},
		{"[[setup]]", strings.Repeat("[[setup]]\n", 501), `a.toml:72: setup: there are 501 setups; give 1 to 500`},

		// checks and driveline
		{"factor = 2.0", "factor = 0.5", `a.toml:67: check.factor: 0.5 is out of range; give 1 to 20`},
		{"factor = 2.0", `column = "perri"`, `a.toml:67: check.column: "perri" is unknown; did you mean "perry"?`},
		{"factor = 2.0", `column = "slide rule"`, `a.toml:67: check.column: column curve "slide rule" is unknown; use one of "johnson-euler", "perry", "aisc-e3", "handbook-4130"`},
		{"[100.0, 160.0]", "[160.0, 100.0]", `a.toml:69: check.target_anti_squat: from 160 % to 100 % is not a range; give the least first, then the greatest, within −1000 % to 1000 %`},
		{"[100.0, 160.0]", "[100.0]", `a.toml:69: check.target_anti_squat: is a list of 1; give two numbers, [least, greatest]`},
		{"[100.0, 160.0]", "[100.0, true]", `a.toml:69: check.target_anti_squat: holds something that is true or false; give two numbers, [least, greatest]`},
		{"[100.0, 160.0]", "100.0", `a.toml:69: check.target_anti_squat: is a number; give two numbers, [least, greatest]`},
		{"z = [6.0, 14.0]", "y = [6.0, 14.0]", `a.toml:70: check.target_ic.y: is unknown here; known are x, z`},
		{"{ x = [40.0, 60.0], z = [6.0, 14.0] }", "[40, 60]", `a.toml:70: check.target_ic: is a list; give one table`},
		{"[check]", "[driveline]\npinion_joint = [10, 2]\n[check]", `a.toml:66: driveline.transmission_joint: is missing; give two numbers, [x, z]`},
		{"[check]", "[driveline]\npinion_joint = [10, 2]\ntransmission_joint = [40, 18]\npinion_angle = \"5\"\n[check]", `a.toml:69: driveline.pinion_angle: is a text; give a number`},
		{"[check]", "[driveline]\npinion_joint = [10, 2]\ntransmission_joint = [11, 18]\npinion_angle = 50\n[check]",
			`a.toml:68: driveline.transmission_joint: the driveshaft is 1.00 in long; put the joints at least 4 in apart` + "\n" +
				`a.toml:69: driveline.pinion_angle: 50° is out of range; give −45° to 45°, nose-up positive`},

		// what only the launch asks for
		{"front_rate = 120.0", "front_rate = 120.0\nrear_anti_roll = -1", `a.toml:56: springs.rear_anti_roll: −1 lb-ft/° is out of range; give 0 lb-ft/° to 100000 lb-ft/°`},
		{"efficiency = 0.90", "release_time = 9\nefficiency = 0.90", `a.toml:64: drive.release_time: 9 s is out of range; give 0 s to 5 s`},
		{"efficiency = 0.90", "rev_limit = 5000\nefficiency = 0.90", `a.toml:64: drive.rev_limit: 5000 rpm is no higher than the launch speed; give more than 5200 rpm, or 0`},
		{"efficiency = 0.90", "direction = \"clock wise\"\nefficiency = 0.90", `a.toml:64: drive.direction: "clock wise" is unknown; did you mean "clockwise"?`},
		{"efficiency = 0.90", "direction = \"up\"\nefficiency = 0.90", `a.toml:64: drive.direction: direction "up" is unknown; use one of "clockwise", "counterclockwise"`},
		{"weight = 2650.0", "corner_weights = { lf = 660, rf = 665, lr = 650, rr = 675 }\nweight = 2640.0", "a.toml:7: car.corner_weights: the four scales together read 2650 lb, but car.weight is 2640 lb; weigh again, or leave one of the two out"},
		{"weight = 2650.0", "corner_weights = { lf = 660, rf = 665, lr = 640, rr = 685.5 }\nweight = 2650.5", "a.toml:7: car.corner_weights: the rear scales together read 1325.5 lb, but car.rear_weight is 1325 lb; weigh again, or leave one of the two out"},
		{"weight = 2650.0", "corner_weights = { lf = 660, rf = 665, lr = 650 }\nweight = 2650.0", "a.toml:7: car.corner_weights.rr: is missing; give a number"},
		{"weight = 2650.0", "corner_weights = { lf = 660, rf = nan, lr = 650, rr = 675 }", "a.toml:7: car.corner_weights.rf: is not finite; give a number"},
		// By hand: the springs stand 2 in behind the axle, the bars' lines meet 41.25 in
		// ahead of it, so of the 935 lb on the springs and bars the springs have 935 ×
		// 41.25/43.25 = 891.8 lb. 36 in apart, and the tires 56 in, one of them lets go at
		// 891.8 × 36/56 lb.
		{"weight = 2650.0", "corner_weights = { lf = 660, rf = 665, lr = 1200, rr = 125 }", "a.toml:7: car.corner_weights: left and right rear are 1,075 lb apart, so that one spring would have to pull; give readings less than 573 lb apart"},
		{"weight = 2650.0", "corner_weights = { lf = 1260, rf = 65, lr = 650, rr = 675 }", "a.toml:7: car.corner_weights: left and right front are 1,195 lb apart, so that one spring would have to pull; give readings less than 1,195 lb apart"},
		{"efficiency = 0.90", "ramp = 1\nefficiency = 0.90", `a.toml:64: drive.ramp: is a number; give up to 100 points, [[seconds, share], [seconds, share]]`},
		{"efficiency = 0.90", "ramp = [[0, 0.5], [0.1]]\nefficiency = 0.90", `a.toml:64: drive.ramp: point 2: is a list of 1; give two numbers, [seconds, share]`},
		{"efficiency = 0.90", "ramp = [[0.2, 0.5],\n  [0.1, 1]]\nefficiency = 0.90", `a.toml:65: drive.ramp: point 2: 0.1 s is no later than the point before; list the points by rising time`},
		{"efficiency = 0.90", "ramp = [[0, 0.5], [inf, 1]]\nefficiency = 0.90", `a.toml:64: drive.ramp: point 2: holds something that is not finite; give two numbers, [seconds, share]`},
		{"efficiency = 0.90", "ramp = [[0, 3]]\nefficiency = 0.90", `a.toml:64: drive.ramp: point 1: [0 s, 3] is out of range; give 0 to 60 s and a share of 0 to 2`},
		{"efficiency = 0.90", "curve = 780\nefficiency = 0.90", `a.toml:64: drive.curve: is a number; give up to 100 points, [[rpm, torque], [rpm, torque]]`},
		{"efficiency = 0.90", "curve = [5200, 780]\nefficiency = 0.90", "a.toml:64: drive.curve: point 1: is a number; give two numbers, [rpm, torque]\n" +
			`a.toml:64: drive.curve: point 2: is a number; give two numbers, [rpm, torque]`},
		{"efficiency = 0.90", "curve = [[5200, 780]]\nefficiency = 0.90", `a.toml:64: drive.curve: the number of points is 1; give 2 to 100 points as [rpm, torque], or none`},
		{"efficiency = 0.90", "curve = [[5200, 780],\n  [5000, 700]]\nefficiency = 0.90", `a.toml:65: drive.curve: point 2: 5000 rpm is no faster than the point before; list the points by rising speed`},
		{"efficiency = 0.90", "curve = [[1000, 700], [5200, nan]]\nefficiency = 0.90", `a.toml:64: drive.curve: point 2: holds something that is not finite; give two numbers, [rpm, torque]`},
		{"efficiency = 0.90", "curve = [[1000, 700], [5200, -3]]\nefficiency = 0.90", `a.toml:64: drive.curve: point 2: [5200 rpm, −3 lb-ft] is out of range; give 0 to 30000 rpm and 0 to 20000 lb-ft`},
		{"efficiency = 0.90", "curve = [[1000, 700], [5200, 0]]\nefficiency = 0.90", `a.toml:64: drive.curve: there is no torque at the launch speed of 5200 rpm; give points around the launch speed`},
		{"efficiency = 0.90", "curve = [" + strings.Repeat("[1, 1],", 101) + "]\nefficiency = 0.90", `a.toml:64: drive.curve: there are 101 points; give up to 100 points, [[rpm, torque], [rpm, torque]]`},
		{"[drive]", "[locator]\nkind = \"rope\"\n[drive]", `a.toml:59: locator.kind: kind of locator "rope" is unknown; use one of "track bar", "diagonal link"`},
		{"[drive]", "[locator]\nchassis = [-6, 18]\n[drive]", `a.toml:59: locator.chassis: is a list of 2; give three numbers, [x, y, z]`},
		{"[drive]", "[locator]\nchassis = [-6, 18, 1e4]\n[drive]", `a.toml:59: locator.chassis: [−6 in, 18 in, 10000 in] is out of range; give x, y and z from −400 in to 400 in`},
		{"[drive]", "[locator]\nwall = 0.6\n[drive]", `a.toml:59: locator.wall: 0.6 in is more than half the OD; give at most 0.5 in`},
		{"[drive]", "[locator]\nchassis = [-6, -16, 16]\n[drive]", `a.toml:74: setup 1: in "baseline" the locator reaches only 0.80 in across the car; put locator.chassis and locator.housing at least 2 in apart in y`},
		{`note = ""`, `turns_upper_left = 25`, `a.toml:78: setup 1: turns_upper_left: 25 turns are out of range; give −24 to 24`},
		{`note = ""`, `turns_upper_left = "2"`, `a.toml:78: setup 1: turns_upper_left: is a text; give a number`},

		// text that is none
		{"[check]", "[check", `a.toml:66: is no valid TOML; expected ']' to close table name`},
		{"Saltgrass", "Salt\xFFgrass", `a.toml:5: holds bytes that are not UTF-8; save the file as UTF-8 text`},
		{"[check]", strings.Repeat("# long\n", MaxSize/7) + "[check]", `a.toml: has 1051081 bytes; at most 1048576 are read`},
	} {
		if !strings.Contains(text, c.old) {
			t.Errorf("the example has no %q", c.old)
			continue
		}
		f, err := Decode("a.toml", []byte(strings.Replace(text, c.old, c.changed, 1)), Stock())
		if err == nil || f != nil || err.Error() != c.want {
			t.Errorf("%.60q → %.60q\ngot  %v\nwant %s", c.old, c.changed, err, c.want)
		}
	}
}

func TestAllProblemsAtOnceInFileOrder(t *testing.T) {
	text := strings.NewReplacer(
		"wheelbase = 105.0", "wheelbase = -1.0",
		"rear_weight = 1325.0", "rear_weight = 3000.0",
		"[tires]", "[tires]\ngripp = 2",
		"grip = 2.6", "",
		"[25.5, 12.25]", "[25.5, inf]",
		"chassis_lower = 2", "chassis_lower = 9",
		"housing_upper = 1", "housing_upper = 9",
		"od = 1.25", "od = 0.01",
		"4130 normalized", "4130",
		"[drive]", "[dirve]",
	).Replace(fixture(t, "example.toml"))
	const want = `a.toml:6: car.wheelbase: −1 in is out of range; give 40 in to 400 in
a.toml:8: car.rear_weight: 3000 lb on the rear tires puts the CG on or behind the rear axle; give less than the car's weight, 2650 lb
a.toml:16: tires.gripp: is unknown here; did you mean "grip"?
a.toml:25: chassis_bracket.lower: hole 1: holds something that is not finite; give two numbers, [x, z]
a.toml:36: upper_bar.od: 0.01 in is out of range; give 0.1 in to 12 in
a.toml:38: upper_bar.material: material "4130" is not in the table; use one of "4130 normalized", "4130 as welded", "1020 DOM", "1026 DOM"
a.toml:44: lower_bar.od: 0.01 in is out of range; give 0.1 in to 12 in
a.toml:46: lower_bar.material: material "4130" is not in the table; use one of "4130 normalized", "4130 as welded", "1020 DOM", "1026 DOM"
a.toml:59: dirve: is unknown here; did you mean "drive"?
a.toml:77: setup 1: housing_upper: the upper housing bracket has no hole 9; give a number from 1 to 2`
	_, err := Decode("a.toml", []byte(text), Stock())
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

func TestEmptyFileLacksEverything(t *testing.T) {
	const want = `a.toml:1: schema: is missing; give schema = 1
a.toml:1: units: is missing; give "us" or "si"
a.toml:1: car: is missing; add the table with name, wheelbase, weight, rear_weight, cg_height, unsprung_rear, unsprung_front, track_rear, track_front
a.toml:1: tires: is missing; add the table with rear_radius, front_radius, grip
a.toml:1: chassis_bracket: is missing; add the table with upper, lower, spread_upper, spread_lower
a.toml:1: housing_bracket: is missing; add the table with upper, lower, spread_upper, spread_lower
a.toml:1: upper_bar: is missing; add the table with od, wall, material
a.toml:1: lower_bar: is missing; add the table with od, wall, material
a.toml:1: springs: is missing; add the table with rear_rate, rear_axle_mount, rear_chassis_mount, rear_droop, rear_bump, front_rate
a.toml:1: drive: is missing; add the table with torque, rpm, converter, gear, axle, efficiency
a.toml:1: setup: is missing; add [[setup]] tables with name, chassis_upper, chassis_lower, housing_upper, housing_lower`
	for _, text := range []string{"", mark, "\n", "\r\n"} {
		if _, err := Decode("a.toml", []byte(text), Stock()); err == nil || err.Error() != want {
			t.Errorf("%q: %v", text, err)
		}
	}
}

func TestOptionalEntriesMayBeLeftOut(t *testing.T) {
	text := fixture(t, "example.toml")
	for _, drop := range []string{"rod_end", "adapter", "note", "rear_spin_inertia", "front_spin_inertia", "factor", "crookedness", "target_anti_squat", "target_ic", "[check]"} {
		lines := strings.SplitAfter(text, "\n")
		text = ""
		for _, line := range lines {
			if !strings.HasPrefix(line, drop) {
				text += line
			}
		}
	}
	c, inch := mustDecodeCar(t, text).Car, 0.0254
	if c.Check.Factor != 2 || c.Check.Crookedness != 0.001 || c.Check.Column != "johnson-euler" || c.Check.TargetAntiSquat != [2]float64{1, 1.6} ||
		c.Check.TargetICX != [2]float64{40 * inch, 60 * inch} || c.Check.TargetICZ != [2]float64{6 * inch, 14 * inch} {
		t.Errorf("%+v", c.Check)
	}
	if c.Tires.RearSpinInertia != 0 || c.Springs.FrontDroop != 4*inch || c.UpperBar.RodEnd != "" || c.Driveline.Given {
		t.Errorf("%+v", c)
	}
}
