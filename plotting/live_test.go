package plotting_test

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"strings"
	"sync"
	"testing"

	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
	"bowline/plotting/palette"

	"pgregory.net/rapid"
)

// wider returns a span grown by a part of its length at each end.
func wider(s chart.Span, part float64) chart.Span {
	return chart.Between(s.Min-part*s.Length(), s.Max+part*s.Length())
}

func TestPixelsAndDataRoundTrip(t *testing.T) {
	_, l := charttest.Draw(t, plotting.BarForce(plotting.Of(analyze(t, saltgrass()), nil)), 460, 300, charttest.Light, chart.Marker{})
	rapid.Check(t, func(t *rapid.T) {
		px, py := rapid.Float64Range(l.Left, l.Right).Draw(t, "px"), rapid.Float64Range(l.Top, l.Bottom).Draw(t, "py")
		x, y := l.ToData(px, py)
		if air := 1e-12; !wider(l.Frame.X, air).Contains(x) || !wider(l.Frame.Y, air).Contains(y) {
			t.Fatalf("(%g, %g) px is (%g, %g), outside of the axes", px, py, x, y)
		}
		if qx, qy := l.ToPixel(x, y); math.Abs(qx-px) > 1e-9 || math.Abs(qy-py) > 1e-9 {
			t.Fatalf("(%g, %g) px came back as (%g, %g)", px, py, qx, qy)
		}
	})
	// Up in the data is up in the image.
	if x, y := l.ToData(l.Left, l.Bottom); x != l.Frame.X.Min || y != l.Frame.Y.Min {
		t.Errorf("the bottom left corner is (%g, %g)", x, y)
	}
	if px, py := l.ToPixel(l.Frame.X.Max, l.Frame.Y.Max); px != l.Right || py != l.Top {
		t.Errorf("the top right corner is at (%g, %g) px", px, py)
	}
}

// Where the layout says a value is, its color is in the image.
func TestCurvesAreWhereTheLayoutSays(t *testing.T) {
	for _, dark := range []bool{false, true} {
		s := charttest.Light
		if dark {
			s.Palette = palette.Dark
		}
		car := saltgrass()
		car.Drive.Torque *= 2 // so that hooked and hit differ
		r := analyze(t, car)
		img, l := charttest.Draw(t, plotting.BarForce(plotting.Of(r, nil)), 700, 400, s, chart.Marker{})
		for i := 2; i < len(r.Travel)-2; i += 3 {
			st := &r.Travel[i]
			px, py := l.ToPixel(st.Pose.Travel, st.Loads.Hit.Lower.Tension)
			if !charttest.Near(img, px, py, s.Palette.Push) {
				t.Errorf("no lower hit at %g m", st.Pose.Travel)
			}
			px, py = l.ToPixel(st.Pose.Travel, st.Loads.Hit.Upper.Tension)
			if !charttest.Near(img, px, py, s.Palette.Pull) {
				t.Errorf("no upper hit at %g m", st.Pose.Travel)
			}
		}
		if got := img.RGBAAt(1, 1); got != s.Palette.Background {
			t.Errorf("background %v", got)
		}
	}
}

func TestMarkerIsWhereTheLayoutSays(t *testing.T) {
	car := saltgrass()
	car.Drive.Torque *= 2
	r := analyze(t, car)
	const travel = 1.234 * inch
	st, err := r.At(travel, 0)
	if err != nil {
		t.Fatal(err)
	}
	img, l := charttest.Draw(t, plotting.BarForce(plotting.Of(r, nil)), 700, 400, charttest.Light, chart.Mark(travel))
	px, py := l.ToPixel(travel, 0.7*l.Frame.Y.Min)
	if !charttest.Near(img, px, py, charttest.Light.Palette.Accent) {
		t.Error("no marker line")
	}
	// The dots are wider than the lines they sit on.
	px, py = l.ToPixel(travel, st.Loads.Hit.Lower.Tension)
	for _, dy := range []float64{-2, 0, 2} {
		if !charttest.Like(img.RGBAAt(int(px), int(py+dy)), charttest.Light.Palette.Push, 60) {
			t.Errorf("no dot %g px off the lower hit line", dy)
		}
	}
	img, l = charttest.Draw(t, plotting.CenterPath(plotting.Of(r, nil)), 700, 400, charttest.Light, chart.Mark(travel))
	if px, py := l.ToPixel(st.InstantCenter.X, st.InstantCenter.Y); !charttest.Like(img.RGBAAt(int(px), int(py)), charttest.Light.Palette.Center, 60) {
		t.Error("no dot at the instant center")
	}
	img, l = charttest.Draw(t, plotting.Bow(plotting.Of(r, nil)), 700, 400, charttest.Light, chart.Mark(travel))
	bow, _, err := r.Bars[1].Bow(-st.Loads.Hit.Lower.Tension)
	if err != nil {
		t.Fatal(err)
	}
	if px, py := l.ToPixel(-st.Loads.Hit.Lower.Tension, bow); !charttest.Like(img.RGBAAt(int(px), int(py)), charttest.Light.Palette.Push, 60) {
		t.Error("no dot on the bow curve")
	}
}

