package holes

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/app/words"
	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// Whole texts of the card; lengths and turns by hand from the reference car's
// holes: upper bar from (2.5, 21.75) to (22.5, 17.0) in, 20.5563 in instead of
// 20.7424 in, which is 1.49 turns of two pitches of 1/16 in.
func TestTheCardSaysHowToGetThere(t *testing.T) {
	d := searching(t)
	c := d.p.chosen
	to := math.Hypot(20, 4.75)
	if turns := (math.Hypot(20, 5.5) - to) / 0.125; math.Round(turns*6) != 9 {
		t.Fatalf("%v turns", turns)
	}
	picked := car.Holes{ChassisUpper: 2, ChassisLower: 2, HousingUpper: 1, HousingLower: 1}
	d.Study.Pick(d.Study.Table().Index(picked))
	for _, u := range []units.System{units.SI, units.US} {
		d.Doc.SetUnits(u)
		d.Settle()
		plan := planOf(t, d, picked)
		if turn := plan.Pairs[car.Upper].Left.Turn(); turn.Whole != -1 || turn.Flats != -3 || plan.Pairs[car.Lower].Turned() {
			t.Errorf("the plan is %+v", plan)
		}
		lines := words.Plan(plan, u)
		texts(t, map[string][2]string{
			"title":       {c.title.Text(), "Holes 3·3·2·2, rank 7 of 36"},
			"reason":      {c.reason.Text(), words.Sentence(words.Reason(d.Study.Place(d.Study.Picked()), u))},
			"upper":       {c.pairs[car.Upper].Text(), lines[0]},
			"lower":       {c.pairs[car.Lower].Text(), lines[1]},
			"rest":        {c.rest.Text(), strings.Join(lines[2:], "\n")},
			"order":       {c.order.Text(), words.WhichHoles(picked)},
			"upper color": {string(c.pairs[car.Upper].Color()), string(theme.ColorNameForeground)},
		})
	}

	// What changes, from what the search found.
	from, there := &d.Study.Table().Combinations[d.Study.Present()], d.Study.Place(d.Study.Picked()).Combination()
	d.Settle()
	// The difference of the figures shown, with a word for its direction.
	change := func(unit, more, less string, decimals int, a, b float64) string {
		scale := math.Pow(10, float64(decimals))
		by := (math.Round(b*scale) - math.Round(a*scale)) / scale
		word := more
		if by < 0 {
			word = less
		}
		return fmt.Sprintf("%.*f %s %s", decimals, math.Abs(by), unit, word)
	}
	texts(t, map[string][2]string{
		"ahead":  {c.changes.Text(changeAhead, 2), change("in", "farther", "nearer", 2, from.InstantCenter.X/paneltest.Inch, there.InstantCenter.X/paneltest.Inch)},
		"up":     {c.changes.Text(changeUp, 2), change("in", "higher", "lower", 2, from.InstantCenter.Y/paneltest.Inch, there.InstantCenter.Y/paneltest.Inch)},
		"squat":  {c.changes.Text(changeSquat, 2), change("points", "more", "less", 1, 100*from.AntiSquat, 100*there.AntiSquat)},
		"push":   {c.changes.Text(changePush, 2), change("lb", "more", "less", 0, from.Peak[car.Lower][1][0]/units.PoundForce, there.Peak[car.Lower][1][0]/units.PoundForce)},
		"in use": {c.changes.Text(changePush, 0), units.US.Format(units.Force, from.Peak[car.Lower][1][0])},
		"these":  {c.changes.Text(changePush, 1), units.US.Format(units.Force, there.Peak[car.Lower][1][0])},
	})
}

// planOf returns how to get to holes from the current setup.
func planOf(t *testing.T, d *desk, to car.Holes) *adjuster.Change {
	t.Helper()
	c, setup := d.Doc.Car(), d.Doc.Setup()
	plan, err := adjuster.Plan(c, setup, to, c.Setups[setup].Turns)
	if err != nil {
		t.Fatal(err)
	}
	return &plan
}

// A bar that has no thread left for other holes is warned of.
func TestTheCardWarnsOfRecutTubes(t *testing.T) {
	d := searching(t)
	d.Doc.Apply("Back", func(c *car.Car) { c.Chassis.Upper[0].X -= 3 * paneltest.Inch })
	d.Settle()
	d.Study.Pick(0)
	d.Settle()
	c := d.p.chosen
	if plan := planOf(t, d, car.Holes{}); plan.Pairs[car.Upper].Left.After.Status != adjuster.TooLong {
		t.Fatalf("the example is another one: %+v", plan)
	}
	if p := c.pairs[car.Upper]; p.Color() != theme.ColorNameError || !p.Visible() {
		t.Errorf("the warning is %q in %q", p.Text(), p.Color())
	}
	if p := c.pairs[car.Lower]; p.Color() != theme.ColorNameForeground || !p.Visible() {
		t.Error("the lower bars are warned of too")
	}
}

// Little thread engaged is warned of, pair by pair.
func TestTheCardWarnsOfLittleThread(t *testing.T) {
	d := searching(t)
	found := map[fyne.ThemeColorName]int{}
	for i := range d.Study.Ranking() {
		d.Study.Pick(i)
		d.Settle()
		plan := planOf(t, d, d.Study.Place(i).Holes())
		for pair, p := range d.p.chosen.pairs {
			want := theme.ColorNameForeground
			switch max(plan.Pairs[pair].Left.After.Status, plan.Pairs[pair].Right.After.Status) {
			case adjuster.TooShort, adjuster.TooLong:
				want = theme.ColorNameError
			case adjuster.Shallow:
				want = theme.ColorNameWarning
			}
			if p.Color() != want {
				t.Errorf("%q is in %q, want %q", p.Text(), p.Color(), want)
			}
			found[want]++
		}
	}
	if found[theme.ColorNameForeground] == 0 || found[theme.ColorNameWarning] == 0 {
		t.Errorf("colors %v: the test proves little", found)
	}
}

