package window

import (
	"image"
	"math"
	"strings"
	"testing"
	"time"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/panel"
	"bowline/model/car"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

// find returns the first object of a kind that is as wanted.
func find[T fyne.CanvasObject](d *desk, wanted func(T) bool) T {
	d.t.Helper()
	for _, o := range screen.Seen(d.split.words) {
		if o, ok := o.(T); ok && wanted(o) {
			return o
		}
	}
	var none T
	d.t.Fatalf("there is no such %T", none)
	return none
}

// drawn reports whether a chart has had a picture.
func (d *desk) drawn(key chart.Key) bool {
	f := d.charts.View(key).Frame()
	return f.X != f.Y
}

// exhibit chooses one of the things in evidence.
func (d *desk) exhibit(index int) {
	d.panels.current().Evidence().(*panel.Showcase).Choose(index)
	d.settle()
	d.frame()
}

// The chart on show gets a picture in the size that it has, the others none until it is
// their turn.
func TestChartsAreDrawnByTheWorker(t *testing.T) {
	d, _ := openDesk(t)
	d.frame()
	for _, p := range d.panels.list {
		for i, key := range p.Charts() {
			if onShow := p == d.panels.current() && i == 0; d.drawn(key) != onShow {
				t.Errorf("%s: on show %v, drawn %v", key, onShow, d.drawn(key))
			}
			if size, _ := d.charts.View(key).Want(); (size != image.Point{}) != d.drawn(key) {
				t.Errorf("%s: wants %v, drawn %v", key, size, d.drawn(key))
			}
		}
	}
	d.show("Here")
	for i, key := range d.panels.current().Charts() {
		if d.exhibit(i); !d.drawn(key) {
			t.Errorf("%s is not drawn in its turn", key)
		}
	}
	d.exhibit(0)
	if size, _ := d.charts.View(d.panels.current().Charts()[1]).Want(); size != (image.Point{}) {
		t.Error("a chart that is not on show any more wants to be drawn")
	}
}

// A hole dragged in the side view changes the whole window; one undo takes all
// of it back.
func TestADragChangesTheWholeWindow(t *testing.T) {
	d, _ := openDesk(t)
	d.sideView()
	at := func() fyne.Position {
		p, _ := d.view.Picture().Pivot(car.ChassisLower)
		return fyne.NewPos(float32(p.X), float32(p.Y))
	}
	// says returns the lines on the bars' length and on what they carry here.
	says := func() [2]string {
		text := d.says()
		at := strings.Index(text, "Pin to pin")
		lines := strings.SplitN(text[at:], "\n", 3)
		return [2]string{lines[0], lines[1]}
	}
	before := says()
	start := at()
	// Three quarters of an inch, to the next hole up; the bar is 23 in long.
	other, _ := d.view.Picture().Pivot(car.HousingLower)
	up := 0.75 / 23 * (float64(start.X) - other.X)
	press := &desktop.MouseEvent{Button: desktop.MouseButtonPrimary}
	press.Position = start
	d.view.MouseDown(press)
	for i := 1; i <= 4; i++ {
		e := &fyne.DragEvent{Dragged: fyne.NewDelta(0, float32(-up/4))}
		e.Position = start.AddXY(0, float32(-up*float64(i)/4))
		d.view.Dragged(e)
		d.settle()
		d.sideView()
	}
	if d.item("Edit", "Undo").Label != "Undo" {
		t.Errorf("during the drag the menu offers %q", d.item("Edit", "Undo").Label)
	}
	d.view.MouseUp(press)
	d.view.DragEnd()
	d.settle()
	d.sideView()
	if got := at(); math.Abs(float64(got.Y-start.Y)+up) > 0.5 {
		t.Errorf("the pivot went from %v to %v, the mouse by %v", start, got, up)
	}
	d.wantTitle("Reference • — Bowline")
	if after := says(); after[0] == before[0] || after[1] == before[1] {
		t.Errorf("the panel says %q, before it said %q", after, before)
	}
	if got := d.item("Edit", "Undo").Label; got != "Undo: Use another lower chassis hole" {
		t.Errorf("the menu offers %q", got)
	}
	d.choose("Edit", "Undo")
	d.wantTitle("Reference — Bowline")
	if says() != before {
		t.Errorf("after undo the panel says %q, want %q", says(), before)
	}
}

// A changed car is kept at every tick of a clock until the window closes.
func TestAutosave(t *testing.T) {
	d, path := openDesk(t)
	tick, ended := make(chan time.Time), make(chan struct{})
	go func() {
		d.autosave(tick)
		close(ended)
	}()
	d.edit()
	tick <- time.Time{}
	for missing(path + ".recover") {
		d.queue.Wait()
		d.settle()
	}
	close(d.stop)
	<-ended
}

// The section of the inputs says what a deletion takes along.
func TestDeletingInTheInputsTellsOfTheRuns(t *testing.T) {
	d, _ := openDesk(t)
	if p := d.doc.LogRun(0, car.Run{Date: "2031-05-17"}); p != nil {
		t.Fatal(p)
	}
	for _, o := range screen.Seen(d.inputs) {
		if b, ok := o.(*form.Button); ok && b.Text == "Delete" {
			test.Tap(b)
			d.settle()
			d.wantSaid(`"baseline" is deleted, and the run logged with it. Undo brings both back.`)
			return
		}
	}
	t.Fatal("there is no such button")
}
