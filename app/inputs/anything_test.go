package inputs

import (
	"math/rand/v2"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// Whatever is pressed and typed, and whatever happens to the car meanwhile, the
// panel goes on and shows the car.
func TestAnythingGoes(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 7))
	d := newDesk(t)
	file, err := carfile.New("saltgrass.toml", saltgrass(), units.US, library())
	if err != nil {
		t.Fatal(err)
	}
	data, err := file.Encode(file.Car)
	if err != nil {
		t.Fatal(err)
	}
	texts := []string{"22 1/2", "1", "-5", "x", "600 mm", "", "4130", "1e9"}
	keys := []fyne.KeyName{fyne.KeyReturn, fyne.KeyEscape, fyne.KeyUp, fyne.KeyPageDown, fyne.KeyRight, fyne.KeySpace, fyne.KeyDelete, fyne.KeyBackspace}
	var titles []string
	for _, s := range d.panel.sections {
		titles = append(titles, s.title)
	}
	c := d.window.Canvas()
	for range 1500 {
		switch random.IntN(16) {
		case 0, 1, 2:
			for range random.IntN(9) {
				test.FocusNext(c)
			}
		case 3:
			test.FocusPrevious(c)
		case 4, 5, 6, 7:
			if e, ok := c.Focused().(*entry); ok {
				d.typed(e, texts[random.IntN(len(texts))])
			}
		case 8, 9, 10:
			if c.Focused() != nil {
				d.press(keys[random.IntN(len(keys))])
			}
			for _, list := range c.Overlays().List() {
				c.Overlays().Remove(list)
			}
		case 11:
			d.panel.SetOpenSections(titles[random.IntN(len(titles)):])
		case 12:
			if d.panel.CommitPending() {
				d.doc.Undo()
			} else {
				d.panel.RestorePending()
			}
		case 13:
			d.doc.Redo()
		case 14:
			d.doc.SetUnits(systems[random.IntN(2)])
			if random.IntN(8) == 0 {
				if err := d.doc.OpenBytes("saltgrass.toml", data); err != nil {
					t.Fatal(err)
				}
			}
		case 15:
			row := car.Rows[random.IntN(len(car.Rows))]
			d.doc.Apply("Move pivot", func(c *car.Car) {
				holes := row.In(c)
				(*holes)[0].X += 0.01 * (random.Float64() - 0.5)
				if n := len(*holes); random.IntN(3) == 0 {
					*holes = (*holes)[:n-1] // refused when a setup uses it
				}
			})
		}
		d.checkShown()
	}
}

// checkShown checks that what can be seen is the car, but for what is being typed.
func (d *desk) checkShown() {
	d.t.Helper()
	v := d.panel.view()
	for _, s := range d.panel.sections {
		if !s.isOpen() {
			continue
		}
		for _, r := range s.rows() {
			for _, e := range r.entries() {
				if want := e.value.text(v, e.focused); !e.pending() && e.Text != want {
					d.t.Fatalf("%q of %s shows %q, the car has %q", r.label, s.title, e.Text, want)
				}
				if e.refused && !e.pending() && !e.focused {
					d.t.Fatalf("%q of %s is refused although nothing is typed there", r.label, s.title)
				}
			}
		}
		for _, row := range car.Rows {
			n := 0
			for _, r := range s.rows() {
				for i := range *row.In(v.car) {
					if r.path == holePath(row, i) {
						n++
					}
				}
			}
			if want := len(*row.In(v.car)); n != 0 && n != want {
				d.t.Fatalf("%s has %d rows for %d holes", row, n, want)
			}
		}
	}
}
