package window

import (
	"image"
	"math"
	"slices"
	"testing"
	"time"

	"bowline/model/analysis"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// find returns the first object of a kind that is as wanted.
func find[T fyne.CanvasObject](d *desk, wanted func(T) bool) T {
	d.t.Helper()
	for _, o := range seen(d.center) {
		if o, ok := o.(T); ok && wanted(o) {
			return o
		}
	}
	var none T
	d.t.Fatalf("there is no such %T", none)
	return none
}

func TestToolbarChoosesSetupCaseAndMode(t *testing.T) {
	d, _ := openDesk(t)
	setups := find(d, func(s *widget.Select) bool { return slices.Contains(s.Options, "baseline") })
	load := find(d, func(*widget.RadioGroup) bool { return true })
	moving := find(d, func(c *widget.Check) bool { return true })
	if !slices.Equal(setups.Options, []string{"baseline", "lower bar up"}) || setups.Selected != "baseline" || load.Selected != "Hit" || moving.Checked {
		t.Errorf("setups %q, %q; case %q; moving %v", setups.Options, setups.Selected, load.Selected, moving.Checked)
	}
	setups.SetSelected("lower bar up")
	load.SetSelected("Hooked")
	moving.SetChecked(true)
	if d.doc.Setup() != 1 || d.study.Case() != analysis.Hooked || !d.study.Moving() {
		t.Errorf("setup %d, case %v, moving %v", d.doc.Setup(), d.study.Case(), d.study.Moving())
	}
	if d.doc.Modified() {
		t.Error("looking at another setup changed the car")
	}

	// What is changed elsewhere is shown here.
	d.doc.SelectSetup(0)
	d.study.SetCase(analysis.Hit)
	d.study.SetMoving(false)
	d.doc.Apply("Rename", func(c *car.Car) { c.Setups[1].Name = "loose track" })
	if setups.Selected != "baseline" || load.Selected != "Hit" || moving.Checked || setups.Options[1] != "loose track" {
		t.Errorf("setups %q, %q; case %q; moving %v", setups.Options, setups.Selected, load.Selected, moving.Checked)
	}
}

func TestSlidersMoveTheCar(t *testing.T) {
	d, _ := openDesk(t)
	var sliders []*slider
	for _, o := range seen(d.center) {
		if s, ok := o.(*widget.Slider); ok {
			sliders = append(sliders, &slider{Slider: s})
		}
	}
	if len(sliders) != 2 {
		t.Fatalf("%d sliders", len(sliders))
	}
	rear, front := sliders[0], sliders[1]
	ends := func(s *slider, low, high float64) bool {
		return math.Abs(s.Min-low*inch) < 1e-9 && math.Abs(s.Max-high*inch) < 1e-9
	}
	if !ends(rear, -4, 3) || !ends(front, -4, 3) {
		t.Errorf("the rear goes from %v to %v m, the front from %v to %v m", rear.Min, rear.Max, front.Min, front.Max)
	}
	rear.SetValue(-2 * inch)
	front.SetValue(inch)
	if math.Abs(d.study.Travel()+2*inch) > 1e-4 || math.Abs(d.study.Front()-inch) > 1e-4 {
		t.Errorf("travels %v and %v in", d.study.Travel()/inch, d.study.Front()/inch)
	}
	// Near ride height the slider catches it.
	rear.SetValue(0.05 * inch)
	if d.study.Travel() != 0 {
		t.Errorf("travel %v in", d.study.Travel()/inch)
	}
	// What is changed elsewhere is shown here.
	d.study.SetTravel(2 * inch)
	if math.Abs(rear.Value-2*inch) > 1e-4 {
		t.Errorf("the slider stands at %v in", rear.Value/inch)
	}
	d.doc.Apply("Bump", func(c *car.Car) { c.Springs.RearBump = inch })
	if !ends(rear, -4, 1) || math.Abs(d.study.Travel()-inch) > 1e-9 {
		t.Errorf("with less bump the rear goes to %v in and stands at %v in", rear.Max/inch, d.study.Travel()/inch)
	}
	d.edit()
	test.Tap(find(d, func(b *widget.Button) bool { return b.Text == "Ride height" }))
	if d.study.Travel() != 0 || d.study.Front() != 0 {
		t.Errorf("travels %v and %v in", d.study.Travel()/inch, d.study.Front()/inch)
	}
}

// Charts on show get a picture in the size that they have, the others none.
func TestChartsAreDrawnByTheWorker(t *testing.T) {
	d, _ := openDesk(t)
	d.frame()
	for _, p := range d.panels[:2] {
		for _, key := range p.charts() {
			v := d.charts.views[key]
			shown := v.Frame().X != v.Frame().Y
			if onShow := slices.Contains(d.panels[d.shown].charts(), key); shown != onShow {
				t.Errorf("%s: on show %v, drawn %v", key, onShow, shown)
			}
			if size, _ := v.Want(); (size != image.Point{}) != shown {
				t.Errorf("%s: wants %v, drawn %v", key, size, shown)
			}
		}
	}
	d.tabs().SelectIndex(0)
	d.frame()
	for _, key := range d.panels[panelHere].charts() {
		if v := d.charts.views[key]; v.Frame().X == v.Frame().Y {
			t.Errorf("%s is not drawn in its turn", key)
		}
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
	check := d.panels[panelCheck].(*checkPanel)
	says := func() [2]string {
		return [2]string{check.numbers.Text(checkLength, 1), check.numbers.Text(checkHit, 1)}
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
