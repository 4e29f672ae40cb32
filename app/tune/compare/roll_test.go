package compare

import (
	"fmt"
	"math"
	"testing"

	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/roll"
	"bowline/model/units"
)

// The bars' own roll stiffness stands beside that of the other setup, and so does how
// far the axle rolls before a rod end comes to its limit.
func TestRollOfTwoSetups(t *testing.T) {
	d, p := comparing(t)
	row := func(row int) (cells [3]string) {
		for i := range cells {
			cells[i] = p.tables[tableRide].Text(row, i)
		}
		return cells
	}
	if got := row(rowRollLimit); got != [3]string{"not checked", "not checked", words.Same} {
		t.Errorf("without a limit: %q", got)
	}
	const degree = math.Pi / 180
	d.Doc.Apply("Rod ends", func(c *car.Car) { c.UpperBar.RodEndAngle, c.LowerBar.RodEndAngle = 10*degree, 10*degree })
	d.Settle()
	p.Refresh()
	var rolls [2]*roll.Result
	for i := range rolls {
		r, err := roll.Of(d.Doc.Car(), i, d.Study.Library())
		if err != nil {
			t.Fatal(err)
		}
		rolls[i] = r
	}
	footPounds := func(i int) float64 { return math.Round(rolls[i].Ride.Stiffness * degree / (4.4482216152605 * 0.3048)) }
	by, word := footPounds(1)-footPounds(0), "more"
	if by < 0 {
		by, word = -by, "less"
	}
	lbft := func(x float64) string { return units.Group(fmt.Sprintf("%.0f", x)) + " lb-ft/°" }
	if got, want := row(rowRoll), [3]string{lbft(footPounds(0)), lbft(footPounds(1)), lbft(by) + " " + word}; got != want || by == 0 {
		t.Errorf("stiffness %q, want %q", got, want)
	}
	limit := func(i int) float64 { return shownAs(math.Abs(rolls[i].Ride.Limit)/degree, 2) }
	want := [3]string{fmt.Sprintf("%.2f°", limit(0)), fmt.Sprintf("%.2f°", limit(1)), words.Same}
	switch by := limit(1) - limit(0); {
	case by > 0.005:
		want[2] = fmt.Sprintf("%.2f° more", by)
	case by < -0.005:
		want[2] = fmt.Sprintf("%.2f° less", -by)
	}
	if got := row(rowRollLimit); got != want {
		t.Errorf("limit %q, want %q", got, want)
	}
}
