package study_test

import (
	"math"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// target returns the target for the instant center, x then z.
func (s *rig) target() [4]float64 {
	u, k := s.Units(), s.Document().Car().Check
	x := func(si float64) float64 { return u.Exact(units.Length, si) }
	return [4]float64{x(k.TargetICX[0]), x(k.TargetICX[1]), x(k.TargetICZ[0]), x(k.TargetICZ[1])}
}

// openTarget opens the reference car with a target [in].
func openTarget(t *testing.T, x0, x1, z0, z1 float64) (*rig, *car.Car) {
	t.Helper()
	s := open(t)
	if p := s.Document().Apply("Target", func(c *car.Car) {
		c.Check.TargetICX, c.Check.TargetICZ = [2]float64{x0 * inch, x1 * inch}, [2]float64{z0 * inch, z1 * inch}
	}); p != nil {
		t.Fatal(p)
	}
	return s, s.Document().Car()
}

func inches(x, z float64) r2.Vec { return r2.Vec{X: x * inch, Y: z * inch} }

func TestMoveTarget(t *testing.T) {
	s, before := openTarget(t, 40, 60, 6, 14)
	for _, c := range []struct {
		what      string
		low, high r2.Vec
		want      [4]float64
	}{
		{"all of it", inches(1.504, -0.756), inches(1.504, -0.756), [4]float64{41.5, 61.5, 5.24, 13.24}},
		{"the front edge", r2.Vec{}, inches(-3.25, 0), [4]float64{40, 56.75, 6, 14}},
		{"the rear lower corner", inches(2, 1), r2.Vec{}, [4]float64{42, 60, 7, 14}},
		{"the front edge too far back", r2.Vec{}, inches(-30, 0), [4]float64{40, 40.25, 6, 14}},
		{"the rear edge too far ahead", inches(30, 0), r2.Vec{}, [4]float64{59.75, 60, 6, 14}},
		{"the upper edge too low", r2.Vec{}, inches(0, -7.9), [4]float64{40, 60, 6, 6.25}},
		{"nothing", r2.Vec{}, r2.Vec{}, [4]float64{40, 60, 6, 14}},
	} {
		if p := s.MoveTarget(before, c.low, c.high); p != nil || s.target() != c.want {
			t.Errorf("%s: %v, refused for %v; want %v", c.what, s.target(), p, c.want)
		}
	}
}

func TestMoveTargetIsRefusedBeyondTheFile(t *testing.T) {
	s, before := openTarget(t, 40, 60, 6, 14)
	p := s.MoveTarget(before, inches(350, 0), inches(350, 0))
	if len(p) != 1 || !strings.HasPrefix(p[0].Path, "check.target_ic.x") || s.Document().Car() != before {
		t.Errorf("refused for %v; target %v", p, s.target())
	}
}

func TestMoveTargetInMillimeters(t *testing.T) {
	s, before := openTarget(t, 40, 60, 6, 14)
	s.Document().SetUnits(units.SI)
	// From 1016 mm on, on a grid of 0.25 mm, and not beyond 1524 mm.
	for by, want := range map[float64]float64{0.0101: 1026, 0.0102: 1026.25, 5: 1517.5} {
		s.MoveTarget(before, r2.Vec{X: by}, r2.Vec{})
		if got := s.target(); got[0] != want || s.Document().Car().Check.TargetICX[1] != before.Check.TargetICX[1] || s.Document().Car().Check.TargetICZ != before.Check.TargetICZ {
			t.Errorf("moved by %v m the target is %v mm", by, got)
		}
	}
}

// A target typed narrower than one is dragged keeps its width.
func TestANarrowTargetStaysNarrow(t *testing.T) {
	s, before := openTarget(t, 40, 40.1, 6, 14)
	s.MoveTarget(before, r2.Vec{}, inches(-1, 0))
	if got := s.target(); got != [4]float64{40, 40.1, 6, 14} {
		t.Errorf("target %v", got)
	}
	s.MoveTarget(before, inches(1, 0), inches(1, 0))
	if got := s.target(); got != [4]float64{41, 41.1, 6, 14} {
		t.Errorf("target %v", got)
	}
}

// Wherever it is dragged, the target is one that a car file takes: nothing is
// refused but what leaves its bounds.
func TestAnyDragLeavesATarget(t *testing.T) {
	s, before := openTarget(t, 40, 60, 6, 14)
	rapid.Check(t, func(t *rapid.T) {
		d := inches(rapid.Float64Range(-300, 300).Draw(t, "x"), rapid.Float64Range(-300, 300).Draw(t, "z"))
		along := func(name string) (v r2.Vec) {
			if rapid.Bool().Draw(t, name+" x") {
				v.X = d.X
			}
			if rapid.Bool().Draw(t, name+" z") {
				v.Y = d.Y
			}
			return v
		}
		if p := s.MoveTarget(before, along("low"), along("high")); p != nil {
			t.Fatal(p)
		}
		got := s.target()
		for i := 0; i < 4; i += 2 {
			if got[i+1]-got[i] < 0.25-1e-9 {
				t.Fatalf("target %v", got)
			}
			for _, x := range got[i : i+2] {
				if n := x * 100; math.Abs(n-math.Round(n)) > 1e-6 {
					t.Fatalf("target %v is off the grid", got)
				}
			}
		}
	})
}
