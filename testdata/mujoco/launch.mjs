// Launches a car file in MuJoCo and prints the histories as JSON, in SI units:
//
//   node launch.mjs CAR.toml '{"step": 2.5e-4, "output": 1e-3, "until": 0.8}'
//
// Further options: "setup", counted from 0; "driveshaft": false leaves its
// torque on chassis and axle out.
import { readCar } from './carfile.mjs';
import { settle } from './equilibrium.mjs';
import { Simulation } from './simulation.mjs';
import { buildVehicle } from './vehicle.mjs';
import loadMujoco from '@mujoco/mujoco';

const [path, text = '{}'] = process.argv.slice(2);
const options = { setup: 0, step: 2.5e-4, output: 1e-3, until: 1, driveshaft: true, ...JSON.parse(text) };

const vehicle = buildVehicle(readCar(path, options.setup));
if (!options.driveshaft) vehicle.drive.turning = 0;
const mujoco = await loadMujoco();
const simulation = new Simulation(mujoco, vehicle, options.step);
settle(simulation);

const start = performance.now();
const history = launch(simulation, options);
const seconds = (performance.now() - start) / 1000;
const evaluations = 4 * Math.round(options.until / options.step);
console.log(JSON.stringify({
  version: mujoco.mj_versionString(), seconds, bare_seconds: evaluations * bareEvaluation(simulation), history,
}));

// launch steps from rest and returns each quantity at every output time.
function launch(simulation, { step, output, until }) {
  const stride = Math.round(output / step), outputs = Math.round(until / output);
  const history = { time: [] };
  for (let n = 0; ; n++) {
    const time = n * step;
    simulation.evaluate(time);
    if (n % stride === 0) {
      history.time.push(n / stride * output);
      for (const [name, value] of Object.entries(simulation.observe())) (history[name] ??= []).push(value);
      if (n === outputs * stride) return history;
    }
    simulation.advance(time);
  }
}

// bareEvaluation is what MuJoCo alone takes to find positions, velocities and
// accelerations once, the shortest of some means [s].
function bareEvaluation({ mujoco, model, data }) {
  const batches = 8, size = 1000;
  let shortest = Infinity;
  mujoco.mj_resetData(model, data);
  for (let k = 0; k < batches; k++) {
    const start = performance.now();
    for (let i = 0; i < size; i++) {
      mujoco.mj_step1(model, data);
      mujoco.mj_fwdActuation(model, data);
      mujoco.mj_fwdAcceleration(model, data);
    }
    shortest = Math.min(shortest, (performance.now() - start) / 1000 / size);
  }
  return shortest;
}
