package window

import (
	"fmt"
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/listing"
	"bowline/app/look"
	"bowline/assets"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// setups shows the page of the setups.
func (d *desk) setups() *setupsPanel {
	d.t.Helper()
	d.show(panelSetups)
	return d.panels[panelSetups].(*setupsPanel)
}

// tap taps a button and lets all follow.
func (d *desk) tap(b *widget.Button) {
	test.Tap(b)
	d.settle()
}

// wantSetups compares the setups' names and the current one.
func (d *desk) wantSetups(names string, current int) {
	d.t.Helper()
	var list []string
	for _, s := range d.doc.Car().Setups {
		list = append(list, s.Name)
	}
	if got := strings.Join(list, ", "); got != names || d.doc.Setup() != current {
		d.t.Errorf("setups %q with %d current, want %q with %d", got, d.doc.Setup(), names, current)
	}
}

// cells writes a row of a list.
func cells(s listing.Source, row, columns int) string {
	var list []string
	for i := range columns {
		text, _ := s.Cell(row, i)
		list = append(list, text)
	}
	return strings.Join(list, " | ")
}

// log puts runs into the log of a setup.
func (d *desk) log(setup int, runs ...car.Run) {
	d.t.Helper()
	for _, r := range runs {
		if p := d.doc.LogRun(setup, r); p != nil {
			d.t.Fatal(p)
		}
	}
	d.settle()
}

func TestTheSetupsAreListed(t *testing.T) {
	d, _ := openDesk(t)
	d.log(1, car.Run{Date: "2031-05-17", SixtyFoot: 1.402}, car.Run{Date: "2031-05-17", SixtyFoot: 1.388}, car.Run{Date: "2031-05-18"})
	p := d.setups()
	if p.list.Len() != 2 || p.list.table.Selected() != 0 {
		t.Fatalf("%d rows, selected %d", p.list.Len(), p.list.table.Selected())
	}
	// From the bars' lines alone, as for the racer's numbers.
	for row, chassisLower := range []float64{11.5, 12.25} {
		upper, lower := (17-22.5)/20.0, (chassisLower-11)/23.0
		x := 2.5 + (22.5-11)/(lower-upper)
		z := 11 + lower*(x-2.5)
		r := d.study.ResultOf(row)
		worst := 0.0
		for _, pair := range car.Pairs {
			for _, way := range column.Directions {
				worst = max(worst, r.Worst[pair][way].Share)
			}
		}
		want := fmt.Sprintf("%s | %.1f | %.1f | %.1f | %.0f | %s",
			[]string{"baseline | 3·2·1·1", "lower bar up | 3·1·1·1"}[row], 100*z/x*105/19.5, x, z, 100*worst, []string{"0 | —", "3 | 1.388"}[row])
		if got := cells(p.list, row, 8); got != want {
			t.Errorf("row %d is %q, want %q", row, got, want)
		}
	}
	d.doc.SetUnits(units.SI)
	p.refresh()
	ahead := fmt.Sprintf(" | %s | ", units.Group(fmt.Sprintf("%.0f", 25.4*(2.5+11.5/((11.5-11)/23+(22.5-17)/20)))))
	if got := cells(p.list, 0, 8); !strings.Contains(got, ahead) {
		t.Errorf("in SI the first row is %q", got)
	}
}

// A row selected is the current setup; one chosen elsewhere is selected.
func TestARowSelectsItsSetup(t *testing.T) {
	d, _ := openDesk(t)
	p := d.setups()
	p.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	d.settle()
	d.wantSetups("baseline, lower bar up", 1)
	if d.doc.Modified() {
		t.Error("looking at another setup changed the car")
	}
	d.doc.SelectSetup(0)
	d.settle()
	if p.list.table.Selected() != 0 {
		t.Errorf("row %d is selected", p.list.table.Selected())
	}
}

func TestSetupsAreCopiedMovedAndDeleted(t *testing.T) {
	d, _ := openDesk(t)
	p := d.setups()
	d.tap(p.buttons.copy)
	d.wantSetups("baseline, baseline 2, lower bar up", 1)
	d.tap(p.buttons.down)
	d.wantSetups("baseline, lower bar up, baseline 2", 2)
	d.tap(p.buttons.down)
	d.tap(p.buttons.up)
	d.wantSetups("baseline, baseline 2, lower bar up", 1)
	if got := d.item("Edit", "Undo").Label; got != "Undo: Move setup" {
		t.Errorf("the menu offers %q", got)
	}
	d.log(1, car.Run{Date: "2031-05-17"}, car.Run{Date: "2031-05-18"})
	d.tap(p.buttons.remove)
	d.wantSetups("baseline, lower bar up", 1)
	d.wantSaid(`"baseline 2" is deleted, and the 2 runs logged with it. Undo brings them back.`)
	d.choose("Edit", "Undo")
	d.wantSetups("baseline, baseline 2, lower bar up", 1)
	if n := len(d.doc.Car().Setups[1].Runs); n != 2 {
		t.Errorf("undo has brought back %d runs", n)
	}
	for range 2 {
		d.tap(p.buttons.remove)
	}
	if p.refused.Text() != "" {
		t.Errorf("refused: %q", p.refused.Text())
	}
	d.tap(p.buttons.remove)
	d.wantSetups("baseline", 0)
	if got, want := p.refused.Text(), "a car needs a setup and this is the only one; add a copy first"; got != want {
		t.Errorf("the last one is refused with %q, want %q", got, want)
	}
	d.edit()
	if p.refused.Text() != "" {
		t.Errorf("after an edit it still says %q", p.refused.Text())
	}
}

// The section of the inputs tells what a deletion takes along as well.
func TestDeletingInTheInputsTellsOfTheRuns(t *testing.T) {
	d, _ := openDesk(t)
	d.log(0, car.Run{Date: "2031-05-17"})
	for _, o := range seen(d.inputs) {
		if b, ok := o.(*form.Button); ok && b.Text == "Delete" {
			test.Tap(b)
			d.settle()
			d.wantSaid(`"baseline" is deleted, and the run logged with it. Undo brings both back.`)
			return
		}
	}
	t.Fatal("there is no such button")
}

func TestRenameInThePage(t *testing.T) {
	d, _ := openDesk(t)
	p := d.setups()
	if p.name.object.Visible() {
		t.Error("a name is asked for at first")
	}
	d.tap(p.buttons.rename)
	e := p.name.entry
	if e.Text != "baseline" || e.SelectedText() != "baseline" || d.window.Canvas().Focused() != e {
		t.Errorf("it offers %q, selected %q, focus on %T", e.Text, e.SelectedText(), d.window.Canvas().Focused())
	}
	e.SetText("lower bar up")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if got, want := p.name.why.Text(), `setup 2 is called "lower bar up" too; give each setup a name of its own`; got != want || !p.name.mark.on {
		t.Errorf("refused with %q, want %q; framed %v", got, want, p.name.mark.on)
	}
	// What is typed stays while the list moves and other pages are looked at.
	e.SetText(" hot track ")
	d.doc.MoveSetup(0, 1)
	d.show(panelHere)
	d.show(panelSetups)
	if e.Text != " hot track " || p.name.title.Text() != `Another name for "baseline":` || p.name.mark.on {
		t.Errorf("it asks %q and holds %q, framed %v", p.name.title.Text(), e.Text, p.name.mark.on)
	}
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	d.settle()
	d.wantSetups("lower bar up, hot track", 1)
	if p.name.object.Visible() || d.doc.UndoLabel() != "Rename setup" || d.window.Canvas().Focused() != nil {
		t.Errorf("still asking %v, undo %q, focus on %T", p.name.object.Visible(), d.doc.UndoLabel(), d.window.Canvas().Focused())
	}
}

// What is typed as another name never names another setup than the one that it
// was asked for.
func TestRenameEndsWithItsSetup(t *testing.T) {
	for what, leave := range map[string]func(d *desk){
		"Escape":   func(d *desk) { d.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape}) },
		"selected": func(d *desk) { d.doc.SelectSetup(1) },
		"deleted":  func(d *desk) { d.doc.DeleteSetup(0) },
		"copied":   func(d *desk) { d.doc.CopySetup(0) },
		"renamed":  func(d *desk) { d.doc.RenameSetup(0, "elsewhere") },
		"loaded": func(d *desk) {
			if err := d.doc.Open(d.doc.Path()); err != nil {
				d.t.Fatal(err)
			}
		},
	} {
		d, _ := openDesk(t)
		p := d.setups()
		d.tap(p.buttons.rename)
		p.name.entry.SetText("hot track")
		leave(d)
		if p.name.object.Visible() || d.window.Canvas().Focused() != nil {
			t.Errorf("%s: still asking %v, focus on %T", what, p.name.object.Visible(), d.window.Canvas().Focused())
		}
		d.settle()
		for _, s := range d.doc.Car().Setups {
			if s.Name == "hot track" {
				t.Errorf("%s: %q is the name of a setup", what, s.Name)
			}
		}
		// Asked for again, the name is that of the current setup.
		d.tap(p.buttons.rename)
		if want := d.doc.Car().Setups[d.doc.Setup()].Name; p.name.entry.Text != want {
			t.Errorf("%s: it offers %q, want %q", what, p.name.entry.Text, want)
		}
	}
}

