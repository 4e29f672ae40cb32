package holes

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/launch"

	"fyne.io/fyne/v2/test"
)

// titles are those of the list's columns.
func (d *desk) titles() (list []string) {
	for _, c := range d.p.list.columns {
		list = append(list, c.Key)
	}
	return list
}

// value returns what the list shows of a combination in a column.
func (d *desk) value(t *testing.T, index int, key string) string {
	t.Helper()
	at := slices.Index(d.titles(), key)
	row := slices.IndexFunc(d.p.list.places, func(p holes.Place) bool { return p.Index == index })
	if at < 0 || row < 0 {
		t.Fatalf("no column %s or no combination %d", key, index)
	}
	text, _ := d.p.list.Cell(row, at+1)
	return text
}

// tame halves the torque, so that the reference car does not go over.
func (d *desk) tame() *desk {
	d.Doc.Apply("Less torque", func(c *car.Car) { c.Drive.Torque /= 2 })
	d.Settle()
	return d
}

// A person ticks the box: what comes of the launches stands next to the holes, "not yet"
// before, and the panel says what the list rests on. Unticked, all of that is gone.
func TestEveryCombinationIsLaunched(t *testing.T) {
	d := searching(t).tame().all()
	p := d.p
	before := d.titles()
	if slices.Contains(before, "sixty_ft") || p.launches.basis.Text() != "Nearest to the target, by the side view alone." || p.launches.button.Visible() || p.chosen.launch.Visible() {
		t.Errorf("unasked, the list has %v and says %q", before, p.launches.basis.Text())
	}
	test.Tap(p.launches.check)
	p.Refresh()
	first := d.Study.Ranking()[0].Index
	if got := d.value(t, first, "sixty_ft"); got != "not yet" || !p.launches.button.Visible() || p.launches.button.Text != "Stop" || !p.launches.check.Checked {
		t.Errorf("begun, the best shows %q beside %q", got, p.launches.button.Text)
	}
	if got := p.launches.basis.Text(); got != "Nearest to the target; loads by side view and launch, 0 of 36 so far." {
		t.Errorf("begun, the panel says %q", got)
	}
	if got := d.titles()[:5]; !slices.Equal(got, []string{"holes", "sixty_ft", "envelope_share", "rear_apart", "front_lift"}) {
		t.Errorf("the columns begin with %v", got)
	}
	d.Settle()
	finished := 0
	for i := range d.Study.Ranking() {
		place := &d.Study.Ranking()[i]
		l, shown := place.Launch(), d.value(t, place.Index, "sixty_ft")
		if l == nil || (l.Outcome == launch.Finished) != (shown != "–") {
			t.Errorf("%s shows %q of %+v", place.Holes(), shown, l)
		}
		if l.Finished() {
			finished++
		}
	}
	if finished == 0 || p.launches.button.Visible() || p.launches.basis.Text() != words.RankedBy(d.Study.Ranking()) || !strings.HasSuffix(p.launches.basis.Text(), "; loads by side view and launch.") {
		t.Errorf("%d finished; the panel says %q", finished, p.launches.basis.Text())
	}
	if !p.chosen.launch.Visible() {
		t.Error("the card does not show the launch")
	}
	test.Tap(p.launches.check)
	d.Settle()
	if got := d.titles(); !slices.Equal(got, before) || p.chosen.launch.Visible() || d.Study.HolesLaunch().Phase != study.HolesOff {
		t.Errorf("unticked, the columns are %v", got)
	}
}

