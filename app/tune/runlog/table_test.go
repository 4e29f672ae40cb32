package runlog

import (
	"testing"

	"bowline/app/listing"
	"bowline/app/panel/paneltest"
	"bowline/assets"
	"bowline/model/car"
	"bowline/model/units"

	"fyne.io/fyne/v2/theme"
)

// The figures of the log are seen in the least width of a page, with a bar
// beside it and a part of the track.
func TestTheLogFitsTheLeastWidth(t *testing.T) {
	d, l := logging(t)
	room := paneltest.PanelWidth - listing.BarWidth
	wide := func(columns int) (sum float32) {
		for i := range columns {
			sum += l.list.table.ColumnWidth(i)
		}
		return sum
	}
	for _, u := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(u)
		d.Settle()
		l.list.setAll(false)
		if sum := wide(4); sum > room {
			t.Errorf("the columns of a setup's log are %v wide and have %v", sum, room)
		}
		l.list.setAll(true)
		if sum := wide(5); sum > room {
			t.Errorf("the columns of the whole log are %v wide and have %v", sum, room)
		}
		const track = 2 // after date and setup
		paneltest.WantRoom(t, "track", "Saltgras…", false, l.list.table.ColumnWidth(track)-2*theme.InnerPadding())
	}
}

// digits is the room that a column has for digits.
func digits(c column) float32 { return paneltest.DigitRoom(c.Width) }

// Every figure of the log is legible in its column, or in words below.
func TestTheLogFitsItsColumns(t *testing.T) {
	d, l := logging(t)
	for _, name := range assets.CarNames() {
		d.Example(name)
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			d.Settle()
			l.list.setAll(true)
			for row := range l.list.Len() {
				for i, c := range columns {
					if text, _ := l.list.Cell(row, i); c.number != nil || i == byDate {
						paneltest.WantRoom(t, name, text, false, digits(c))
					}
				}
			}
		}
	}
	paneltest.WantRoom(t, "date", "2026-12-28", false, digits(columns[byDate]))
	for _, c := range columns {
		if c.number == car.RunSixtyFoot {
			paneltest.WantRoom(t, "time", "13.412", false, digits(c))
		}
	}
}

// Every letter of the log is in the font.
func TestTheFontHasEveryLetter(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d, l := logging(t)
	d.Example(assets.CarNames()[0])
	l.list.setAll(true)
	for row := range l.list.Len() {
		check(paneltest.Cells(l.list, row, 8))
	}
	check(paneltest.Texts(l.Said))
	check(paneltest.Texts(l.Shown.Object))
	if *letters < 200 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
