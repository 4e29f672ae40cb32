package adjuster

import "bowline/model/car"

// Room is how far a bar can be turned either way from its length between the holes
// of a setup, both ends of the thread counted from there.
type Room struct {
	Shorter float64 // turns until no thread is in sight; not below zero [1]
	Longer  float64 // turns until LeastEngaged diameters are left; not below zero [1]
	// Well is the turns longer until WellEngaged diameters are left; below zero when
	// fewer are engaged before the bar is turned [1].
	Well float64
}

// Allows reports whether the thread has these turns, longer above zero [1].
func (r Room) Allows(turns float64) bool {
	const rounding = 1e-6
	return turns == 0 || -r.Shorter-rounding <= turns && turns <= r.Longer+rounding
}

// RoomOf returns the room of a pair's bars in a setup of c, before they are
// preloaded. Where the tube is too long or too short for the holes of that setup, it
// is that of the tube that At asks for. It panics when the setup or one of its holes
// does not exist.
func RoomOf(c *car.Car, setup int, p car.Pair) Room {
	b := Of(c, p)
	length := c.BarLength(p, c.Setups[setup].Holes)
	state := b.At(length)
	if state.Recut() {
		b.Shown, b.Fitted = b.goal(), length
		state = b.At(length)
	}
	return Room{
		Shorter: state.CanShorten / b.Lead(),
		Longer:  state.CanLengthen / b.Lead(),
		Well:    2 * (state.Engaged - WellEngaged*b.Diameter) / b.Lead(),
	}
}