// What goes by launches has them made: an order, a condition. Unticked, they go.
func TestOrdersAndConditionsOfLaunches(t *testing.T) {
	d := searching(t).tame().all()
	p := d.p
	p.folds.target.Open(true)
	p.folds.filter.Open(true)
	p.target.order.SetSelected(holes.Quickest.String())
	d.Settle()
	best := d.Study.Ranking()[0]
	if !p.launches.check.Checked || !best.Launch().Finished() {
		t.Fatalf("ordered by time, the first is %+v", best.Launch())
	}
	for _, place := range d.Study.Ranking() {
		if l := place.Launch(); l.Finished() && l.SixtyFeet < best.Launch().SixtyFeet {
			t.Errorf("%s is quicker than the first", place.Holes())
		}
	}
	if !strings.HasPrefix(p.launches.basis.Text(), "Least time to 60 ft; ") {
		t.Errorf("the panel says %q", p.launches.basis.Text())
	}
	// Sorted by what goes, the list is sorted by rank afterwards.
	p.list.sort(slices.Index(d.titles(), "rear_apart") + 1)
	fifth := d.Study.Ranking()[4].Launch().SixtyFeet
	e := d.condition("sixty_ft", fmt.Sprintf("<=%.3f", fifth))
	if n := len(p.list.places); n < 5 || n == 36 {
		t.Errorf("%d come to 60 ft in %v s", n, fifth)
	}
	test.Tap(p.launches.check)
	d.Settle()
	if p.target.order.Selected != holes.NearestTarget.String() || e.Text != "" || len(p.list.places) != 36 || p.list.sorted() != listRank || len(d.Study.Conditions()) != 0 {
		t.Errorf("unticked, it is ordered %q with the condition %q, sorted by column %d, and lists %d", p.target.order.Selected, e.Text, p.list.sorted(), len(p.list.places))
	}
	d.condition("front_lift", "<1")
	if !p.launches.check.Checked {
		t.Error("a condition on the launch has nothing launched")
	}
}

// The limit of front lift is typed and ticked where the pinion's is, and marked in the
// list.
func TestTheLimitOfFrontLift(t *testing.T) {
	d := searching(t)
	p := d.p
	at := slices.IndexFunc(wishBoxes, func(b struct {
		words string
		in    func(*holes.Wishes) *bool
	}) bool {
		return b.words == withinLift
	})
	box := p.target.checks[at]
	if !box.Disabled() || box.Text != noLiftLimit {
		t.Errorf("without a limit the box says %q, to be ticked %v", box.Text, !box.Disabled())
	}
	d.Doc.Apply("Limit", func(c *car.Car) { c.Check.LiftLimit = 0.05 })
	d.Settle()
	if box.Disabled() || box.Text != withinLift {
		t.Errorf("with a limit it says %q, to be ticked %v", box.Text, !box.Disabled())
	}
	test.Tap(box)
	d.Settle()
	kept := 0
	for _, place := range d.Study.Ranking() {
		if place.Unmet&holes.WithinLift == 0 {
			kept++
			if place.Launch().Lift > 0.05 {
				t.Errorf("%s lifts %v", place.Holes(), place.Launch().Lift)
			}
		}
	}
	if !p.launches.check.Checked || !strings.HasSuffix(p.target.title(), ", 1 wish") {
		t.Errorf("the launches are wanted: %v, under %q; %d keep the limit", p.launches.check.Checked, p.target.title(), kept)
	}
}

// The dots take the color of a column that is chosen, and lose it with the launches.
func TestTheColorsOfTheDotsAreChosen(t *testing.T) {
	d := searching(t)
	p := d.p
	p.folds.target.Open(true)
	for _, name := range p.target.colors.Options {
		p.target.colors.SetSelected(name)
		d.Settle()
		column := d.Study.DotColumn()
		if first := name == p.target.colors.Options[0]; first != (column == nil) || !first && strings.ReplaceAll(column.Title, "\n", " ") != name {
			t.Errorf("%q colors by %+v", name, column)
		}
		if column != nil && column.OfLaunch && !p.launches.check.Checked {
			t.Errorf("%q has nothing launched", name)
		}
	}
	p.target.colors.SetSelected("60 ft")
	test.Tap(p.launches.check)
	d.Settle()
	if d.Study.DotColumn() != nil || p.target.colors.Selected != p.target.colors.Options[0] {
		t.Errorf("without launches it is %q", p.target.colors.Selected)
	}
}

// Stopped, the launches say so and go on; what there is stays.
func TestLaunchesAreStoppedOnThePage(t *testing.T) {
	d := searching(t)
	p := d.p
	test.Tap(p.launches.check)
	p.Refresh()
	test.Tap(p.launches.button)
	d.Settle()
	now := d.Study.HolesLaunch()
	if now.Phase != study.HolesStopped || p.launches.button.Text != "Go on" || !strings.Contains(p.launches.basis.Text(), "Stopped: ") {
		t.Fatalf("stopped at %+v it says %q beside %q", now, p.launches.basis.Text(), p.launches.button.Text)
	}
	test.Tap(p.launches.button)
	d.Settle()
	if d.Study.HolesLaunch().Phase != study.HolesDone || p.launches.button.Visible() {
		t.Errorf("gone on, they are at %+v", d.Study.HolesLaunch())
	}
}
