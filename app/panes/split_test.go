package panes_test

import (
	"image/color"
	"testing"

	"bowline/app/look"
	"bowline/app/panes"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

// desk is a split in a window, with the middle of its divider.
type desk struct {
	*panes.Split
	pane, rest *canvas.Rectangle
	window     fyne.Window
	changes    int
}

const usual = 200

func show(t *testing.T, edge panes.Edge) *desk {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	d := &desk{pane: canvas.NewRectangle(color.White), rest: canvas.NewRectangle(color.Black)}
	d.pane.SetMinSize(fyne.NewSize(80, 60))
	d.rest.SetMinSize(fyne.NewSize(300, 240))
	d.Split = panes.New(edge, d.pane, d.rest, func(float32) float32 { return usual })
	d.Changed = func() { d.changes++ }
	d.window = test.NewTempWindow(t, d.Split)
	d.window.SetPadded(false)
	d.window.Resize(fyne.NewSize(1000, 800))
	return d
}

// middle returns the middle of the divider, which is where neither pane nor rest is.
func (d *desk) middle(edge panes.Edge) fyne.Position {
	at, size := d.pane.Position(), d.pane.Size()
	switch edge {
	case panes.Left:
		return fyne.NewPos(size.Width+panes.Thickness/2, size.Height/2)
	case panes.Right:
		return fyne.NewPos(at.X-panes.Thickness/2, size.Height/2)
	}
	return fyne.NewPos(size.Width/2, at.Y-panes.Thickness/2)
}

// extent is how large the pane is away from its edge.
func (d *desk) extent(edge panes.Edge) float32 {
	if edge == panes.Below {
		return d.pane.Size().Height
	}
	return d.pane.Size().Width
}

func TestADividerIsDraggedAndResetByADoubleClick(t *testing.T) {
	for edge, to := range map[panes.Edge]fyne.Delta{panes.Left: {DX: 50}, panes.Right: {DX: -50}, panes.Below: {DY: -50}} {
		d := show(t, edge)
		if got := d.extent(edge); got != usual || d.Chosen() != 0 {
			t.Fatalf("edge %d: at first it is %v, chosen %v", edge, got, d.Chosen())
		}
		test.Drag(d.window.Canvas(), d.middle(edge), to.DX, to.DY)
		if got := d.extent(edge); got != usual+50 || d.Chosen() != usual+50 || d.changes != 1 {
			t.Errorf("edge %d: dragged it is %v, chosen %v, told %d times", edge, got, d.Chosen(), d.changes)
		}
		test.DoubleTap(objectAt(d, d.middle(edge)))
		if got := d.extent(edge); got != usual || d.Chosen() != 0 || d.changes != 2 {
			t.Errorf("edge %d: after a double click it is %v, chosen %v, told %d times", edge, got, d.Chosen(), d.changes)
		}
	}
}

// objectAt finds what takes a double click there.
func objectAt(d *desk, at fyne.Position) fyne.DoubleTappable {
	for _, o := range test.WidgetRenderer(d.Split).Objects() {
		tappable, ok := o.(fyne.DoubleTappable)
		if p, s := o.Position(), o.Size(); ok && at.X >= p.X && at.X < p.X+s.Width && at.Y >= p.Y && at.Y < p.Y+s.Height {
			return tappable
		}
	}
	return nil
}

// The pane keeps its size when the window changes, as far as the rest leaves it room.
func TestTheRestTakesWhatIsLeft(t *testing.T) {
	d := show(t, panes.Left)
	d.Choose(400)
	d.window.Resize(fyne.NewSize(1200, 800))
	if got := d.extent(panes.Left); got != 400 || d.rest.Size().Width != 1200-400-panes.Thickness {
		t.Errorf("wider, the pane is %v and the rest %v", got, d.rest.Size().Width)
	}
	d.window.Resize(fyne.NewSize(600, 800))
	if got := d.rest.Size().Width; got != 300 {
		t.Errorf("narrower, the rest has %v", got)
	}
	d.window.Resize(fyne.NewSize(1200, 800))
	if got := d.extent(panes.Left); got != 400 {
		t.Errorf("wide again, the pane is %v", got)
	}
	test.Drag(d.window.Canvas(), d.middle(panes.Left), -2000, 0)
	if got := d.extent(panes.Left); got != 80 {
		t.Errorf("dragged as far as it goes, the pane is %v", got)
	}
}

func TestAPaneIsFolded(t *testing.T) {
	d := show(t, panes.Right)
	d.Choose(321)
	d.Fold(true)
	if d.pane.Visible() || d.rest.Size().Width != 1000 || !d.Folded() {
		t.Errorf("folded, the rest has %v", d.rest.Size().Width)
	}
	if got := d.MinSize(); got.Width != 300 {
		t.Errorf("folded, it needs %v", got)
	}
	d.Fold(false)
	if got := d.extent(panes.Right); got != 321 || !d.pane.Visible() {
		t.Errorf("back again, the pane is %v", got)
	}
}
