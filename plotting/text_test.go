package plotting

import (
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

// panels are sizes in which charts are shown [px].
var panels = [][2]float64{{380, 240}, {420, 270}, {460, 300}, {520, 320}, {700, 400}}

// slop is how far text may stick out or overlap [pt].
const slop = 0.3

func (a spied) over(b spied) bool {
	return a.box.Min.X+slop < b.box.Max.X && b.box.Min.X+slop < a.box.Max.X && a.box.Min.Y+slop < b.box.Max.Y && b.box.Min.Y+slop < a.box.Max.Y
}

func (a spied) outside(w, h vg.Length) bool {
	return a.box.Min.X < -slop || a.box.Min.Y < -slop || a.box.Max.X > w+slop || a.box.Max.Y > h+slop
}

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
		for _, chart := range everyChart(t, c) {
			for _, size := range panels {
				for _, s := range []units.System{units.US, units.SI} {
					list := texts(chart, s, size[0], size[1])
					for i, a := range list {
						if a.outside(vg.Length(size[0])*0.75, vg.Length(size[1])*0.75) {
							t.Errorf("%s, %s %v %v: %q is cut off", name, chart.Key, s, size, a.text)
						}
						for _, b := range list[:i] {
							if a.over(b) {
								t.Errorf("%s, %s %v %v: %q runs into %q", name, chart.Key, s, size, a.text, b.text)
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
	for _, size := range []Sheet{DefaultSheet, {Width: 4 * vg.Inch, Height: 3 * vg.Inch}} {
		for _, chart := range everyChart(t, c) {
			to := &sheetSpy{width: size.Width, height: size.Height}
			if err := drawSheet(to, chart, Style{}, size); err != nil {
				t.Fatal(err)
			}
			var all []string
			for i, a := range to.texts {
				all = append(all, a.text)
				if a.outside(size.Width, size.Height) {
					t.Errorf("%s: %q is cut off", chart.Key, a.text)
				}
				for _, b := range to.texts[:i] {
					if a.over(b) {
						t.Errorf("%s: %q runs into %q", chart.Key, a.text, b.text)
					}
				}
			}
			if text := strings.Join(all, " "); !strings.Contains(text, Caution) || !strings.Contains(text, chart.Subtitle) {
				t.Errorf("%s: %s", chart.Key, text)
			}
		}
	}
}

// Any car: no text is cut off.
func TestTextIsNeverCutOff(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom(panels).Draw(t, "size")
		r := results.Draw(t, "result").Result
		for _, chart := range append(Charts(r, nil), LaunchCharts(randomLaunch(t), r, nil, nil)...) {
			for _, a := range texts(chart, units.SI, size[0], size[1]) {
				if a.outside(vg.Length(size[0])*0.75, vg.Length(size[1])*0.75) {
					t.Fatalf("%s %v: %q is cut off at %v", chart.Key, size, a.text, a.box)
				}
			}
		}
	})
}

// Where there is room for some numbers only, the others are left out.
func TestCrowdedNumbersAreLeftOut(t *testing.T) {
	c := Bow(analyze(t, saltgrass()))
	c.x.sight, c.y.sight = Span{0, 3.3e6}, Span{0, 0.033}
	frame := c.frame(&Style{Units: units.SI})
	numbers := map[string]bool{}
	for _, tick := range append(c.x.ticks(units.SI, frame.X), c.y.ticks(units.SI, frame.Y)...) {
		numbers[tick.label] = true
	}
	var list []spied
	for _, x := range texts(c, units.SI, 300, 125) {
		if numbers[x.text] {
			list = append(list, x)
		}
	}
	if len(list) < 4 || len(list) >= len(numbers)-4 {
		t.Errorf("%d of %d numbers", len(list), len(numbers))
	}
	for i, a := range list {
		for _, b := range list[:i] {
			if a.over(b) {
				t.Errorf("%q runs into %q", a.text, b.text)
			}
		}
	}
}

func TestForceChartSaysPushAndPull(t *testing.T) {
	var all []string
	for _, x := range texts(Forces(analyze(t, saltgrass())), units.US, 460, 300) {
		all = append(all, x.text)
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

func TestWrap(t *testing.T) {
	l := lettersOf(10, false)
	words := "a bar that fails at launch can hurt someone"
	lines := l.wrap(words, 80)
	if len(lines) < 2 {
		t.Fatalf("%q", lines)
	}
	joined := ""
	for i, line := range lines {
		if l.width(line) > 80 {
			t.Errorf("%q is %v wide", line, l.width(line))
		}
		if i > 0 {
			joined += " "
		}
		joined += line
	}
	if joined != words {
		t.Errorf("%q", joined)
	}
	if got := l.wrap("", 80); got != nil {
		t.Errorf("%q", got)
	}
}

// Labels of marks that stand in one place do not run into each other; those
// that find no room are left out.
func TestCrowdedLabelsAreLeftOut(t *testing.T) {
	c := Forces(analyze(t, saltgrass()))
	for range 40 {
		c.marks = append(c.marks, mark{ink: plainInk, shape: disc, caption: caption{head: "here"}})
	}
	list, shown := texts(c, units.US, 380, 240), 0
	for i, a := range list {
		if a.text == "here" {
			shown++
		}
		for _, b := range list[:i] {
			if a.over(b) {
				t.Errorf("%q runs into %q", a.text, b.text)
			}
		}
	}
	if shown < 2 || shown > 8 {
		t.Errorf("%d labels are shown", shown)
	}
}

// Where remarks are cut short, the dots stay within the chart.
func TestCutRemarksKeepToTheirWidth(t *testing.T) {
	c := Forces(analyze(t, saltgrass()))
	for length := range 60 {
		c.notes = []remark{func(Frame) string {
			return strings.Repeat("word ", 18) + strings.Repeat("w", length) + " and more of it than there is room for here"
		}}
		dots := false
		for _, a := range texts(c, units.US, 420, 200) {
			if a.outside(420*0.75, 200*0.75) {
				t.Fatalf("%q is cut off", a.text)
			}
			dots = dots || strings.HasSuffix(a.text, " …")
		}
		if !dots {
			t.Fatal("nothing is cut short")
		}
	}
}

func TestDotted(t *testing.T) {
	l := lettersOf(10, false)
	line := "a bar that fails at launch"
	if got := l.dotted(line, 0); got != line+" …" {
		t.Errorf("%q", got)
	}
	got := l.dotted(line, l.width(line))
	if got != "a bar that fails at …" || l.width(got) > l.width(line) {
		t.Errorf("%q is %v wide", got, l.width(got))
	}
	if got := l.dotted(line, 12); got != "…" {
		t.Errorf("%q", got)
	}
}
