package plotting_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"

	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

// still is a history without any movement, for a test to add its own.
func still(n int) *launch.Result {
	return history(n, func(int, float64) float64 { return 0 })
}

func TestRearWheelsThatRiseAlikeAreOne(t *testing.T) {
	r := analyze(t, saltgrass())
	for by, apart := range map[float64]bool{0.5e-3: false, 5e-3: true} {
		l := still(100)
		for i := range 100 {
			l.RearTravel[0][i] = -float64(i) * 1e-3 // to 99 mm of droop
			l.RearTravel[1][i] = l.RearTravel[0][i] + by
		}
		c := plotting.LaunchAttitude(plotting.Of(r, l))
		var names []string
		for _, x := range c.Lines {
			names = append(names, x.Name)
		}
		want := []string{"rear", "front", "pitch"}
		if apart {
			want = []string{"rear left", "rear right", "front", "pitch"}
		}
		if !slices.Equal(names, want) {
			t.Errorf("%g m apart: %q, want %q", by, names, want)
		}
		if !apart {
			if at := charttest.Line(t, c, "rear").Runs[0][50]; math.Abs(at.Y-(-0.05+by/2)) > 1e-12 {
				t.Errorf("the mean is %g", at.Y)
			}
		}
	}
}

func TestExtremesAreNamed(t *testing.T) {
	l := still(400)
	l.Pitch[351] = 2.5 * math.Pi / 180
	l.Pitch[100] = -1 * math.Pi / 180
	l.RearTravel[0][200], l.RearTravel[1][90] = 1.5*inch, 2*inch
	l.FrontTravel[0][300], l.FrontTravel[1][300] = -4*inch, -5*inch
	c := plotting.LaunchAttitude(plotting.Of(analyze(t, saltgrass()), l))
	var got []string
	for _, m := range c.Points {
		got = append(got, m.Label(units.US))
		if m.Right != strings.HasPrefix(m.Label(units.US), "nose") {
			t.Errorf("%q on the wrong axis", m.Label(units.US))
		}
	}
	want := []string{"nose up 2.50° at 0.351 s", "rear right squats 2.00 in at 0.090 s", "front rises 4.50 in at 0.300 s"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	// What does not move has nothing to name.
	if marks := plotting.LaunchAttitude(plotting.Of(analyze(t, saltgrass()), still(400))).Points; len(marks) != 0 {
		t.Errorf("%d marks of a car that stands still", len(marks))
	}
}

// The axes share their zero and their ticks: where the left one has a number,
// the right one has a round number too, and both stand for what is drawn there.
func TestRightAxis(t *testing.T) {
	r := analyze(t, saltgrass())
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		l := still(10)
		for i := range 10 {
			l.Pitch[i] = f("pitch", -0.1, 1)
			l.RearTravel[0][i], l.RearTravel[1][i] = f("left", -0.15, 0.05), f("right", -0.15, 0.05)
		}
		s := chart.Style{Units: rapid.SampledFrom([]units.System{units.US, units.SI}).Draw(t, "units")}
		c := plotting.LaunchAttitude(plotting.Of(r, l))
		frame := c.Frame(&s)
		for i, pitch := range l.Pitch {
			if !frame.Y.Contains(onLeft(&frame, pitch, true)) || !frame.Y.Contains(l.RearTravel[0][i]) {
				t.Fatalf("pitch %g is out of sight", pitch)
			}
		}
		// At a number of the right axis its left neighbor, and what is drawn there, agree.
		const width, height = 460, 300
		_, layout := charttest.Draw(t, c, width, height, s, chart.Marker{})
		numbers := 0
		for _, text := range charttest.Texts(c, s.Units, width, height) {
			at := pixels(text.Box)
			if degrees, err := strconv.ParseFloat(text.Text, 64); err == nil && at.X > layout.Right {
				numbers++
				_, up := layout.ToData(0, at.Y)
				// Magnitudes; the side of zero is that of the place.
				_, py := layout.ToPixel(0, onLeft(&frame, math.Copysign(degrees*math.Pi/180, up), true))
				if math.Abs(py-at.Y) > 1.5 {
					t.Fatalf("%s° stands at %g px, it is at %g px", text.Text, at.Y, py)
				}
			}
		}
		if numbers < 2 {
			t.Fatalf("%d numbers on the right axis", numbers)
		}
		// Of the height that there is, a pitch to speak of uses a good part.
		used, most := 0.0, 0.0
		for _, pitch := range l.Pitch {
			half := frame.Y.Max
			if pitch < 0 {
				half = -frame.Y.Min
			}
			used, most = math.Max(used, math.Abs(onLeft(&frame, pitch, true))/half), math.Max(most, math.Abs(pitch))
		}
		if most > 0.01 && used < 0.3 {
			t.Fatalf("the pitch uses %g of the height", used)
		}
	})
}

