package window

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"bowline/app/words"
	"bowline/assets"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"
)

// comparing shows the setups with the reference car's second one held against
// its first.
func comparing(t *testing.T) (*desk, *comparePart) {
	t.Helper()
	d, _ := openDesk(t)
	p := d.setups().compare
	if p.body.Visible() || p.verdict.Text() != "" || p.choice.Selected != "no other setup" {
		t.Errorf("at first it says %q, chosen is %q", p.verdict.Text(), p.choice.Selected)
	}
	p.choice.SetSelected("lower bar up")
	d.settle()
	if o := otherOf(d.study); o == nil || o.Setup != 1 || !p.body.Visible() {
		t.Fatal("the setup chosen is not compared")
	}
	return d, p
}

// The instant center and the anti-squat from the bars' lines alone, as for the
// racer's numbers; the other setup's lower chassis hole is 0.75 in higher.
func TestComparisonOfTwoSetups(t *testing.T) {
	d, p := comparing(t)
	var x, z, squat, lower [2]float64
	for i, hole := range []float64{11.5, 12.25} {
		up, low := (17-22.5)/20.0, (hole-11)/23.0
		x[i] = 2.5 + (22.5-11)/(low-up)
		z[i] = 11 + low*(x[i]-2.5)
		squat[i] = 100 * z[i] / x[i] * 105 / 19.5
		lower[i] = math.Hypot(23, hole-11)
	}
	if x[1] > x[0] || z[1] < z[0] || squat[1] < squat[0] {
		t.Fatalf("the example is another one: %v, %v, %v", x, z, squat)
	}
	for row, want := range [][3]string{
		{fmt.Sprintf("%.2f in", x[0]), fmt.Sprintf("%.2f in", x[1]), fmt.Sprintf("%.2f in nearer", shownAs(x[0], 2)-shownAs(x[1], 2))},
		{fmt.Sprintf("%.2f in", z[0]), fmt.Sprintf("%.2f in", z[1]), fmt.Sprintf("%.2f in higher", shownAs(z[1], 2)-shownAs(z[0], 2))},
		{fmt.Sprintf("%.1f %%", squat[0]), fmt.Sprintf("%.1f %%", squat[1]), fmt.Sprintf("%.1f points more", shownAs(squat[1], 1)-shownAs(squat[0], 1))},
		{"20.74 in", "20.74 in", words.Same},
		{fmt.Sprintf("%.2f in", lower[0]), fmt.Sprintf("%.2f in", lower[1]), fmt.Sprintf("%.2f in longer", shownAs(lower[1], 2)-shownAs(lower[0], 2))},
	} {
		for column, text := range want {
			if got := p.tables[compareRide].Text(row, column); got != text {
				t.Errorf("%s: %q, want %q", compareNames[compareRide][row], got, text)
			}
		}
	}
	a, b := d.study.Result(), otherOf(d.study).Result
	wantForces(t, p, compareHit, analysis.Hit, a, b)
	wantForces(t, p, compareHooked, analysis.Hooked, a, b)

	if got, want := p.verdict.Text(), words.Compare(words.Setup{Name: "baseline", Result: a, Launch: d.study.Launch()}, words.Setup{Name: "lower bar up", Result: b, Launch: otherOf(d.study).Launch}, units.US); got != want {
		t.Errorf("it says %q, want %q", got, want)
	}

	// 16 threads an inch: two pitches a turn, in sixths.
	flats := int(math.Round((lower[1] - lower[0]) / 2 * 16 * 6))
	const turned = "1 flat longer"
	if flats != 1 {
		t.Fatalf("the example is another one: %d flats", flats)
	}
	for row, want := range [][3]string{{"no turn", "no turn", "no turn"}, {"no turn", "no turn", "no turn"}, {"no turn", "no turn", turned}, {"no turn", "no turn", turned}} {
		for column, text := range want {
			if got := p.tables[compareTurns].Text(row, column); got != text {
				t.Errorf("%s: %q, want %q", compareNames[compareTurns][row], got, text)
			}
		}
	}
	plan := p.plan.Text()
	for _, text := range []string{"From \"baseline\" to \"lower bar up\":\n• Upper bars: no turn", "• Lower bars: chassis end hole 2 to 1; " + turned} {
		if !strings.Contains(plan, text) {
			t.Errorf("the plan is %q, which lacks %q", plan, text)
		}
	}
	if h := p.tables[compareRide]; h.Heading(0) != "baseline" || h.Heading(1) != "lower bar up" {
		t.Errorf("headings %q, %q", h.Heading(0), h.Heading(1))
	}
}

