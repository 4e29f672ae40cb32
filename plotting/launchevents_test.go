package plotting_test

import (
	"slices"
	"strings"
	"testing"

	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
	"bowline/plotting/palette"
)

var dark = palette.Dark

// eventful is a launch of 2 s in which everything happens.
func eventful() *launch.Result {
	l := still(2000)
	l.Events = []launch.Event{
		{Kind: launch.Wheelspin, From: 0.1, To: 0.5, Value: 0.41, Time: 0.2},
		{Kind: launch.TireUnloaded, Sided: true, Side: launch.Left, From: 0.3, To: 0.31, Value: 40 * lbf, Time: 0.3},
		{Kind: launch.FrontWheelsOff, From: 0.6, To: 1.2, Value: 3 * inch, Time: 0.7},
		{Kind: launch.WheelieBarDown, From: 0.9, To: 1, Value: 300 * lbf, Time: 0.95},
		{Kind: launch.Bottomed, Sided: true, Side: launch.Right, From: 1.25, To: 1.3, Value: 500 * lbf, Time: 1.27},
		{Kind: launch.ToppedOut, Sided: true, Side: launch.Right, From: 1.5, To: 1.55, Value: 600 * lbf, Time: 1.52},
		{Kind: launch.AtRevLimit, From: 1.8, To: 1.999, Value: units.US.ToSI(units.Speed, 7800), Time: 1.9},
	}
	return l
}

// What happens is read where the marker stands in it, and nowhere else.
func TestEventsAreRead(t *testing.T) {
	r := analyze(t, saltgrass())
	for time, want := range map[float64][]string{
		0.05: nil, 0.2: {"wheelspin"}, 0.305: {"wheelspin", "left rear tire light"}, 0.55: nil, 0.8: {"front wheels up"},
		0.95: {"front wheels up", "wheelie bar"}, 1.27: {"right rear bottomed"}, 1.5: {"right rear topped out"}, 9: {"rev limit"},
	} {
		calm := still(2000)
		for i, c := range overLaunch(plotting.Of(r, eventful())) {
			values := overLaunch(plotting.Of(r, calm))[i].Readout(time, units.US)
			if got := c.Readout(time, units.US); !slices.Equal(got, append(values, want...)) {
				t.Errorf("%s at %g s: %q, want %q behind\n%q", c.Key, time, got, want, values)
			}
		}
	}
}

// Of several setups, what happens to all is read in one line, what happens to some
// with their names; the values stay side by side.
func TestEventsOfSeveralSetups(t *testing.T) {
	r := analyze(t, saltgrass())
	other := copied(r)
	other.Car.Setups[0].Name = "more bite"
	l := eventful()
	l.Events[0].To, l.Events[0].Value = 0.45, 0.3
	l.Events = slices.Delete(l.Events, 1, 2)
	got := plotting.LaunchTires(plotting.Of(r, eventful()), plotting.Of(other, l)).Readout(0.305, units.US)
	want := []string{
		"0.305 s, baseline vs more bite", "rear left off the ground", "rear right off the ground", "front left off the ground", "front right off the ground",
		"wheelspin", "baseline: left rear tire light",
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want\n%q", got, want)
	}
}

// At the upper edge wheelspin is a band from its start to its end, anything else a
// stroke at its start.
func TestEventsAreMarkedAtTheUpperEdge(t *testing.T) {
	r := analyze(t, saltgrass())
	for _, style := range []chart.Style{charttest.Light, {Palette: dark}} {
		for _, c := range overLaunch(plotting.Of(r, eventful())) {
			img, l := charttest.Draw(t, c, 820, 420, style, chart.Marker{})
			for time, want := range map[float64]struct{ band, stroke bool }{
				0.05: {}, 0.12: {band: true}, 0.3: {true, true}, 0.48: {band: true}, 0.53: {},
				0.6: {stroke: true}, 0.75: {}, 0.9: {stroke: true}, 1.25: {stroke: true}, 1.5: {stroke: true}, 1.7: {}, 1.8: {stroke: true},
			} {
				px, _ := l.ToPixel(time, 0)
				if got := charttest.Near(img, px, l.Top+1, style.Palette.Bad); got != want.band && !want.stroke {
					t.Errorf("%s: wheelspin at %g s: %v", c.Key, time, got)
				}
				if got := charttest.Near(img, px, l.Top+5, style.Palette.Muted); got != want.stroke {
					t.Errorf("%s: a stroke at %g s: %v", c.Key, time, got)
				}
			}
		}
	}
}

// Each event has a label where there is room for it, and none where it would cover
// a line or other text.
func TestLabelsOfEventsStandBack(t *testing.T) {
	names := []string{"wheelspin", "left rear tire light", "front wheels up", "wheelie bar", "right rear bottomed", "right rear topped out", "rev limit"}
	r := analyze(t, saltgrass())
	for _, c := range overLaunch(plotting.Of(r, eventful())) {
		found := charttest.Words(c, units.US, 1400, 500)
		for _, name := range names {
			if !slices.Contains(found, name) && name != "left rear tire light" {
				t.Errorf("%s: no label %q in %q", c.Key, name, found)
			}
		}
		shown := 0
		for _, size := range panels {
			list := charttest.Texts(c, units.US, size[0], size[1])
			for i, a := range list {
				if slices.Contains(names, a.Text) {
					shown++
				}
				for _, b := range list[:i] {
					if a.Over(b) {
						t.Errorf("%s %v: %q runs into %q", c.Key, size, a.Text, b.Text)
					}
				}
			}
		}
		if shown == 0 || shown == len(panels)*len(names) {
			t.Errorf("%s: %d labels in all sizes", c.Key, shown)
		}
	}
	// Many spells of one kind have one label.
	l := still(2000)
	for i := range 20 {
		at := 0.1 * float64(i)
		l.Events = append(l.Events, launch.Event{Kind: launch.WheelieBarDown, From: at, To: at + 0.01, Value: 100})
	}
	if all := strings.Join(charttest.Words(plotting.LaunchAttitude(plotting.Of(r, l)), units.US, 1400, 500), "|"); strings.Count(all, "wheelie bar") != 1 {
		t.Error(all)
	}
}

// The launch of a car: what the chart marks is what the launch found.
func TestEventsOfTheReferenceCar(t *testing.T) {
	l, r := launched(t, saltgrass())
	if len(l.Events) == 0 {
		t.Fatal("nothing happens")
	}
	for _, c := range overLaunch(plotting.Of(r, l)) {
		if len(c.Events) != len(l.Events) {
			t.Fatalf("%s: %d events, want %d", c.Key, len(c.Events), len(l.Events))
		}
		for i, e := range l.Events {
			if m := c.Events[i]; m.From != e.From || m.To != e.To || m.Band != (e.Kind == launch.Wheelspin) {
				t.Errorf("%s: %+v of %+v", c.Key, m, e)
			}
		}
	}
}
