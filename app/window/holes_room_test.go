package window

import (
	"testing"

	"bowline/app/readout"
	"bowline/assets"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// lay gives the page a size of its own.
func lay(p *holesPanel, width, height float32) {
	p.object.Resize(fyne.NewSize(width, height))
	p.page.Refresh()
}

// The page is of use in the least room that the window gives it: nothing is
// wider, the list has rows, and folds that are open leave them.
func TestThePageFitsItsRoom(t *testing.T) {
	d := searching(t)
	p := d.holes
	if w := p.object.MinSize().Width; w > pageWidth {
		t.Errorf("the page asks for a width of %.0f", w)
	}
	for _, fold := range []*fold{nil, p.folds.target, p.folds.filter} {
		if fold != nil {
			fold.open(true)
		}
		for _, height := range []float32{560, 430} {
			lay(p, pageWidth, height)
			if size := p.page.Size(); size.Height > height+0.5 || size.Width > pageWidth+0.5 {
				t.Errorf("in %v the page takes %v", height, size)
			}
			if got := p.list.table.Size().Height; got < 105 {
				t.Errorf("at a height of %v the list has %v", height, got)
			}
		}
	}
	lay(p, pageWidth, 560)
	for _, o := range seen(p.object) {
		if b, ok := o.(*widget.Button); ok && b.MinSize().Width > b.Size().Width+0.5 {
			t.Errorf("button %q is %.0f wide and asks for %.0f", b.Text, b.Size().Width, b.MinSize().Width)
		}
		if c, ok := o.(*widget.Check); ok && c.MinSize().Width > c.Size().Width+0.5 {
			t.Errorf("check %q is %.0f wide and asks for %.0f", c.Text, c.Size().Width, c.MinSize().Width)
		}
	}
	const across = panelWidth / filterAcross
	for _, u := range []units.System{units.US, units.SI} {
		d.doc.SetUnits(u)
		d.settle()
		for _, e := range p.filter.fields {
			if w := fyne.MeasureText(e.label.Text(), theme.CaptionTextSize(), fyne.TextStyle{}).Width; w > across-3*theme.Padding() {
				t.Errorf("the label %q is %.0f wide and has %.0f", e.label.Text(), w, across-3*theme.Padding())
			}
		}
	}
	// A field that gets the focus comes into sight.
	last := p.filter.fields[len(p.filter.fields)-1]
	for _, e := range []*filterField{last, p.filter.fields[0]} {
		d.window.Canvas().Focus(e)
		driver := fyne.CurrentApp().Driver()
		top := driver.AbsolutePositionForObject(e).Y - driver.AbsolutePositionForObject(p.tools).Y
		if top < -0.5 || top+e.Size().Height > p.tools.Size().Height+0.5 {
			t.Errorf("the field of %s is at %.0f in %.0f", e.title(), top, p.tools.Size().Height)
		}
	}
	// A very low page scrolls.
	lay(p, pageWidth, 150)
	if p.page.Size().Height < leastList {
		t.Errorf("in 150 the page is %v high", p.page.Size().Height)
	}
}

// The widths of the tables on the page, as TestTablesFitTheirPanel has them, but
// with three columns of values.
func TestTheTablesOfThePageFit(t *testing.T) {
	d := newDesk(t)
	const shortName, third = panelWidth*0.2 - 2*textGap, panelWidth*0.8/3 - textGap
	for _, name := range assets.CarNames() {
		d.openExample(name)
		d.show(panelHoles)
		p := d.holes
		p.folds.worth.open(true)
		for _, u := range []units.System{units.US, units.SI} {
			d.doc.SetUnits(u)
			for _, index := range []int{0, len(d.study.Ranking()) / 2, len(d.study.Ranking()) - 1} {
				d.study.Pick(index)
				d.settle()
				for row, what := range changeNames {
					wantRoom(t, name, what, false, shortName)
					for column := range 3 {
						wantRoom(t, name+", "+what, p.chosen.changes.Text(row, column), false, third)
					}
				}
				for row, what := range rowNames {
					wantRoom(t, name, what+", down", false, nameRoom-theme.Padding())
					for column := range 2 {
						wantRoom(t, name+", "+what, p.worth.steps.Text(2*row, column), false, valueRoom)
						wantRoom(t, name+", "+what, p.worth.steps.Text(2*row+1, column), false, valueRoom)
						wantRoom(t, name+", "+what, p.worth.rates.Text(row, column), false, valueRoom)
						wantRoom(t, name, p.worth.rates.Heading(column), true, valueRoom)
						wantRoom(t, name, p.worth.steps.Heading(column), true, valueRoom)
					}
				}
			}
		}
	}
}

func TestTheFontHasEveryLetterOfThePage(t *testing.T) {
	check, letters := lettering(t)
	d := searching(t)
	for _, u := range []units.System{units.US, units.SI} {
		d.doc.SetUnits(u)
		d.study.Pick(0)
		d.settle()
		p := d.holes
		for _, prose := range []*readout.Prose{p.verdict, p.chosen.title, p.chosen.reason, p.chosen.rest, p.chosen.pairs[0].plain, p.chosen.pairs[1].plain} {
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
