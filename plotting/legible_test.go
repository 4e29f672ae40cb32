package plotting_test

import (
	"strings"
	"testing"

	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
)

// In a chart as low as the window's evidence no curve runs through the name of a limit,
// also where the force comes near it.
func TestLimitsAreLegibleInALowChart(t *testing.T) {
	for _, share := range []float64{0.5, 0.7, 0.9, 0.97, 1.1} {
		c := saltgrass()
		most := analyze(t, c).Worst[1][column.Push].Share
		c.Drive.Torque *= share / most
		bars := plotting.BarForce(plotting.Of(analyze(t, c), nil))
		const width, height = 560, 180
		_, layout := charttest.Draw(t, bars, width, height, charttest.Light, chart.Marker{})
		spy := charttest.NewSpy(width, height)
		spy.Draw(bars, units.US)
		for _, text := range spy.Texts {
			if !strings.Contains(text.Text, "limit") {
				continue
			}
			for _, l := range bars.Lines {
				for _, run := range l.Runs {
					for _, at := range run {
						px, py := layout.ToPixel(at.X, at.Y)
						if x, y := charttest.Points(px), spy.Height-charttest.Points(py); layout.Contains(px, py) && x > text.Box.Min.X && x < text.Box.Max.X && y > text.Box.Min.Y && y < text.Box.Max.Y {
							t.Errorf("at %.0f %% %q runs through %q", 100*share, l.Name, text.Text)
						}
					}
				}
			}
		}
	}
}

// Where there is room the legend says when the peaks were, else only how large they are.
func TestLowChartsHaveABriefLegend(t *testing.T) {
	l, r := launched(t, saltgrass())
	c := plotting.LaunchBars(plotting.Of(r, l))
	for _, size := range []struct {
		width, height float64
		brief         bool
	}{{820, 420, false}, {560, 180, true}, {380, 240, true}} {
		for _, text := range charttest.Words(c, units.US, size.width, size.height) {
			if strings.HasPrefix(text, "lower right ") && strings.Contains(text, " at ") == size.brief {
				t.Errorf("%g × %g: %q", size.width, size.height, text)
			}
		}
	}
}

// What is beyond a limit looks it: its label stands on a box, and its name in the legend
// is in the color of that.
func TestBeyondALimitLooksIt(t *testing.T) {
	l, r := launched(t, saltgrass())
	beyond := *l
	beyond.Peaks[launch.LowerRight].Push = 1.2 * r.Bars[1].Push.Allowable
	bad := charttest.Light.Palette.Bad
	for _, x := range []struct {
		of   *launch.Result
		want bool
	}{{l, false}, {&beyond, true}} {
		img, _ := charttest.Draw(t, plotting.LaunchBars(plotting.Setup{Result: r, Launch: x.of}), 820, 420, charttest.Light, chart.Marker{})
		spy := charttest.NewSpy(820, 420)
		spy.Draw(plotting.LaunchBars(plotting.Setup{Result: r, Launch: x.of}), units.US)
		for _, text := range spy.Texts {
			label := text.Text == "120 %"
			if !label && !strings.HasPrefix(text.Text, "lower right ") {
				continue
			}
			found := 0
			for px := int(text.Box.Min.X * 96 / 72); px < int(text.Box.Max.X*96/72); px++ {
				for py := int((spy.Height - text.Box.Max.Y) * 96 / 72); py < int((spy.Height-text.Box.Min.Y)*96/72); py++ {
					if charttest.Like(img.RGBAAt(px, py), bad, 40) {
						found++
					}
				}
			}
			if (found > 0) != x.want {
				t.Errorf("beyond %v: %d pixels of %q have the color of that", x.want, found, text.Text)
			}
		}
	}
}

// Of several setups one beyond its limit is enough.
func TestOneOfSeveralBeyondItsLimitLooksIt(t *testing.T) {
	r := analyze(t, saltgrass())
	beyond := copied(r)
	beyond.Worst[1][column.Push].Force = 1.1 * r.Bars[1].Push.Allowable
	for _, c := range []struct {
		first, second plotting.Setup
		want          bool
	}{
		{plotting.Setup{Name: "a", Result: r}, plotting.Setup{Name: "b", Result: r}, false},
		{plotting.Setup{Name: "a", Result: r}, plotting.Setup{Name: "b", Result: beyond}, true},
		{plotting.Setup{Name: "a", Result: beyond}, plotting.Setup{Name: "b", Result: r}, true},
	} {
		for _, p := range plotting.Bow(c.first, c.second).Points {
			if label := p.Label(units.US); strings.HasPrefix(label, "lower worst") && p.Over != c.want {
				t.Errorf("%q of %s and %s: %v", label, c.first.Name, c.second.Name, p.Over)
			}
		}
	}
}
