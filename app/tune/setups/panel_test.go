package setups

import (
	"fmt"
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/listing"
	"bowline/app/panel"
	"bowline/app/panel/paneltest"
	"bowline/assets"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// desk is a person who looks at the setups.
type desk struct {
	*paneltest.Desk
	t *testing.T
	p *Panel
}

// showing shows the setups of the reference car, or of the demo car.
func showing(t *testing.T, open func(testing.TB, func(panel.Host) panel.Panel) *paneltest.Desk) *desk {
	t.Helper()
	d := open(t, New)
	return &desk{d, t, d.Panel.(*Panel)}
}

// listColumns is how many columns the list of setups has.
const listColumns = 9

// wantSetups compares the setups' names and the current one.
func (d *desk) wantSetups(names string, current int) {
	d.t.Helper()
	var list []string
	for _, s := range d.Doc.Car().Setups {
		list = append(list, s.Name)
	}
	if got := strings.Join(list, ", "); got != names || d.Doc.Setup() != current {
		d.t.Errorf("setups %q with %d current, want %q with %d", got, d.Doc.Setup(), names, current)
	}
}

func TestTheSetupsAreListed(t *testing.T) {
	d := showing(t, paneltest.Reference)
	d.Log(1, car.Run{Date: "2031-05-17", SixtyFoot: 1.402}, car.Run{Date: "2031-05-17", SixtyFoot: 1.388}, car.Run{Date: "2031-05-18"})
	p := d.p
	if p.list.Len() != 2 || p.list.table.Selected() != 0 {
		t.Fatalf("%d rows, selected %d", p.list.Len(), p.list.table.Selected())
	}
	// From the bars' lines alone, as for the racer's numbers.
	for row, chassisLower := range []float64{11.5, 12.25} {
		upper, lower := (17-22.5)/20.0, (chassisLower-11)/23.0
		x := 2.5 + (22.5-11)/(lower-upper)
		z := 11 + lower*(x-2.5)
		r := d.Study.ResultOf(row)
		l, current := d.Study.LaunchOf(row)
		if !current {
			t.Fatalf("setup %d is not launched", row)
		}
		worst := 0.0
		for _, pair := range car.Pairs {
			for _, way := range column.Directions {
				worst = max(worst, r.Worst[pair][way].Share)
			}
		}
		for bar, tensions := range l.Tension[:len(launch.Bars)] {
			for _, n := range tensions {
				use, _ := r.Hold(car.Pair(bar/2), n)
				worst = max(worst, use.Share)
			}
		}
		sixty := "—"
		if l.Outcome == launch.Finished {
			sixty = fmt.Sprintf("%.3f", l.Elapsed)
		}
		want := fmt.Sprintf("%s | %.1f | %.1f | %.1f | %.0f | %s | %s",
			[]string{"baseline | 3·2·1·1", "lower bar up | 3·1·1·1"}[row], 100*z/x*105/19.5, x, z, 100*worst, sixty, []string{"— | 0", "1.388 | 3"}[row])
		if got := paneltest.Cells(p.list, row, listColumns); got != want {
			t.Errorf("row %d is %q, want %q", row, got, want)
		}
	}
	d.Doc.SetUnits(units.SI)
	p.Refresh()
	ahead := fmt.Sprintf(" | %s | ", units.Group(fmt.Sprintf("%.0f", 25.4*(2.5+11.5/((11.5-11)/23+(22.5-17)/20)))))
	if got := paneltest.Cells(p.list, 0, listColumns); !strings.Contains(got, ahead) {
		t.Errorf("in SI the first row is %q", got)
	}
}

// While a launch is not there the list shows share and time as those of the setup as it
// was.
func TestWhatIsOfTheLaunchBeforeIsMarked(t *testing.T) {
	d := showing(t, paneltest.Demo)
	marked := func(when string, want bool) {
		t.Helper()
		cells := strings.Split(paneltest.Cells(d.p.list, 1, listColumns), " | ")
		if !strings.HasPrefix(cells[setupSixty], "1.") {
			t.Errorf("%s the time is %q", when, cells[setupSixty])
		}
		for _, column := range []int{setupShare, setupSixty} {
			if got := cells[column]; strings.HasSuffix(got, "…") != want {
				t.Errorf("%s it says %q", when, got)
			}
		}
	}
	marked("launched", false)
	d.Doc.Apply("Torque", func(c *car.Car) { c.Drive.Torque *= 0.9 })
	d.p.Refresh()
	marked("after an edit", true)
	d.Settle()
	marked("launched again", false)
}

// A row selected is the current setup; one chosen elsewhere is selected.
func TestARowSelectsItsSetup(t *testing.T) {
	d := showing(t, paneltest.Reference)
	p := d.p
	p.list.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	d.Settle()
	d.wantSetups("baseline, lower bar up", 1)
	if d.Doc.Modified() {
		t.Error("looking at another setup changed the car")
	}
	d.Doc.SelectSetup(0)
	d.Settle()
	if p.list.table.Selected() != 0 {
		t.Errorf("row %d is selected", p.list.table.Selected())
	}
}

func TestSetupsAreCopiedMovedAndDeleted(t *testing.T) {
	d := showing(t, paneltest.Reference)
	p := d.p
	d.Tap(p.buttons.copy)
	d.wantSetups("baseline, baseline 2, lower bar up", 1)
	d.Tap(p.buttons.down)
	d.wantSetups("baseline, lower bar up, baseline 2", 2)
	d.Tap(p.buttons.down)
	d.Tap(p.buttons.up)
	d.wantSetups("baseline, baseline 2, lower bar up", 1)
	if got := d.Doc.UndoLabel(); got != "Move setup" {
		t.Errorf("undo is of %q", got)
	}
	d.Log(1, car.Run{Date: "2031-05-17"}, car.Run{Date: "2031-05-18"})
	d.Tap(p.buttons.remove)
	d.wantSetups("baseline, lower bar up", 1)
	d.WantSaid(`"baseline 2" is deleted, and the 2 runs logged with it. Undo brings them back.`)
	d.Undo()
	d.wantSetups("baseline, baseline 2, lower bar up", 1)
	if n := len(d.Doc.Car().Setups[1].Runs); n != 2 {
		t.Errorf("undo has brought back %d runs", n)
	}
	for range 2 {
		d.Tap(p.buttons.remove)
	}
	if p.refused.Text() != "" {
		t.Errorf("refused: %q", p.refused.Text())
	}
	d.Tap(p.buttons.remove)
	d.wantSetups("baseline", 0)
	if got, want := p.refused.Text(), "a car needs a setup and this is the only one; add a copy first"; got != want {
		t.Errorf("the last one is refused with %q, want %q", got, want)
	}
	d.Edit()
	if p.refused.Text() != "" {
		t.Errorf("after an edit it still says %q", p.refused.Text())
	}
}

func TestRenameInThePage(t *testing.T) {
	d := showing(t, paneltest.Reference)
	p := d.p
	if p.name.object.Visible() {
		t.Error("a name is asked for at first")
	}
	d.Tap(p.buttons.rename)
	e := p.name.entry
	if e.Text != "baseline" || e.SelectedText() != "baseline" || d.Canvas().Focused() != e {
		t.Errorf("it offers %q, selected %q, focus on %T", e.Text, e.SelectedText(), d.Canvas().Focused())
	}
	e.SetText("lower bar up")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if got, want := p.name.entry.Why().Text(), `setup 2 is called "lower bar up" too; give each setup a name of its own`; got != want || !p.name.entry.Refused() {
		t.Errorf("refused with %q, want %q; framed %v", got, want, p.name.entry.Refused())
	}
	// What is typed stays while the list moves and other pages are looked at.
	e.SetText(" hot track ")
	d.Doc.MoveSetup(0, 1)
	d.Hide(true)
	d.Hide(false)
	if e.Text != " hot track " || p.name.title.Text() != `Another name for "baseline":` || p.name.entry.Refused() {
		t.Errorf("it asks %q and holds %q, framed %v", p.name.title.Text(), e.Text, p.name.entry.Refused())
	}
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	d.Settle()
	d.wantSetups("lower bar up, hot track", 1)
	if p.name.object.Visible() || d.Doc.UndoLabel() != "Rename setup" || d.Canvas().Focused() != nil {
		t.Errorf("still asking %v, undo %q, focus on %T", p.name.object.Visible(), d.Doc.UndoLabel(), d.Canvas().Focused())
	}
}

// What is typed as another name never names another setup than the one that it
// was asked for.
func TestRenameEndsWithItsSetup(t *testing.T) {
	for what, leave := range map[string]func(d *desk){
		"Escape":   func(d *desk) { d.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape}) },
		"selected": func(d *desk) { d.Doc.SelectSetup(1) },
		"deleted":  func(d *desk) { d.Doc.DeleteSetup(0) },
		"copied":   func(d *desk) { d.Doc.CopySetup(0) },
		"renamed":  func(d *desk) { d.Doc.RenameSetup(0, "elsewhere") },
		"loaded": func(d *desk) {
			if err := d.Doc.Open(d.Doc.Path()); err != nil {
				d.t.Fatal(err)
			}
		},
	} {
		d := showing(t, paneltest.Reference)
		p := d.p
		d.Tap(p.buttons.rename)
		p.name.entry.SetText("hot track")
		leave(d)
		if p.name.object.Visible() || d.Canvas().Focused() != nil {
			t.Errorf("%s: still asking %v, focus on %T", what, p.name.object.Visible(), d.Canvas().Focused())
		}
		d.Settle()
		for _, s := range d.Doc.Car().Setups {
			if s.Name == "hot track" {
				t.Errorf("%s: %q is the name of a setup", what, s.Name)
			}
		}
		// Asked for again, the name is that of the current setup.
		d.Tap(p.buttons.rename)
		if want := d.Doc.Car().Setups[d.Doc.Setup()].Name; p.name.entry.Text != want {
			t.Errorf("%s: it offers %q, want %q", what, p.name.entry.Text, want)
		}
	}
}

