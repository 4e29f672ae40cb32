package look

import (
	"image"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"pgregory.net/rapid"
)

// board is a widget that is one picture.
type board struct {
	widget.BaseWidget
	picture *canvas.Raster
}

func (b *board) CreateRenderer() fyne.WidgetRenderer { return PictureRenderer(b.picture) }

func newBoard() *board {
	b := &board{picture: NewPicture(func(w, h int) image.Image { return image.NewRGBA(image.Rect(0, 0, w, h)) })}
	b.ExtendBaseWidget(b)
	return b
}

// A picture covers its widget, is less than a pixel larger, and takes a whole
// number of pixels at every scale of the screen.
func TestPictureTakesWholePixels(t *testing.T) {
	test.NewTempApp(t)
	b := newBoard()
	w := test.NewTempWindow(t, container.NewWithoutLayout(b))
	rapid.Check(t, func(t *rapid.T) {
		scale := rapid.SampledFrom([]float32{0.75, 1, 1.25, 1.5, 2, 3}).Draw(t, "scale")
		w.Canvas().(test.WindowlessCanvas).SetScale(scale)
		length := rapid.Float32Range(1, 3000)
		size := fyne.NewSize(length.Draw(t, "width"), length.Draw(t, "height"))
		b.Resize(size)
		got := b.picture.Size()
		for _, side := range [][2]float32{{size.Width, got.Width}, {size.Height, got.Height}} {
			pixels := float64(side[1] * scale)
			if math.Abs(pixels-math.Round(pixels)) > 1e-3 || pixels < float64(side[0]*scale)-2e-3 || pixels >= float64(side[0]*scale)+1 {
				t.Fatalf("%v at scale %v is shown on %v pixels", side[0], scale, pixels)
			}
		}
	})
}

// A length that is whole but for rounding gets no pixel more.
func TestWholeStaysWhole(t *testing.T) {
	for _, c := range []struct{ length, scale, want float32 }{{300, 1, 300}, {300.0002, 1, 300}, {300.01, 1, 301}, {100, 1.5, 100}, {100.5, 2, 100.5}, {0, 1, 0}} {
		if got := whole(c.length, c.scale); got != c.want {
			t.Errorf("%v at scale %v becomes %v, want %v", c.length, c.scale, got, c.want)
		}
	}
}
