package sheet

import (
	"image"
	"image/color"
	"testing"

	"bowline/app/look"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

var red = color.RGBA{R: 255, A: 255}

// drawn draws on a sheet of 100 x 50 pixels at a scale of the screen.
func drawn(t *testing.T, scale float32, paint func(*Pen)) *image.RGBA {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	s := New(paint)
	s.raster.Resize(fyne.NewSize(100, 50))
	return s.Draw(int(100*scale), int(50*scale)).(*image.RGBA)
}

// colored returns the rectangle that holds all pixels of just a color, and how
// many there are.
func colored(img *image.RGBA, c color.RGBA) (image.Rectangle, int) {
	var r image.Rectangle
	n := 0
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if img.RGBAAt(x, y) == c {
				r = r.Union(image.Rect(x, y, x+1, y+1))
				n++
			}
		}
	}
	return r, n
}

// Places count from the upper left corner, in pixels of an unscaled screen.
func TestBoxIsWhereItIsPut(t *testing.T) {
	for _, scale := range []float32{1, 1.5, 2} {
		img := drawn(t, scale, func(p *Pen) { p.Box(10, 4, 20, 8, red) })
		place := func(v float32) int { return int(v * scale) }
		want := image.Rect(place(10), place(4), place(30), place(12))
		if got, n := colored(img, red); got != want || n != want.Dx()*want.Dy() {
			t.Errorf("at scale %v the box is at %v with %d pixels, want %v", scale, got, n, want)
		}
		if _, n := colored(img, palette.Light.Background); n != img.Rect.Dx()*img.Rect.Dy()-want.Dx()*want.Dy() {
			t.Errorf("at scale %v the rest is not background", scale)
		}
	}
}

func TestFrameIsInsideItsRectangle(t *testing.T) {
	img := drawn(t, 1, func(p *Pen) { p.Frame(10, 4, 20, 8, 2, red) })
	if got, n := colored(img, red); got != image.Rect(10, 4, 30, 12) || n != 20*8-16*4 {
		t.Errorf("the frame takes %v with %d pixels", got, n)
	}
	// One too small for its lines is filled.
	img = drawn(t, 1, func(p *Pen) { p.Frame(10, 4, 20, 2, 5, red) })
	if got, n := colored(img, red); got != image.Rect(10, 4, 30, 6) || n != 40 {
		t.Errorf("the low frame takes %v with %d pixels", got, n)
	}
}

func TestShapeHasItsArea(t *testing.T) {
	img := drawn(t, 1, func(p *Pen) { p.Shape(red, fyne.NewPos(10, 10), fyne.NewPos(50, 10), fyne.NewPos(30, 30)) })
	if r, n := colored(img, red); r.Min.Y != 10 || n < 340 || n > 400 {
		t.Errorf("of a triangle of 400 pixels there are %d, in %v", n, r)
	}
}

// A snapped edge is sharp, and never farther than half a device pixel away.
func TestSnapFindsThePixelEdge(t *testing.T) {
	for _, scale := range []float32{1, 1.25, 1.5, 2} {
		img := drawn(t, scale, func(p *Pen) {
			for at := float32(0); at < 50; at += 0.3 {
				if d := p.Snap(at) - at; d*scale > 0.501 || d*scale < -0.501 {
					t.Errorf("at scale %v, %v goes to %v", scale, at, p.Snap(at))
				}
			}
			p.Box(p.Snap(7.3), p.Snap(3.7), p.Snap(61.1)-p.Snap(7.3), p.Snap(40.9)-p.Snap(3.7), red)
		})
		if r, n := colored(img, red); n != r.Dx()*r.Dy() {
			t.Errorf("at scale %v the edges of %v are not sharp", scale, r)
		}
		_, box := colored(img, red)
		if _, rest := colored(img, palette.Light.Background); box+rest != img.Rect.Dx()*img.Rect.Dy() {
			t.Errorf("at scale %v some pixels are neither box nor background", scale)
		}
	}
}

// Words stand on their baseline, as wide as Width says.
func TestWordsStandOnTheirBaseline(t *testing.T) {
	width := float32(0)
	img := drawn(t, 2, func(p *Pen) {
		f := Face(fyne.TextStyle{}, theme.TextSize())
		width = p.Width("HHHH", f)
		p.Words(10, 30, "HHHH", f, color.Black)
	})
	var ink image.Rectangle
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if img.RGBAAt(x, y).R < 128 {
				ink = ink.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	if ink.Max.Y != 60 || ink.Min.X < 20 || ink.Max.X > 20+int(2*width)+1 || float32(ink.Dx()) < 1.8*width {
		t.Errorf("words %v wide on a baseline at 60 take %v", 2*width, ink)
	}
}

func TestInkWithoutANameIsThatOfText(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Dark))
	if Ink("") != color.Color(palette.Dark.Ink) || Ink(theme.ColorNameError) != color.Color(palette.Dark.Bad) {
		t.Error("the inks are not those of the theme")
	}
}

// A sheet without a size is a picture of one pixel.
func TestSheetWithoutASize(t *testing.T) {
	test.NewTempApp(t)
	s := New(func(p *Pen) { p.Box(0, 0, 5, 5, red) })
	if got := s.Draw(0, 0).Bounds().Size(); got != image.Pt(1, 1) {
		t.Errorf("the picture has %v pixels", got)
	}
}
