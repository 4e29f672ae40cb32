package plotting_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
)

// Between two steps values lie on the line from one to the other; before the
// start and after the end they are those of the first and the last.
func TestLaunchReadouts(t *testing.T) {
	l := history(3, func(int, float64) float64 { return 0 })
	l.Tension = [launch.RodCount][]float64{{0, 100 * lbf, 300 * lbf}, {0, -100 * lbf, -300 * lbf}, {0, 0, 0}, {0, -4000 * lbf, -12000 * lbf}, {9, 9, 9}}
	l.RearLoad = [2][]float64{{500 * lbf, 600 * lbf, 700 * lbf}, {1, 2, 3}}
	l.FrontLoad = [2][]float64{{10 * lbf, 0, 0}, {20 * lbf, 20 * lbf, 0}}
	l.RearTravel = [2][]float64{{0, -inch, -2 * inch}, {0, inch, 2 * inch}}
	l.FrontTravel = [2][]float64{{0, 0, 0}, {0, -inch, -2 * inch}}
	l.Pitch = []float64{0, math.Pi / 180, -math.Pi / 90}
	// 60 mph are 88 ft/s.
	l.WheelSpeed, l.Speed = []float64{0, 90 * 88 / 60. * 12 * inch, 15 * 88 / 60. * 12 * inch}, []float64{0, 20 * 88 / 60. * 12 * inch, 20 * 88 / 60. * 12 * inch}
	l.Slip, l.Driveshaft = [2][]float64{{0, 0.5, 0}, {0, 0.7, 0}}, []float64{0, 4200 * math.Pi / 30, 0}
	r := analyze(t, saltgrass())
	pull, push := r.Bars[car.Upper].Pull.Allowable/lbf, r.Bars[car.Upper].Push.Allowable/lbf
	lower := r.Bars[car.Lower].Push.Allowable / lbf
	whole := func(x float64) string { return strconv.FormatFloat(100*x, 'f', 0, 64) + " %" }
	setup := plotting.Of(r, l)
	for _, c := range []struct {
		chart chart.Key
		at    float64
		want  []string
	}{
		{plotting.LaunchBarsKey, 0.0015, []string{"0.002 s", "upper left 200 lb pull — " + whole(200/pull), "upper right 200 lb push — " + whole(200/push), "lower left 0 lb pull — 0 %", "lower right 8,000 lb push — " + whole(8000/lower)}},
		{plotting.LaunchBarsKey, 9, []string{"0.002 s", "upper left 300 lb pull — " + whole(300/pull), "upper right 300 lb push — " + whole(300/push), "lower left 0 lb pull — 0 %", "lower right 12,000 lb push — " + whole(12000/lower)}},
		{plotting.LaunchAttitudeKey, -1, []string{"0.000 s", "pitch 0.00°", "rear left ride height", "rear right ride height", "front left ride height", "front right ride height"}},
		{plotting.LaunchAttitudeKey, 0.001, []string{"0.001 s", "pitch 1.00° nose up", "rear left 1.00 in droop", "rear right 1.00 in bump", "front left ride height", "front right 1.00 in droop"}},
		{plotting.LaunchAttitudeKey, 0.002, []string{"0.002 s", "pitch 2.00° nose down", "rear left 2.00 in droop", "rear right 2.00 in bump", "front left ride height", "front right 2.00 in droop"}},
		{plotting.LaunchTiresKey, 0.001, []string{"0.001 s", "rear left 600 lb", "rear right 0 lb", "front left off the ground", "front right 20 lb"}},
		{plotting.LaunchWheelsKey, 0.0005, []string{"0.001 s", "rear wheels 45.0 mph", "car 10.0 mph", "wheels 78 % ahead", "tire slip 25 % left, 35 % right", "driveshaft 2,100 rpm"}},
		{plotting.LaunchWheelsKey, 0, []string{"0.000 s", "rear wheels 0.0 mph", "car 0.0 mph", "wheels 0 % ahead", "tire slip 0 % left, 0 % right", "driveshaft 0 rpm"}},
		{plotting.LaunchWheelsKey, 0.002, []string{"0.002 s", "rear wheels 15.0 mph", "car 20.0 mph", "wheels 25 % behind", "tire slip 0 % left, 0 % right", "driveshaft 0 rpm"}},
	} {
		if got := plotting.New(c.chart, setup).Readout(c.at, units.US); !slices.Equal(got, c.want) {
			t.Errorf("%s at %g s:\n%q, want\n%q", c.chart, c.at, got, c.want)
		}
	}
	if got := plotting.LaunchBars(setup).Readout(math.NaN(), units.US); len(got) != 5 || got[0] != "0.002 s" {
		t.Errorf("at no time: %q", got)
	}
}

