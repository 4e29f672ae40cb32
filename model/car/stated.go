package car

import "slices"

// Says reports whether the car itself gives an optional entry, by its path in the car
// file: whether it has another value than its default, or is among Stated. A field
// with a rule is given unless it is 0.
func (c *Car) Says(path string) bool {
	if usual, ok := c.isUsual(path); ok && usual {
		return slices.Contains(c.Stated, path)
	}
	return true
}

// isUsual reports whether an optional entry has its default, and whether the path is
// that of an entry that Stated can have.
func (c *Car) isUsual(path string) (usual, ok bool) {
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

// State notes that the car itself gives an optional entry, whatever its value, or
// with given false that it leaves it to its default. It does nothing for entries of
// other kinds, and for one that a rule gives: its default says that it is not known.
func (c *Car) State(path string, given bool) {
	usual, ok := c.isUsual(path)
	if !ok {
		return
	}
	if f := FieldAt(path); f != nil && f.Rule {
		given = false
	}
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

// Settle takes out of Stated what no longer has its default, so that the same inputs
// are the same value.
func (c *Car) Settle() {
	for _, path := range c.Stated {
		c.State(path, true)
	}
}