// shownAs rounds a number as it is shown.
func shownAs(x float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	return math.Round(x*p) / p
}

// wantForces finds the most that a bar carries anew, station by station.
func wantForces(t *testing.T, p *comparePart, table int, load analysis.Case, a, b *analysis.Result) {
	t.Helper()
	for row, name := range compareNames[table] {
		pair, sign := car.Pair(row/2), float64(1-2*(1-row%2))
		var most, share [2]float64
		for i, r := range []*analysis.Result{a, b} {
			for j := range r.Travel {
				most[i] = max(most[i], sign*analysis.Tension(pair, load.Of(&r.Travel[j].Loads)))
			}
			share[i] = most[i] / r.Bars[pair].Push.Allowable
			if sign > 0 {
				share[i] = most[i] / r.Bars[pair].Pull.Allowable
			}
			want := fmt.Sprintf("%s, %.0f %%", units.US.Format(units.Force, most[i]), 100*share[i])
			if most[i] == 0 {
				want = "none"
			}
			if got := p.tables[table].Text(row, i); got != want {
				t.Errorf("%s, %s: %q, want %q", load, name, got, want)
			}
		}
		const pound = 0.45359237 * 9.80665
		lb := shownAs(most[1]/pound, 0) - shownAs(most[0]/pound, 0)
		want := units.Group(fmt.Sprintf("%.0f", math.Abs(lb))) + map[bool]string{true: " lb more", false: " lb less"}[lb > 0]
		if math.Abs(lb) < 0.5 {
			want = words.Same
		}
		if got := p.tables[table].Text(row, compareBy); got != want {
			t.Errorf("%s, %s differ by %q, want %q", load, name, got, want)
		}
	}
}

// The other way round every difference is told the other way round.
func TestComparisonTheOtherWayRound(t *testing.T) {
	d, p := comparing(t)
	opposite := strings.NewReplacer("nearer", "farther", "farther", "nearer", "higher", "lower", "lower", "higher", "more", "less", "less", "more",
		"longer", "shorter", "shorter", "longer", "wider", "narrower", "narrower", "wider", "quicker", "slower", "slower", "quicker")
	var want [][3]string
	for i, table := range p.tables {
		for row := range compareNames[i] {
			want = append(want, [3]string{table.Text(row, 1), table.Text(row, 0), opposite.Replace(table.Text(row, 2))})
		}
	}
	d.doc.SelectSetup(1)
	d.study.Compare(0)
	d.settle()
	for i, table := range p.tables {
		for row, name := range compareNames[i] {
			if got := [3]string{table.Text(row, 0), table.Text(row, 1), table.Text(row, 2)}; got != want[0] {
				t.Errorf("%s, %s: %q, want %q", compareTitles[i], name, got, want[0])
			}
			want = want[1:]
		}
	}
	a, b := words.Setup{Name: "lower bar up", Result: d.study.Result(), Launch: d.study.Launch()}, words.Setup{Name: "baseline", Result: otherOf(d.study).Result, Launch: otherOf(d.study).Launch}
	if got, want := p.verdict.Text(), words.Compare(a, b, units.US); got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
}

func TestTheCurrentSetupChosenForComparison(t *testing.T) {
	d, p := comparing(t)
	d.doc.SelectSetup(1)
	d.settle()
	want := `"lower bar up" is the current setup. Click another one in the list to hold it against this.`
	if p.body.Visible() || p.verdict.Text() != want || p.choice.Selected != "lower bar up" {
		t.Errorf("visible %v, says %q, chosen %q", p.body.Visible(), p.verdict.Text(), p.choice.Selected)
	}
	d.doc.SelectSetup(0)
	d.settle()
	if !p.body.Visible() {
		t.Error("back at the first setup nothing is compared")
	}
	p.choice.SetSelected("no other setup")
	d.settle()
	if _, chosen := chosenOf(d.study); chosen || p.body.Visible() {
		t.Error("there is still a comparison")
	}
	// A setup may have the very name that stands for none.
	d.doc.RenameSetup(1, "no other setup")
	d.settle()
	if p.choice.Selected != "(no other setup)" || p.choice.Options[2] != "no other setup" {
		t.Errorf("chosen is %q of %q", p.choice.Selected, p.choice.Options)
	}
	p.choice.SetSelected("no other setup")
	if i, chosen := chosenOf(d.study); i != 1 || !chosen {
		t.Errorf("chosen is %d, %v", i, chosen)
	}
}

