package launch_test

import (
	"slices"
	"strings"
	"testing"

	panel "bowline/app/check/launch"
	"bowline/app/internal/screen"
	"bowline/app/panel/paneltest"
	"bowline/app/words"
	"bowline/assets"
	"bowline/model/assumptions"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// open opens the fold of the weaker assumptions.
func open(t *testing.T, d *paneltest.Desk) {
	t.Helper()
	for _, part := range screen.Seen(d.Panel.Words()) {
		if b, ok := part.(*widget.Button); ok && strings.Contains(b.Text, "weaker") {
			d.Tap(b)
			return
		}
	}
	t.Fatal("there is no fold of weaker assumptions")
}

// listed are the names of the assumptions in sight, in their order.
func listed(d *paneltest.Desk, of []assumptions.Worth) []string {
	var names []string
	for _, line := range strings.Split(d.Says(), "\n") {
		name, _, _ := strings.Cut(line, " | ")
		if slices.ContainsFunc(of, func(w assumptions.Worth) bool { return w.Name == name }) && strings.Contains(line, ": ") {
			names = append(names, name)
		}
	}
	return names
}

func TestAssumptionsAreListedStrongestFirst(t *testing.T) {
	d := leaving(t)
	worth, current, err := d.Study.Worth()
	if !current || err != nil {
		t.Fatalf("the worth is current: %v, %v", current, err)
	}
	if names := listed(d, worth); len(names) == 0 || len(names) >= len(worth) {
		t.Fatalf("%d of %d are in sight", len(names), len(worth))
	}
	open(t, d)
	names := listed(d, worth)
	for i, w := range worth {
		if i >= len(names) || names[i] != w.Name {
			t.Fatalf("in the place %d of %q stands no %q", i, names, w.Name)
		}
		for _, want := range []string{words.Assumed(w.Assumption, units.US), words.TriedWith(w.Assumption, w.Changes[0], &w.Effects[0], units.US)} {
			if !strings.Contains(d.Says(), want) {
				t.Errorf("%s: it does not say %q", w.Name, want)
			}
		}
	}
}

// While an edit is worked out the list stands in its order, without a figure of the car
// before; what is typed meanwhile is off the list.
func TestOutdatedWorthIsNotShown(t *testing.T) {
	d := leaving(t)
	worth, _, _ := d.Study.Worth()
	open(t, d)
	before := listed(d, worth)
	gone := worth[0]
	d.Doc.Apply("Say it", func(c *car.Car) {
		c.Drive.Torque *= 0.9
		c.State(gone.Path, true)
	})
	for d.Study.LaunchOutdated() {
		d.Wait()
	}
	d.Panel.Refresh()
	if says := d.Says(); !strings.Contains(says, words.AssumedPending) || strings.Contains(says, words.AssumedHelp) {
		t.Errorf("it says %q", says)
	}
	for _, w := range worth {
		if figure := words.TriedWith(w.Assumption, w.Changes[0], &w.Effects[0], units.US); strings.Contains(d.Says(), w.Name+" | "+words.Assumed(w.Assumption, units.US)+" | "+figure) {
			t.Errorf("%s still has %q", w.Name, figure)
		}
	}
	if names := listed(d, worth); !slices.Equal(names, before[1:]) {
		t.Errorf("the order is\n%q, want\n%q", names, before[1:])
	}
	d.Settle()
	if strings.Contains(d.Says(), words.AssumedPending) || !strings.Contains(d.Says(), words.AssumedHelp) {
		t.Error("it never comes to an end")
	}
}

// Whatever the car, a row's name and value do not meet, nor do its two effects.
func TestAssumptionsFitTheirPanel(t *testing.T) {
	d := leaving(t)
	for _, name := range assets.CarNames() {
		d.Example(name)
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			d.Settle()
			worth, _, _ := d.Study.Worth()
			width := func(text string, size float32) float32 { return fyne.MeasureText(text, size, fyne.TextStyle{}).Width }
			for _, w := range worth {
				value := words.Assumed(w.Assumption, u)
				if all := width(w.Name, theme.TextSize()) + width(value, theme.TextSize()); all > paneltest.PanelWidth-4*paneltest.TextGap {
					t.Errorf("%s, %s: %q and %q are %.0f wide", name, u, w.Name, value, all)
				}
				for i, change := range w.Changes {
					text := words.TriedWith(w.Assumption, change, &w.Effects[i], u)
					room := float32(paneltest.PanelWidth/2 - 2*paneltest.TextGap)
					if len(w.Changes) == 1 {
						room *= 2
					}
					if wide := width(text, theme.CaptionTextSize()); wide > room {
						t.Errorf("%s, %s: %q is %.0f wide and has %.0f", name, u, text, wide, room)
					}
				}
			}
		}
	}
}

// A car that says everything has an empty list, and the panel says so.
func TestNothingAssumed(t *testing.T) {
	d := paneltest.Demo(t, panel.New)
	d.Study.SetLaunching(true)
	d.Settle()
	if problems := d.Doc.Apply("Say all", func(c *car.Car) { sayAll(t, c, d.Study.Launch()) }); problems != nil {
		t.Fatal(problems)
	}
	d.Settle()
	if says := d.Says(); !strings.Contains(says, words.NothingAssumed) || strings.Contains(says, "weaker") {
		t.Errorf("it says %q", says)
	}
}

// sayAll makes a car give what its launch assumes.
func sayAll(t *testing.T, c *car.Car, l *launch.Result) {
	t.Helper()
	for _, a := range assumptions.Of(l) {
		f := car.FieldAt(a.Path)
		switch {
		case a.Path == "car.corner_weights":
			front := (c.Body.Mass - c.Body.RearMass) / 2
			c.Body.Scales = car.Scales{Given: true, LeftFront: front, RightFront: front, LeftRear: c.Body.RearMass / 2, RightRear: c.Body.RearMass / 2}
		case a.Path == "locator.chassis" || a.Path == "locator.housing":
			c.Launch.Locator.Chassis.At, c.Launch.Locator.Housing.At = c.LocatorEnds(0)
			c.Launch.Locator.Chassis.Given, c.Launch.Locator.Housing.Given = true, true
		case f == nil || car.Statable(a.Path):
			c.State(a.Path, true)
		default:
			*f.In(c) = a.Value
		}
	}
}
