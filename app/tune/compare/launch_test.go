package compare

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"
)

// comparingDemo shows the demo car's setups, "more bite" held against the
// baseline.
func comparingDemo(t *testing.T) (*paneltest.Desk, *Part) {
	t.Helper()
	d, p := alone(t, paneltest.Demo)
	d.Study.Compare(1)
	return d, p
}

// Both launches are run while two setups are compared, though a travel is looked
// at, and stand beside each other; the figures are read off the launches anew.
func TestComparisonOfLaunches(t *testing.T) {
	d, p := comparingDemo(t)
	p.Refresh()
	table := p.tables[tableLaunch]
	if got := p.titles[tableLaunch].Text(); got != "In the launch: the launches are being computed" || table.Text(0, 0) != "—" || strings.Contains(p.verdict.Text(), "in the launch") {
		t.Errorf("before there are launches it says %q and %q", got, p.verdict.Text())
	}
	d.Settle()
	if d.Study.Launching() || d.Study.LaunchOutdated() {
		t.Fatalf("launching %v, outdated %v", d.Study.Launching(), d.Study.LaunchOutdated())
	}
	if got := p.titles[tableLaunch].Text(); got != "In the launch" {
		t.Errorf("the title is %q", got)
	}
	runs := [2]*launch.Result{d.Study.Launch(), d.Study.Others()[0].Launch}
	if runs[0].Outcome != launch.Finished || runs[1].Outcome != launch.Finished || runs[0].Setup != 0 || runs[1].Setup != 1 {
		t.Fatalf("the launches ended %v and %v", runs[0].Outcome, runs[1].Outcome)
	}
	// The largest share of all, from the forces over time and the limits.
	const pound = 0.45359237 * 9.80665
	var most float64
	var bar string
	var shares [2]float64
	for i, b := range launch.Bars {
		for way, sign := range []float64{-1, 1} {
			row := 1 + 2*i + way
			var share [2]float64
			for side, r := range runs {
				force := 0.0
				for _, tension := range r.Tension[b] {
					force = max(force, sign*tension)
				}
				limits := d.Study.ResultOf(side).Bars[car.Pair(i/2)]
				share[side] = force / limits.Push.Allowable
				if way == 1 {
					share[side] = force / limits.Pull.Allowable
				}
				got := table.Text(row, side)
				var lb, percent float64
				if force < 50*pound {
					continue // the peak of a bar that hardly moves lies between the outputs
				}
				if _, err := fmt.Sscanf(strings.ReplaceAll(got, ",", ""), "%f lb %f", &lb, &percent); err != nil {
					t.Fatalf("%q: %v", got, err)
				}
				// The peak is taken at every step, the history at every output.
				if math.Abs(lb-force/pound) > 0.005*force/pound || math.Abs(percent-100*share[side]) > 1 {
					t.Errorf("%s: %q, want %.0f lb, %.0f %%", rowNames[tableLaunch][row], got, force/pound, 100*share[side])
				}
			}
			if m := max(share[0], share[1]); m > most {
				most, bar, shares = m, b.String(), share
			}
			a, b := shareIn(t, table.Text(row, 0)), shareIn(t, table.Text(row, 1))
			want := fmt.Sprintf("%.0f points %s", math.Abs(b-a), map[bool]string{true: "more", false: "less"}[b > a])
			if a == b {
				want = words.Same
			} else if math.Abs(b-a) == 1 {
				want = strings.Replace(want, "points", "point", 1)
			}
			if got := table.Text(row, 2); got != want {
				t.Errorf("%s differ by %q, want %q", rowNames[tableLaunch][row], got, want)
			}
		}
	}
	// What is wrong with the side view alone is in the words: which bar, how near.
	if shares[1] == shares[0] {
		t.Fatalf("the %s carries %v and %v alike; the example is another one", bar, shares[0], shares[1])
	}
	for side, r := range runs {
		nearest, _, use := d.Study.ResultOf(side).NearestInLaunch(r)
		// The peak is taken at every step, the history at every output.
		if nearest.String() != bar || math.Abs(use.Share-shares[side]) > 0.01 {
			t.Errorf("setup %d: nearest to its limit is the %s with %v, want the %s with %v", side, nearest, use.Share, bar, shares[side])
		}
	}
	name := d.Doc.Car().Setups
	a, b := words.Setup{Name: name[0].Name, Result: d.Study.ResultOf(0), Launch: runs[0]}, words.Setup{Name: name[1].Name, Result: d.Study.ResultOf(1), Launch: runs[1]}
	if got, want := p.verdict.Text(), words.Compare(a, b, units.US); got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
	for row, want := range map[int]string{
		rowSixty: fmt.Sprintf("%.3f s", runs[1].Elapsed), rowLift: units.US.Format(units.Length, runs[1].Lift.Height), rowOff: fmt.Sprintf("%.3f s", runs[1].Lift.Duration),
	} {
		if runs[1].Lift.Height == 0 && row != rowSixty {
			want = "none"
		}
		if got := table.Text(row, 1); got != want {
			t.Errorf("%s: %q, want %q", rowNames[tableLaunch][row], got, want)
		}
	}
}

