package form_test

import (
	"slices"
	"testing"

	"bowline/app/form"
	"bowline/app/look"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// area is a thing as high as its width makes it, as text is.
type area struct{ canvas.Rectangle }

func (a *area) MinSize() fyne.Size {
	if a.Size().Width == 0 {
		return fyne.NewSize(0, 0)
	}
	return fyne.NewSize(0, 6000/a.Size().Width)
}

func TestStack(t *testing.T) {
	test.NewTempApp(t)
	low, high, empty, hidden, flowing := tall(10), tall(30), tall(0), tall(40), &area{}
	hidden.Hide()
	c := container.New(form.Stack{Gap: 4, Inset: 6, Foot: 5}, low, empty, hidden, flowing, high)
	c.Resize(fyne.NewSize(112, 500))
	for _, o := range []fyne.CanvasObject{low, flowing, high} {
		if o.Size().Width != 100 || o.Position().X != 6 {
			t.Errorf("something is %v wide at %v", o.Size().Width, o.Position().X)
		}
	}
	got := []float32{low.Position().Y, flowing.Position().Y, flowing.Size().Height, high.Position().Y, c.MinSize().Height}
	if want := []float32{6, 20, 60, 84, 6 + 10 + 4 + 60 + 4 + 30 + 5 + 6}; !slices.Equal(got, want) {
		t.Errorf("places and heights %v, want %v", got, want)
	}
	if got := container.New(form.Stack{Gap: 4, Foot: 5}, empty, hidden).MinSize(); got.Height != 0 {
		t.Errorf("nothing is %v high", got.Height)
	}
}

// What has changed its height on a page gets its room when the page is settled,
// in stacks within it too.
func TestPageSettles(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	p := form.NewPage()
	words := form.Words(theme.ColorNameForeground)
	below := tall(20)
	p.Add(form.Group(tall(10), words), below)
	w := test.NewTempWindow(t, p.Scroll)
	w.Resize(fyne.NewSize(200, 400))
	before, height := below.Position().Y, p.Scroll.Content.MinSize().Height
	words.Set("Words that take more than one line at a width of two hundred.")
	p.Settle()
	if grown := below.Position().Y - before; grown < 2*theme.TextSize() || p.Scroll.Content.MinSize().Height < height+grown-0.5 {
		t.Errorf("what is below moved by %v", grown)
	}
	if words.Size().Height < words.MinSize().Height {
		t.Errorf("the words have %v of %v", words.Size().Height, words.MinSize().Height)
	}
	words.Set("")
	p.Settle()
	if below.Position().Y != before {
		t.Errorf("without words it is at %v, before %v", below.Position().Y, before)
	}
	// The scroll bar lies on nothing.
	if right := below.Position().X + below.Size().Width; right > p.Scroll.Size().Width-theme.ScrollBarSize() {
		t.Errorf("what scrolls reaches to %v of %v", right, p.Scroll.Size().Width)
	}
}

func TestFold(t *testing.T) {
	test.NewTempApp(t)
	turned := 0
	body := tall(50)
	f := form.NewFold("More", body, func() { turned++ })
	o := f.Object
	heading := o.Objects[0].(fyne.Tappable)
	low := o.MinSize().Height
	if f.IsOpen() || body.Visible() || f.Title() != "More" {
		t.Error("a new fold is open")
	}
	test.Tap(heading)
	if !f.IsOpen() || !body.Visible() || o.MinSize().Height < low+50 || turned != 1 {
		t.Errorf("tapped, the fold is open: %v", f.IsOpen())
	}
	f.Open(true)
	f.Retitle("Less")
	if turned != 1 || f.Title() != "Less" {
		t.Errorf("opened again it turned %d times, titled %q", turned, f.Title())
	}
	test.Tap(heading)
	if f.IsOpen() || o.MinSize().Height != low || turned != 2 {
		t.Errorf("tapped again, the fold is open: %v", f.IsOpen())
	}
}
