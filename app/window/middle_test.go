package window

import (
	"fmt"
	"testing"

	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"gonum.org/v1/gonum/spatial/r3"
)

// leastWindow is how narrow the window can be made at most [px].
const leastWindow = 1000

// bar returns the parts of the bar over the side view, and what lays them out.
func (d *desk) bar() (parts []fyne.CanvasObject, middle *fyne.Container) {
	d.t.Helper()
	for _, o := range seen(d.center) {
		if c, ok := o.(*fyne.Container); ok {
			if _, ok := c.Layout.(*middleLayout); ok {
				return c.Objects[:4], c
			}
		}
	}
	d.t.Fatal("there is no bar")
	return nil, nil
}

// The window can be made narrow, on every page, with a travel or a launch, and
// the panes beside the view do not pay for it.
func TestTheWindowCanBeNarrow(t *testing.T) {
	d := newDesk(t)
	inputs, right := d.inputs.MinSize(), d.center.Trailing.MinSize()
	if inputs.Width < 270 || right.Width < 420 {
		t.Errorf("the inputs need %v, the panels %v", inputs, right)
	}
	for i := range d.panels {
		d.show(i)
		d.window.Resize(fyne.NewSize(leastWindow, 720))
		d.settle()
		if least := d.window.Content().MinSize().Width; least > leastWindow {
			t.Errorf("panel %d: the content needs %v px", i, least)
		}
		_, middle := d.bar()
		// The layout is asked anew: the pane keeps the size it first heard of.
		if need, has := middle.MinSize().Width, middle.Size().Width; need > has {
			t.Errorf("panel %d: the side view and its bars need %v px and have %v", i, need, has)
		}
	}
}

// At any width the parts of the bar lie side by side within it, above the view.
func TestTheBarWraps(t *testing.T) {
	d := newDesk(t)
	for _, panel := range []int{panelHere, panelHoles} {
		d.show(panel)
		rows := 0
		for _, width := range []float32{1200, 700, 600, 555, 500, 420, 350, 296} {
			t.Run(fmt.Sprint(panel, width), func(t *testing.T) {
				parts, middle := d.bar()
				middle.Resize(fyne.NewSize(width, 600))
				seenRows := map[float32]bool{}
				for i, o := range parts {
					at, size := o.Position(), o.Size()
					seenRows[at.Y] = true
					if at.X < 0 || at.X+size.Width > width+0.01 || size.Height < o.MinSize().Height || i > 0 && size.Width < o.MinSize().Width || at.Y+size.Height > d.view.Position().Y {
						t.Errorf("part %d is at %v with size %v, the view at %v", i, at, size, d.view.Position())
					}
					for _, q := range parts[:i] {
						if q.Position().Y == at.Y && q.Position().X+q.Size().Width > at.X {
							t.Errorf("part %d at %v covers another at %v", i, at, q.Position())
						}
					}
				}
				if len(seenRows) < rows {
					t.Errorf("%d rows, wider there are %d", len(seenRows), rows)
				}
				rows = len(seenRows)
				if bottom := d.view.Position().Y + d.view.Size().Height; d.view.Size().Width != width || bottom > 600-50 || d.view.Size().Height < 400 {
					t.Errorf("the view is at %v with size %v", d.view.Position(), d.view.Size())
				}
			})
		}
		if rows < 2 {
			t.Errorf("at 296 px there are %d rows", rows)
		}
	}
}

// At the first size the bar takes one row.
func TestTheBarTakesOneRowAtFirst(t *testing.T) {
	d := newDesk(t)
	parts, _ := d.bar()
	for i, o := range parts {
		if o.Position().Y != 0 {
			t.Errorf("part %d is at %v", i, o.Position())
		}
	}
}

// The button for all instant centers is there while they are shown, and shows
// them.
func TestFitICs(t *testing.T) {
	d, _ := openDesk(t)
	button := func() *widget.Button {
		for _, o := range seen(d.center) {
			if b, ok := o.(*widget.Button); ok && b.Text == "Fit ICs" && b.Visible() {
				return b
			}
		}
		return nil
	}
	for _, panel := range []int{panelHere, panelCheck, panelSetups, panelLaunch} {
		if d.show(panel); button() != nil {
			t.Errorf("panel %d has the button", panel)
		}
	}
	d.show(panelHoles)
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