// shareIn reads the share in a cell [%].
func shareIn(t *testing.T, text string) float64 {
	t.Helper()
	if text == "none" {
		return 0
	}
	var share float64
	if _, err := fmt.Sscanf(text[strings.LastIndex(text, " lb, ")+5:], "%f", &share); err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return share
}

// The launches follow an edit, and are not run where nobody looks at them.
func TestComparedLaunchesFollow(t *testing.T) {
	d, p := comparingDemo(t)
	d.Settle()
	before := p.tables[tableLaunch].Text(rowSixty, 0)
	if problems := d.Doc.Apply("Mass", func(c *car.Car) { c.Body.Mass *= 1.1 }); problems != nil {
		t.Fatal(problems)
	}
	p.Refresh()
	if got := p.tables[tableLaunch].Text(rowSixty, 0); got != "—" {
		t.Errorf("the launch of the car before is shown as %q", got)
	}
	d.Settle()
	if got := p.tables[tableLaunch].Text(rowSixty, 0); got == before || got == "—" {
		t.Errorf("after the edit the table says %q, before %q", got, before)
	}
	d.Hide(true)
	first := d.Study.Launch()
	d.Edit()
	if d.Study.Launch() != first {
		t.Error("a launch is run for a page that nobody looks at")
	}
	d.Hide(false)
	if d.Study.LaunchOutdated() {
		t.Error("back on the page there are no launches")
	}
}

// A launch that does not end at 60 ft says how it ended.
func TestComparedLaunchThatDoesNotFinish(t *testing.T) {
	d, p := comparingDemo(t)
	d.Settle()
	a, b := d.Study.Result(), d.Study.Others()[0].Result
	finished, over, none := *d.Study.Launch(), *d.Study.Others()[0].Launch, *d.Study.Others()[0].Launch
	over.Outcome, over.Elapsed = launch.WentOver, 0
	none.Outcome, none.History, none.Peaks, none.Elapsed = launch.NoRest, launch.History{}, [launch.RodCount]launch.Peak{}, 0
	table := p.tables[tableLaunch]
	for _, c := range []struct {
		runs [2]*launch.Result
		row  [3]string
	}{
		{[2]*launch.Result{&finished, &over}, [3]string{fmt.Sprintf("%.3f s", finished.Elapsed), "went over", "—"}},
		{[2]*launch.Result{&over, &finished}, [3]string{"went over", fmt.Sprintf("%.3f s", finished.Elapsed), "—"}},
		{[2]*launch.Result{&finished, &finished}, [3]string{fmt.Sprintf("%.3f s", finished.Elapsed), fmt.Sprintf("%.3f s", finished.Elapsed), words.Same}},
	} {
		p.writeLaunch([]words.Setup{{Result: a, Launch: c.runs[0]}, {Result: b, Launch: c.runs[1]}}, units.US)
		for column, want := range c.row {
			if got := table.Text(rowSixty, column); got != want {
				t.Errorf("60 ft: %q, want %q", got, want)
			}
		}
	}
	p.writeLaunch([]words.Setup{{Result: a, Launch: &finished}, {Result: b, Launch: &none}}, units.US)
	if got := table.Text(rowSixty, 1); got != "found no rest" || table.Text(rowBars, 1) != "—" || table.Text(rowBars, 2) != "—" {
		t.Errorf("without a launch the table says %q, %q", got, table.Text(rowBars, 1))
	}
}
