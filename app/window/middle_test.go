package window

import (
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"gonum.org/v1/gonum/spatial/r3"
)

// leastWindow is how narrow the window can be made at most [px].
const leastWindow = 1000

// middle returns the side view with the bars over and below it.
func (d *desk) middle() *fyne.Container {
	return d.stage
}

// The window can be made narrow, on every page, with a travel or a launch, and
// the panes beside the view do not pay for it.
func TestTheWindowCanBeNarrow(t *testing.T) {
	d := newDesk(t)
	inputs, right := d.inputs.MinSize(), d.right.MinSize()
	if inputs.Width < 270 || right.Width < 420 {
		t.Errorf("the inputs need %v, the panels %v", inputs, right)
	}
	for _, title := range d.titles() {
		d.show(title)
		d.window.Resize(fyne.NewSize(leastWindow, 720))
		d.settle()
		if least := d.window.Content().MinSize().Width; least > leastWindow {
			t.Errorf("%s: the content needs %v px", title, least)
		}
		middle := d.middle()
		// The layout is asked anew: the pane keeps the size it first heard of.
		if need, has := middle.MinSize().Width, middle.Size().Width; need > has {
			t.Errorf("%s: the side view and its bars need %v px and have %v", title, need, has)
		}
	}
}

// At the first size the bar takes one row: the view begins below it.
func TestTheBarTakesOneRowAtFirst(t *testing.T) {
	d := newDesk(t)
	row := find(d, func(*form.Radio) bool { return true }).Size().Height
	if top := d.view.Position().Y; top < row || top > 1.5*row {
		t.Errorf("a row is %v high and the view begins at %v", row, top)
	}
}

// The button for all instant centers is there while they are shown, and shows
// them.
func TestFitICs(t *testing.T) {
	d, _ := openDesk(t)
	button := func() *widget.Button {
		for _, o := range screen.Seen(d.split.words) {
			if b, ok := o.(*widget.Button); ok && b.Text == "Fit ICs" && b.Visible() {
				return b
			}
		}
		return nil
	}
	for _, title := range []string{"Here", "Check", "Setups", "Launch"} {
		if d.show(title); button() != nil {
			t.Errorf("%s has the button", title)
		}
	}
	d.show("Holes")
	d.settle()
	d.frame()
	if button() == nil {
		t.Fatal("the page of holes has no such button")
	}
	d.view.Zoom(8)
	d.frame()
	shown := func() bool {
		k := d.doc.Car().Check
		_, in := d.view.Picture().Pivot(car.ChassisLower)
		return in && d.view.Picture().View.Shows(r3.Vec{X: k.TargetICX[1], Z: k.TargetICZ[1]})
	}
	if shown() {
		t.Fatal("zoomed in the target is in the picture: the test proves nothing")
	}
	test.Tap(button())
	d.frame()
	if !shown() {
		t.Error("the button does not bring the target into the picture")
	}
}
