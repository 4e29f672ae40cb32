// Package parts draws the car in three dimensions: tires, housing, brackets, bars,
// coil-overs, driveshaft, wheelie bar, and around them in faint lines a frame, a cage and
// an engine. Every view lists the same parts; what is farther from its eye comes first.
//
// What the car file gives is drawn to scale where it is. What it does not give, frame
// rails, cage, body, engine, transmission, the widths of tires and the sizes of housing,
// rims and rod ends, follows from the wheelbase, radii, brackets and mounts, for
// orientation only, in the color Frame.
package parts
