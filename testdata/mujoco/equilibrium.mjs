// Finds the vehicle at rest, by Newton's method on MuJoCo's forces.
import { norm, scale, solve, sub } from './algebra.mjs';

const nudge = 1e-6, tolerance = 1e-6, mostSteps = 50;

// settle moves a standing vehicle to where no force is left on it. Where it
// stands along the track, and how its wheels are turned, makes no difference.
export function settle(simulation) {
  const { mujoco, model, data, view, spin, axleDof } = simulation;
  const free = [...view.qvel.keys()].filter((dof) => dof !== axleDof && dof !== spin);
  const moved = (from, by) => {
    const step = new Array(view.qvel.length).fill(0);
    free.forEach((dof, k) => { step[dof] = by[k]; });
    view.qpos.set(from);
    mujoco.mj_integratePos(model, view.qpos, step, 1);
    return [...view.qpos];
  };
  const forces = (at) => {
    view.qpos.set(at);
    simulation.evaluate(0);
    mujoco.mj_fwdActuation(model, data);
    mujoco.mj_fwdAcceleration(model, data);
    return free.map((dof) => view.qfrc_smooth[dof]);
  };
  let at = [...view.qpos], left = forces(at);
  for (let k = 0; norm(left) > tolerance; k++) {
    if (k === mostSteps) throw new Error(`no rest found: ${norm(left)} N are left`);
    const columns = free.map((_, i) => {
      const by = free.map((_, j) => (i === j ? nudge : 0));
      return scale(0.5 / nudge, sub(forces(moved(at, by)), forces(moved(at, scale(-1, by)))));
    });
    const matrix = free.map((_, row) => columns.map((c) => c[row]));
    const step = solve(matrix, scale(-1, left));
    for (let part = 1; ; part /= 2) {
      const next = moved(at, scale(part, step)), rest = forces(next);
      if (norm(rest) < norm(left)) {
        [at, left] = [next, rest];
        break;
      }
      if (part < 1e-4) throw new Error(`no rest found: ${norm(left)} N are left`);
    }
  }
  view.qpos.set(at);
}
