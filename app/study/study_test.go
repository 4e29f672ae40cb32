package study_test

import (
	"context"
	"math"
	"testing"

	"bowline/app/document"
	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/stock"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

const inch = 0.0254

// reference is the car file that the tests study: two setups, and brackets of
// 3, 3, 2 and 2 holes.
const reference = "../../testdata/reference.toml"

// rig is a study with the queue of the goroutine that owns it.
type rig struct {
	*study.Study
	queue    *runnertest.Queue
	launched []int // setups launched, in order
}

// open studies the reference car. Its launches are cut short.
func open(t testing.TB) *rig {
	t.Helper()
	r := &rig{queue: runnertest.NewQueue()}
	r.Study = study.NewWith(read(t), r.options(), func(ctx context.Context, c *car.Car, setup int, lib stock.Library, o launch.Options) (*launch.Result, error) {
		r.launched = append(r.launched, setup)
		o.Limit = 0.2
		return launch.Run(ctx, c, setup, lib, o)
	}, holes.Search)
	t.Cleanup(r.Close)
	return r
}

// read reads the reference car.
func read(t testing.TB) *document.Document {
	t.Helper()
	lib := carfile.Stock()
	f, err := carfile.Read(reference, lib)
	if err != nil {
		t.Fatal(err)
	}
	return document.New(lib, t.TempDir(), f)
}

func (r *rig) options() study.Options {
	return study.Options{Library: carfile.Stock(), Post: r.queue.Post}
}

// settle waits until the workers have handed over what they have.
func (r *rig) settle() { r.queue.Settle(r.Busy) }

// hear collects what the study tells.
func (r *rig) hear() *study.Change {
	heard := new(study.Change)
	r.Listen(func(c study.Change) { *heard |= c })
	return heard
}

func TestResultFollowsTheDocument(t *testing.T) {
	s := open(t)
	heard := s.hear()
	before := s.Station().AntiSquat
	if p := s.Choose(car.ChassisLower, 0); p != nil {
		t.Fatal(p)
	}
	if !heard.Has(study.Analysis) || s.Station().AntiSquat == before || s.Result().Car != s.Document().Car() {
		t.Errorf("heard %b, anti-squat %v after %v", *heard, s.Station().AntiSquat, before)
	}
	s.Document().Undo()
	if s.Station().AntiSquat != before {
		t.Errorf("after undo anti-squat is %v, not %v", s.Station().AntiSquat, before)
	}
}

func TestTravelStaysWithinTheSprings(t *testing.T) {
	s := open(t)
	s.SetTravel(1)
	if math.Abs(s.Travel()-3*inch) > 1e-12 || s.Station().Pose.Travel != s.Travel() {
		t.Errorf("travel %v", s.Travel())
	}
	s.SetTravel(-2 * inch)
	s.Document().Apply("Less droop", func(c *car.Car) { c.Springs.RearDroop = inch })
	if s.Travel() != -inch {
		t.Errorf("after the droop went down to 1 in, travel is %v", s.Travel())
	}
	s.SetFront(0.05)
	if s.Station().Pose.FrontTravel != 0.05 || s.Result().Travel[0].Pose.FrontTravel != 0.05 {
		t.Error("front travel did not reach the station and the sweep")
	}
}

// A point of the picture comes back to the hole it shows, whatever the travel.
func TestLocalUndoesThePose(t *testing.T) {
	s := open(t)
	for _, q := range []float64{0, -0.08, 0.06} {
		s.SetTravel(q)
		s.SetFront(q / 2)
		p := &s.Station().Pose
		for row, at := range map[car.Row]r2.Vec{car.ChassisUpper: p.ChassisUpper, car.ChassisLower: p.ChassisLower, car.HousingUpper: p.HousingUpper, car.HousingLower: p.HousingLower} {
			ground := p.Ground.Point(at)
			want := row.Hole(s.Document().Car(), 0)
			if got := s.Local(row, ground); r2.Norm(r2.Sub(got, want)) > 1e-9 {
				t.Errorf("travel %v, %s: %v, want %v", q, row, got, want)
			}
			if got := s.Nearest(row, ground); got != s.Hole(row) {
				t.Errorf("travel %v, %s: nearest hole %d, used %d", q, row, got, s.Hole(row))
			}
		}
	}
}

func TestMovedHoleIsRoundedAsTyped(t *testing.T) {
	s := open(t)
	to := s.Station().Pose.Ground.Point(r2.Vec{X: 22.533333 * inch, Y: 17.118 * inch})
	if p := s.Move(car.ChassisUpper, 2, to); p != nil {
		t.Fatal(p)
	}
	h := s.Document().Car().Chassis.Upper[2]
	if u := units.US; u.Exact(units.Length, h.X) != 22.53 || u.Exact(units.Length, h.Y) != 17.12 {
		t.Errorf("hole at %v in, %v in", u.Exact(units.Length, h.X), u.Exact(units.Length, h.Y))
	}
}

func TestNudge(t *testing.T) {
	s := open(t)
	s.Select(car.HousingUpper)
	s.Nudge(1, -study.NudgeFast)
	h := s.Document().Car().Housing.Upper[0]
	if u := units.US; u.Exact(units.Length, h.X) != 2.5625 || u.Exact(units.Length, h.Y) != 5.875 {
		t.Errorf("hole at %v", h)
	}
	s.Document().Undo()
	s.Document().SetUnits(units.SI)
	s.Nudge(0, 1)
	if h := s.Document().Car().Housing.Upper[0]; math.Abs(h.Y-(6.5*inch+0.001)) > 1e-12 || h.X != 2.5*inch {
		t.Errorf("hole at %v", h)
	}
}

func TestMoveBracketMovesAllItsHolesFromWhereTheyWere(t *testing.T) {
	s := open(t)
	before := s.Document().Car()
	s.MoveBracket(true, before, r2.Vec{X: inch})
	s.MoveBracket(true, before, r2.Vec{X: 0.5 * inch, Y: -0.25 * inch})
	after := s.Document().Car()
	for _, row := range car.Rows {
		for i, h := range *row.In(before) {
			want := h
			if row.OnChassis() {
				want = r2.Add(h, r2.Vec{X: 0.5 * inch, Y: -0.25 * inch})
			}
			if got := (*row.In(after))[i]; r2.Norm(r2.Sub(got, want)) > 1e-12 {
				t.Errorf("%s hole %d at %v, want %v", row, i+1, got, want)
			}
		}
	}
}

func TestRefusedEditLeavesEverything(t *testing.T) {
	s := open(t)
	result := s.Result()
	onHousing := s.Station().Pose.Ground.Point(s.Station().Pose.HousingUpper)
	if p := s.Move(car.ChassisUpper, 2, onHousing); len(p) == 0 {
		t.Fatal("a bar without length was taken")
	}
	if s.Result() != result {
		t.Error("a refused edit changed the result")
	}
}

func TestCaseAndPivotAreChoices(t *testing.T) {
	s := open(t)
	var heard []study.Change
	s.Listen(func(c study.Change) { heard = append(heard, c) })
	s.SetCase(analysis.Hooked)
	s.SetCase(analysis.Hooked)
	s.Select(car.HousingLower)
	s.SetMoving(true)
	if len(heard) != 3 || heard[0] != study.Choice || s.Document().UndoLabel() != "" {
		t.Errorf("heard %v, undo %q", heard, s.Document().UndoLabel())
	}
}
