// Reads a car file into plain SI values. Keys, units and defaults are those of
// the car file's description; nothing here comes from the program itself.
import { readFileSync } from 'node:fs';
import { parse } from 'smol-toml';

export const gravity = 9.80665;
const inch = 0.0254, pound = 0.45359237, lbf = pound * gravity, foot = 12 * inch;
const rpm = Math.PI / 30, degree = Math.PI / 180;

// units are SI units per unit of the file.
const units = {
  us: {
    number: 1, seconds: 1, length: inch, mass: pound, rate: lbf / inch, damping: lbf / inch,
    torque: lbf * foot, inertia: pound * foot ** 2, speed: rpm, rollRate: lbf * foot / degree, stress: lbf / inch ** 2,
  },
  si: {
    number: 1, seconds: 1, length: 1e-3, mass: 1, rate: 1e3, damping: 1e3,
    torque: 1, inertia: 1, speed: rpm, rollRate: 1 / degree, stress: 1e6,
  },
};

// required and optional are the numbers of each table. An optional one has its
// default, in US units whatever the file is in.
const required = {
  car: {
    wheelbase: 'length', weight: 'mass', rear_weight: 'mass', cg_height: 'length',
    unsprung_rear: 'mass', unsprung_front: 'mass', track_rear: 'length', track_front: 'length',
  },
  tires: { rear_radius: 'length', front_radius: 'length', grip: 'number' },
  chassis_bracket: { spread_upper: 'length', spread_lower: 'length' },
  housing_bracket: { spread_upper: 'length', spread_lower: 'length' },
  upper_bar: { od: 'length', wall: 'length' },
  lower_bar: { od: 'length', wall: 'length' },
  springs: { rear_rate: 'rate', front_rate: 'rate', rear_droop: 'length', rear_bump: 'length' },
  drive: { torque: 'torque', rpm: 'speed', converter: 'number', gear: 'number', axle: 'number', efficiency: 'number' },
};
const barEnds = { end_rate: ['rate', 200000], damping: ['damping', 15] };
const optional = {
  car: {
    pitch_inertia: ['inertia', 0], yaw_inertia: ['inertia', 0], roll_inertia: ['inertia', 0],
    axle_roll_inertia: ['inertia', 0], housing_pitch_inertia: ['inertia', 0],
  },
  tires: {
    rear_spin_inertia: ['inertia', 0], front_spin_inertia: ['inertia', 0],
    rear_rate: ['rate', 1200], rear_damping: ['damping', 3], front_rate: ['rate', 1000], front_damping: ['damping', 1],
    carcass_rate: ['rate', 800], carcass_damping: ['damping', 2], sliding_grip: ['number', 0.75],
    peak_slip: ['number', 0.15], relaxation_length: ['length', 0],
    side_rate: ['rate', 1000], side_damping: ['damping', 30],
  },
  upper_bar: barEnds,
  lower_bar: barEnds,
  springs: {
    front_droop: ['length', 4], front_bump: ['length', 3], rear_spread: ['length', 36],
    rear_bump_damping: ['damping', 8], rear_rebound_damping: ['damping', 15], rear_anti_roll: ['rollRate', 0],
    front_bump_damping: ['damping', 10], front_rebound_damping: ['damping', 6], front_anti_roll: ['rollRate', 0],
    stop_rate: ['rate', 2000],
  },
  locator: { od: ['length', 1], wall: ['length', 0.083], ...barEnds },
  wheelie_bar: { reach: ['length', 0], height: ['length', 4], rate: ['rate', 1500], damping: ['damping', 10] },
  drive: { engine_inertia: ['inertia', 7], rev_limit: ['speed', 0], release_time: ['seconds', 0.03] },
};

// readCar returns one setup, counted from 0, of the car file at a path.
export function readCar(path, setup) {
  const file = parse(readFileSync(path, 'utf8'));
  const unit = units[file.units];
  const scales = file.car.corner_weights;
  if (scales) {
    file.car.weight ??= scales.lf + scales.rf + scales.lr + scales.rr;
    file.car.rear_weight ??= scales.lr + scales.rr;
  }
  const car = numbers(file, unit);
  if (scales) car.scales = Object.fromEntries(Object.entries(scales).map(([corner, weight]) => [corner, weight * unit.mass]));
  const point = (p) => p.map((x) => x * unit.length);
  const chosen = file.setup[setup];
  if (!chosen) throw new Error(`${path} has no setup ${setup + 1}`);
  const hole = (table, row) => point(file[table][row][chosen[`${table.split('_')[0]}_${row}`] - 1]);
  for (const row of ['upper', 'lower']) {
    car.chassis_bracket[row] = hole('chassis_bracket', row);
    car.housing_bracket[row] = hole('housing_bracket', row);
    const bar = car[`${row}_bar`], given = file[`${row}_bar`];
    bar.modulus = modulus(given.material);
    bar.lead = 2 * pitch(given.rod_end ?? '');
    bar.turns = ['left', 'right'].map((side) => chosen[`turns_${row}_${side}`] ?? 0);
  }
  car.springs.rear_axle_mount = point(file.springs.rear_axle_mount);
  car.springs.rear_chassis_mount = point(file.springs.rear_chassis_mount);
  Object.assign(car.locator, {
    kind: file.locator?.kind ?? 'track bar',
    chassis: file.locator?.chassis && point(file.locator.chassis),
    housing: file.locator?.housing && point(file.locator.housing),
  });
  car.drive.clockwise = (file.drive.direction ?? 'clockwise') === 'clockwise';
  car.drive.curve = (file.drive.curve ?? []).map(([speed, torque]) => [speed * unit.speed, torque * unit.torque]);
  car.drive.ramp = file.drive.ramp ?? [];
  return car;
}

// numbers converts every plain number of the file.
function numbers(file, unit) {
  const car = {};
  for (const [table, keys] of Object.entries(required)) {
    car[table] = {};
    for (const [key, kind] of Object.entries(keys)) {
      if (typeof file[table]?.[key] !== 'number') throw new Error(`${table}.${key} is missing`);
      car[table][key] = file[table][key] * unit[kind];
    }
  }
  for (const [table, keys] of Object.entries(optional)) {
    car[table] ??= {};
    for (const [key, [kind, usual]] of Object.entries(keys)) {
      const given = file[table]?.[key];
      car[table][key] = given === undefined ? usual * units.us[kind] : given * unit[kind];
    }
  }
  return car;
}

// modulus looks a material up in the table that comes with the program.
function modulus(name) {
  const table = parse(readFileSync(new URL('../../assets/materials.toml', import.meta.url), 'utf8'));
  const found = table.material.find((m) => m.name === name);
  if (!found) throw new Error(`material "${name}" is not in the table`);
  return found.elastic_modulus * units[table.units].stress;
}

// pitch is that of a rod end's thread, by its name; 16 threads per inch without one.
function pitch(rodEnd) {
  const metric = /M[\d.]+ *[x×] *([\d.]+)/.exec(rodEnd), perInch = /\d *- *([\d.]+)/.exec(rodEnd);
  if (metric) return metric[1] * 1e-3;
  return inch / (perInch ? perInch[1] : 16);
}