// The list of setups is seen whole in the least width of a page, with a bar
// beside it, and so are the figures of the log with a part of the track.
func TestListsFitTheLeastWidth(t *testing.T) {
	d := newDesk(t)
	p := d.setups()
	room := panelWidth - listing.BarWidth
	width := func(text string) float32 { return fyne.MeasureText(text, theme.TextSize(), fyne.TextStyle{}).Width }
	wide := func(table *listing.Table, columns int) (sum float32) {
		for i := range columns {
			sum += table.ColumnWidth(i)
		}
		return sum
	}
	for _, u := range []units.System{units.US, units.SI} {
		d.doc.SetUnits(u)
		p.refresh()
		sum := wide(p.list.table, 8)
		if sum > room {
			t.Errorf("the setups' columns are %v wide and have %v", sum, room)
		}
		// What is left goes to the names.
		name := p.list.table.ColumnWidth(setupName) + room - sum
		if w := width("more bite") + 2*theme.InnerPadding() + 4; w > name {
			t.Errorf("a name takes %v and has %v", w, name)
		}
		p.log.list.setAll(false)
		if sum := wide(p.log.list.table, 4); sum > room {
			t.Errorf("the columns of a setup's log are %v wide and have %v", sum, room)
		}
		p.log.list.setAll(true)
		if sum := wide(p.log.list.table, 5); sum > room {
			t.Errorf("the columns of the whole log are %v wide and have %v", sum, room)
		}
		const track = 2 // after date and setup
		wantRoom(t, "track", "Saltgras…", false, p.log.list.table.ColumnWidth(track)-2*theme.InnerPadding())
	}
}

