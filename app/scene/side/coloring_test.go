package side_test

import (
	"strings"
	"testing"

	"bowline/app/scene/side"
	"bowline/model/holes"
	"bowline/model/units"
)

// By any column, dots stand for its values, on a scale with that of the holes in use in
// the middle and most of them within.
func TestDotsTakeTheColorOfAnyColumn(t *testing.T) {
	r := reference(t)
	places := ranking(t, r.Car, holes.Wishes{})
	for _, u := range []units.System{units.US, units.SI} {
		for _, column := range holes.Columns {
			c := &side.Cloud{Present: -1, Pointed: -1, Picked: -1, By: column, Units: u}
			c.Fill(places, everyone, r.Car.Check.TargetAntiSquat, false)
			dots := cloudDots(t, c)
			within, known := 0, 0
			for _, d := range dots.List {
				p, _ := c.Place(d.Index)
				x, ok := column.Value(p)
				if d.HasValue != ok || d.Value != x {
					t.Fatalf("%s of %s: %v %v, want %v %v", column.Key, p.Holes(), d.Value, d.HasValue, x, ok)
				}
				if !ok {
					continue
				}
				known++
				if x >= dots.Scale.Low && x <= dots.Scale.High {
					within++
				}
				if p.Present && dots.Scale.Target != [2]float64{x, x} {
					t.Errorf("%s: the middle is %v, in use is %v", column.Key, dots.Scale.Target, x)
				}
			}
			if s := dots.Scale; !(s.Low < s.Target[0] && s.Target[1] < s.High) || 10*within < 9*known {
				t.Errorf("%s: %d of %d are within %+v", column.Key, within, known, s)
			}
			if column.OfLaunch != (known == 0) {
				t.Errorf("%s: %d values before a launch", column.Key, known)
			}
			if symbol := u.Symbol(column.Quantity); !strings.HasPrefix(dots.Title, strings.ReplaceAll(column.Title, "\n", " ")) || !strings.HasSuffix(dots.Title, symbol) || dots.Mark != "in use" {
				t.Errorf("%s: the legend says %q and %q", column.Key, dots.Title, dots.Mark)
			}
			if column.Quantity == units.Length && dots.Figure(0.0254) != map[units.System]string{units.US: "1.00", units.SI: "25.4"}[u] {
				t.Errorf("%s: an inch is written %q", column.Key, dots.Figure(0.0254))
			}
		}
	}
}
