package window

import (
	"testing"

	"bowline/app/look"
	"bowline/app/readout"
	"bowline/model/units"
	"bowline/plotting"

	"fyne.io/fyne/v2"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
)

// lettering returns a check that every letter of a text is in the window's font,
// and how many it has looked at. One that is not shows as an empty box.
func lettering(t *testing.T) (check func(text string), letters *int) {
	t.Helper()
	font, err := opentype.Parse(look.New(look.Light).Font(fyne.TextStyle{}).Content())
	if err != nil {
		t.Fatal(err)
	}
	var buffer sfnt.Buffer
	letters = new(int)
	return func(text string) {
		for _, r := range text {
			*letters++
			if r == '\n' {
				continue
			}
			if glyph, err := font.GlyphIndex(&buffer, r); err != nil || glyph == 0 {
				t.Errorf("%q in %q is not in the font", r, text)
			}
		}
	}, letters
}

func TestTheFontHasEveryLetterOfThePanels(t *testing.T) {
	check, letters := lettering(t)
	table := func(x *readout.Table, rows, columns int) {
		for row := range rows {
			for column := range columns {
				check(x.Text(row, column))
			}
		}
	}
	d := leaving(t)
	for _, system := range []units.System{units.US, units.SI} {
		d.doc.SetUnits(system)
		for _, at := range []float64{0, 0.2, 0.6} {
			d.study.SetTime(at)
			d.settle()
			tune, loads, run := d.panels[panelHere].(*herePanel), d.panels[panelCheck].(*checkPanel), d.launchPanel()
			tune.refresh()
			loads.refresh()
			for _, p := range []*readout.Prose{tune.verdict, loads.verdict, loads.warnings, run.verdict, run.assumed} {
				check(p.Text())
			}
			table(tune.numbers, tuneRows, 2)
			table(loads.numbers, checkRows, 2)
			table(loads.strengths, strengthRows, 2)
			table(run.bars, 4, 3)
			table(run.car, launchCarRows, 1)
			table(run.sides, launchSideRows, 2)
			table(run.preload, 4, 6)
		}
	}
	setups := d.panels[panelSetups].(*setupsPanel)
	d.study.Compare(1)
	for _, system := range []units.System{units.US, units.SI} {
		d.doc.SetUnits(system)
		setups.log.list.setAll(true)
		setups.log.list.choose(1, 0)
		setups.refresh()
		for _, text := range []string{setups.compare.verdict.Text(), setups.compare.plan.Text(), setups.log.detail.Text(), setups.log.form.title.Text(), wordsOf(setups.log.form.object)} {
			check(text)
		}
		for i, t := range setups.compare.tables {
			check(compareTitles[i])
			table(t, len(compareNames[i]), 3)
		}
		for row := range setups.list.Len() {
			check(cells(setups.list, row, 8))
		}
		for row := range setups.log.list.Len() {
			check(cells(setups.log.list, row, 8))
		}
	}
	drawn := d.charts.current()
	for _, c := range plotting.All(drawn.first, drawn.others...) {
		for _, line := range c.Readout(0.1, units.SI) {
			check(line)
		}
	}
	if *letters < 3000 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
