// Works out of a car file what the three-dimensional model needs: points in
// the chassis frame or from the axle centerline, masses, rates, free lengths.
import { gravity } from './carfile.mjs';
import { add, cross, norm, scale, solve, sub } from './algebra.mjs';
import { slipShape } from './laws.mjs';
import { coilRange, loadsAtRest } from './sideview.mjs';

export const sides = ['left', 'right'];
export const rods = ['upper_left', 'upper_right', 'lower_left', 'lower_right', 'locator'];
const sign = { left: 1, right: -1 };

// buildVehicle returns the vehicle of one setup at rest at ride height, with
// the setup's preload in the rods' free lengths.
export function buildVehicle(car) {
  const rest = loadsAtRest(car);
  const halves = (load) => [load / 2, load / 2];
  rest.tires = { rear: halves(rest.rear), front: halves(rest.front) };
  if (car.scales) {
    const { lf, rf, lr, rr } = car.scales;
    rest.tires = { rear: [lr * gravity, rr * gravity], front: [lf * gravity, rf * gravity] };
  }
  const rodsMade = rodsOf(car, rest), coils = coilsOf(car, rest);
  if (car.scales) standOnScales(car, rest, rodsMade, coils);
  return {
    gravity,
    ...masses(car),
    rods: rodsMade,
    coils,
    antiRoll: { rear: car.springs.rear_anti_roll, front: car.springs.front_anti_roll },
    rearTires: rearTiresOf(car, rest),
    corners: cornersOf(car, rest),
    trackFront: car.car.track_front,
    drive: driveOf(car),
    wheelieBar: wheelieBarOf(car),
  };
}

// standOnScales changes the rods' free lengths and the springs' so that the axle is
// balanced at ride height on unevenly loaded tires. One unknown is left open; of all
// answers it takes that with the least sum of squares of changes of tension, a
// thousandth of a spring's change counting for it, by Lagrange's multipliers.
function standOnScales(car, rest, made, coils) {
  const axle = [0, 0, car.tires.rear_radius];
  const wrench = (at, force) => [...force, ...cross(at, force)];
  const pulls = rods.map((name) => {
    const { chassis, housing, length } = made[name];
    return wrench(housing, scale(1 / length, sub(chassis, add(axle, housing))));
  });
  const pushes = coils.map(({ chassis, axle: at }) => {
    const way = sub(add(axle, at), chassis);
    return wrench(at, scale(1 / norm(way), way));
  });
  const columns = [...pulls, ...pushes], weights = [...rods.map(() => 1), 1e-6, 1e-6];
  const even = [...rods.map((name) => made[name].tension ?? 0), rest.spring / 2, rest.spring / 2];
  const outer = sides.map((side, i) => wrench([0, sign[side] * car.car.track_rear / 2, 0], [0, 0, rest.tires.rear[i]]));
  const left = [0, 1, 2, 3, 4, 5].map((row) => -outer.reduce((sum, w) => sum + w[row], 0) + (row === 2 ? car.car.unsprung_rear * gravity : 0) -
    columns.reduce((sum, c, k) => sum + c[row] * even[k], 0));
  const n = columns.length, size = n + 6;
  const matrix = Array.from({ length: size }, () => new Array(size).fill(0));
  columns.forEach((c, k) => {
    matrix[k][k] = weights[k];
    c.forEach((x, row) => { matrix[k][n + row] = x; matrix[n + row][k] = x; });
  });
  const change = solve(matrix, [...new Array(n).fill(0), ...left]);
  rods.forEach((name, k) => { made[name].free -= change[k] / made[name].rate; });
  coils.forEach((coil, k) => { coil.free += change[rods.length + k] / coil.rate; });
}

