package inputs_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"bowline/app/form"
	"bowline/app/inputs"
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
	titles := d.titles()
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
			if e, ok := c.Focused().(*form.Entry); ok {
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
	rows := map[string]int{}
	for r := range d.panel.Rows() {
		rows[r.Path]++
		if !r.Section().IsOpen() {
			continue
		}
		for _, editor := range r.Editors {
			e, ok := editor.(*form.Entry)
			if !ok {
				continue
			}
			focused := d.window.Canvas().Focused() == fyne.Focusable(e)
			if want := e.Get(focused); !e.Pending() && e.Text != want {
				d.t.Fatalf("%q of %s shows %q, the car has %q", r.Label, r.Section().Title, e.Text, want)
			}
			if e.Refused() && !e.Pending() && !focused {
				d.t.Fatalf("%q of %s is refused although nothing is typed there", r.Label, r.Section().Title)
			}
		}
	}
	for _, row := range car.Rows {
		if !slices.Contains(d.panel.OpenSections(), map[bool]string{true: inputs.TitleChassis, false: inputs.TitleHousing}[row.OnChassis()]) {
			continue
		}
		want := len(*row.In(d.doc.Car()))
		for i := range want + 1 {
			if got := rows[fmt.Sprintf("%s.%d", row.Path(), i)]; got == 1 != (i < want) {
				d.t.Fatalf("hole %d of %s has %d rows, there are %d holes", i+1, row, got, want)
			}
		}
	}
}
