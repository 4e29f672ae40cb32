// Package launch runs the launch of a four-link car in three dimensions: what
// each of the four bars, the locator, the tires and the springs carry from the
// moment the brake lets go, where the car goes, and how long it takes to 60 ft.
//
// Run makes a Result of a car; Simulate makes one of Parameters, the plain
// numbers below. Everything is in SI. This page states the model so that it
// can be built again, elsewhere, and give the same numbers. Each law names its
// source, or says that it is an assumption.
//
// # Frames and signs
//
// The world has x along the track, y to the left, z up, and its origin on the
// ground below the middle of the rear axle at ride height (ISO 8855). The
// chassis frame and the axle frame are parallel to it at ride height; the first
// has its origin on the ground there, the second in the middle of the axle
// centerline, at the height Axle.Height. A hat marks a unit vector of a frame:
// x̂c, ŷc, ẑc of the chassis, x̂a, ŷa, ẑa of the axle, x̂, ŷ, ẑ of the world. A
// tension is positive; pitch is nose-up positive, roll left-side-up positive;
// wheels that roll forward turn about +ŷa.
//
// # Bodies and states
//
//   - Chassis: mass m, CG C, inertia diag(Ix, Iy, Iz) about C in the chassis's
//     axes; six degrees of freedom.
//   - Axle assembly with wheels and tires: mass ma, CG A in the middle of the
//     centerline, inertia diag(Jx, Jy, Jz), of which Jy leaves out what spins;
//     six degrees of freedom.
//   - Both rear wheels, locked to each other: spin inertia J about ŷa, speed ω in
//     space about ŷa, so ω − ωa·ŷa relative to the housing. Their mass and their
//     inertia across the centerline are part of ma, Jx and Jz.
//   - Front wheel i: point mass mi at ρi + s ẑc from C, with the rise s its degree
//     of freedom, and a spin ωi with the inertia Ji that turns nothing else.
//   - Engine speed ωe, and the deflection u of each rear tire's tread.
//
// Assumptions: the bodies are rigid, the rear wheels are locked to each other by a
// spool, and front wheels move along ẑc only. Where the car gives no inertia, New
// takes one from a radius of gyration, and for pitch and yaw the product of the
// CG's distances from both axles (dynamic index 1); package assumptions lists
// each.
//
// With w the velocity of a front wheel's center, the momenta of chassis and
// front wheels are P = m V + Σ mi w and, about C in the chassis's axes,
// H = I ω + Σ (ρ + sẑ)×mi w. All forces F and moments M about C change them by
//
//	dP/dt = F (in the world),  dH/dt + ω×H + V×P = M,  d(mi w·ẑ)/dt = mi (wx ωy − wy ωx) + Q
//
// where F and M contain what acts on the front wheels from outside and Q what
// acts on one wheel along ẑc, the suspension's −S included. For the axle
// assembly, with h = (Jx ωx, Jy ωy + J ω, Jz ωz):
//
//	ma dVa/dt = F,  Jx dωx/dt = Mx − (ω×h)x,  Jy dωy/dt = My − (ω×h)y,  Jz dωz/dt = Mz − (ω×h)z,  J dω/dt = Mw
//
// where Mw is what acts on the wheels about ŷa and M is the rest. Gravity acts
// on every mass. Source: Newton's and Euler's equations; for chassis and front
// wheels in Kirchhoff's form for a moving origin (Lamb, Hydrodynamics, ch. VI, from
// memory), held against a general-purpose engine in testdata/mujoco.
//
// # Bars and locator
//
// A massless member between ball joints a on the chassis and b on the axle
// pulls both toward each other with
//
//	T = k (|a − b| − l0) + c d|a − b|/dt,  1/k = Σ L/(E A) + 2/k_end
//
// with the sum over its segments, of which a tube all the way is one, l long at ride
// height. Source: springs in series, Hooke's law; the viscous damping and linear
// ends of the rate k_end are assumptions. Its free length is l0 = l − T0/k + turns·lead:
// T0 is the tension at ride height without preload, so that the car then stands
// exactly at ride height; lead is two pitches, lengthening for positive turns.
// T0 of a bar is the side view's tension at rest times its length over its
// length in the side view; that of the locator is 0; see below for a car on scales.
//
// # Rear springs
//
// Spring, shock and stops push the mounts a on the chassis and b on the axle
// apart along their line with
//
//	S = max(0, S0 − k (l − l_ride)) + k_stop max(0, l_short − l) − k_stop max(0, l − l_long) − c dl/dt
//
// with c the rebound damping while l grows and the bump damping while it
// shrinks. S0 is the side view's spring push at rest, halved; l_short and
// l_long are the extremes of l as the rigid side-view linkage moves from full
// droop to full bump. The rear anti-roll bar twists the axle with
// −K ψ (ŷa×ẑc) and the chassis with the opposite, ψ = ŷa·ẑc. Assumptions: springs
// and stops are linear, a spring goes slack rather than pull, shocks are viscous
// in each direction.
//
// # Standing on its scales
//
// Loads at rest are those of the side view, half on each side. Where the four scale
// readings are given, they are the tire loads, and the sprung mass's CG lies to the
// left of the middle by what they say: m yC = Σ N_i y_i/g. The axle assembly is then
// balanced at ride height by tensions T0 and spring pushes S0 that differ from the
// side view's by the least Σ ΔT² + Σ (ΔS/1000)²: six equations for seven unknowns, of
// which the springs' seats take up all that they can (assumption).
//
// # Front corners
//
// Between chassis and wheel, up on the chassis and down on the wheel along ẑc:
//
//	S = max(0, S0 + k s) + k_stop max(0, s − bump) − k_stop max(0, −droop − s) + c ds/dt ± K (s_left − s_right)/t²
//
// with c the bump damping while s grows and the rebound damping while it
// shrinks, + on the left and − on the right, t the front track; the assumptions are
// those of the rear springs. On the wheel
// center act the tire load N ẑ and the drag of its spin. With e the horizontal
// unit vector ŷc×ẑ, v the velocity of the wheel center and z its height:
//
//	D = Ji/(z² 5 ms) (v·e − ωi z), but not beyond ±µ_peak N
//
// acts along −e on the wheel center, and Ji dωi/dt = D z. That the spin follows the
// road with a time constant of 5 ms is an assumption.
//
// # Tire loads
//
// A tire of free radius R whose center is at the height z carries
//
//	N = max(0, k (R − z) − c dz/dt) for z < R, else 0
//
// It acts at the contact, which lies below the wheel center along ẑ. R is the
// loaded radius at ride height plus the load at rest over k. The linear spring and
// damper, and that the tire rolls at the height z, are assumptions.
//
// # Rear tires along the ground
//
// With the horizontal unit vectors n along ŷa and e = n×ẑ (so e is forward),
// f = n·ŷa, ωw = ωa + (ω − ωa·ŷa) ŷa and v the velocity of the wheel center, the tread
// passes through the contact at the speed w = z ωw·n and slips over the ground at
// σ = w − v·e. Its deflection u follows the slip as the tire rolls:
//
//	du/dt = σ − max(|w|, |σ|) u/λ
//	F = µ_peak N sin(C atan(B u/λ)) + c_x du/dt, but not beyond ±µ_peak N
//	B = tan(π/(2C))/s_peak
//
// with N the load. Driven forward, |σ| ≤ |w| and s = u/λ tends to the driving slip
// σ/w, 1 for a tire that spins on the spot; |σ| takes over where a wheel is dragged,
// so that u stays within ±λ. The grip has its greatest value, µ_peak, at s_peak, and C makes it the
// part φ of that at a slip of 1:
//
//	sin(C atan(B)) = φ, C between 1.1 and 3
//
// A φ that only a C below 1.1 gives, 0.991 and more at s_peak = 0.15, counts as that
// of 1.1; at C = 1 the curve is a step. λ is given, or follows from the carcass rate
// k_x, so that a tire under its load at rest that does not roll answers like a spring
// of that rate:
//
//	λ = N_rest µ_peak B C/k_x
//
// F acts along e at the contact: on the wheel center as F e with the moment −z F n
// about it, of which −z F f about ŷa turns the wheels and the rest, −z F (n − f ŷa),
// the housing. Source: the single-contact-point transient model and the magic formula
// of H. B. Pacejka, Tire and Vehicle Dynamics, ch. 7 and 4, from memory. Assumptions:
// no curvature factor, a relaxation length that does not change with load and slip, a
// damper in the carcass, and µ the same under any load.
//
// # Lane springs
//
// So that nothing wanders, each of the four wheels is held to its line along the
// track. A point fixed to the axle, or to the front wheel, below the wheel center
// by the loaded radius at ride height along the body's own z, takes the force
// −k_y (y − y0) − c_y dy/dt along ŷ, with y0 its place at ride height, whatever
// the tire's load. This is an assumption in place of lateral tire forces and
// steering.
//
// # Drive
//
// With the speed ratio R = (ω − ωa·ŷa)·gear·axle/ωe, not below 0:
//
//	impeller torque  Ti = C ωe²·min(1, (1 − R)/0.1), not below 0
//	torque ratio     TR = max(1, TR0 − (TR0 − 1) R/0.9)
//	engine           Je dωe/dt = r(t) Te(ωe) − Ti
//	axle torque      T = b(t)·TR·Ti·gear·axle·efficiency
//	brake            b = 3τ² − 2τ³, τ = t/t_release between 0 and 1
//
// C makes the impeller take up exactly the engine's torque at launch speed. Te
// is constant or follows the curve, scaled to pass through the torque at launch
// speed, and falls from the rev limit on, to 0 at 3 % beyond it. r, the ramp, is the
// share of it at the time t after the brake's first give, linear between its points
// and level before and beyond them; 1 without one. T acts on the wheels about +ŷa and on the housing about −ŷa. The driveshaft's torque
// T/axle acts about −x̂c on the axle and +x̂c on the chassis for an engine that
// turns clockwise seen from the front, the other way round for the other. The
// turning of engine, converter and driveshaft puts no other moment on the
// chassis. Sources: the driveshaft's reaction on a solid axle, Gillespie,
// Fundamentals of Vehicle Dynamics, ch. 2; impeller torque over speed squared,
// similarity of hydrodynamic drives. Assumptions: the course of torque ratio and
// impeller torque over the speed ratio, with the coupling point at 0.9; one
// efficiency at all speeds and loads; the brake's smooth step; the engine's torque
// past its limit.
//
// # Wheelie bar
//
// A point of the chassis, in its middle, takes N ẑ as a tire of radius 0 would. A
// rigid arm and a wheel without friction are assumptions.
//
// # Start and end
//
// The launch starts at rest: no speed, no torque, no deflection of the treads,
// all forces in balance with the preload. It is found by Newton's method from
// ride height. The launch ends when the sprung mass's CG has traveled the distance,
// when chassis or axle tilt beyond 60° (assumption: then the car goes
// over), when the solution diverges, and at the time limit at the latest. A
// car that would take more than 200,000 steps is not launched. The clock
// starts when the car has traveled the rollout, in which the front tires leave the
// beam at the start, and stops at the distance; times of the history count from the
// brake's first give.
//
// # Integration
//
// The classical Runge–Kutta method of order four, in steps that are a whole
// part of the output step with step × ω_max at most 0.7, ω_max a bound of the
// natural angular frequencies, and step × decay rate at most 2, with a bound of the
// decay rates of dampers and rolling tires. Source of the method and its limits of
// stability: Hairer & Wanner, Solving Ordinary Differential Equations II, from memory.
package launch
