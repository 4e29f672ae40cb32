package inputs_test

import (
	"slices"
	"testing"

	"bowline/app/inputs"

	"fyne.io/fyne/v2"
)

// sight returns where an object stands in the part of the form that can be seen, and how
// high that part is.
func (d *desk) sight(o fyne.CanvasObject) (top, foot, height float32) {
	driver, scroll := fyne.CurrentApp().Driver(), d.scroll()
	top = driver.AbsolutePositionForObject(o).Y - driver.AbsolutePositionForObject(scroll).Y
	return top, top + o.Size().Height, scroll.Size().Height
}

// A field is shown wherever it is: its section opens and it comes into sight, with a mark
// that lasts until somebody types elsewhere. The focus stays where it is.
func TestAFieldIsShown(t *testing.T) {
	d := newDesk(t)
	d.window.Resize(fyne.NewSize(300, 700))
	var attended []string
	d.panel.Attended = func(path string) { attended = append(attended, path) }
	d.panel.SetOpenSections([]string{inputs.TitleSetup})
	paths := []string{"tires.rear_radius", "lower_bar.od", "housing_bracket.upper.0", "check.target_ic.x", "wheelie_bar.reach", "car.cg_height", "lower_bar.od"}
	for _, path := range paths {
		if !d.panel.Reveal(path) || d.panel.Marked() != path {
			t.Errorf("%s is not shown; marked is %q", path, d.panel.Marked())
		}
		r := d.row(path)
		if top, foot, height := d.sight(r); !r.Section().IsOpen() || top < 0 || foot > height {
			t.Errorf("%s is at %v to %v of %v", path, top, foot, height)
		}
		if d.window.Canvas().Focused() != nil {
			t.Errorf("%s has got the focus", path)
		}
	}
	if !slices.Equal(attended, paths) {
		t.Errorf("told of %q, want %q", attended, paths)
	}
	d.window.Canvas().Focus(d.entry("car.weight", 0))
	if d.panel.Marked() != "" || attended[len(attended)-1] != "car.weight" {
		t.Errorf("with the focus elsewhere %q is marked, told of %q", d.panel.Marked(), attended)
	}
	d.window.Canvas().Unfocus()
	if got := attended[len(attended)-1]; got != "" {
		t.Errorf("without the focus told of %q", got)
	}
	if d.panel.Reveal("car.nothing") || d.panel.Reveal("") {
		t.Error("a row that does not exist is shown")
	}
}