// Holes that a setup has already are not kept a second time.
func TestTheCardKeepsHolesOnce(t *testing.T) {
	d := searching(t)
	c := d.p.chosen
	d.Study.Pick(0)
	d.Settle()
	test.Tap(c.keep)
	d.Settle()
	d.Doc.SelectSetup(0)
	d.Settle()
	test.Tap(c.keep)
	d.Settle()
	if n := len(d.Doc.Car().Setups); n != 3 || d.Doc.Setup() != 1 {
		t.Errorf("%d setups, current %d", n, d.Doc.Setup())
	}
	d.WantSaid(`The setup "holes 1·1·1·1" has the holes 1·1·1·1 and these turns already.`)
}

func TestTheCardUsesAndKeeps(t *testing.T) {
	d := searching(t)
	c := d.p.chosen
	if c.title.Text() != "Holes 3·2·1·1, rank 11 of 36, in use" || !c.use.Disabled() || c.keep.Disabled() {
		t.Errorf("the card is of %q, use %v, keep %v", c.title.Text(), c.use.Disabled(), c.keep.Disabled())
	}
	d.Study.Pick(0)
	d.Settle()
	test.Tap(c.use)
	d.Settle()
	if d.Doc.Car().Setups[0].Holes != (car.Holes{}) || d.Doc.UndoLabel() != "Use holes 1·1·1·1" || !c.use.Disabled() {
		t.Errorf("holes %v, undo %q", d.Doc.Car().Setups[0].Holes, d.Doc.UndoLabel())
	}
	d.Undo()
	d.Settle()
	test.Tap(c.keep)
	d.Settle()
	if s := d.Doc.Car().Setups; len(s) != 3 || s[1].Name != "holes 1·1·1·1" || d.Doc.Setup() != 1 {
		t.Errorf("setups %+v, current %d", s, d.Doc.Setup())
	}
	d.Undo()
	d.Settle()
	if len(d.Doc.Car().Setups) != 2 || d.Doc.Setup() != 0 {
		t.Error("undo leaves the setup kept")
	}
}

// What a hole is worth: against the combinations one hole away, and against
// moving the hole itself.
func TestWhatEachHoleIsWorth(t *testing.T) {
	d := searching(t)
	w := d.p.worth
	d.p.folds.worth.Open(true)
	present := d.Doc.Car().Setups[0].Holes
	at := func(h car.Holes) *holes.Combination { return &d.Study.Table().Combinations[d.Study.Table().Index(h)] }
	here := at(present)
	for row, up := range map[car.Row]int{car.ChassisUpper: -1, car.ChassisLower: -1} {
		h := present
		*row.Of(&h) += up // The highest hole comes first.
		squat := strings.TrimPrefix(w.steps.Text(2*int(row), 0), "+")
		if want := units.US.Format(units.Percent, at(h).AntiSquat-here.AntiSquat); squat != want {
			t.Errorf("%v up: anti-squat %q, want %q", row, squat, want)
		}
		push := strings.TrimPrefix(w.steps.Text(2*int(row), 1), "+")
		if want := units.US.Format(units.Force, at(h).Peak[car.Lower][1][0]-here.Peak[car.Lower][1][0]); push != want {
			t.Errorf("%v up: lower push %q, want %q", row, push, want)
		}
	}
	if got := w.steps.Text(2*int(car.ChassisUpper)+1, 0); got != "no hole" {
		t.Errorf("below the lowest hole: %q", got)
	}
	for _, u := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(u)
		d.Settle()
		words := map[units.System]string{units.US: "The hole itself 1/16 in higher, likewise", units.SI: "The hole itself 1 mm higher, likewise"}[u]
		if got := w.rateTitle.Text(); got != words {
			t.Errorf("the title is %q", got)
		}
		for _, row := range car.Rows {
			var x float64
			if _, err := fmt.Sscanf(strings.Replace(w.rates.Text(int(row), 0), units.Minus, "-", 1), "%f", &x); err != nil {
				t.Fatal(err)
			}
			step := map[units.System]float64{units.US: paneltest.Inch / 16, units.SI: 0.001}[u]
			was := d.Study.Result().Ride.AntiSquat
			d.Doc.Begin("Move")
			d.Doc.Apply("Move", func(c *car.Car) { (*row.In(c))[*row.Of(&present)].Y += step })
			moved := d.Study.Result().Ride.AntiSquat
			d.Doc.Cancel()
			if got := 100 * (moved - was); math.Abs(got-x) > 0.05+0.05*math.Abs(got) || x == 0 {
				t.Errorf("%v up by %v m: told %v %%, is %v %%", row, step, x, got)
			}
		}
	}
}

// The card is asked for on paper for the holes that it is about.
func TestTheCardGoesToPaper(t *testing.T) {
	d := searching(t)
	d.Study.Pick(0)
	d.Settle()
	test.Tap(d.p.chosen.print)
	if want := d.Study.Place(0).Holes(); len(d.Printed) != 1 || d.Printed[0] != want {
		t.Errorf("printed are %v, want %v", d.Printed, want)
	}
}