// Results of setups that are not looked at are made for the rows in sight, once
// a car.
func TestTheListIsComputedOnceACar(t *testing.T) {
	d, _ := openDesk(t)
	p := d.setups()
	cells(p.list, 1, 8)
	first := p.list.results[1]
	d.study.SetTravel(0.02)
	d.settle()
	if first == nil || p.list.results[1] != first {
		t.Error("another travel has the list computed anew")
	}
	d.edit()
	cells(p.list, 1, 8)
	if p.list.results[1] == first || p.list.results[1].Car != d.doc.Car() {
		t.Error("after an edit the list is that of the car before")
	}
}

// Lists are as high as their rows, within bounds, and leave the wheel to the
// page unless there is more to see.
func TestListsLeaveTheWheelToThePage(t *testing.T) {
	d, _ := openDesk(t)
	p := d.setups()
	room := listRoom{rows: p.list.Len, most: mostSetups}
	low := room.MinSize([]fyne.CanvasObject{p.list.table}).Height
	for range 12 {
		d.doc.CopySetup(0)
	}
	d.settle()
	high := room.MinSize([]fyne.CanvasObject{p.list.table}).Height
	if !room.scrolls() || high-low < 5*listRow*13-1 || high-low > 5*listRow*13+1 {
		t.Errorf("the height goes from %v to %v, scrolls %v", low, high, room.scrolls())
	}
	turned, moved := 0, 0
	for _, o := range seen(p.object) {
		if w, ok := o.(*wheel); ok {
			turned++
			w.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -10)})
			if p.object.(*container.Scroll).Offset.Y > 0 {
				moved++
				p.object.(*container.Scroll).ScrollToTop()
			}
		}
	}
	if turned < 8 || moved != turned-1 {
		t.Errorf("%d of %d wheels move the page; that over the long list of setups should not", moved, turned)
	}
}

// Every text of the page's lists is legible in its column, or in words below.
func TestListsOfSetupsFitTheirColumns(t *testing.T) {
	d := newDesk(t)
	p := d.setups()
	for _, name := range assets.CarNames() {
		d.openExample(name)
		for _, u := range []units.System{units.US, units.SI} {
			d.doc.SetUnits(u)
			p.refresh()
			for row := range p.list.Len() {
				for column, digits := range []int{0, 6, 5, 5, 5, 3, 2, 5} {
					if column > 0 {
						text, _ := p.list.Cell(row, column)
						wantRoom(t, name, text, false, columnRoom(digits))
					}
				}
			}
			p.log.list.setAll(true)
			for row := range p.log.list.Len() {
				for _, column := range []int{runDate, runSixty, runSquat} {
					text, _ := p.log.list.Cell(row, column)
					wantRoom(t, name, text, false, columnRoom(runHeadings[column].Width))
				}
			}
		}
	}
	for x, want := range map[float64]string{-9.9887: "−9,989", 9.9887: "9,989", 10: "far", -1e5: "far", 0: "0", 1.0854: "1,085"} {
		if got := coarse(units.SI, x); got != want {
			t.Errorf("%v m is listed as %q, want %q", x, got, want)
		}
		wantRoom(t, "length", want, false, columnRoom(5)+theme.InnerPadding()-1)
	}
	wantRoom(t, "date", "2026-12-28", false, columnRoom(runHeadings[runDate].Width))
	wantRoom(t, "time", "13.412", false, columnRoom(runHeadings[runSixty].Width))
}

// columnRoom is the room of a column for so many digits.
func columnRoom(digits int) float32 {
	return float32(digits) * fyne.MeasureText("0", look.New(look.Light).Size("text"), fyne.TextStyle{}).Width
}