// The list is seen whole in a window of the first size.
func TestTheListFitsItsWidth(t *testing.T) {
	d := showing(t, paneltest.Demo)
	p := d.p
	const room = 620 - listing.BarWidth // [px]
	width := func(text string) float32 { return fyne.MeasureText(text, theme.TextSize(), fyne.TextStyle{}).Width }
	for _, u := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(u)
		p.Refresh()
		sum := float32(0)
		for i := range listColumns {
			sum += p.list.table.ColumnWidth(i)
		}
		// What is left goes to the names.
		name := p.list.table.ColumnWidth(setupName) + room - sum
		if w := width("more bite") + 2*theme.InnerPadding() + 4; w > name {
			t.Errorf("the columns are %v wide; a name takes %v and has %v", sum, w, name)
		}
	}
}

// Results of setups that are not looked at are made for the rows in sight, once
// a car.
func TestTheListIsComputedOnceACar(t *testing.T) {
	d := showing(t, paneltest.Reference)
	p := d.p
	paneltest.Cells(p.list, 1, listColumns)
	first := p.list.results[1]
	d.Study.SetTravel(0.02)
	d.Settle()
	if first == nil || p.list.results[1] != first {
		t.Error("another travel has the list computed anew")
	}
	d.Edit()
	paneltest.Cells(p.list, 1, listColumns)
	if p.list.results[1] == first || p.list.results[1].Car != d.Doc.Car() {
		t.Error("after an edit the list is that of the car before")
	}
}

