package compare

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/panel"
	"bowline/app/panel/paneltest"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/assets"
	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"
)

// comparing shows the setups with the reference car's second one held against
// its first.
func comparing(t *testing.T) (*paneltest.Desk, *Part) {
	t.Helper()
	d, p := alone(t, paneltest.Reference)
	if p.body.Visible() || p.verdict.Text() != "" || p.choice.Selected != "no other setup" {
		t.Errorf("at first it says %q, chosen is %q", p.verdict.Text(), p.choice.Selected)
	}
	p.choice.SetSelected("lower bar up")
	d.Settle()
	if o := d.Study.Others(); len(o) != 1 || o[0].Setup != 1 || !p.body.Visible() {
		t.Fatal("the setup chosen is not compared")
	}
	return d, p
}

// alone shows the comparison alone, for one of two cars.
func alone(t *testing.T, open func(testing.TB, func(panel.Host) panel.Panel) *paneltest.Desk) (*paneltest.Desk, *Part) {
	t.Helper()
	var p *Part
	d := open(t, func(host panel.Host) panel.Panel {
		p = New(host.Study)
		return paneltest.Part(p.Object, p.Refresh, study.WantsOtherLaunches)
	})
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
			if got := p.tables[tableRide].Text(row, column); got != text {
				t.Errorf("%s: %q, want %q", rowNames[tableRide][row], got, text)
			}
		}
	}
	a, b := d.Study.Result(), d.Study.Others()[0].Result
	wantForces(t, p, tableHit, analysis.Hit, a, b)
	wantForces(t, p, tableHooked, analysis.Hooked, a, b)

	if got, want := p.verdict.Text(), words.Compare(words.Setup{Name: "baseline", Result: a, Launch: d.Study.Launch()}, words.Setup{Name: "lower bar up", Result: b, Launch: d.Study.Others()[0].Launch}, units.US); got != want {
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
			if got := p.tables[tableTurns].Text(row, column); got != text {
				t.Errorf("%s: %q, want %q", rowNames[tableTurns][row], got, text)
			}
		}
	}
	setups := d.Doc.Car().Setups
	plan, err := adjuster.Plan(d.Doc.Car(), 0, setups[1].Holes, setups[1].Turns)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := p.plan.Text(), words.SetupPlan("baseline", "lower bar up", &plan, units.US); got != want {
		t.Errorf("the plan is %q, want %q", got, want)
	}
	if h := p.tables[tableRide]; h.Heading(0) != "baseline" || h.Heading(1) != "lower bar up" {
		t.Errorf("headings %q, %q", h.Heading(0), h.Heading(1))
	}
}

// shownAs rounds a number as it is shown.
func shownAs(x float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	return math.Round(x*p) / p
}

