package plotting_test

import (
	"math"
	"strings"
	"testing"

	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"

	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

// comparedSizes are panels with several setups [px].
var comparedSizes = [][2]float64{{360, 220}, {430, 230}, {700, 400}}

// No text is cut off at the edge, none of the words around the data runs into
// another.
func TestTextOfComparisonsHasRoom(t *testing.T) {
	for _, list := range [][]plotting.Setup{setups(t, names[:2]...), setups(t, names...), setups(t, "baseline as it left the shop in spring", "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWW")} {
		for _, c := range compared(list) {
			for _, size := range comparedSizes {
				for _, s := range []units.System{units.US, units.SI} {
					words := charttest.Texts(c, s, size[0], size[1])
					for i, a := range words {
						if a.Outside(vg.Length(size[0])*0.75, vg.Length(size[1])*0.75) {
							t.Errorf("%s %v %v: %q is cut off", c.Key, s, size, a.Text)
						}
						for _, b := range words[:i] {
							if a.Over(b) {
								t.Errorf("%s %v %v: %q runs into %q", c.Key, s, size, a.Text, b.Text)
							}
						}
					}
				}
			}
		}
	}
}

// Any two or three cars: everything is finite, nothing is cut off.
func TestAnySetupsCompare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var list []plotting.Setup
		for _, name := range names[:rapid.IntRange(2, 3).Draw(t, "setups")] {
			r := copied(results.Draw(t, name).Result)
			r.Car.Setups[0].Name = name
			list = append(list, plotting.Of(r, randomLaunch(t)))
		}
		size := rapid.SampledFrom(comparedSizes).Draw(t, "size")
		s := units.System(rapid.IntRange(0, 1).Draw(t, "units"))
		at := rapid.Float64Range(-0.3, 0.3).Draw(t, "at")
		for _, c := range compared(list) {
			f := c.Frame(&chart.Style{Units: s})
			if !(f.X.Min < f.X.Max) || !(f.Y.Min < f.Y.Max) || math.IsInf(f.X.Length()+f.Y.Length(), 0) {
				t.Fatalf("%s: frame %v", c.Key, f)
			}
			for _, a := range charttest.Texts(c, s, size[0], size[1]) {
				if a.Outside(vg.Length(size[0])*0.75, vg.Length(size[1])*0.75) {
					t.Fatalf("%s %v: %q is cut off at %v", c.Key, size, a.Text, a.Box)
				}
			}
			table := c.Table(s)
			for i, row := range table.Rows {
				if len(row) != len(table.Header) || c.Key != plotting.BowKey && i > 0 && row[0].Value <= table.Rows[i-1][0].Value {
					t.Fatalf("%s: row %d %v", c.Key, i, row)
				}
			}
			if lines := strings.Join(c.Readout(at, s), "\n"); strings.Contains(lines, "NaN") || strings.Contains(lines, "Inf") || lines == "" {
				t.Fatalf("%s: %q", c.Key, lines)
			}
			c.Subject.Place(at)
		}
	})
}