func TestRightAxisHoldsStill(t *testing.T) {
	r := analyze(t, saltgrass())
	with := func(degrees float64) *chart.Chart {
		l := still(100)
		l.Pitch[50], l.FrontTravel[0][60], l.FrontTravel[1][60] = degrees*math.Pi/180, -5*inch, -5*inch
		return plotting.LaunchAttitude(plotting.Of(r, l))
	}
	old := with(9).Frame(&chart.Style{})
	for degrees, stays := range map[float64]bool{8: true, 7.2: true, 5: false, 20: false} {
		got := with(degrees).Frame(&chart.Style{Frame: old})
		if (got.Right == old.Right) != stays {
			t.Errorf("%g°: %g became %g", degrees, old.Right, got.Right)
		}
		if top := onLeft(&got, degrees*math.Pi/180, true); top > got.Y.Max {
			t.Errorf("%g° is out of sight", degrees)
		}
	}
}

// Where the layout says a pitch is, its line is in the image, and the marker's
// dot on it.
func TestPitchIsWhereTheRightAxisSays(t *testing.T) {
	l := still(300)
	for i := range 300 {
		l.Pitch[i] = 0.03 * math.Sin(float64(i)/80)
		l.FrontTravel[0][i], l.FrontTravel[1][i] = -0.0004*float64(i), -0.0004*float64(i)
	}
	img, layout := charttest.Draw(t, plotting.LaunchAttitude(plotting.Of(analyze(t, saltgrass()), l)), 700, 400, charttest.Light, chart.Mark(0.05))
	for _, i := range []int{20, 50, 80, 160, 250} {
		px, py := layout.ToPixel(l.Time[i], l.Pitch[i]*layout.Frame.Right)
		if !charttest.Near(img, px, py, charttest.Light.Palette.Ink) {
			t.Errorf("no pitch at %g s", l.Time[i])
		}
		px, py = layout.ToPixel(l.Time[i]+2e-4, l.FrontTravel[0][i])
		if !charttest.Near(img, px, py, charttest.Light.Palette.Whole) && !charttest.Near(img, px+3, py, charttest.Light.Palette.Whole) && !charttest.Near(img, px-3, py, charttest.Light.Palette.Whole) {
			t.Errorf("no front travel at %g s", l.Time[i])
		}
	}
	px, py := layout.ToPixel(0.05, l.Pitch[50]*layout.Frame.Right)
	for _, dy := range []float64{-2, 0, 2} {
		if !charttest.Like(img.RGBAAt(int(px), int(py+dy)), charttest.Light.Palette.Ink, 60) {
			t.Errorf("no dot %g px off the pitch", dy)
		}
	}
}

func TestAttitudeSaysWhichWay(t *testing.T) {
	l := still(100)
	l.Pitch[50], l.FrontTravel[0][60], l.FrontTravel[1][60] = 0.05, -5*inch, -5*inch
	var all []string
	for _, x := range charttest.Texts(plotting.LaunchAttitude(plotting.Of(analyze(t, saltgrass()), l)), units.US, 420, 270) {
		all = append(all, x.Text)
	}
	for _, want := range []string{"Pitch and travel", "travel [in] left, pitch [°] right", "bump, squat", "droop, rise", "nose up", "nose down", "rear", "front", "pitch", "Time, s", "nose up 2.86° at 0.050 s", "front rises 5.00 in at 0.060 s"} {
		if !slices.Contains(all, want) {
			t.Errorf("%q is missing in %q", want, all)
		}
	}
}

// onLeft returns a value as the left axis has it.
func onLeft(f *chart.Frame, y float64, right bool) float64 {
	if right {
		return y * f.Right
	}
	return y
}

// pixels returns the middle of the capitals in a box on a drawing of 300 px height
// at 96 dpi, in pixels from the top left.
func pixels(box vg.Rectangle) struct{ X, Y float64 } {
	return struct{ X, Y float64 }{float64(box.Min.X+box.Max.X) / 2 * 96 / 72, 300 - float64(box.Min.Y+0.61*box.Size().Y)*96/72}
}
