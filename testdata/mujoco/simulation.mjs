// Steps the vehicle in MuJoCo and applies the forces that MuJoCo does not know.
import { mjcf, motorOrder, sensedSites } from './mjcf.mjs';
import { cross, dot, scale } from './algebra.mjs';
import { coilPush, cornerPush, deflectionRate, driveTorques, groundLoad, spinDrag, thrust } from './laws.mjs';
import { rods, sides } from './vehicle.mjs';

// Simulation is one vehicle in MuJoCo. Beside MuJoCo's state stand the speeds
// of the car's engine and front wheels and the deflections of the rear tires'
// treads.
export class Simulation {
  constructor(mujoco, vehicle, step) {
    this.mujoco = mujoco;
    this.vehicle = vehicle;
    this.step = step;
    this.model = mujoco.MjModel.from_xml_string(mjcf(vehicle, step));
    this.data = new mujoco.MjData(this.model);
    this.engineSpeed = vehicle.drive.speed;
    this.frontSpin = [0, 0];
    this.deflection = [0, 0];
    this.lookUp();
  }

  // lookUp keeps views of MuJoCo's arrays and the places of names in them.
  lookUp() {
    const { mujoco: mj, model, data } = this;
    const id = (kind, name) => mj.mj_name2id(model, mj.mjtObj[kind].value, name);
    const { qpos, qvel, ctrl, xpos, xipos, xmat, xfrc_applied, site_xpos, sensordata, ten_length, ten_velocity, qfrc_smooth, qacc_smooth } = data;
    this.view = { qpos, qvel, ctrl, xpos, xipos, xmat, xfrc_applied, site_xpos, sensordata, ten_length, ten_velocity, qfrc_smooth, qacc_smooth };
    this.body = Object.fromEntries(['chassis', 'axle', 'wheels', 'front_left', 'front_right'].map((n) => [n, id('mjOBJ_BODY', n)]));
    const sensed = sensedSites(this.vehicle);
    this.site = Object.fromEntries(sensed.map((n, i) => [n, { at: 3 * id('mjOBJ_SITE', n), speed: model.sensor_adr[i] }]));
    this.wheelsTurn = model.sensor_adr[sensed.length];
    const joint = (n) => id('mjOBJ_JOINT', n);
    this.rise = sides.map((side) => ({ at: model.jnt_qposadr[joint(`rise_${side}`)], speed: model.jnt_dofadr[joint(`rise_${side}`)] }));
    this.spin = model.jnt_dofadr[joint('spin')];
    this.axleDof = model.body_dofadr[this.body.axle];
    this.tendon = Object.fromEntries([...rods, 'coil_left', 'coil_right'].map((n) => [n, id('mjOBJ_TENDON', n)]));
  }

  // evaluate finds positions, velocities and applied forces of the present state.
  evaluate(time) {
    this.now = time;
    this.mujoco.mj_step1(this.model, this.data);
    this.view.xfrc_applied.fill(0);
    this.coils();
    this.corners();
    this.rearTires();
    this.rearAntiRoll();
    this.wheelieBar();
    this.drive(time);
  }

  // advance takes one step from an evaluated state. The method is that of
  // MuJoCo's integrator RK4, with the applied forces found anew at every stage;
  // MuJoCo's own step would hold them still.
  advance(time) {
    const { step } = this, start = this.state(), k = [this.rates()];
    for (const part of [0.5, 0.5, 1]) {
      this.assume(start, part * step, k.at(-1));
      this.evaluate(time + part * step);
      k.push(this.rates());
    }
    const mean = Object.fromEntries(Object.keys(k[0]).map((name) =>
      [name, k[0][name].map((x, i) => (x + 2 * k[1][name][i] + 2 * k[2][name][i] + k[3][name][i]) / 6)]));
    this.assume(start, step, mean);
  }

  // state is what is integrated, and rates how fast it changes.
  state() {
    const { qpos, qvel } = this.view;
    return { qpos: [...qpos], qvel: [...qvel], engine: [this.engineSpeed], front: this.frontSpin, deflection: this.deflection };
  }

