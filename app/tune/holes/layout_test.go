package holes

import (
	"slices"
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/listing"
	"bowline/app/panel/paneltest"
	"bowline/assets"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// openAll opens the folds of the words.
func (d *desk) openAll(on bool) {
	for _, f := range []*form.Fold{d.p.folds.target, d.p.folds.filter, d.p.folds.worth} {
		f.Open(on)
	}
}

// The words are of use in the least room that the window gives them: nothing is wider,
// and a field that gets the focus comes into sight.
func TestTheWordsFitTheirRoom(t *testing.T) {
	d := searching(t)
	p := d.p
	d.openAll(true)
	if w := p.Words().MinSize().Width; w > paneltest.PanelWidth {
		t.Errorf("the words ask for a width of %.0f", w)
	}
	for _, o := range screen.Seen(p.Words()) {
		if b, ok := o.(*widget.Button); ok && b.MinSize().Width > b.Size().Width+0.5 {
			t.Errorf("button %q is %.0f wide and asks for %.0f", b.Text, b.Size().Width, b.MinSize().Width)
		}
		if c, ok := o.(*form.Check); ok && c.MinSize().Width > c.Size().Width+0.5 {
			t.Errorf("check %q is %.0f wide and asks for %.0f", c.Text, c.Size().Width, c.MinSize().Width)
		}
	}
	const across = paneltest.PanelWidth / filterAcross
	for _, u := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(u)
		d.Settle()
		for _, e := range p.filter.fields {
			if w := fyne.MeasureText(e.label.Text(), theme.CaptionTextSize(), fyne.TextStyle{}).Width; w > across-3*theme.Padding() {
				t.Errorf("the label %q is %.0f wide and has %.0f", e.label.Text(), w, across-3*theme.Padding())
			}
		}
	}
	last, page := p.filter.fields[len(p.filter.fields)-1], p.page.Scroll
	for _, e := range []*filterField{last, p.filter.fields[0]} {
		page.ScrollToBottom()
		d.Canvas().Focus(e.Entry)
		driver := fyne.CurrentApp().Driver()
		top := driver.AbsolutePositionForObject(e.Entry).Y - driver.AbsolutePositionForObject(page).Y
		if top < -0.5 || top+e.Size().Height > page.Size().Height+0.5 {
			t.Errorf("the field of %s is at %.0f in %.0f", e.title(), top, page.Size().Height)
		}
	}
}

// On the page nothing is higher than it is written, whatever has just opened or been
// refused: what had no width has no say.
func TestNoGapsOnThePage(t *testing.T) {
	d := searching(t)
	p := d.p
	tight := func(when string) {
		t.Helper()
		// Each part as high as it is at its width, found from inside to outside.
		var settle func(o fyne.CanvasObject)
		settle = func(o fyne.CanvasObject) {
			if c, ok := o.(*fyne.Container); ok && c.Visible() {
				for _, part := range c.Objects {
					settle(part)
				}
				c.Layout.Layout(c.Objects, c.Size())
			}
		}
		got := p.Words().Size().Height
		for range 4 {
			settle(p.Words())
		}
		if want := p.Words().MinSize().Height; got < want-0.5 || got > want+0.5 {
			t.Errorf("%s the words have %.1f and need %.1f", when, got, want)
		}
	}
	tight("closed")
	p.folds.filter.Open(true)
	tight("with the filter open")
	e := d.condition("anti_squat", "about as much as there was at the race before the last one")
	if !e.Why().Visible() {
		t.Fatal("nothing is refused")
	}
	tight("with a condition refused")
	if w := p.Words().MinSize().Width; w > paneltest.PanelWidth {
		t.Errorf("a long text makes the words ask for a width of %.0f", w)
	}
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	tight("with the condition back")
	d.openAll(true)
	tight("with all open")
	typed(entryWith(d, "160"), "many")
	d.Settle()
	tight("with a target refused")
	d.openAll(false)
	tight("closed again")
}

