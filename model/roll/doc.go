// Package roll finds how the axle rolls against the chassis when only bars and
// locator hold it: what torque it takes, how its bars stretch, and how far each rod
// end tilts on its ball. Springs, anti-roll bars, shocks and preload are left out.
//
// Axes are those of ISO 8855: x forward, y left, z up; all places are in the chassis
// frame, whose origin is on the ground under the rear axle centerline at ride height.
// Roll is that of the axle, left side up positive: φ = asin(ŷa·ẑ), with ŷa the
// direction of the axle centerline.
//
// The middle of the centerline is held at a rear travel and the axle at a roll; of its
// four other freedoms, fore and aft, sideways, pitch and yaw, it takes those with the
// least elastic energy
//
//	U = Σ k (l − L)²/2
//
// of the four bars and the locator, with L their lengths at ride height and k their
// rates with ends (launch.Rod). The torque that holds the roll is dU/dφ. Its rate at
// no roll is the linkage's own roll stiffness: zero for bars that are parallel in side
// view and in plan, and high for bars that are not, which then bind. Source: least
// energy (Castigliano).
//
// A rod end's ball sits on a bolt that is square to its bar at ride height, level, and
// fixed to chassis or housing: an assumption. Its misalignment is the angle by which
// the bar has left the plane square to the bolt, asin |û·b̂|.
package roll