// wantForces finds the most that a bar carries anew, station by station.
func wantForces(t *testing.T, p *Part, table int, load analysis.Case, a, b *analysis.Result) {
	t.Helper()
	for row, name := range rowNames[table] {
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
		if got := p.tables[table].Text(row, 2); got != want {
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
		for row := range rowNames[i] {
			want = append(want, [3]string{table.Text(row, 1), table.Text(row, 0), opposite.Replace(table.Text(row, 2))})
		}
	}
	d.Doc.SelectSetup(1)
	d.Study.Compare(0)
	d.Settle()
	for i, table := range p.tables {
		for row, name := range rowNames[i] {
			if got := [3]string{table.Text(row, 0), table.Text(row, 1), table.Text(row, 2)}; got != want[0] {
				t.Errorf("%s, %s: %q, want %q", titles[i], name, got, want[0])
			}
			want = want[1:]
		}
	}
	a, b := words.Setup{Name: "lower bar up", Result: d.Study.Result(), Launch: d.Study.Launch()}, words.Setup{Name: "baseline", Result: d.Study.Others()[0].Result, Launch: d.Study.Others()[0].Launch}
	if got, want := p.verdict.Text(), words.Compare(a, b, units.US); got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
}

func TestTheCurrentSetupChosenForComparison(t *testing.T) {
	d, p := comparing(t)
	d.Doc.SelectSetup(1)
	d.Settle()
	want := `"lower bar up" is the current setup. Click another one in the list to hold it against this.`
	if p.body.Visible() || p.verdict.Text() != want || p.choice.Selected != "lower bar up" {
		t.Errorf("visible %v, says %q, chosen %q", p.body.Visible(), p.verdict.Text(), p.choice.Selected)
	}
	d.Doc.SelectSetup(0)
	d.Settle()
	if !p.body.Visible() {
		t.Error("back at the first setup nothing is compared")
	}
	p.choice.SetSelected("no other setup")
	d.Settle()
	if len(d.Study.Chosen()) > 0 || p.body.Visible() {
		t.Error("there is still a comparison")
	}
	// A setup may have the very name that stands for none.
	d.Doc.RenameSetup(1, "no other setup")
	d.Settle()
	if p.choice.Selected != "(no other setup)" || p.choice.Options[2] != "no other setup" {
		t.Errorf("chosen is %q of %q", p.choice.Selected, p.choice.Options)
	}
	p.choice.SetSelected("no other setup")
	if got := d.Study.Chosen(); !slices.Equal(got, []int{1}) {
		t.Errorf("chosen is %v", got)
	}
}

func TestEqualSetupsAreTheSame(t *testing.T) {
	d, p := comparing(t)
	d.Doc.CopySetup(0)
	d.Doc.SelectSetup(0)
	d.Study.Compare(1)
	d.Settle()
	for i, table := range p.tables {
		for row, name := range rowNames[i] {
			if got := table.Text(row, 2); got != words.Same && (i != tableTurns || got != "no turn") {
				t.Errorf("%s, %s differ by %q", titles[i], name, got)
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
		got := shortened([]words.Setup{{Name: names[0]}, {Name: names[1]}})
		for _, text := range got {
			paneltest.WantRoom(t, "heading", text, true, compareRoom)
		}
		if got[0] == got[1] || len(names[0]) < 12 && !slices.Equal(got, want[:]) {
			t.Errorf("%q are cut to %q", names, got)
		}
	}
}

// compareRoom is the room of a value in the tables of the comparison.
const compareRoom = paneltest.PanelWidth*0.8/3 - paneltest.TextGap

// The tables are legible in the width of a panel, with any two setups of any
// example car, in any units.
func TestTablesOfTheComparisonFitTheirPanel(t *testing.T) {
	d, p := alone(t, paneltest.Demo)
	for _, name := range assets.CarNames() {
		d.Example(name)
		for setup := range d.Doc.Car().Setups {
			d.Doc.SelectSetup(setup)
			for other := range d.Doc.Car().Setups {
				d.Study.Compare(other)
				for _, u := range []units.System{units.US, units.SI} {
					d.Doc.SetUnits(u)
					d.Settle()
					p.Refresh()
					for i, table := range p.tables {
						rooms := [4]float32{0.2, 0.8 / 3, 0.8 / 3, 0.8 / 3}
						if parts, ok := shares[i]; ok {
							rooms = parts
						}
						for column := range rooms {
							rooms[column] = rooms[column]*paneltest.PanelWidth - paneltest.TextGap
						}
						rooms[3] += paneltest.TextGap // nothing stands behind the differences
						for row, what := range rowNames[i] {
							paneltest.WantRoom(t, "name", what, false, rooms[0])
							for column := range 3 {
								paneltest.WantRoom(t, name+", "+what, table.Text(row, column), false, rooms[1+column])
							}
						}
						for column := range 3 {
							paneltest.WantRoom(t, "heading", table.Heading(column), true, compareRoom)
						}
					}
				}
			}
		}
	}
	paneltest.WantRoom(t, "range", "−100 to 1,000 %", false, shares[tableTravel][1]*paneltest.PanelWidth-paneltest.TextGap)
	paneltest.WantRoom(t, "range", words.Points(-999, 0, "wider", "narrower"), false, shares[tableTravel][3]*paneltest.PanelWidth)
	for column, text := range []string{"UR", "1 turn 3 flats longer", "0.25 turns shorter", "10 turns 5 flats shorter"} {
		paneltest.WantRoom(t, "turns", text, false, shares[tableTurns][column]*paneltest.PanelWidth)
	}
	for _, text := range []string{"parallel bars", "99,999 N, 999 %", "−123,456.7 mm", "100 to 1,000 %"} {
		paneltest.WantRoom(t, "value", text, false, compareRoom)
	}
	// Nothing stands behind the differences.
	for _, text := range []string{
		"12.34 in forward", "234,567 N more", words.Difference(units.SI, units.Length, 0, 9.9994, "farther", "nearer"), words.Difference(units.SI, units.Length, 0, 0.9987, "farther", "nearer"),
		words.Difference(units.US, units.Percent, 1.2345, 0, "more", "less"), "0.123 s quicker",
	} {
		paneltest.WantRoom(t, "difference", text, false, compareRoom+paneltest.TextGap)
	}
}