  rates() {
    const { mujoco, model, data, vehicle: { drive } } = this;
    mujoco.mj_fwdActuation(model, data);
    mujoco.mj_fwdAcceleration(model, data);
    return {
      qpos: [...this.view.qvel], qvel: [...this.view.qacc_smooth],
      engine: [(drive.shareAt(this.now) * drive.torqueAt(this.engineSpeed) - this.impeller) / drive.inertia],
      front: this.frontWheels.map((wheel) => wheel.spinUp),
      deflection: this.tires.map((tire) => tire.rate),
    };
  }

  // assume sets the state to start + time · rate.
  assume(start, time, rate) {
    const { qpos, qvel } = this.view, moved = (name) => start[name].map((x, i) => x + time * rate[name][i]);
    qpos.set(start.qpos);
    this.mujoco.mj_integratePos(this.model, qpos, rate.qpos, time);
    qvel.set(moved('qvel'));
    [this.engineSpeed] = moved('engine');
    this.frontSpin = moved('front');
    this.deflection = moved('deflection');
  }

  // place and velocity return those of a site.
  place(name) {
    const at = this.site[name].at;
    return this.view.site_xpos.subarray(at, at + 3);
  }

  velocity(name) {
    const at = this.site[name].speed;
    return this.view.sensordata.subarray(at, at + 3);
  }

  // axis returns a body's axis in the world; 0 is x.
  axis(name, k) {
    const m = this.view.xmat, at = 9 * this.body[name];
    return [m[at + k], m[at + 3 + k], m[at + 6 + k]];
  }

  // heading is the way along the ground square to a body's y.
  heading(name) {
    const [x, y] = this.axis(name, 1), flat = Math.hypot(x, y);
    return [y / flat, -x / flat, 0];
  }

  // push applies a force at a place on a body.
  push(name, place, force) {
    const { xfrc_applied, xipos } = this.view, b = this.body[name];
    for (let k = 0; k < 3; k++) xfrc_applied[6 * b + k] += force[k];
    this.twist(name, cross(place.map((x, k) => x - xipos[3 * b + k]), force));
  }

  // twist applies a torque to a body.
  twist(name, torque) {
    for (let k = 0; k < 3; k++) this.view.xfrc_applied[6 * this.body[name] + 3 + k] += torque[k];
  }

  coils() {
    sides.forEach((side, i) => {
      const t = this.tendon[`coil_${side}`];
      this.view.ctrl[motorOrder.coil + i] = coilPush(this.vehicle.coils[i], this.view.ten_length[t], this.view.ten_velocity[t]);
    });
  }

  corners() {
    const { vehicle: { corners, antiRoll, trackFront }, view: { qpos, qvel, ctrl } } = this;
    const rises = this.rise.map(({ at }) => qpos[at]);
    const roll = (rises[0] - rises[1]) / trackFront;
    const antiRollForce = antiRoll.front * roll / trackFront;
    const heading = this.heading('chassis');
    this.frontWheels = sides.map((side, i) => {
      const c = corners[i], hub = this.place(`hub_${side}`), body = `front_${side}`;
      const inner = cornerPush(c, rises[i], qvel[this.rise[i].speed]);
      ctrl[motorOrder.corner + i] = -inner - (i === 0 ? antiRollForce : -antiRollForce);
      const velocity = this.velocity(`hub_${side}`), spin = this.frontSpin[i];
      const load = groundLoad(c.tireRate, c.tireDamping, c.radius - hub[2], velocity[2]);
      const drag = spinDrag(c, spin, dot(heading, velocity), hub[2], load);
      this.push(body, hub, [-drag * heading[0], -drag * heading[1], load]);
      this.lane(body, `front_foot_${side}`, c.lane, c.hub[1]);
      return { load, spinUp: c.spin > 0 ? drag * hub[2] / c.spin : 0 };
    });
  }

  // lane holds a wheel's lowest point sideways where it was.
  lane(body, foot, lane, rest) {
    const at = this.place(foot);
    this.push(body, at, [0, -lane.rate * (at[1] - rest) - lane.damping * this.velocity(foot)[1], 0]);
  }

