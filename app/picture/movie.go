package picture

import (
	"context"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/gif"
	"io"
	"math"

	"bowline/plotting/palette"
)

// frameDelay is the time between two frames of a movie [s/100]: 25 a second.
const frameDelay = 4

// Slowest is the least speed of a movie over that of the car; lastHold is for how long its last
// frame stands [s/100].
const (
	Slowest  = 1. / 50
	lastHold = 150
)

// WriteMovie writes the launch as a GIF that repeats, at a speed, 1 for that of the car. It
// fails when the context is done, for a speed out of range, and for a car without a launch.
// told, unless nil, hears of each frame.
func (s *Studio) WriteMovie(ctx context.Context, w io.Writer, size Size, speed float64, told func(done, all int)) error {
	if !(speed >= Slowest && speed <= 1) {
		return fmt.Errorf("a movie at %v times the car's speed is refused; give from 0.02 to 1", speed)
	}
	s.study.SetLaunching(true)
	end := s.study.LaunchEnd()
	if end == 0 {
		return errors.New("this car has no launch to be shown")
	}
	step := speed * frameDelay / 100
	frames := int(math.Ceil(end/step)) + 1
	movie := &gif.GIF{}
	inks := newInks()
	var before *image.Paletted
	for i := range frames {
		if err := ctx.Err(); err != nil {
			return err
		}
		s.study.SetTime(math.Min(float64(i)*step, end))
		s.fit(size)
		now := inks.paletted(drawn(s.renderer, &s.picture, FootOf(s.study), s.study.Units(), 1))
		movie.Image = append(movie.Image, changed(before, now))
		movie.Delay = append(movie.Delay, frameDelay)
		movie.Disposal = append(movie.Disposal, gif.DisposalNone)
		before = now
		if told != nil {
			told(i+1, frames)
		}
	}
	movie.Delay[frames-1] = lastHold
	return gif.EncodeAll(w, movie)
}

// inks are the colors of a movie: those of the palette, and what lies between them and what
// they are drawn on.
type inks struct {
	list  color.Palette
	known map[color.RGBA]uint8
}

func newInks() *inks {
	p := &palette.Light
	k := &inks{known: map[color.RGBA]uint8{}}
	grounds := []color.RGBA{p.Background, p.Raised, p.Tire, p.Shell, p.Frame, over(p.Target, p.Background), over(p.Target, p.Shell)}
	ink := []color.RGBA{p.Ink, p.Muted, p.Push, p.Pull, p.Bad, p.Rim, p.Housing, p.Center, p.Whole, p.Chassis, p.Ground, p.FrameEdge, p.Grid, p.Shaft, p.Spring}
	seen := map[color.RGBA]bool{}
	add := func(c color.RGBA) {
		if !seen[c] && len(k.list) < int(same) {
			seen[c] = true
			k.list = append(k.list, c)
		}
	}
	for _, c := range append(grounds, ink...) {
		add(c)
	}
	for _, part := range []float64{0.5, 0.25, 0.75} {
		for _, c := range ink {
			for _, g := range grounds {
				add(between(g, c, part))
			}
		}
	}
	for len(k.list) < int(same) {
		k.list = append(k.list, p.Background)
	}
	// The encoder takes the first clear color for the one that leaves pixels as they were.
	k.list = append(k.list, color.RGBA{})
	return k
}

// same is the place of the color that leaves a pixel as it was in the frame before.
const same = uint8(255)

// over is a translucent color on another one.
func over(c, ground color.RGBA) color.RGBA {
	mix := func(x, y uint8) uint8 { return x + uint8(uint32(y)*uint32(255-c.A)/255) }
	return color.RGBA{mix(c.R, ground.R), mix(c.G, ground.G), mix(c.B, ground.B), 255}
}

// between is the color at a part of the way from one to another.
func between(a, b color.RGBA, part float64) color.RGBA {
	mix := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + part*(float64(y)-float64(x)))) }
	return color.RGBA{mix(a.R, b.R), mix(a.G, b.G), mix(a.B, b.B), 255}
}

// paletted returns a picture in the nearest of the inks.
func (k *inks) paletted(img *image.RGBA) *image.Paletted {
	out := image.NewPaletted(img.Rect, k.list)
	for y := range img.Rect.Dy() {
		row := img.Pix[y*img.Stride:]
		for x := range img.Rect.Dx() {
			c := color.RGBA{row[4*x], row[4*x+1], row[4*x+2], 255}
			index, ok := k.known[c]
			if !ok {
				index = uint8(k.list[:same].Index(c))
				k.known[c] = index
			}
			out.Pix[y*out.Stride+x] = index
		}
	}
	return out
}

// changed returns a frame with only what differs from the one before; all of it where there
// is none.
func changed(before, now *image.Paletted) *image.Paletted {
	if before == nil {
		return now
	}
	out := image.NewPaletted(now.Rect, now.Palette)
	for i, index := range now.Pix {
		if out.Pix[i] = index; index == before.Pix[i] {
			out.Pix[i] = same
		}
	}
	return out
}
