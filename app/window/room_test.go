package window

import (
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/listing"
	"bowline/app/panel"
	"bowline/app/readout"

	"fyne.io/fyne/v2"
)

// menuHeight is about what the menu takes of a window [px].
const menuHeight = 27

// What matters of each panel is in sight at the sizes of small laptops: the verdict at the
// top of the words, the stage, and of the evidence what is on show, a list with rows, a
// chart that is not squeezed. A large window's room goes to the stage.
func TestWhatMattersIsInSight(t *testing.T) {
	for _, c := range []struct {
		window          fyne.Size
		stage, evidence float32 // least heights
	}{
		{fyne.NewSize(1000, 600), 180, 140}, {fyne.NewSize(1280, 720), 220, 180},
		{fyne.NewSize(1440, 900), 300, 240}, {fyne.NewSize(2560, 1440), 700, 240},
	} {
		d := newDesk(t)
		size := c.window.SubtractWidthHeight(0, menuHeight)
		for _, title := range d.titles() {
			d.show(title)
			d.window.Resize(size)
			d.settle()
			d.frame()
			d.window.Resize(size)
			if least := d.window.Content().MinSize(); least.Width > size.Width || least.Height > size.Height {
				t.Errorf("%s asks for %v of %v", title, least, size)
			}
			if got := d.view.Size().Height; got < c.stage {
				t.Errorf("%s at %v: the stage is %v high", title, size, got)
			}
			shown := d.panels.current().Evidence()
			if got := shown.Size().Height; got < c.evidence {
				t.Errorf("%s at %v: the evidence is %v high", title, size, got)
			}
			if got := d.right.Size().Height - d.panels.current().Words().Position().Y; got < 300 {
				t.Errorf("%s at %v: the words have %v", title, size, got)
			}
			for _, o := range screen.Seen(shown) {
				least, has := o.MinSize(), o.Size()
				switch o.(type) {
				case *listing.Table, *form.Radio:
				case *readout.Table:
					least.Width = 0 // scrolls
				default:
					continue
				}
				if has.Width < least.Width-0.5 || has.Height < least.Height-0.5 {
					t.Errorf("%s at %v: a %T asks for %v and has %v", title, size, o, least, has)
				}
			}
			for i, key := range d.panels.current().Charts() {
				if g := shown.(*panel.Showcase); title != "Setups" {
					g.Choose(i)
				} else {
					g.Choose(2) // after the lists
				}
				d.frame()
				d.frame()
				if v := d.charts.View(key); !d.drawn(key) || v.Size().Height < v.MinSize().Height-0.5 {
					t.Errorf("%s at %v: the chart %s has %v of %v, drawn %v", title, size, key, v.Size(), v.MinSize(), d.drawn(key))
				}
			}
		}
	}
}
