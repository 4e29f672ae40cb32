package holes

import (
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/panel/paneltest"
	"bowline/assets"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// lay gives the page a size of its own.
func lay(p *Panel, width, height float32) {
	p.object.Resize(fyne.NewSize(width, height))
	p.page.Refresh()
}

// The page is of use in the least room that the window gives it: nothing is
// wider, the list has rows, and folds that are open leave them.
func TestThePageFitsItsRoom(t *testing.T) {
	d := searching(t)
	p := d.p
	if w := p.object.MinSize().Width; w > paneltest.PageWidth {
		t.Errorf("the page asks for a width of %.0f", w)
	}
	for _, fold := range []*form.Fold{nil, p.folds.target, p.folds.filter} {
		if fold != nil {
			fold.Open(true)
		}
		for _, height := range []float32{560, 430} {
			lay(p, paneltest.PageWidth, height)
			if size := p.page.Size(); size.Height > height+0.5 || size.Width > paneltest.PageWidth+0.5 {
				t.Errorf("in %v the page takes %v", height, size)
			}
			if got := p.list.table.Size().Height; got < 105 {
				t.Errorf("at a height of %v the list has %v", height, got)
			}
		}
	}
	lay(p, paneltest.PageWidth, 560)
	for _, o := range screen.Seen(p.object) {
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
	// A field that gets the focus comes into sight.
	last := p.filter.fields[len(p.filter.fields)-1]
	for _, e := range []*filterField{last, p.filter.fields[0]} {
		d.Canvas().Focus(e.Entry)
		driver := fyne.CurrentApp().Driver()
		top := driver.AbsolutePositionForObject(e.Entry).Y - driver.AbsolutePositionForObject(p.tools).Y
		if top < -0.5 || top+e.Size().Height > p.tools.Size().Height+0.5 {
			t.Errorf("the field of %s is at %.0f in %.0f", e.title(), top, p.tools.Size().Height)
		}
	}
	// A very low page scrolls.
	lay(p, paneltest.PageWidth, 150)
	if p.page.Size().Height < leastList {
		t.Errorf("in 150 the page is %v high", p.page.Size().Height)
	}
}

// Above the list nothing is higher than it is written, whatever has just opened
// or been refused: what had no width has no say.
func TestNoGapAboveTheList(t *testing.T) {
	d := searching(t)
	p := d.p
	lay(p, paneltest.PageWidth, 2000)
	tight := func(when string) {
		t.Helper()
		// Each part as high as it is at its width, found from inside to outside.
		var height func(o fyne.CanvasObject)
		height = func(o fyne.CanvasObject) {
			if c, ok := o.(*fyne.Container); ok && c.Visible() {
				for _, part := range c.Objects {
					height(part)
				}
				c.Layout.Layout(c.Objects, c.Size())
			}
		}
		got := p.tools.Size().Height
		for range 4 {
			height(p.tools.Content)
		}
		if want := p.tools.Content.MinSize().Height; got < want-0.5 || got > want+0.5 {
			t.Errorf("%s the tools have %.1f and need %.1f", when, got, want)
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
	if w := p.tools.Content.MinSize().Width; w > paneltest.PageWidth {
		t.Errorf("a long text makes the tools ask for a width of %.0f", w)
	}
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	tight("with the condition back")
	p.folds.target.Open(true)
	tight("with both open")
	typed(entryWith(d, "160"), "many")
	d.Settle()
	tight("with a target refused")
	p.folds.filter.Open(false)
	p.folds.target.Open(false)
	tight("closed again")
}

// rowsSeen is how many rows of the list are in sight whole.
func rowsSeen(p *Panel) int {
	table := p.list.table
	free := table.Size().Height - table.MinSize().Height
	return 3 + int(free/float32(int(theme.TextSize()*1.5+0.5)))
}

// While a tool is open the card gives its room to the list, and gets it back.
func TestTheListKeepsItsRows(t *testing.T) {
	d := demo(t)
	p := d.p
	split := p.split
	for _, size := range []struct {
		height float32
		rows   int
	}{{545, 6}, {825, 10}} {
		lay(p, paneltest.PageWidth, size.height)
		for _, f := range []*form.Fold{p.folds.target, p.folds.filter} {
			before := split.Offset
			f.Open(true)
			if got := rowsSeen(p); got < size.rows {
				t.Errorf("with %q open in %v the list shows %d rows", f.Title(), size.height, got)
			}
			below := split.Trailing.Size().Height
			if least := p.chosen.buttons.Position().Y + p.chosen.buttons.Size().Height; below < least-0.5 {
				t.Errorf("with %q open in %v the card has %.0f and its buttons end at %.0f", f.Title(), size.height, below, least)
			}
			f.Open(false)
			if split.Offset != before {
				t.Errorf("closed again the list has the part %v, had %v", split.Offset, before)
			}
		}
	}
	// What the person has divided stays.
	p.folds.filter.Open(true)
	split.SetOffset(0.4)
	p.relayout()
	p.folds.filter.Open(false)
	if split.Offset != 0.4 {
		t.Errorf("the list has the part %v", split.Offset)
	}
	// What is below the card needs its room.
	p.folds.filter.Open(true)
	p.folds.worth.Open(true)
	if split.Offset != 0.4 {
		t.Errorf("for the holes' worth the list has the part %v", split.Offset)
	}
}

// What stands below the verdict does not move with its length.
func TestTheVerdictHasSteadyRoom(t *testing.T) {
	d := demo(t)
	p := d.p
	lay(p, paneltest.PageWidth, 560)
	heights, lengths := map[float32]bool{}, map[int]bool{}
	for i := range 40 {
		d.Study.UseHoles(d.Study.Ranking()[i*len(d.Study.Ranking())/40].Holes())
		d.Settle()
		p.page.Refresh()
		heights[p.tools.Position().Y], lengths[len(p.verdict.Text())] = true, true
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
	d := searching(t)
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