// The list shows as many columns as there is room for, none of them cut off, and those
// that a choice of holes goes by in a window of the usual width; with All columns ticked
// there are all, and they scroll.
func TestTheColumnsFitTheList(t *testing.T) {
	d := demo(t)
	const usualWidth = 720 // of the list in a window 1440 wide [px]
	l := d.p.list
	for _, launched := range []bool{false, true} {
		d.Study.LaunchHoles(launched)
		l.refresh()
		before := 0
		for _, width := range []float32{360, 560, usualWidth, 1000, 1700, 3000} {
			l.object.Resize(fyne.NewSize(width, 300))
			sum := float32(0)
			for i := range l.headings() {
				sum += l.table.ColumnWidth(i)
			}
			if sum > width-listing.BarWidth || len(l.headings()) < before || len(l.columns) < 3 {
				t.Errorf("%d columns take %v in %v", len(l.headings()), sum, width)
			}
			before = len(l.headings())
			if width != usualWidth {
				continue
			}
			wanted := []string{"instant_center_x", "instant_center_z", "anti_squat", "highest_share", "upper_turns", "lower_turns"}
			if launched {
				wanted = []string{"sixty_ft", "envelope_share", "rear_apart", "front_lift", "anti_squat"}
			}
			for _, key := range wanted {
				if !slices.Contains(d.titles(), key) {
					t.Errorf("launched %v, %v wide, the list has %v without %s", launched, width, d.titles(), key)
				}
			}
		}
		all := 2 // ranks and reasons
		for _, c := range holes.Columns {
			if c.Uses&holes.OnScreen != 0 && (launched || !c.OfLaunch) {
				all++
			}
		}
		if len(l.headings()) != all {
			t.Errorf("with room for all, there are %d of %d columns", len(l.headings()), all)
		}
		l.object.Resize(fyne.NewSize(360, 300))
		// What the list is sorted by stays in sight.
		d.all()
		l.sort(len(l.columns))
		by := d.titles()[len(l.columns)-1]
		test.Tap(l.every)
		if len(l.headings()) == all || !slices.Contains(d.titles(), by) {
			t.Errorf("sorted by %s, the list has %v", by, d.titles())
		}
		l.sort(l.sorted())
		l.sort(l.sorted())
	}
}

// all has every column shown.
func (d *desk) all() *desk {
	if !d.p.list.every.Checked {
		test.Tap(d.p.list.every)
	}
	return d
}

// What stands below the verdict does not move with its length.
func TestTheVerdictHasSteadyRoom(t *testing.T) {
	d := demo(t)
	p := d.p
	heights, lengths := map[float32]bool{}, map[int]bool{}
	for i := range 40 {
		d.Study.UseHoles(d.Study.Ranking()[i*len(d.Study.Ranking())/40].Holes())
		d.Settle()
		heights[p.folds.target.Object.Position().Y], lengths[len(p.verdict.Text())] = true, true
	}
	if len(heights) != 1 || len(lengths) < 10 {
		t.Errorf("verdicts of %d lengths have the heights %v", len(lengths), heights)
	}
}

// The widths of the tables on the page, as TestTablesFitTheirPanel has them, but
// with three columns of values.
func TestTheTablesOfThePageFit(t *testing.T) {
	d := demo(t)
	const shortName = paneltest.PanelWidth*changeNameShare - 2*paneltest.TextGap
	rooms := [3]float32{paneltest.PanelWidth*changeValueShare - paneltest.TextGap, paneltest.PanelWidth*changeValueShare - paneltest.TextGap, paneltest.PanelWidth*changeWordsShare - paneltest.TextGap}
	for _, name := range assets.CarNames() {
		d.Example(name)
		p := d.p
		p.folds.worth.Open(true)
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			for _, index := range []int{0, len(d.Study.Ranking()) / 2, len(d.Study.Ranking()) - 1} {
				d.Study.Pick(index)
				d.Settle()
				for row, what := range changeNames {
					paneltest.WantRoom(t, name, what, false, shortName)
					for column, room := range rooms {
						paneltest.WantRoom(t, name+", "+what, p.chosen.changes.Text(row, column), false, room)
					}
				}
				for row, what := range rowNames {
					paneltest.WantRoom(t, name, what+", down", false, paneltest.NameRoom-theme.Padding())
					for column := range 2 {
						paneltest.WantRoom(t, name+", "+what, p.worth.steps.Text(2*row, column), false, paneltest.ValueRoom)
						paneltest.WantRoom(t, name+", "+what, p.worth.steps.Text(2*row+1, column), false, paneltest.ValueRoom)
						paneltest.WantRoom(t, name+", "+what, p.worth.rates.Text(row, column), false, paneltest.ValueRoom)
						paneltest.WantRoom(t, name, p.worth.rates.Heading(column), true, paneltest.ValueRoom)
						paneltest.WantRoom(t, name, p.worth.steps.Heading(column), true, paneltest.ValueRoom)
					}
				}
			}
		}
	}
}

func TestTheFontHasEveryLetterOfThePage(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := searching(t).all()
	for _, u := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(u)
		d.Study.Pick(0)
		d.Settle()
		p := d.p
		for _, prose := range []*form.Prose{p.verdict, p.chosen.title, p.chosen.reason, p.chosen.rest, p.chosen.order, p.chosen.pairs[0], p.chosen.pairs[1]} {
			check(prose.Text())
		}
		for row := range p.list.places {
			for column := range p.list.headings() {
				text, _ := p.list.Cell(row, column)
				check(text)
			}
		}
		for _, h := range p.list.headings() {
			check(h.Title + h.Unit)
		}
	}
	if *letters < 3000 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
