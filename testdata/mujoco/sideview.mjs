// The car in side view: what it carries at ride height, and the way of the
// axle with rigid bars.
import { gravity } from './carfile.mjs';
import { add, dot, norm, scale, solve, sub } from './algebra.mjs';

const cross = (a, b) => a[0] * b[1] - a[1] * b[0];

// loadsAtRest returns tire loads of each axle, and both bars' tensions of each
// pair and both rear springs' push together, from the balance of the axle
// assembly: two forces and the moment about the axle.
export function loadsAtRest(car) {
  const { rear_weight: rearMass, weight, unsprung_rear: unsprung } = car.car;
  const rear = rearMass * gravity, front = (weight - rearMass) * gravity;
  const axle = [0, car.tires.rear_radius];
  const pulls = ['upper', 'lower'].map((pair) => {
    const at = car.housing_bracket[pair];
    return [at, sub(car.chassis_bracket[pair], add(axle, at))];
  });
  const mount = car.springs.rear_axle_mount;
  const push = [mount, sub(add(axle, mount), car.springs.rear_chassis_mount)];
  const columns = [...pulls, push].map(([at, along]) => {
    const unit = scale(1 / norm(along), along);
    return [unit[0], unit[1], cross(at, unit)];
  });
  const matrix = [0, 1, 2].map((row) => columns.map((c) => c[row]));
  const [upper, lower, spring] = solve(matrix, [0, unsprung * gravity - rear, 0]);
  return { rear, front, upper, lower, spring };
}

// coilRange returns the least and the greatest length between a rear spring's
// mounts over the rear travel.
export function coilRange(car) {
  const { rear_droop: droop, rear_bump: bump } = car.springs;
  const parts = 64, lengths = [];
  for (const end of [-droop, bump]) {
    let pose = [0, 0];
    for (let i = 0; i <= parts; i++) {
      const travel = end * i / parts;
      pose = axlePose(car, travel, pose);
      lengths.push(norm(sub(car.springs.rear_chassis_mount, carried(car, travel, pose, car.springs.rear_axle_mount))));
    }
  }
  return [Math.min(...lengths), Math.max(...lengths)];
}

// carried is where a point of the housing is in the chassis frame, with the
// axle shifted and turned nose-up by a pose.
function carried(car, travel, [shift, turn], [x, z]) {
  const c = Math.cos(turn), s = Math.sin(turn);
  return [shift + c * x - s * z, car.tires.rear_radius + travel + s * x + c * z];
}

// axlePose finds the pose at a travel that keeps both bars' lengths, near a
// given one.
function axlePose(car, travel, near) {
  const bars = ['upper', 'lower'].map((pair) => {
    const front = car.chassis_bracket[pair], rear = car.housing_bracket[pair];
    return { front, rear, length: norm(sub(front, carried(car, 0, [0, 0], rear))) };
  });
  let pose = near;
  for (let k = 0; k < 30; k++) {
    const equations = bars.map(({ front, rear, length }) => {
      const at = carried(car, travel, pose, rear), way = sub(at, front);
      const lever = sub(at, carried(car, travel, pose, [0, 0]));
      return { gap: (dot(way, way) - length ** 2) / 2, slope: [way[0], cross(lever, way)] };
    });
    const step = solve(equations.map((e) => e.slope), equations.map((e) => -e.gap));
    pose = add(pose, step);
    if (norm(step) < 1e-13) return pose;
  }
  throw new Error(`the bars do not close at a travel of ${travel} m`);
}