func TestMarkerOfALaunchIsWhereTheLayoutSays(t *testing.T) {
	l := history(100, wave)
	img, layout := charttest.Draw(t, plotting.LaunchBars(plotting.Of(analyze(t, saltgrass()), l)), 700, 400, charttest.Light, chart.Mark(0.0305))
	px, py := layout.ToPixel(0.0305, 0.9*layout.Frame.Y.Max)
	if !charttest.Near(img, px, py, charttest.Light.Palette.Accent) {
		t.Error("no marker line")
	}
	px, py = layout.ToPixel(0.0305, (l.Tension[3][30]+l.Tension[3][31])/2)
	for _, dy := range []float64{-2, 0, 2} {
		if !charttest.Like(img.RGBAAt(int(px), int(py+dy)), charttest.Light.Palette.Push, 60) {
			t.Errorf("no dot %g px off the lower right line", dy)
		}
	}
}

// A dot out of the axes' sight would stand among the numbers below.
func TestMarkerOutOfSightIsNotDrawn(t *testing.T) {
	c := plotting.CenterPath(plotting.Of(analyze(t, saltgrass()), nil))
	c.Y.Sight = chart.Between(13.2*inch, 21*inch) // the instant center is 11.84 in up
	with, l := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Mark(0))
	without, _ := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Marker{})
	if _, py := l.ToPixel(41.25*inch, 11.84*inch); py < l.Bottom+3 || py > 299 {
		t.Fatalf("the dot would be at %g px", py)
	}
	if !bytes.Equal(with.Pix, without.Pix) {
		t.Error("a dot is drawn outside of the data area")
	}
}

func TestPointingGivesTravel(t *testing.T) {
	r := analyze(t, saltgrass())
	for _, c := range []*chart.Chart{plotting.BarForce(plotting.Of(r, nil)), plotting.AntiSquat(plotting.Of(r, nil))} {
		_, l := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Marker{})
		px, _ := l.ToPixel(-1.5*inch, 0)
		if got, ok := l.At(px, l.Top+5); !ok || math.Abs(got+1.5*inch) > 1e-9 {
			t.Errorf("%s: %g m, %v", c.Key, got, ok)
		}
		if got, ok := l.At(l.Left, l.Bottom); !ok || got != r.Travel[0].Pose.Travel {
			t.Errorf("%s: at the left edge %g m, %v", c.Key, got, ok)
		}
		for _, out := range [][2]float64{{l.Left - 1, 100}, {l.Right + 1, 100}, {200, l.Top - 1}, {200, l.Bottom + 1}} {
			if _, ok := l.At(out[0], out[1]); ok || l.Readout(out[0], out[1], units.US) != nil {
				t.Errorf("%s: %v px is outside but stands for something", c.Key, out)
			}
		}
		if got := l.Readout(px, l.Top+5, units.US); len(got) < 2 || got[0] != "1.50 in droop" {
			t.Errorf("%s: %q", c.Key, got)
		}
	}
}