func TestEqualSetupsAreTheSame(t *testing.T) {
	d, p := comparing(t)
	d.doc.CopySetup(0)
	d.doc.SelectSetup(0)
	d.study.Compare(1)
	d.settle()
	for i, table := range p.tables {
		for row, name := range compareNames[i] {
			if got := table.Text(row, compareBy); got != words.Same && (i != compareTurns || got != "no turn") {
				t.Errorf("%s, %s differ by %q", compareTitles[i], name, got)
			}
		}
	}
}

func TestLongNamesOverTheColumns(t *testing.T) {
	comparing(t)
	for names, want := range map[[2]string][2]string{
		{"baseline", "bite"}: {"baseline", "bite"},
		{"the setup of the first weekend", "the setup of the second weekend"}: {"A the setup o…", "B the setup o…"},
	} {
		got := shortened(names)
		for _, text := range got {
			wantRoom(t, "heading", text, true, compareRoom)
		}
		if got[0] == got[1] || len(names[0]) < 12 && got != want {
			t.Errorf("%q are cut to %q", names, got)
		}
	}
}

// compareRoom is the room of a value in the tables of the comparison.
const compareRoom = panelWidth*0.8/3 - textGap

// The tables are legible in the width of a panel, with any two setups of any
// example car, in any units.
func TestTablesOfTheComparisonFitTheirPanel(t *testing.T) {
	d := newDesk(t)
	p := d.setups().compare
	for _, name := range assets.CarNames() {
		d.openExample(name)
		for setup := range d.doc.Car().Setups {
			d.doc.SelectSetup(setup)
			for other := range d.doc.Car().Setups {
				d.study.Compare(other)
				for _, u := range []units.System{units.US, units.SI} {
					d.doc.SetUnits(u)
					d.settle()
					p.refresh()
					for i, table := range p.tables {
						rooms := [4]float32{0.2, 0.8 / 3, 0.8 / 3, 0.8 / 3}
						if parts, ok := compareShares[i]; ok {
							rooms = parts
						}
						for column := range rooms {
							rooms[column] = rooms[column]*panelWidth - textGap
						}
						rooms[3] += textGap // nothing stands behind the differences
						for row, what := range compareNames[i] {
							wantRoom(t, "name", what, false, rooms[0])
							for column := range 3 {
								wantRoom(t, name+", "+what, table.Text(row, column), false, rooms[1+column])
							}
						}
						for column := range 3 {
							wantRoom(t, "heading", table.Heading(column), true, compareRoom)
						}
					}
				}
			}
		}
	}
	wantRoom(t, "range", "−100 to 1,000 %", false, compareShares[compareTravel][1]*panelWidth-textGap)
	wantRoom(t, "range", words.Points(-999, 0, "wider", "narrower"), false, compareShares[compareTravel][3]*panelWidth)
	for column, text := range []string{"UR", "1 turn 3 flats longer", "0.25 turns shorter", "10 turns 5 flats shorter"} {
		wantRoom(t, "turns", text, false, compareShares[compareTurns][column]*panelWidth)
	}
	for _, text := range []string{"parallel bars", "99,999 N, 999 %", "−123,456.7 mm", "100 to 1,000 %"} {
		wantRoom(t, "value", text, false, compareRoom)
	}
	// Nothing stands behind the differences.
	for _, text := range []string{
		"12.34 in forward", "234,567 N more", words.Difference(units.SI, units.Length, 0, 9.9994, "farther", "nearer"), words.Difference(units.SI, units.Length, 0, 0.9987, "farther", "nearer"),
		words.Difference(units.US, units.Percent, 1.2345, 0, "more", "less"), "0.123 s quicker",
	} {
		wantRoom(t, "difference", text, false, compareRoom+textGap)
	}
}