  rearTires() {
    const heading = this.heading('axle');
    const [wx, wy] = this.view.sensordata.subarray(this.wheelsTurn, this.wheelsTurn + 2);
    this.tires = sides.map((side, i) => {
      const tire = this.vehicle.rearTires[i], name = `rear_center_${side}`;
      const [x, y, z] = this.place(name), [vx, vy, vz] = this.velocity(name);
      const load = groundLoad(tire.rate, tire.damping, tire.radius - z, vz);
      // The wheel's material at the ground moves with v + ω × (0, 0, −z).
      const slip = -(vx - wy * z) * heading[0] - (vy + wx * z) * heading[1];
      const tread = slip + vx * heading[0] + vy * heading[1];
      const rate = deflectionRate(tire, slip, tread, this.deflection[i]);
      const force = thrust(tire, load, this.deflection[i], rate);
      this.push('wheels', [x, y, 0], [force * heading[0], force * heading[1], load]);
      this.lane('axle', `rear_foot_${side}`, tire.lane, tire.center[1]);
      return { load, tread, rate, force };
    });
  }

  // rearAntiRoll twists axle and chassis back in roll, by the sine of the roll,
  // about what is square to the axle and to the chassis's z.
  rearAntiRoll() {
    const y = this.axis('axle', 1), z = this.axis('chassis', 2);
    const torque = scale(this.vehicle.antiRoll.rear * dot(y, z), cross(y, z));
    this.twist('chassis', torque);
    this.twist('axle', scale(-1, torque));
  }

  wheelieBar() {
    const w = this.vehicle.wheelieBar;
    this.wheelieLoad = 0;
    if (!w) return;
    const at = this.place('wheelie');
    this.wheelieLoad = groundLoad(w.rate, w.damping, -at[2], this.velocity('wheelie')[2]);
    this.push('chassis', at, [0, 0, this.wheelieLoad]);
  }

  // drive turns the wheels against the housing and, by the driveshaft, the axle
  // against the chassis.
  drive(time) {
    const d = this.vehicle.drive;
    const { impeller, axle } = driveTorques(d, this.engineSpeed, this.view.qvel[this.spin], time);
    this.impeller = impeller;
    this.view.ctrl[motorOrder.spin] = axle;
    const shaft = scale(d.turning * axle / d.axle, this.axis('chassis', 0));
    this.twist('chassis', shaft);
    this.twist('axle', scale(-1, shaft));
  }

  // observe returns what is compared of an evaluated state.
  observe() {
    const { view, vehicle, tires, frontWheels } = this;
    const rodTensions = rods.map((name) => {
      const { rate, free, damping } = vehicle.rods[name], t = this.tendon[name];
      return [name, rate * (view.ten_length[t] - free) + damping * view.ten_velocity[t]];
    });
    const x = this.axis('chassis', 0), y = this.axis('chassis', 1), z = this.axis('chassis', 2);
    const origin = view.xpos.subarray(3 * this.body.chassis, 3 * this.body.chassis + 3);
    const rearTravel = sides.map((side) =>
      this.place(`rear_center_${side}`).reduce((sum, p, k) => sum + (p - origin[k]) * z[k], -vehicle.axle.height));
    return {
      ...Object.fromEntries(rodTensions),
      pitch: Math.asin(x[2]), roll: Math.atan2(y[2], z[2]),
      rear_travel_left: rearTravel[0], rear_travel_right: rearTravel[1],
      front_travel_left: view.qpos[this.rise[0].at], front_travel_right: view.qpos[this.rise[1].at],
      rear_left: tires[0].load, rear_right: tires[1].load, front_left: frontWheels[0].load, front_right: frontWheels[1].load,
      wheelie_bar: this.wheelieLoad, thrust: tires[0].force + tires[1].force, thrust_left: tires[0].force, thrust_right: tires[1].force,
      slip_left: this.deflection[0] / vehicle.rearTires[0].relaxation, slip_right: this.deflection[1] / vehicle.rearTires[1].relaxation,
      wheel_speed: (tires[0].tread + tires[1].tread) / 2, axle_torque: view.ctrl[motorOrder.spin],
      speed: this.velocity('cg')[0], engine: this.engineSpeed, driveshaft: view.qvel[this.spin] * vehicle.drive.axle,
    };
  }
}
