package plotting_test

import (
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"

	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

// panels are sizes in which charts are shown [px].
var panels = [][2]float64{{380, 240}, {420, 270}, {460, 300}, {520, 320}, {700, 400}}

// Ordinary cars: no text is cut off at the edge, none runs into another.
func TestTextHasRoom(t *testing.T) {
	for name, change := range map[string]func(*car.Car){
		"as it is":        func(*car.Car) {},
		"twice as strong": func(c *car.Car) { c.Drive.Torque *= 2 },
		"thin bars":       func(c *car.Car) { c.LowerBar.OD, c.LowerBar.Wall = inch, 0.083*inch; c.Drive.Torque *= 3 },
		"thick bars":      func(c *car.Car) { c.LowerBar.OD, c.LowerBar.Wall = 2*inch, 0.25*inch },
		"solid rods":      func(c *car.Car) { c.LowerBar.OD, c.LowerBar.Wall = 4*inch, 2*inch },
		"parallel":        func(c *car.Car) { c.Chassis.Upper[2], c.Chassis.Lower[1] = in(22.5, 22.5), in(25.5, 11) },
		"short upper":     func(c *car.Car) { c.Chassis.Upper[2] = in(12, 9); c.Springs.RearBump = 2 * inch },
		"other holes":     func(c *car.Car) { c.Setups[0].Holes = car.Holes{ChassisLower: 2, HousingUpper: 1} },
	} {
		c := saltgrass()
		change(c)
		for _, drawn := range everyChart(t, c) {
			for _, size := range panels {
				for _, s := range []units.System{units.US, units.SI} {
					list := charttest.Texts(drawn, s, size[0], size[1])
					for i, a := range list {
						if a.Outside(vg.Length(size[0])*0.75, vg.Length(size[1])*0.75) {
							t.Errorf("%s, %s %v %v: %q is cut off", name, drawn.Key, s, size, a.Text)
						}
						for _, b := range list[:i] {
							if a.Over(b) {
								t.Errorf("%s, %s %v %v: %q runs into %q", name, drawn.Key, s, size, a.Text, b.Text)
							}
						}
					}
				}
			}
		}
	}
}

// On paper there is room for the subtitle and the caution as well.
func TestTextHasRoomOnPaper(t *testing.T) {
	c := saltgrass()
	c.Drive.Torque *= 2
	for _, size := range []chart.Sheet{chart.DefaultSheet, {Width: 4 * vg.Inch, Height: 3 * vg.Inch}} {
		for _, drawn := range everyChart(t, c) {
			to := &charttest.Spy{Width: size.Width, Height: size.Height}
			if err := chart.DrawSheet(to, drawn, chart.Style{}); err != nil {
				t.Fatal(err)
			}
			var all []string
			for i, a := range to.Texts {
				all = append(all, a.Text)
				if a.Outside(size.Width, size.Height) {
					t.Errorf("%s: %q is cut off", drawn.Key, a.Text)
				}
				for _, b := range to.Texts[:i] {
					if a.Over(b) {
						t.Errorf("%s: %q runs into %q", drawn.Key, a.Text, b.Text)
					}
				}
			}
			if text := strings.Join(all, " "); !strings.Contains(text, chart.Caution) || !strings.Contains(text, drawn.Subtitle) {
				t.Errorf("%s: %s", drawn.Key, text)
			}
		}
	}
}

// Any car: no text is cut off.
func TestTextIsNeverCutOff(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom(panels).Draw(t, "size")
		r := results.Draw(t, "result").Result
		for _, drawn := range append(overTravels(plotting.Of(r, nil)), overLaunch(plotting.Of(r, randomLaunch(t)))...) {
			for _, a := range charttest.Texts(drawn, units.SI, size[0], size[1]) {
				if a.Outside(vg.Length(size[0])*0.75, vg.Length(size[1])*0.75) {
					t.Fatalf("%s %v: %q is cut off at %v", drawn.Key, size, a.Text, a.Box)
				}
			}
		}
	})
}

// Where there is room for some numbers only, the others are left out.
func TestCrowdedNumbersAreLeftOut(t *testing.T) {
	c := plotting.Bow(plotting.Of(analyze(t, saltgrass()), nil))
	c.X.Sight, c.Y.Sight = chart.Between(0, 3.3e6), chart.Between(0, 0.033)
	numbers := func(width, height float64) []charttest.Text {
		var list []charttest.Text
		for _, x := range charttest.Texts(c, units.SI, width, height) {
			if strings.Trim(x.Text, "0123456789,.") == "" {
				list = append(list, x)
			}
		}
		return list
	}
	list, all := numbers(300, 125), numbers(900, 600)
	if len(list) < 4 || len(list) >= len(all)-4 {
		t.Errorf("%d of %d numbers", len(list), len(all))
	}
	for i, a := range list {
		for _, b := range list[:i] {
			if a.Over(b) {
				t.Errorf("%q runs into %q", a.Text, b.Text)
			}
		}
	}
}

func TestForceChartSaysPushAndPull(t *testing.T) {
	var all []string
	for _, x := range charttest.Texts(plotting.BarForce(plotting.Of(analyze(t, saltgrass()), nil)), units.US, 460, 300) {
		all = append(all, x.Text)
	}
	for _, want := range []string{
		"Bar force over travel", "lb on one bar", "upper hit", "upper hooked", "lower hit", "lower hooked",
		"pull", "push", "5,000", "0", "10,000", "−4", "2", "Rear travel, in", "← droop", "bump →",
		"upper pull limit 12,927 lb ↑", "lower push limit 10,257 lb",
	} {
		if !slices.Contains(all, want) {
			t.Errorf("%q is missing in %q", want, all)
		}
	}
	for _, text := range all {
		if text == "−5,000" || text == "-5,000" {
			t.Error("a force has a minus sign")
		}
	}
}

// Labels of marks that stand in one place do not run into each other; those
// that find no room are left out.
func TestCrowdedLabelsAreLeftOut(t *testing.T) {
	c := plotting.BarForce(plotting.Of(analyze(t, saltgrass()), nil))
	for range 40 {
		c.Points = append(c.Points, chart.Point{Ink: chart.PlainInk, Shape: chart.Disc, Caption: chart.Caption{Head: "here"}})
	}
	list, shown := charttest.Texts(c, units.US, 380, 240), 0
	for i, a := range list {
		if a.Text == "here" {
			shown++
		}
		for _, b := range list[:i] {
			if a.Over(b) {
				t.Errorf("%q runs into %q", a.Text, b.Text)
			}
		}
	}
	if shown < 2 || shown > 8 {
		t.Errorf("%d labels are shown", shown)
	}
}

// Where remarks are cut short, the dots stay within the chart.
func TestCutRemarksKeepToTheirWidth(t *testing.T) {
	c := plotting.BarForce(plotting.Of(analyze(t, saltgrass()), nil))
	for length := range 60 {
		c.Notes = []chart.Note{func(chart.Frame) string {
			return strings.Repeat("word ", 18) + strings.Repeat("w", length) + " and more of it than there is room for here"
		}}
		dots := false
		for _, a := range charttest.Texts(c, units.US, 420, 200) {
			if a.Outside(420*0.75, 200*0.75) {
				t.Fatalf("%q is cut off", a.Text)
			}
			dots = dots || strings.HasSuffix(a.Text, " …")
		}
		if !dots {
			t.Fatal("nothing is cut short")
		}
	}
}