// masses places sprung mass and axle assembly. Inertias that are not given
// follow common rules.
function masses(car) {
  const c = car.car, t = car.tires;
  const mass = c.weight - c.unsprung_rear - c.unsprung_front;
  const x = (c.wheelbase * (c.weight - c.rear_weight) - c.wheelbase * c.unsprung_front) / mass;
  const z = (c.weight * c.cg_height - c.unsprung_rear * t.rear_radius - c.unsprung_front * t.front_radius) / mass;
  const dynamic = mass * x * (c.wheelbase - x), gyration = (0.4 * c.track_rear) ** 2;
  const across = c.axle_roll_inertia || c.unsprung_rear * gyration;
  return {
    chassis: {
      mass, cg: [x, aside(car) / mass, z],
      inertia: [c.roll_inertia || mass * gyration, c.pitch_inertia || dynamic, c.yaw_inertia || dynamic],
    },
    axle: {
      mass: c.unsprung_rear, height: t.rear_radius,
      inertia: [across, c.housing_pitch_inertia || c.unsprung_rear * (t.rear_radius / 4) ** 2, across],
      spin: t.rear_spin_inertia || 0.2 * c.unsprung_rear * t.rear_radius ** 2,
    },
  };
}

// aside is the moment of the car's mass to the left of its middle, as the scales say.
function aside(car) {
  if (!car.scales) return 0;
  const { lf, rf, lr, rr } = car.scales;
  return (lf - rf) * car.car.track_front / 2 + (lr - rr) * car.car.track_rear / 2;
}

// rodsOf returns the four bars and the locator.
function rodsOf(car, rest) {
  const made = {};
  for (const pair of ['upper', 'lower']) {
    const bar = car[`${pair}_bar`], front = car.chassis_bracket, rear = car.housing_bracket;
    sides.forEach((side, i) => {
      const lateral = (bracket) => sign[side] * bracket[`spread_${pair}`] / 2;
      const [fx, fz] = front[pair], [rx, rz] = rear[pair];
      const rod = rodOf(car, [fx, lateral(front), fz], [rx, lateral(rear), rz], bar, bar.modulus);
      // Of the rod's tension the side view sees what lies in its plane.
      const flat = Math.hypot(fx - rx, fz - rz - car.tires.rear_radius);
      const tension = rest[pair] / 2 * rod.length / flat;
      rod.tension = tension;
      rod.free = rod.length - tension / rod.rate + bar.lead * bar.turns[i];
      made[`${pair}_${side}`] = rod;
    });
  }
  const [chassis, housing] = locatorEnds(car);
  made.locator = rodOf(car, chassis, housing, car.locator, car.lower_bar.modulus);
  made.locator.free = made.locator.length;
  return made;
}

// rodOf is a tube with what gives at its two ends.
function rodOf(car, chassis, housing, tube, elasticity) {
  const length = norm(sub(chassis, add(housing, [0, 0, car.tires.rear_radius])));
  const area = Math.PI / 4 * (tube.od ** 2 - (tube.od - 2 * tube.wall) ** 2);
  const give = length / (elasticity * area) + 2 / tube.end_rate;
  return { chassis, housing, length, rate: 1 / give, damping: tube.damping };
}

// locatorEnds are those given, or those that the kind of locator says.
function locatorEnds(car) {
  const l = car.locator, part = 0.3 * car.car.track_rear, behind = -6 * 0.0254;
  let chassis = [behind, part, car.tires.rear_radius], housing = [behind, -part, 0];
  if (l.kind === 'diagonal link') {
    const [fx, fz] = car.chassis_bracket.lower, [rx, rz] = car.housing_bracket.lower;
    chassis = [fx, car.chassis_bracket.spread_lower / 2, fz];
    housing = [rx, -car.housing_bracket.spread_lower / 2, rz];
  }
  return [l.chassis || chassis, l.housing || housing];
}

// coilsOf returns both rear springs with shocks and stops.
function coilsOf(car, rest) {
  const s = car.springs, [shortest, longest] = coilRange(car);
  return sides.map((side) => {
    const y = sign[side] * s.rear_spread / 2;
    const chassis = [s.rear_chassis_mount[0], y, s.rear_chassis_mount[1]];
    const axle = [s.rear_axle_mount[0], y, s.rear_axle_mount[1]];
    const length = norm(sub(chassis, add(axle, [0, 0, car.tires.rear_radius])));
    return {
      chassis, axle, rate: s.rear_rate, free: length + rest.spring / 2 / s.rear_rate,
      bump: s.rear_bump_damping, rebound: s.rear_rebound_damping, shortest, longest, stop: s.stop_rate,
    };
  });
}