// Entries leave the wheel to the page that they stand on.
func TestThePageTakesTheWheel(t *testing.T) {
	d := showing(t, paneltest.Reference)
	d.Resize(paneltest.PageWidth, 250)
	page := d.p.page.Object().(*container.Scroll)
	turned := 0
	for _, o := range screen.Seen(d.p.Words()) {
		if _, ok := o.(*form.Draft); !ok {
			continue
		}
		turned++
		page.ScrollToTop()
		driver := fyne.CurrentApp().Driver()
		page.ScrollToOffset(fyne.NewPos(0, driver.AbsolutePositionForObject(o).Y-driver.AbsolutePositionForObject(page.Content).Y-20))
		before, down := page.Offset.Y, float32(-10)
		if before > 0 {
			down = 10
		}
		test.Scroll(d.Canvas(), driver.AbsolutePositionForObject(o).AddXY(o.Size().Width/2, o.Size().Height/2), 0, down)
		if page.Offset.Y == before {
			t.Errorf("the wheel over a %T does not move the page", o)
		}
	}
	if turned < 6 {
		t.Errorf("%d entries are on the page", turned)
	}
}

// Every text of the list is legible in its column.
func TestTheListFitsItsColumns(t *testing.T) {
	d := showing(t, paneltest.Demo)
	p := d.p
	for _, name := range assets.CarNames() {
		d.Example(name)
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			p.Refresh()
			for row := range p.list.Len() {
				for column, digits := range []int{0, 6, 5, 5, 5, 4, 6, 5, 3} {
					if column > 0 {
						text, _ := p.list.Cell(row, column)
						paneltest.WantRoom(t, name, text, false, paneltest.DigitRoom(digits))
					}
				}
			}
		}
	}
	for x, want := range map[float64]string{-9.9887: "−9,989", 9.9887: "9,989", 10: "far", -1e5: "far", 0: "0", 1.0854: "1,085"} {
		if got := coarse(units.SI, x); got != want {
			t.Errorf("%v m is listed as %q, want %q", x, got, want)
		}
		paneltest.WantRoom(t, "length", want, false, paneltest.DigitRoom(5)+theme.InnerPadding()-1)
	}
}

// Every letter of the page with a comparison and a run selected is in the font.
func TestTheFontHasEveryLetter(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := showing(t, paneltest.Demo)
	d.Study.Compare(1)
	d.Settle()
	for _, u := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(u)
		d.Settle()
		for _, o := range screen.Seen(d.p.Evidence()) {
			table, ok := o.(*listing.Table)
			if ok {
				table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
				d.Settle()
			}
		}
		check(d.Says())
		for row := range d.p.list.Len() {
			check(paneltest.Cells(d.p.list, row, listColumns))
		}
	}
	if *letters < 3000 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
