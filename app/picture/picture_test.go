package picture_test

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"image"
	"image/color"
	"image/draw"
	"image/gif"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"bowline/app/picture"
	"bowline/assets"
	"bowline/model/carfile"
	"bowline/model/units"
)

// studio looks at the demo car.
func studio(t *testing.T, view string) *picture.Studio {
	t.Helper()
	data, err := assets.Cars.ReadFile(assets.DemoCar)
	if err != nil {
		t.Fatal(err)
	}
	file, err := carfile.Decode("car.toml", data, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	s, err := picture.New(file, 0, carfile.Stock(), units.US, view)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.Close)
	return s
}

var size = picture.Size{Width: 400, Height: 240}

// drawn returns a picture as PNG.
func drawn(t *testing.T, s *picture.Studio) (data []byte, img image.Image) {
	t.Helper()
	var out bytes.Buffer
	if err := s.WritePNG(&out, size); err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(out.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	return out.Bytes(), img
}

// Each view, travel and instant gives a picture of its own, twice as fine as asked for, the
// same each time.
func TestPictures(t *testing.T) {
	seen := map[string]string{}
	for _, view := range picture.Views {
		s := studio(t, view)
		for what, put := range map[string]func() error{
			"ride height": func() error { return s.Stand(0) },
			"droop":       func() error { return s.Stand(-3 * units.Inch) },
			"0.05 s":      func() error { return s.Launch(0.05) },
			"0.5 s":       func() error { return s.Launch(0.5) },
		} {
			if err := put(); err != nil {
				t.Fatal(err)
			}
			data, img := drawn(t, s)
			if b := img.Bounds(); b.Dx() != 2*size.Width || b.Dy() <= 2*size.Height {
				t.Errorf("%s, %s: %v", view, what, b)
			}
			if again, _ := drawn(t, s); !bytes.Equal(again, data) {
				t.Errorf("%s, %s: drawn again it is another picture", view, what)
			}
			if other := seen[string(data)]; other != "" {
				t.Errorf("%s, %s is the same picture as %s", view, what, other)
			}
			seen[string(data)] = view + ", " + what
		}
	}
}

// A drawing is well-formed and says what it shows, with the numbers and the caution.
func TestDrawing(t *testing.T) {
	s := studio(t, "side")
	if err := s.Stand(0); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := s.WriteSVG(&out, size); err != nil {
		t.Fatal(err)
	}
	text := ""
	for d := xml.NewDecoder(&out); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if words, ok := token.(xml.CharData); ok {
			text += string(words) + " "
		}
	}
	for _, want := range []string{"Saltgrass No. 7", "baseline", "hit case, ride height", "10,699 lb", "not a certificate"} {
		if !strings.Contains(text, want) {
			t.Errorf("the drawing lacks %q: %s", want, text)
		}
	}
}

// A movie runs through the launch at its speed, stands at the end and begins anew.
func TestMovie(t *testing.T) {
	s := studio(t, "3d")
	var out bytes.Buffer
	heard, all := 0, 0
	if err := s.WriteMovie(context.Background(), &out, size, 1, func(done, n int) { heard, all = done, n }); err != nil {
		t.Fatal(err)
	}
	movie, err := gif.DecodeAll(&out)
	if err != nil {
		t.Fatal(err)
	}
	ran := 0
	for _, delay := range movie.Delay[:len(movie.Delay)-1] {
		ran += delay
	}
	// The launch takes 1.49 s from release.
	if n := len(movie.Image); n != heard || n != all || ran < 145 || ran > 155 || movie.LoopCount != 0 || movie.Delay[n-1] < 100 {
		t.Errorf("%d frames over %d/100 s, heard of %d of %d, delays %v", n, ran, heard, all, movie.Delay)
	}
	if b := movie.Image[0].Bounds(); b.Dx() != size.Width || b.Dy() <= size.Height {
		t.Errorf("its frames are %v", b)
	}
	// What a frame leaves out shows the frame before: the corner stays as it was.
	shown := image.NewRGBA(movie.Image[0].Bounds())
	for i, frame := range movie.Image {
		draw.Draw(shown, frame.Bounds(), frame, frame.Bounds().Min, draw.Over)
		if got, want := shown.At(1, 1), color.RGBAModel.Convert(movie.Image[0].At(1, 1)); got != want {
			t.Fatalf("frame %d: its corner is %v, %v at first", i, got, want)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if err := s.WriteMovie(ctx, io.Discard, size, 1, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped, it ends with %v", err)
	}
	if err := s.WriteMovie(context.Background(), io.Discard, size, 3, nil); err == nil {
		t.Error("a movie faster than the car is drawn")
	}
}

func TestRefusals(t *testing.T) {
	s := studio(t, "side")
	for what, err := range map[string]error{
		"beyond the stops": s.Stand(1), "no number of a travel": s.Stand(math.NaN()), "no number of a time": s.Launch(math.NaN()), "before the start": s.Launch(-0.1), "after the end": s.Launch(9),
		"too small": picture.Size{Width: 10, Height: 400}.Check(), "too large": picture.Size{Width: 500, Height: 90000}.Check(),
	} {
		if err == nil {
			t.Errorf("%s: it is not refused", what)
		}
	}
	data, _ := assets.Cars.ReadFile(assets.DemoCar)
	file, err := carfile.Decode("car.toml", data, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := picture.New(file, 0, carfile.Stock(), units.US, "below"); err == nil || !strings.Contains(err.Error(), "3d") {
		t.Errorf("a view that there is not: %v", err)
	}
}
