package study_test

import (
	"context"
	"math"
	"reflect"
	"slices"
	"testing"

	"bowline/app/document"
	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/holes"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// searched opens the reference car with all its combinations found, and listens.
func searched(t *testing.T) (s *rig, heard *study.Change) {
	t.Helper()
	s = open(t)
	heard = s.hear()
	s.Want(study.WantsSearch)
	s.settle()
	return s, heard
}

// find searches a car.
func find(t *testing.T, s *rig, c *car.Car) *holes.Table {
	t.Helper()
	table, err := holes.Search(context.Background(), c, s.Library(), holes.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// apply makes an edit that must be taken.
func apply(t *testing.T, s *rig, edit func(*car.Car)) {
	t.Helper()
	if p := s.Document().Apply("Edit", edit); len(p) > 0 {
		t.Fatal(p)
	}
}

// harmless are edits that leave the combinations as they are.
var harmless = map[string]func(*car.Car){
	"name":    func(c *car.Car) { c.Body.Name = "Another" },
	"setup":   func(c *car.Car) { c.Setups[0].Holes.ChassisUpper = 0 },
	"turns":   func(c *car.Car) { c.Setups[0].Turns.UpperLeft = 1 },
	"note":    func(c *car.Car) { c.Setups[0].Note = "loose" },
	"new":     func(c *car.Car) { c.Setups = append(c.Setups, car.Setup{Name: "third"}) },
	"target":  func(c *car.Car) { c.Check.TargetAntiSquat = [2]float64{1, 1.1} },
	"ahead":   func(c *car.Car) { c.Check.TargetICX[0] = 1 },
	"above":   func(c *car.Car) { c.Check.TargetICZ[0] = 0.01 },
	"pinion":  func(c *car.Car) { c.Check.PinionLimit = 0.05 },
	"threads": func(c *car.Car) { c.UpperBar.Threads.Shown = 4 },
	"driveline": func(c *car.Car) {
		c.Driveline = car.Driveline{Given: true, PinionJoint: r2.Vec{X: 0.2}, TransmissionJoint: r2.Vec{X: 1.2, Y: 0.4}}
	},
	"launch": func(c *car.Car) { c.Launch.Inertia.Roll = 300 },
}

func TestWhatMakesTheCombinationsOutdated(t *testing.T) {
	s, _ := searched(t)
	if s.TableOutdated() {
		t.Fatal("combinations just found are outdated")
	}
	for what, edit := range harmless {
		apply(t, s, edit)
		if s.TableOutdated() {
			t.Errorf("%s makes them outdated", what)
		}
		s.Document().Undo()
	}
	for what, edit := range map[string]func(*car.Car){
		"hole":      func(c *car.Car) { c.Chassis.Upper[0].Y += 0.001 },
		"wheelbase": func(c *car.Car) { c.Body.Wheelbase += 0.001 },
		"CG":        func(c *car.Car) { c.Body.CGHeight += 0.001 },
		"tube":      func(c *car.Car) { c.LowerBar.OD += 0.001 },
		"droop":     func(c *car.Car) { c.Springs.RearDroop -= 0.001 },
		"torque":    func(c *car.Car) { c.Drive.Torque -= 1 },
		"grip":      func(c *car.Car) { c.Tires.Grip -= 0.1 },
		"factor":    func(c *car.Car) { c.Check.Factor += 0.1 },
		"curve":     func(c *car.Car) { c.Check.Column = "perry" },
	} {
		apply(t, s, edit)
		if !s.TableOutdated() {
			t.Errorf("%s does not make them outdated", what)
		}
		s.Document().Undo()
		if s.TableOutdated() {
			t.Errorf("%s taken back leaves them outdated", what)
		}
	}
}

// What is said not to matter to the search does not: it finds the same.
func TestTheSearchDoesNotDependOnHarmlessEdits(t *testing.T) {
	s, _ := searched(t)
	want := s.Table().Combinations
	for what, edit := range harmless {
		c := s.Document().Car().Clone()
		edit(c)
		if p := c.Validate(s.Library(), units.US); len(p) > 0 {
			t.Fatalf("%s: %v", what, p)
		}
		if !reflect.DeepEqual(find(t, s, c).Combinations, want) {
			t.Errorf("%s changes what is found", what)
		}
	}
}

func TestTheRankingFollowsSetupTargetAndWishes(t *testing.T) {
	s, heard := searched(t)
	check := func(what string) {
		t.Helper()
		c := s.Document().Car()
		want := holes.Rank(s.Table(), c, s.Document().Setup(), holes.TargetOf(c), s.Wishes())
		got := s.Ranking()
		if !slices.EqualFunc(got, want, func(a, b holes.Place) bool {
			return a.Index == b.Index && a.Rank == b.Rank && a.Present == b.Present && a.Turns == b.Turns && a.Unmet == b.Unmet && a.Distance == b.Distance
		}) {
			t.Errorf("%s: the ranking is another one", what)
		}
		if !heard.Has(study.Ranking) {
			t.Errorf("%s: nobody hears of it", what)
		}
		for i := range got {
			if p := s.Place(got[i].Index); p != &got[i] {
				t.Errorf("%s: combination %d is not found at rank %d", what, got[i].Index, i+1)
			}
		}
		*heard = 0
	}
	check("found")
	if n := len(s.Ranking()); n != 3*3*2*2 {
		t.Errorf("%d combinations", n)
	}
	first := s.Ranking()[0].Index
	s.Document().SelectSetup(1)
	check("another setup")
	if p := s.Place(s.Present()); !p.Present || p.MovedEnds() != 0 {
		t.Errorf("the holes in use are at %+v", p)
	}
	apply(t, s, func(c *car.Car) { c.Check.TargetAntiSquat = [2]float64{0.3, 0.5} })
	check("another target")
	if s.Ranking()[0].Index == first {
		t.Error("a target far away has the same best combination")
	}
	s.SetWishes(holes.Wishes{Order: holes.FewestTurns, OneBar: true})
	check("wishes")
	if best := &s.Ranking()[0]; best.AllTurns() > 1e-9 || best.Unmet != 0 {
		t.Errorf("the fewest turns are %v, with %d wishes unmet", best.AllTurns(), best.Unmet)
	}
	s.SetWishes(s.Wishes())
	if heard.Has(study.Ranking) {
		t.Error("the same wishes are told as others")
	}
}

// Places stay while combinations are outdated, and with them what is pointed at
// and picked; so they do when newer ones come.
func TestPointedAndPickedOutliveASearch(t *testing.T) {
	s, heard := searched(t)
	s.Point(5)
	s.Pick(7)
	if !heard.Has(study.Pointing) || s.Pointed() != 5 || s.Picked() != 7 {
		t.Fatalf("pointed at %d, picked %d, heard %b", s.Pointed(), s.Picked(), *heard)
	}
	places := slices.Clone(s.Ranking())
	apply(t, s, func(c *car.Car) { c.Chassis.Upper[0].Y += 0.01 })
	if !s.TableOutdated() || len(s.Ranking()) != len(places) || s.Ranking()[3].Index != places[3].Index {
		t.Error("places of the car before do not stay")
	}
	s.settle()
	if s.TableOutdated() || s.Pointed() != 5 || s.Picked() != 7 {
		t.Errorf("after the new search pointed at %d, picked %d", s.Pointed(), s.Picked())
	}
	*heard = 0
	revision := s.RankingRevision()
	s.Point(5)
	s.Pick(7)
	if *heard != 0 {
		t.Errorf("the same again is told: %b", *heard)
	}
	s.Point(len(places))
	s.Pick(-3)
	s.SetTravel(0.01)
	s.Document().SetUnits(units.SI)
	if s.RankingRevision() != revision {
		t.Error("what does not matter to the list raises its revision")
	}
	if s.Pointed() != study.None || s.Picked() != study.None {
		t.Errorf("combinations that are not there: %d, %d", s.Pointed(), s.Picked())
	}
}

func TestOtherNumbersOfHolesForget(t *testing.T) {
	s, _ := searched(t)
	s.Point(5)
	s.Pick(7)
	apply(t, s, func(c *car.Car) { c.Body.CGHeight += inch })
	s.queue.Wait() // combinations of the three holes are found, and not handed over yet
	apply(t, s, func(c *car.Car) { c.Chassis.Upper = append(c.Chassis.Upper, r2.Vec{X: 22.5 * inch, Y: 16.25 * inch}) })
	if s.Table() != nil || len(s.Ranking()) != 0 || len(s.Listed()) != 0 || s.Pointed() != study.None || s.Picked() != study.None || s.Present() != study.None || s.Place(0) != nil || s.IsListed(0) {
		t.Error("combinations of fewer holes are still there")
	}
	if !s.queue.Step() || s.Table() != nil {
		t.Error("combinations of fewer holes are taken")
	}
	s.settle()
	if n := len(s.Ranking()); n != 4*3*2*2 {
		t.Errorf("%d combinations", n)
	}
}

func TestConditionsList(t *testing.T) {
	s, heard := searched(t)
	column, _ := holes.ColumnOf("anti_squat")
	condition, err := column.Parse("100 to 130", units.US)
	if err != nil {
		t.Fatal(err)
	}
	*heard = 0
	revision := s.RankingRevision()
	s.SetConditions([]holes.ColumnCondition{{Column: column, Condition: condition}})
	if s.RankingRevision() == revision {
		t.Error("the list's revision stays")
	}
	if !heard.Has(study.Ranking) {
		t.Error("nobody hears of it")
	}
	want := 0
	for i := range s.Table().Combinations {
		c := &s.Table().Combinations[i]
		x := math.Round(1000*c.AntiSquat) / 10
		met := c.Usable() && c.HasAntiSquat && x >= 100 && x <= 130
		if met {
			want++
		}
		if s.IsListed(i) != met {
			t.Errorf("combination %d with %.2f %% is listed: %v", i, 100*c.AntiSquat, s.IsListed(i))
		}
	}
	if len(s.Listed()) != want || want == 0 || want == len(s.Ranking()) {
		t.Errorf("%d of %d are listed, want %d", len(s.Listed()), len(s.Ranking()), want)
	}
	for i := 1; i < len(s.Listed()); i++ {
		if s.Listed()[i].Rank <= s.Listed()[i-1].Rank {
			t.Error("they are not listed by rank")
		}
	}
	// They hold for other cars too, until they are taken back.
	found := s.Table()
	apply(t, s, func(c *car.Car) { c.Body.CGHeight += inch })
	s.settle()
	s.Document().Undo()
	s.settle()
	if s.Table() == found {
		t.Fatal("there was no other search")
	}
	if len(s.Listed()) != want {
		t.Errorf("after another search %d are listed, want %d", len(s.Listed()), want)
	}
	s.SetConditions(nil)
	if len(s.Listed()) != len(s.Ranking()) {
		t.Error("without conditions some are missing")
	}
}

func TestHolesAreUsedAndKept(t *testing.T) {
	s, _ := searched(t)
	doc := s.Document()
	before := doc.Car()
	to := car.Holes{ChassisUpper: 0, ChassisLower: 2, HousingUpper: 1, HousingLower: 0}
	if p := s.UseHoles(to); p != nil {
		t.Fatal(p)
	}
	if got := doc.Car().Setups[0].Holes; got != to || doc.UndoLabel() != "Use holes 1·3·2·1" {
		t.Errorf("the setup uses %v, undo says %q", got, doc.UndoLabel())
	}
	if s.Present() != s.Table().Index(to) || s.TableOutdated() {
		t.Error("the holes in use are not the present ones")
	}
	doc.Undo()
	if !reflect.DeepEqual(doc.Car(), before) {
		t.Error("undo leaves another car")
	}

	if had, p := s.KeepHoles(to); p != nil || had {
		t.Fatal(had, p)
	}
	setups := doc.Car().Setups
	if len(setups) != len(before.Setups)+1 || doc.Setup() != 1 || setups[1].Name != "holes 1·3·2·1" || setups[1].Holes != to || !reflect.DeepEqual(setups[0], before.Setups[0]) {
		t.Errorf("setups %+v, current %d", setups, doc.Setup())
	}
	// Kept once more, from it and from the setup before, it is the same one.
	kept := doc.Car()
	for _, from := range []int{1, 0} {
		doc.SelectSetup(from)
		if had, p := s.KeepHoles(to); p != nil || !had || doc.Setup() != 1 || doc.Car() != kept {
			t.Errorf("from setup %d: had it %v, %v, current %d of %d", from, had, p, doc.Setup(), len(doc.Car().Setups))
		}
	}
	// With other turns it is another one.
	doc.SelectSetup(0)
	doc.Apply("Turns", func(c *car.Car) { c.Setups[0].Turns.LowerLeft = 1 })
	if had, p := s.KeepHoles(to); p != nil || had || len(doc.Car().Setups) != len(kept.Setups)+1 {
		t.Errorf("with other turns: had it %v, %v", had, p)
	}
	doc.Undo()
	doc.Undo()
	doc.Undo()
	if !reflect.DeepEqual(doc.Car(), before) || doc.Setup() != 0 {
		t.Errorf("undo leaves setup %d of %d", doc.Setup(), len(doc.Car().Setups))
	}
}

// Nobody looks, nothing is ranked.
func TestAnEditCostsNothingWhileNobodyLooks(t *testing.T) {
	s, _ := searched(t)
	s.Ranking()
	s.Document().SelectSetup(1)
	if !s.Unranked() {
		t.Error("the combinations are ranked though nobody has looked")
	}
	if p := s.Place(s.Present()); !p.Present || s.Unranked() {
		t.Error("whoever looks sees an older ranking")
	}
}

// Of the example car with the largest brackets.
func BenchmarkOrder(b *testing.B) {
	lib := carfile.Stock()
	f, err := carfile.Read("../../assets/cars/saltgrass-7.toml", lib)
	if err != nil {
		b.Fatal(err)
	}
	queue := runnertest.NewQueue()
	s := study.New(document.New(lib, b.TempDir(), f), study.Options{Library: lib, Post: queue.Post})
	defer s.Close()
	s.Want(study.WantsSearch)
	queue.Settle(s.Busy)
	column, _ := holes.ColumnOf("hit_lower_push")
	condition, err := column.Parse(">5000", units.US)
	if err != nil {
		b.Fatal(err)
	}
	s.SetConditions([]holes.ColumnCondition{{Column: column, Condition: condition}})
	for b.Loop() {
		w := s.Wishes()
		w.OneBar = !w.OneBar
		s.SetWishes(w)
		holes.Sort(slices.Clone(s.Listed()), column, true)
	}
	b.ReportMetric(float64(len(s.Listed())), "listed")
}
