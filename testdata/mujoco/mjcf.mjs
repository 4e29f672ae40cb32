// Writes the vehicle as MJCF. Chassis and axle assembly are free bodies, bars
// and locator are tendons with a spring and a damper that work both ways, the
// rear wheels turn on the axle as one, the front wheels slide along the
// chassis's z. Nothing collides: tires, springs and drive are applied forces.
import { rods, sides } from './vehicle.mjs';

// point is the inertia of a front wheel in rotation, which must be above zero [kg·m²].
const point = 1e-6;

// mjcf returns the document for a time step.
export function mjcf(v, step) {
  return `<mujoco model="launch">
  <compiler angle="radian"/>
  <option timestep="${step}" gravity="0 0 ${-v.gravity}">
    <flag contact="disable" constraint="disable"/>
  </option>
  <worldbody>
    ${chassis(v)}
    ${axle(v)}
  </worldbody>
  <tendon>
    ${tendons(v).join('\n    ')}
  </tendon>
  <actuator>
    ${motors().join('\n    ')}
  </actuator>
  <sensor>
    ${sensors(v).join('\n    ')}
  </sensor>
</mujoco>`;
}

const site = (name, pos) => `<site name="${name}" pos="${pos.join(' ')}"/>`;

const inertial = (pos, mass, inertia) => `<inertial pos="${pos.join(' ')}" mass="${mass}" diaginertia="${inertia.join(' ')}"/>`;

// chassis has its origin where the chassis frame has it, and the front wheels.
function chassis(v) {
  return `<body name="chassis">
      <freejoint/>
      ${inertial(v.chassis.cg, v.chassis.mass, v.chassis.inertia)}
      ${site('cg', v.chassis.cg)}
      ${rods.map((name) => site(`${name}_chassis`, v.rods[name].chassis)).join('\n      ')}
      ${sides.map((side, i) => site(`coil_${side}_chassis`, v.coils[i].chassis)).join('\n      ')}
      ${v.wheelieBar ? site('wheelie', v.wheelieBar.wheel) : ''}
      ${sides.map((side, i) => frontWheel(side, v.corners[i])).join('\n      ')}
    </body>`;
}

function frontWheel(side, c) {
  return `<body name="front_${side}" pos="${c.hub.join(' ')}">
        <joint name="rise_${side}" type="slide" axis="0 0 1"/>
        ${inertial([0, 0, 0], c.mass, [point, point, point])}
        ${site(`hub_${side}`, [0, 0, 0])}
        ${site(`front_foot_${side}`, [0, 0, -c.lane.drop])}
      </body>`;
}

// axle is the housing with the rear wheels. What spins is a thin ring's share
// of roll and yaw; the housing has the rest.
function axle(v) {
  const { mass, height, inertia: [roll, pitch, yaw], spin } = v.axle;
  return `<body name="axle" pos="0 0 ${height}">
      <freejoint/>
      ${inertial([0, 0, 0], mass / 2, [roll - spin / 2, pitch, yaw - spin / 2])}
      ${rods.map((name) => site(`${name}_housing`, v.rods[name].housing)).join('\n      ')}
      ${sides.map((side, i) => site(`coil_${side}_axle`, v.coils[i].axle)).join('\n      ')}
      ${sides.map((side, i) => site(`rear_foot_${side}`, [0, v.rearTires[i].center[1], -v.rearTires[i].lane.drop])).join('\n      ')}
      <body name="wheels">
        <joint name="spin" type="hinge" axis="0 1 0"/>
        ${inertial([0, 0, 0], mass / 2, [spin / 2, spin, spin / 2])}
        ${sides.map((side, i) => site(`rear_center_${side}`, v.rearTires[i].center)).join('\n        ')}
      </body>
    </body>`;
}

// tendons are rods, and coil-overs without stiffness of their own.
function tendons(v) {
  const spatial = (name, attributes, from, to) =>
    `<spatial name="${name}" ${attributes}><site site="${from}"/><site site="${to}"/></spatial>`;
  const rod = (name, { rate, damping, free }) =>
    spatial(name, `stiffness="${rate}" damping="${damping}" springlength="${free}"`, `${name}_chassis`, `${name}_housing`);
  return [
    ...rods.map((name) => rod(name, v.rods[name])),
    ...sides.map((side) => spatial(`coil_${side}`, '', `coil_${side}_chassis`, `coil_${side}_axle`)),
  ];
}

// motors are the internal forces, in the order in which they are set.
export const motorOrder = { coil: 0, corner: 2, spin: 4 };

function motors() {
  return [
    ...sides.map((side) => `<motor tendon="coil_${side}"/>`),
    ...sides.map((side) => `<motor joint="rise_${side}"/>`),
    '<motor joint="spin"/>',
  ];
}

// sensedSites are those whose velocities the forces need, in order.
export function sensedSites(v) {
  return [
    'cg',
    ...['rear_center', 'rear_foot', 'hub', 'front_foot'].flatMap((name) => sides.map((side) => `${name}_${side}`)),
    ...(v.wheelieBar ? ['wheelie'] : []),
  ];
}

function sensors(v) {
  return [
    ...sensedSites(v).map((name) => `<framelinvel objtype="site" objname="${name}"/>`),
    '<frameangvel objtype="body" objname="wheels"/>',
  ];
}
