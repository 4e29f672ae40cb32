package around_test

import (
	"math"
	"slices"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/around"
	"bowline/assets"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// spreads returns how far apart the bars are by the car file's four numbers, in the order
// of car.Rows.
func spreads(c *car.Car) [4]float64 {
	return [4]float64{c.Chassis.SpreadUpper, c.Chassis.SpreadLower, c.Housing.SpreadUpper, c.Housing.SpreadLower}
}

// hold takes hold of the hole in use of a row on a side, where it is seen.
func (r *rig) hold(t *testing.T, v *around.Viewpoint, row car.Row, side scene.Side) (scene.Hold, *scene.Picture, r2.Vec) {
	t.Helper()
	p := r.look(v, around.FitBars)
	id := scene.ID{Kind: scene.Pivot, Side: side, Row: row, Index: r.Hole(row)}
	at, ok := p.Find(id)
	if !ok {
		t.Fatalf("there is no %+v", id)
	}
	if under := p.Pick(at); under.Row != row || under.Side != side {
		return nil, p, at // a hole of another row is in front of it
	}
	return v.Hands().Hold(p, at, false), p, at
}

// A hole dragged from above or from behind takes its like on the other side along: the bars
// go apart by twice as far, in steps of 1/16 in or 1 mm, as one step to undo.
func TestADragMovesTheBarsApart(t *testing.T) {
	for name, from := range map[string]around.From{"above": around.Above, "behind": around.Behind} {
		tried := map[car.Row]bool{}
		for i, row := range car.Rows {
			for side, y := range map[scene.Side]float64{scene.Left: 1, scene.Right: -1} {
				for system, step := range map[units.System]float64{units.US: inch / 16, units.SI: 0.001} {
					s := open(t, assets.DemoCar)
					s.Document().SetUnits(system)
					v := around.New(s.Study, from)
					hold, p, at := s.hold(t, v, row, side)
					if hold == nil {
						continue
					}
					tried[row] = true
					before := s.Document().Car()
					world := p.View.World(at)
					for _, out := range []float64{0.5, 1.27} {
						id, problems := hold.To(p.View, p.View.Screen(r3.Add(world, r3.Vec{Y: y * out * inch})))
						if len(problems) > 0 || id.Row != row || id.Side != side {
							t.Errorf("%s, %s: %+v, %v", name, row, id, problems)
						}
					}
					hold.End()
					got, want := spreads(s.Document().Car()), spreads(before)
					free := want[i] + 2*1.27*inch
					if math.Abs(got[i]-free) > step/2+1e-9 || math.Abs(math.Remainder(got[i], step)) > 1e-9 {
						t.Errorf("%s, %s, side %v, %v: %v m apart, want %v to the next step of %v", name, row, side, system, got[i], free, step)
					}
					if got[i] = want[i]; got != want {
						t.Errorf("%s, %s: the other spreads are %v, want %v", name, row, got, want)
					}
					s.Document().Undo()
					if s.Document().Car() != before && spreads(s.Document().Car()) != want {
						t.Errorf("%s, %s: undo leaves %v, want %v", name, row, spreads(s.Document().Car()), want)
					}
				}
			}
		}
		// Seen from above a lower hole may stand behind an upper one.
		if least := map[around.From]int{around.Above: 2, around.Behind: 4}[from]; len(tried) < least {
			t.Errorf("%s: only %d rows could be dragged", name, len(tried))
		}
	}
}

// A drag across the middle is refused in words and leaves the car alone; one that is taken
// back too. Around the car, and with Shift, a drag moves no hole.
func TestADragOfTheBarsIsRefused(t *testing.T) {
	s := open(t, assets.DemoCar)
	before := s.Document().Car()
	v := around.New(s.Study, around.Behind)
	hold, p, at := s.hold(t, v, car.ChassisUpper, scene.Left)
	_, problems := hold.To(p.View, p.View.Screen(r3.Add(p.View.World(at), r3.Vec{Y: -before.Chassis.SpreadUpper})))
	if len(problems) != 1 || problems[0].Path != "chassis_bracket.spread_upper" || s.Document().Car() != before {
		t.Errorf("across the middle: %v, %v m apart", problems, s.Document().Car().Chassis.SpreadUpper)
	}
	if _, problems := hold.To(p.View, r2.Add(at, r2.Vec{X: -30})); len(problems) > 0 || s.Document().Car() == before {
		t.Errorf("back on its side: %v", problems)
	}
	hold.Cancel()
	if got := spreads(s.Document().Car()); got != spreads(before) || s.Document().UndoLabel() != "" {
		t.Errorf("taken back: %v, to undo is %q", got, s.Document().UndoLabel())
	}
	if v.Hold(p, at, true) != nil {
		t.Error("with Shift the picture does not move")
	}
	round := around.New(s.Study, around.Around)
	hold, p, at = s.hold(t, round, car.ChassisUpper, scene.Right)
	hold.To(p.View, r2.Add(at, r2.Vec{X: 40}))
	hold.End()
	if spreads(s.Document().Car()) != spreads(before) {
		t.Error("a drag around the car moves holes")
	}
}

// A hole that can be dragged says so, and how far apart the bars are.
func TestAHoleSaysHowFarApartTheBarsAre(t *testing.T) {
	s := open(t, assets.DemoCar)
	v := around.New(s.Study, around.Above)
	id := scene.ID{Kind: scene.Pivot, Side: scene.Left, Row: car.HousingLower, Index: s.Hole(car.HousingLower)}
	want := "left and right bars " + s.Units().FormatExact(units.Length, s.Document().Car().Housing.SpreadLower) + " apart here"
	free, held := v.Describe(id, scene.Pointer{}), v.Describe(id, scene.Pointer{Hot: id, Held: true})
	if !slices.Contains(free, want) || !slices.Contains(held, want) || len(held) >= len(free) {
		t.Errorf("it says %q, and while it is held %q", free, held)
	}
	if v.Cursor(id) != scene.Upright || around.New(s.Study, around.Behind).Cursor(id) != scene.Across {
		t.Error("the cursor does not show which way it goes")
	}
}