function laneOf(car, drop) {
  return { drop, rate: car.tires.side_rate, damping: car.tires.side_damping };
}

// rearTiresOf returns both rear tires. Standing on its share of the weight a tire
// gives way fore and aft at the carcass rate, unless its relaxation length is given.
function rearTiresOf(car, rest) {
  const t = car.tires, shape = slipShape(t.peak_slip, t.sliding_grip);
  const relaxation = t.relaxation_length || rest.rear / 2 * t.grip * shape.B * shape.C / t.carcass_rate;
  return sides.map((side, i) => ({
    center: [0, sign[side] * car.car.track_rear / 2, 0],
    radius: t.rear_radius + rest.tires.rear[i] / t.rear_rate, rate: t.rear_rate, damping: t.rear_damping,
    carcassDamping: t.carcass_damping, grip: t.grip, shape, relaxation,
    lane: laneOf(car, t.rear_radius),
  }));
}

// cornersOf returns both front wheels.
function cornersOf(car, rest) {
  const t = car.tires, s = car.springs, mass = car.car.unsprung_front / 2;
  return sides.map((side, i) => ({
    hub: [car.car.wheelbase, sign[side] * car.car.track_front / 2, t.front_radius],
    mass, spin: t.front_spin_inertia / 2, grip: t.grip,
    ride: rest.tires.front[i] - mass * gravity, rate: s.front_rate,
    bump: s.front_bump_damping, rebound: s.front_rebound_damping,
    bumpTravel: s.front_bump, droopTravel: s.front_droop, stop: s.stop_rate,
    radius: t.front_radius + rest.tires.front[i] / t.front_rate, tireRate: t.front_rate, tireDamping: t.front_damping,
    lane: laneOf(car, t.front_radius),
  }));
}

// driveOf returns engine, converter and gears. The converter takes up the
// engine's torque at launch speed; a curve passes through that torque.
function driveOf(car) {
  const d = car.drive;
  let curve = d.curve;
  if (curve.length > 0) {
    const factor = d.torque / interpolate(curve, d.rpm);
    curve = curve.map(([speed, torque]) => [speed, factor * torque]);
  } else {
    curve = [[0, d.torque], [1, d.torque]];
  }
  const limit = d.rev_limit || (d.curve.length > 0 ? curve.at(-1)[0] : 1.5 * d.rpm);
  return {
    // The share of the torque that boost or timing let through after the release.
    shareAt: (time) => d.ramp.length > 0 ? interpolate(d.ramp, time) : 1,
    // From the rev limit the torque falls to nothing within 3 % more.
    torqueAt: (speed) => interpolate(curve, Math.min(speed, limit)) * Math.min(1, Math.max(0, 1 - (speed / limit - 1) / 0.03)),
    speed: d.rpm, inertia: d.engine_inertia, capacity: d.torque / d.rpm ** 2, stall: d.converter,
    gear: d.gear, axle: d.axle, efficiency: d.efficiency, release: d.release_time, turning: d.clockwise ? 1 : -1,
  };
}

// interpolate is linear between the points and level beyond them.
function interpolate(points, x) {
  if (x <= points[0][0]) return points[0][1];
  for (let i = 1; i < points.length; i++) {
    const [a, fa] = points[i - 1], [b, fb] = points[i];
    if (x <= b) return fa + (fb - fa) * (x - a) / (b - a);
  }
  return points.at(-1)[1];
}

// wheelieBarOf returns the wheelie bar, or null for a car without one.
function wheelieBarOf(car) {
  const w = car.wheelie_bar;
  return w.reach > 0 ? { wheel: [-w.reach, 0, w.height], rate: w.rate, damping: w.damping } : null;
}