func TestCSVOfALaunch(t *testing.T) {
	l, r := launched(t, saltgrass())
	degrees := func(rad float64) float64 { return rad * 180 / math.Pi }
	want := map[chart.Key]map[string][]float64{
		"launch-bars":     {"upper left [lb, pull positive]": l.Tension[0], "upper right [lb, pull positive]": l.Tension[1], "lower left [lb, pull positive]": l.Tension[2], "lower right [lb, pull positive]": l.Tension[3]},
		"launch-attitude": {"pitch [°, nose-up positive]": l.Pitch, "rear left [in, bump positive]": l.RearTravel[0], "rear right [in, bump positive]": l.RearTravel[1], "front left [in, bump positive]": l.FrontTravel[0], "front right [in, bump positive]": l.FrontTravel[1]},
		"launch-wheels":   {"rear wheels [mph]": l.WheelSpeed, "car [mph]": l.Speed, "slip left [%]": l.Slip[0], "slip right [%]": l.Slip[1], "driveshaft [rpm]": l.Driveshaft},
		"launch-tires":    {"rear left [lb]": l.RearLoad[0], "rear right [lb]": l.RearLoad[1], "front left [lb]": l.FrontLoad[0], "front right [lb]": l.FrontLoad[1]},
	}
	for _, c := range overLaunch(plotting.Of(r, l)) {
		columns := read(t, exported(t, chart.CSV, c, chart.Style{}, chart.Sheet{}))
		times := columns["time [s]"]
		if len(times) != len(l.Time) || len(times) < 100 {
			t.Fatalf("%s: %d times", c.Key, len(times))
		}
		if c.Key == "launch-bars" {
			for name, limit := range map[string]column.Limit{"lower push": r.Bars[1].Push, "upper pull": r.Bars[0].Pull} {
				cells := columns[name+" limit [lb, pull positive]"]
				if len(cells) != len(times) || math.Abs(math.Abs(parse(t, cells[7]))*lbf/limit.Allowable-1) > 1e-8 {
					t.Errorf("%s limit: %.60q", name, cells)
				}
			}
		} else if len(columns) != len(want[c.Key])+1 {
			t.Errorf("%s: %d columns", c.Key, len(columns))
		}
		for name, values := range want[c.Key] {
			for i, value := range values {
				shop := value / lbf
				switch {
				case strings.Contains(name, "[in"):
					shop = value / inch
				case strings.Contains(name, "[°"):
					shop = degrees(value)
				case strings.Contains(name, "[mph"):
					shop = value * 3600 / (5280 * 12 * inch)
				case strings.Contains(name, "[%"):
					shop = 100 * value
				case strings.Contains(name, "[rpm"):
					shop = value * 30 / math.Pi
				}
				if got := parse(t, columns[name][i]); math.Abs(got-shop) > 1e-9*math.Abs(shop)+1e-12 {
					t.Fatalf("%s, %s at %d: %g, want %g", c.Key, name, i, got, shop)
				}
				if got := parse(t, times[i]); math.Abs(got-l.Time[i]) > 1e-9 {
					t.Fatalf("time %d: %g, want %g", i, got, l.Time[i])
				}
			}
		}
	}
}
