// The laws of force of springs, shocks, stops, tires and drive.

const positive = (x) => Math.max(0, x);

// coilPush is the push of a rear coil-over at a length and its rate of change.
export function coilPush(c, length, speed) {
  const spring = positive(c.rate * (c.free - length));
  const stops = c.stop * (positive(c.shortest - length) - positive(length - c.longest));
  return spring + stops - (speed > 0 ? c.rebound : c.bump) * speed;
}

// cornerPush is the push of a front corner's suspension between chassis and
// wheel at a rise of the wheel and its rate of change.
export function cornerPush(c, rise, speed) {
  const spring = positive(c.ride + c.rate * rise);
  const stops = c.stop * (positive(rise - c.bumpTravel) - positive(-rise - c.droopTravel));
  return spring + stops + (speed > 0 ? c.bump : c.rebound) * speed;
}

// groundLoad is the load on a wheel whose height is less than its radius by
// depth and that rises at a speed. The ground only pushes.
export function groundLoad(rate, damping, depth, rising) {
  return depth > 0 ? positive(rate * depth - damping * rising) : 0;
}

// slipShape finds B and C of the magic formula sin(C atan(B s)) that peaks at a slip
// and is worth a given part of its peak at a slip of 1. The worth falls as C grows.
export function slipShape(peak, sliding) {
  const stiffness = (c) => Math.tan(Math.PI / (2 * c)) / peak;
  const worth = (c) => Math.sin(c * Math.atan(stiffness(c)));
  let c = 1.1;
  if (worth(c) > sliding) for (let step = 0.95; step > 1e-16; step /= 2) if (worth(c + step) > sliding) c += step;
  return { B: stiffness(c), C: c };
}

// deflectionRate is how fast the tread of a rolling tire deflects: by what it slips,
// less what rolls out of the contact over the relaxation length. A tire that slips
// faster than it rolls loses its deflection by the distance slipped.
export function deflectionRate(tire, slip, tread, deflection) {
  return slip - Math.max(Math.abs(slip), Math.abs(tread)) * deflection / tire.relaxation;
}

// thrust is that of a rear tire under a load whose tread is deflected, within what
// it holds at its best.
export function thrust(tire, load, deflection, rate) {
  const { B, C } = tire.shape, most = tire.grip * load;
  const force = most * Math.sin(C * Math.atan(B * deflection / tire.relaxation)) + tire.carcassDamping * rate;
  return Math.sign(force) * Math.min(Math.abs(force), most);
}

// catchUp is how long a front wheel takes to take up the speed of the road [s].
const catchUp = 5e-3;

// spinDrag is what holds a front wheel back while it takes up the road's speed.
export function spinDrag(c, spin, speed, height, load) {
  const drag = c.spin / height ** 2 / catchUp * (speed - spin * height);
  return Math.sign(drag) * Math.min(Math.abs(drag), c.grip * load);
}

// converterEdge is the speed ratio at which the converter multiplies no more
// and begins to let go.
const converterEdge = 0.9;

// driveTorques returns what the impeller takes of the engine and what reaches
// the axle at an engine speed, the wheels' speed in the housing and a time.
export function driveTorques(d, engine, wheels, time) {
  const ratio = positive(wheels * d.gear * d.axle / engine);
  const slips = Math.min(1, positive(1 - ratio) / (1 - converterEdge));
  const impeller = d.capacity * engine ** 2 * slips;
  const multiplied = Math.max(1, d.stall + (1 - d.stall) * ratio / converterEdge);
  const x = d.release > 0 ? Math.min(1, time / d.release) : 1;
  const released = 3 * x ** 2 - 2 * x ** 3;
  return { impeller, axle: released * impeller * multiplied * d.gear * d.axle * d.efficiency };
}
