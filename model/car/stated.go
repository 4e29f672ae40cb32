package car

import "slices"

// Says reports whether the car itself gives an optional entry, by its path in the car
// file: whether it has another value than its default, or is among Stated. Of other
// entries it reports true.
func (c *Car) Says(path string) bool {
	usual, optional := c.isUsual(path)
	return !optional || !usual || slices.Contains(c.Stated, path)
}

// isUsual reports whether an entry that may be left out has its default, and whether it
// is a plain number or a choice that may be left out.
func (c *Car) isUsual(path string) (usual, optional bool) {
	switch path {
	case "locator.kind":
		return c.Launch.Locator.Kind == TrackBar, true
	case "drive.direction":
		return c.Launch.Engine.Direction == Clockwise, true
	}
	f := FieldAt(path)
	if f == nil || !f.Optional {
		return false, false
	}
	return *f.In(c) == f.Default, true
}

// Statable reports whether the path is that of an entry whose default a car can give
// itself. The default of a number that a rule gives says that it is not known.
func Statable(path string) bool {
	switch path {
	case "locator.kind", "drive.direction":
		return true
	case "tires.rear_spin_inertia": // at 0 the launch estimates it
		return false
	}
	f := FieldAt(path)
	return f != nil && f.Optional && !f.Rule
}

// State notes that the car itself gives a statable entry, whatever its value, or with
// given false that it leaves it to its default. It does nothing for other entries.
func (c *Car) State(path string, given bool) {
	if !Statable(path) {
		return
	}
	usual, _ := c.isUsual(path)
	at, has := slices.BinarySearch(c.Stated, path)
	switch {
	case given && usual && !has:
		c.Stated = slices.Insert(slices.Clone(c.Stated), at, path)
	case !(given && usual) && has:
		c.Stated = slices.Delete(slices.Clone(c.Stated), at, at+1)
	}
	if len(c.Stated) == 0 {
		c.Stated = nil
	}
}

// Settle takes out of Stated what no longer has its default, so that cars with the same
// inputs are equal.
func (c *Car) Settle() {
	for _, path := range c.Stated {
		c.State(path, true)
	}
}
