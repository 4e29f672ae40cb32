package raster_test

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"sync"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"

	"bowline/plotting/raster"
)

// A sign after a text stands where font.Face.Width says that it stands, which
// counts kerning.
func TestAdvanceIsThatOfTheFont(t *testing.T) {
	for _, text := range []string{"AVATo", "11.", "Ta", "chassis 20.5 mm", "Länge Ωµ±", "no glyph \U0001F3C1", "tab\tand\nline", "bad \xff byte", ""} {
		for _, size := range []vg.Length{7, 12.5, 30} {
			f := sans(size)
			a, whole := pixels(400, 50)
			a.FillString(f, pt(10, 12), text+"|")
			b, parts := pixels(400, 50)
			b.FillString(f, pt(10, 12), text)
			b.FillString(f, pt(10, 12).Add(vg.Point{X: f.Width(text+"|") - f.Width("|")}), "|")
			if d := differenceOf(whole, parts); d.max > 1 {
				t.Errorf("%q at %v points: %+v", text, size, d)
			}
		}
	}
	f := sans(10)
	if f.Width("AV") >= f.Width("A")+f.Width("V") {
		t.Error("the font does not kern AV: the test proves nothing")
	}
}

// A quarter turn takes pixels to pixels.
func TestTextByQuarterTurns(t *testing.T) {
	const n = 120
	draw := func(turns int) *image.RGBA {
		c, img := pixels(n, n)
		c.Translate(pt(n/2, n/2))
		c.Rotate(float64(turns) * math.Pi / 2)
		c.FillString(sans(11), pt(-40.3, 3.7), "Pinion 2.5")
		return img
	}
	upright := draw(0)
	turned := upright
	for turns := 1; turns < 4; turns++ {
		next := image.NewRGBA(upright.Rect)
		for y := range n {
			for x := range n {
				// Counterclockwise on a picture whose rows run down.
				next.SetRGBA(y, n-1-x, turned.RGBAAt(x, y))
			}
		}
		turned = next
		// A glyph stands on the next 1/16 px: 1/32 px off, and the other way when
		// turned.
		if d := differenceOf(turned, draw(turns)); d.max > 12 || d.mean > 4.5 {
			t.Errorf("%d quarter turns: %+v", turns, d)
		}
	}
}

// The covered area of a text does not depend on where and how it stands.
func TestTextKeepsItsArea(t *testing.T) {
	area := func(angle, size float64) float64 {
		c, img := pixels(400, 400)
		c.Translate(pt(200, 200))
		c.Rotate(angle)
		c.FillString(sans(vg.Length(size)), pt(-60, 0), "(chassis)")
		return darkArea(img)
	}
	want := area(0, 24)
	if want < 400 {
		t.Fatalf("only %v pixels covered", want)
	}
	for _, angle := range []float64{0.1, 0.7, 2, 4, -1} {
		near(t, "turned", area(angle, 24), want, 0.005*want)
	}
	near(t, "half the size", area(0, 12), want/4, 0.01*want/4)
}

// Small and turned text is what is left of a text 16 times as large when each
// block of 16 x 16 pixels is averaged.
func TestTextAgainstSupersampling(t *testing.T) {
	const w, h, k = 300, 80, 16
	for _, size := range []vg.Length{6, 9, 14} {
		for _, angle := range []float64{0, 0.25} {
			draw := func(scale int) *image.RGBA {
				img := image.NewRGBA(image.Rect(0, 0, w*scale, h*scale))
				c := raster.New(img, 96*float64(scale))
				c.Clear(color.White)
				c.Rotate(angle)
				c.FillString(sans(size), pt(15, 5), "Roll center 12.5%")
				return img
			}
			fine, mean := draw(k), image.NewRGBA(image.Rect(0, 0, w, h))
			for y := range h {
				for x := range w {
					sum := 0
					for i := range k * k {
						sum += int(fine.RGBAAt(x*k+i%k, y*k+i/k).G)
					}
					v := uint8(math.Round(float64(sum) / (k * k)))
					mean.SetRGBA(x, y, color.RGBA{R: v, G: v, B: v, A: 255})
				}
			}
			if d := differenceOf(draw(1), mean); d.max > 16 || d.mean > 4.5 {
				t.Errorf("size %v at %v rad: %+v", size, angle, d)
			}
		}
	}
}

func TestTextThatIsNotDrawn(t *testing.T) {
	c, img := pixels(50, 50)
	nan := vg.Length(math.NaN())
	for _, size := range []vg.Length{0, -5, nan, vg.Length(math.Inf(1)), 1e200} {
		c.FillString(sans(size), pt(10, 10), "size")
	}
	c.FillString(font.Face{Font: font.Font{Size: 10}}, pt(10, 10), "no font")
	c.FillString(sans(10), vg.Point{X: nan}, "nowhere")
	c.FillString(sans(10), pt(5000, 10), "outside")
	near(t, "area", darkArea(img), 0, 0)
}

// Many canvases may draw text with a font that none has used before.
func TestConcurrentText(t *testing.T) {
	parsed, err := opentype.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	draw := func(f *opentype.Font) *image.RGBA {
		c, img := pixels(300, 60)
		for i := range 20 {
			face := font.Face{Font: font.Font{Size: vg.Length(8 + i)}, Face: f}
			c.Push()
			c.Rotate(0.01 * float64(i))
			c.FillString(face, pt(5, 20), "AV concurrent Text 11 @#Ω")
			c.Pop()
		}
		return img
	}
	want := draw(parsed)
	for range 10 {
		fresh, err := opentype.Parse(goregular.TTF)
		if err != nil {
			t.Fatal(err)
		}
		var wg sync.WaitGroup
		for range 8 {
			wg.Go(func() {
				if !bytes.Equal(draw(fresh).Pix, want.Pix) {
					t.Error("a text drawn beside others differs")
				}
			})
		}
		wg.Wait()
	}
}
