package holes

import (
	"math"
	"strings"
	"testing"

	"bowline/app/internal/screen"
	"bowline/app/panel/paneltest"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/holes"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// desk is a person who looks at the combinations of holes.
type desk struct {
	*paneltest.Desk
	p *Panel
}

// searching shows the combinations of the reference car.
func searching(t testing.TB) *desk {
	t.Helper()
	d := paneltest.Reference(t, New)
	return &desk{d, d.Panel.(*Panel)}
}

// demo shows those of the demo car.
func demo(t testing.TB) *desk {
	t.Helper()
	d := paneltest.Demo(t, New)
	return &desk{d, d.Panel.(*Panel)}
}

// texts compares words by what they are of.
func texts(t *testing.T, want map[string][2]string) {
	t.Helper()
	for what, w := range want {
		if w[0] != w[1] {
			t.Errorf("%s is\n%q, want\n%q", what, w[0], w[1])
		}
	}
}

func TestTheVerdictOnAllCombinations(t *testing.T) {
	d := searching(t)
	// Counted here from what the search found.
	met, k := 0, d.Doc.Car().Check
	in := func(x float64, r [2]float64) bool { return x >= r[0]-1e-9 && x <= r[1]+1e-9 }
	for _, c := range d.Study.Table().Combinations {
		if c.HasInstantCenter && in(c.AntiSquat, k.TargetAntiSquat) && in(c.InstantCenter.X, k.TargetICX) && in(c.InstantCenter.Y, k.TargetICZ) {
			met++
		}
	}
	if met != 21 {
		t.Fatalf("%d combinations meet the target", met)
	}
	inside := 0
	for _, place := range d.Study.Ranking() {
		if place.Inside {
			inside++
		}
	}
	if inside != met {
		t.Errorf("%d places are inside the target, want %d", inside, met)
	}
	wantRankingSaid(t, d)
	d.Study.SetWishes(holes.Wishes{Order: holes.LeastPush, OneBar: true})
	d.Settle()
	wantRankingSaid(t, d)
	d.Study.SetWishes(holes.Wishes{})
	d.Doc.Apply("Target", func(c *car.Car) { c.Check.TargetAntiSquat = [2]float64{9, 9.5} })
	d.Settle()
	if d.Study.Ranking()[0].Inside {
		t.Error("far from the target something meets it")
	}
	wantRankingSaid(t, d)
}

// wantRankingSaid wants the verdict to be of the ranking as it is.
func wantRankingSaid(t *testing.T, d *desk) {
	t.Helper()
	want := words.Ranking(d.Study.Ranking(), d.Study.Place(d.Study.Present()), d.Study.Wishes().Any())
	if got := d.p.verdict.Text(); got != want {
		t.Errorf("the verdict is\n%q, want\n%q", got, want)
	}
}

func TestWithoutCombinationsThereIsNoCard(t *testing.T) {
	d := searching(t)
	p := d.p
	if !p.chosen.object.Visible() {
		t.Error("there is no card")
	}
	d.Study.StopSearch()
	d.Doc.Apply("Another hole", func(c *car.Car) {
		c.Chassis.Upper = append(c.Chassis.Upper, c.Chassis.Upper[0])
		c.Chassis.Upper[3].Y += paneltest.Inch
	})
	d.Settle()
	if p.chosen.object.Visible() || p.list.Len() != 0 || p.verdict.Text() != "Every combination of holes is searched for the one nearest to the target." || p.progress.Text() != "The search was stopped." {
		t.Errorf("the verdict is %q, the progress %q, %d rows", p.verdict.Text(), p.progress.Text(), p.list.Len())
	}
	d.Study.ResumeSearch()
	d.Settle()
	if !p.chosen.object.Visible() || p.list.Len() != 48 {
		t.Errorf("%d rows", p.list.Len())
	}
}

func TestVerdictOfTheBest(t *testing.T) {
	d := searching(t)
	first := d.Study.Ranking()[0]
	d.Study.UseHoles(first.Holes())
	d.Settle()
	if o := d.Study.Place(d.Study.Present()); o.Rank != 1 || o.Holes() != first.Holes() {
		t.Errorf("in use are %s, rank %d", o.Holes(), o.Rank)
	}
	wantRankingSaid(t, d)
}

// entryWith returns the entry on the page that shows a text.
func entryWith(d *desk, text string) fyne.Focusable {
	d.T.Helper()
	for _, o := range screen.Seen(d.p.target.object) {
		if e, ok := o.(interface {
			fyne.Focusable
			SelectedText() string
		}); ok {
			d.Canvas().Focus(e)
			if e.SelectedText() == text {
				return e
			}
		}
	}
	d.T.Fatalf("there is no entry with %q", text)
	return nil
}

// typed types a text in place of what an entry holds, and Enter.
func typed(e fyne.Focusable, text string) {
	for _, r := range text {
		e.TypedRune(r)
	}
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func TestTheTargetIsTypedOnThePage(t *testing.T) {
	d := searching(t)
	p := d.p
	if got := p.folds.target.Title(); got != "Target and wishes: 100 to 160 %" || p.folds.target.IsOpen() {
		t.Errorf("the fold is %q, open %v", got, p.folds.target.IsOpen())
	}
	p.folds.target.Open(true)
	typed(entryWith(d, "160"), "120")
	d.Settle()
	if got := d.Doc.Car().Check.TargetAntiSquat; math.Abs(got[1]-1.2) > 1e-12 {
		t.Errorf("the target is %v", got)
	}
	if got := p.folds.target.Title(); got != "Target and wishes: 100 to 120 %" {
		t.Errorf("the fold is %q", got)
	}
	if strings.HasPrefix(p.verdict.Text(), "21 ") {
		t.Errorf("the verdict is still %q", p.verdict.Text())
	}
	typed(entryWith(d, "120"), "many")
	if d.p.CommitPending() {
		t.Error("a refused target is taken")
	}
	d.p.RestorePending()
	if !d.p.CommitPending() {
		t.Error("a refused target is not taken back")
	}
	d.Undo()
	d.Settle()
	if got := p.folds.target.Title(); got != "Target and wishes: 100 to 160 %" {
		t.Errorf("after undo the fold is %q", got)
	}
}

func TestWishesAreTicked(t *testing.T) {
	d := searching(t)
	p := d.p
	d.Doc.Apply("Limit", func(c *car.Car) { c.Check.PinionLimit = 0.02 })
	d.Settle()
	for i, want := range []holes.Wishes{
		{InTarget: true}, {InTarget: true, OneBar: true}, {InTarget: true, OneBar: true, InReach: true},
		{InTarget: true, OneBar: true, InReach: true, WithinPinion: true}, {InTarget: true, OneBar: true, InReach: true, WithinPinion: true, WithinLoad: true},
	} {
		test.Tap(p.target.checks[i])
		if got := d.Study.Wishes(); got != want {
			t.Errorf("after %q the wishes are %+v", p.target.checks[i].Text, got)
		}
	}
	p.target.order.SetSelected("fewest turns")
	d.Settle()
	if d.Study.Wishes().Order != holes.FewestTurns {
		t.Errorf("the order is %v", d.Study.Wishes().Order)
	}
	if got := p.folds.target.Title(); got != "Target and wishes: 100 to 160 %, 5 wishes" {
		t.Errorf("the fold is %q", got)
	}
	// Others may change them.
	d.Study.SetWishes(holes.Wishes{WithinLoad: true})
	d.Settle()
	for i, c := range p.target.checks {
		if c.Checked != (i == 4) {
			t.Errorf("%q is %v", c.Text, c.Checked)
		}
	}
	if p.target.order.Selected != "nearest to the target" || p.folds.target.Title() != "Target and wishes: 100 to 160 %, 1 wish" {
		t.Errorf("order %q, fold %q", p.target.order.Selected, p.folds.target.Title())
	}
}

// Without a limit of the pinion there is no wish to keep it.
func TestNoWishWithoutAPinionLimit(t *testing.T) {
	d := searching(t)
	p := d.p
	c := p.target.checks[3]
	limit := func(x float64) {
		t.Helper()
		if problems := d.Doc.Apply("Limit", func(c *car.Car) { c.Check.PinionLimit = x }); problems != nil {
			t.Fatal(problems)
		}
		d.Settle()
	}
	limit(0.02)
	test.Tap(c)
	d.Settle()
	if c.Text != "Within the pinion limit" || c.Disabled() || !c.Checked || !strings.Contains(p.verdict.Text(), "all wishes") || !strings.HasSuffix(p.folds.target.Title(), ", 1 wish") {
		t.Errorf("with a limit the box says %q, %v, %v; the verdict is %q under %q", c.Text, c.Disabled(), c.Checked, p.verdict.Text(), p.folds.target.Title())
	}
	limit(0)
	if c.Text != "No pinion limit set" || !c.Disabled() || c.Checked || strings.Contains(p.verdict.Text(), "wishes") || strings.Contains(p.folds.target.Title(), "wish,") || strings.HasSuffix(p.folds.target.Title(), "wish") {
		t.Errorf("without one the box says %q, %v, %v; the verdict is %q under %q", c.Text, c.Disabled(), c.Checked, p.verdict.Text(), p.folds.target.Title())
	}
	// The wish is there again with a limit.
	limit(0.02)
	if c.Disabled() || !c.Checked {
		t.Errorf("with a limit again the box is %v, %v", c.Disabled(), c.Checked)
	}
}

// A refresh with nothing new, as when the pointer moves over the side view.
func BenchmarkHolesRefresh(b *testing.B) {
	d := demo(b)
	i := 0
	for b.Loop() {
		i++
		d.Study.Pick(i % len(d.Study.Ranking()))
		d.p.Refresh()
	}
}

// A refresh with a new ranking.
func BenchmarkHolesRanked(b *testing.B) {
	d := demo(b)
	d.p.list.sort(3)
	on := false
	for b.Loop() {
		on = !on
		d.Study.SetWishes(holes.Wishes{OneBar: on})
		d.p.Refresh()
	}
}