func TestPointingGivesTime(t *testing.T) {
	launch, r := launched(t, saltgrass())
	end := launch.Time[len(launch.Time)-1]
	for _, c := range overLaunch(plotting.Of(r, launch)) {
		_, l := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Marker{})
		px, _ := l.ToPixel(0.25, 0)
		if got, ok := l.At(px, l.Top+5); !ok || math.Abs(got-0.25) > 1e-9 {
			t.Errorf("%s: %g s, %v", c.Key, got, ok)
		}
		if got, ok := l.At(l.Left, l.Bottom); !ok || got != 0 {
			t.Errorf("%s: at the left edge %g s, %v", c.Key, got, ok)
		}
		if got, ok := l.At(l.Right, l.Bottom); !ok || got != end {
			t.Errorf("%s: at the right edge %g s, %v", c.Key, got, ok)
		}
		if got := l.Readout(px, l.Top+5, units.US); len(got) < 5 || got[0] != "0.250 s" {
			t.Errorf("%s: %q", c.Key, got)
		}
		if _, ok := l.At(l.Left-1, l.Top+5); ok {
			t.Errorf("%s: beside the data there is a time", c.Key)
		}
	}
}

func TestPointingAtThePathGivesTheNearestStation(t *testing.T) {
	r := analyze(t, saltgrass())
	_, l := charttest.Draw(t, plotting.CenterPath(plotting.Of(r, nil)), 460, 300, charttest.Light, chart.Marker{})
	for i := range r.Travel {
		s := &r.Travel[i]
		px, py := l.ToPixel(s.InstantCenter.X, s.InstantCenter.Y)
		if got, ok := l.At(px+0.2, py-0.2); !ok || got != s.Pose.Travel {
			t.Errorf("station %d at %g m: got %g, %v", i, s.Pose.Travel, got, ok)
		}
	}
}

func TestPointingAtTheBowGivesPush(t *testing.T) {
	_, l := charttest.Draw(t, plotting.Bow(plotting.Of(analyze(t, saltgrass()), nil)), 460, 300, charttest.Light, chart.Marker{})
	px, _ := l.ToPixel(5000*lbf, 0)
	if _, ok := l.At(px, l.Top+20); ok {
		t.Error("a push stands for a travel")
	}
	if got := l.Readout(px, l.Top+20, units.US); len(got) != 3 || got[0] != "5,000 lb push" || !strings.HasPrefix(got[1], "upper bows 0.0") {
		t.Errorf("%q", got)
	}
}

// A renderer that has drawn other things draws the same as a fresh one, and so
// does one that only moved the marker.
func TestRendererForgetsNothingAndKeepsNothing(t *testing.T) {
	charts := everyChart(t, saltgrass())
	var used chart.Renderer
	img := image.NewRGBA(image.Rect(0, 0, 460, 300))
	draw := func(c *chart.Chart, s chart.Style, m chart.Marker) []byte {
		if _, err := used.Draw(img, 96, c, s, m); err != nil {
			t.Fatal(err)
		}
		return img.Pix
	}
	dark := chart.Style{Palette: palette.Dark, Units: units.SI}
	for _, c := range charts {
		for _, s := range []chart.Style{charttest.Light, dark} {
			for _, m := range []chart.Marker{{}, chart.Mark(0), chart.Mark(inch), {}} {
				fresh, _ := charttest.Draw(t, c, 460, 300, s, m)
				if !bytes.Equal(draw(c, s, m), fresh.Pix) {
					t.Fatalf("%s: a used renderer draws another picture", c.Key)
				}
			}
		}
	}
}

func TestDrawIntoPartOfAnImage(t *testing.T) {
	c := plotting.BarForce(plotting.Of(analyze(t, saltgrass()), nil))
	whole := image.NewRGBA(image.Rect(0, 0, 600, 400))
	part, ok := whole.SubImage(image.Rect(50, 40, 510, 340)).(*image.RGBA)
	if !ok {
		t.Fatal("no part")
	}
	var r chart.Renderer
	if _, err := r.Draw(part, 96, c, charttest.Light, chart.Mark(0)); err != nil {
		t.Fatal(err)
	}
	alone, _ := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Mark(0))
	for y := range 300 {
		for x := range 460 {
			if part.RGBAAt(50+x, 40+y) != alone.RGBAAt(x, y) {
				t.Fatalf("(%d, %d) differs", x, y)
			}
		}
	}
	if whole.RGBAAt(49, 100) != (color.RGBA{}) || whole.RGBAAt(510, 100) != (color.RGBA{}) {
		t.Error("drawn outside of the part")
	}
}

