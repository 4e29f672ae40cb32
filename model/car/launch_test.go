package car

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

func TestLocatorEnds(t *testing.T) {
	at := func(x, y, z float64) r3.Vec { return r3.Vec{X: x * inch, Y: y * inch, Z: z * inch} }
	near := func(p, q r3.Vec) bool { return r3.Norm(r3.Sub(p, q)) < 1e-12 }
	c := sound()
	if chassis, housing := c.LocatorEnds(0); !near(chassis, at(-6, 16.8, 16)) || !near(housing, at(-6, -16.8, 0)) {
		t.Errorf("track bar from %v to %v", chassis, housing)
	}
	c.Launch.Locator.Kind = DiagonalLink
	// The second lower chassis hole and the first lower housing hole.
	if chassis, housing := c.LocatorEnds(0); !near(chassis, at(25.5, 18, 11.5)) || !near(housing, at(2.5, -18, -5)) {
		t.Errorf("diagonal link from %v to %v", chassis, housing)
	}
	c.Launch.Locator.Housing = End{Given: true, At: at(1, 2, 3)}
	if chassis, housing := c.LocatorEnds(1); !near(chassis, at(25.5, 18, 10.75)) || !near(housing, at(1, 2, 3)) {
		t.Errorf("with a given end from %v to %v", chassis, housing)
	}
}

// Each bar has turns of its own.
func TestBarTurns(t *testing.T) {
	var turns Turns
	for i, bar := range BarTurns {
		*bar.Of(&turns) = float64(i + 1)
	}
	if want := (Turns{1, 2, 3, 4}); turns != want {
		t.Errorf("got %+v, want %+v", turns, want)
	}
}
