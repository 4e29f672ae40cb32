package form_test

import (
	"testing"

	"bowline/app/form"
	"bowline/app/look"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// An option is chosen with the pointer, wherever its words are, and with arrows.
func TestRadio(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	chosen, heard := "oak", 0
	options := []string{"oak", "ash", "a long word"}
	r := form.NewRadio(options, func() string { return chosen }, func(option string) { chosen, heard = option, heard+1 })
	w := test.NewTempWindow(t, r)
	w.Resize(r.MinSize())
	seen := map[string]bool{}
	for x := float32(3); x < r.MinSize().Width-3; x++ {
		test.TapCanvas(w.Canvas(), fyne.NewPos(x, 10))
		seen[r.Selected] = true
	}
	if len(seen) != len(options) || chosen != options[2] || heard != 2 {
		t.Errorf("chosen are %v, at last %q, after %d changes", seen, chosen, heard)
	}
	w.Canvas().Focus(r)
	for _, key := range []fyne.KeyName{fyne.KeyRight, fyne.KeyLeft, fyne.KeyLeft, fyne.KeyLeft} {
		r.TypedKey(&fyne.KeyEvent{Name: key})
	}
	if chosen != options[0] || r.Selected != chosen {
		t.Errorf("arrows choose %q, shown is %q", chosen, r.Selected)
	}
	r.SetSelected("none such")
	if chosen != options[0] {
		t.Errorf("what is no option is chosen: %q", chosen)
	}
}