func TestTooSmallAnImageIsRefused(t *testing.T) {
	c := plotting.BarForce(plotting.Of(analyze(t, saltgrass()), nil))
	var r chart.Renderer
	for _, size := range []image.Point{{60, 40}, {460, 60}, {0, 0}} {
		img := image.NewRGBA(image.Rectangle{Max: size})
		for range 2 { // the second time nothing is new
			_, err := r.Draw(img, 96, c, charttest.Light, chart.Mark(0))
			if err == nil || !strings.Contains(err.Error(), "leaves no room for the chart; make it larger") {
				t.Errorf("%v: %v", size, err)
			}
		}
	}
	img := image.NewRGBA(image.Rect(0, 0, 460, 300))
	if _, err := r.Draw(img, 96, c, charttest.Light, chart.Mark(0)); err != nil {
		t.Errorf("afterwards: %v", err)
	}
}

// Charts are shared between goroutines, each with its own renderer.
func TestGoroutinesShareCharts(t *testing.T) {
	charts := everyChart(t, saltgrass())
	want := make([][]byte, len(charts))
	for i, c := range charts {
		img, _ := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Mark(0.01))
		want[i] = img.Pix
	}
	var group sync.WaitGroup
	for range 4 {
		group.Go(func() {
			var r chart.Renderer
			img := image.NewRGBA(image.Rect(0, 0, 460, 300))
			for i, c := range charts {
				if _, err := r.Draw(img, 96, c, charttest.Light, chart.Mark(0.01)); err != nil || !bytes.Equal(img.Pix, want[i]) {
					t.Errorf("%s differs: %v", c.Key, err)
				}
			}
		})
	}
	group.Wait()
}

// Twice the resolution is the same drawing, with its axes at twice the pixels.
func TestDoubleResolution(t *testing.T) {
	c := plotting.BarForce(plotting.Of(analyze(t, saltgrass()), nil))
	_, one := charttest.Draw(t, c, 460, 300, charttest.Light, chart.Marker{})
	var r chart.Renderer
	two, err := r.Draw(image.NewRGBA(image.Rect(0, 0, 920, 600)), 192, c, charttest.Light, chart.Marker{})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range [][2]float64{{one.Left, two.Left}, {one.Top, two.Top}, {one.Right, two.Right}, {one.Bottom, two.Bottom}} {
		if math.Abs(2*x[0]-x[1]) > 1 { // each is on whole pixels of its own
			t.Errorf("%g px became %g", x[0], x[1])
		}
	}
	if one.Frame != two.Frame {
		t.Error("the axes differ")
	}
}

// Any valid car draws at any size, style and travel, with finite numbers.
func TestAnyCarDraws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := results.Draw(t, "result").Result
		s := chart.Style{Palette: palette.Dark, Units: units.System(rapid.IntRange(0, 1).Draw(t, "units")), Size: rapid.Float64Range(0.7, 1.3).Draw(t, "size")}
		w, h := rapid.IntRange(340, 800).Draw(t, "w"), rapid.IntRange(240, 500).Draw(t, "h")
		travel := rapid.Float64Range(-0.3, 0.3).Draw(t, "travel")
		img := image.NewRGBA(image.Rect(0, 0, w, h))
		var renderer chart.Renderer
		for _, c := range append(overTravels(plotting.Of(r, nil)), overLaunch(plotting.Of(r, randomLaunch(t)))...) {
			l, err := renderer.Draw(img, 96, c, s, chart.Mark(travel))
			if err != nil {
				t.Fatal(c.Key, err)
			}
			f := l.Frame
			if !(f.X.Min < f.X.Max) || !(f.Y.Min < f.Y.Max) || math.IsInf(f.X.Length()+f.Y.Length(), 0) {
				t.Fatalf("%s: frame %v", c.Key, f)
			}
			for _, x := range c.Lines {
				for _, run := range x.Runs {
					for _, at := range run {
						if math.IsNaN(at.X+at.Y) || math.IsInf(at.X+at.Y, 0) {
							t.Fatalf("%s, %s: %v", c.Key, x.Name, at)
						}
					}
				}
			}
			for _, row := range c.Table(s.Units).Rows {
				for _, cell := range row {
					if math.IsNaN(cell.Value) || math.IsInf(cell.Value, 0) {
						t.Fatalf("%s: %v", c.Key, row)
					}
				}
			}
			if lines := strings.Join(c.Readout(travel, s.Units), "\n"); strings.Contains(lines, "NaN") || strings.Contains(lines, "Inf") || lines == "" {
				t.Fatalf("%s: %q", c.Key, lines)
			}
			l.Readout(float64(w)/2, float64(h)/2, s.Units)
		}
	})
}
