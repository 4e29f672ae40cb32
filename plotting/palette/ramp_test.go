package palette

import (
	"image/color"
	"math"
	"testing"

	"bowline/plotting/palette/contrast"
)

var themes = map[string]*Palette{"light": &Light, "dark": &Dark}

// all lists a ramp's colors from far below to far above.
func all(r *Ramp) []color.RGBA {
	var list []color.RGBA
	for i := Shades - 1; i >= 0; i-- {
		list = append(list, r.Below[i])
	}
	list = append(list, r.Inside)
	return append(list, r.Above[:]...)
}

// lab returns CIE L*a*b* of linear sRGB, white D65 (ISO/CIE 11664-4).
func lab(r, g, b float64) [3]float64 {
	f := func(t float64) float64 {
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	x := f((0.4124*r + 0.3576*g + 0.1805*b) / 0.9505)
	y := f(0.2126*r + 0.7152*g + 0.0722*b)
	z := f((0.0193*r + 0.1192*g + 0.9505*b) / 1.089)
	return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

// eyes are the linear-light matrices of full color blindness (G. Machado et
// al., "A physiologically-based model for simulation of color vision
// deficiency", 2009; from memory).
var eyes = map[string][3][3]float64{
	"no blindness": {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"protanopia":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"deuteranopia": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"tritanopia":   {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

// seen is a color as an eye sees it.
func seen(eye [3][3]float64, c color.RGBA) [3]float64 {
	in := [3]float64{linear(c.R), linear(c.G), linear(c.B)}
	var out [3]float64
	for i, row := range eye {
		for j, x := range row {
			out[i] += x * in[j]
		}
		out[i] = math.Max(0, math.Min(1, out[i]))
	}
	return lab(out[0], out[1], out[2])
}

func apart(a, b [3]float64) float64 {
	return math.Sqrt((a[0]-b[0])*(a[0]-b[0]) + (a[1]-b[1])*(a[1]-b[1]) + (a[2]-b[2])*(a[2]-b[2]))
}

// The light of a channel is that of sRGB, which a gray's luminance is made of.
func TestLinearLight(t *testing.T) {
	for v := range 256 {
		if got, want := linear(uint8(v)), contrast.Luminance(color.Gray{Y: uint8(v)}); math.Abs(got-want) > 1e-12 {
			t.Errorf("channel %d has %v, want %v", v, got, want)
		}
	}
}

// The ramp grows lighter all along, for every eye.
func TestRampIsOrdered(t *testing.T) {
	for theme, p := range themes {
		for eye, m := range eyes {
			list := all(&p.Squat)
			for i := 1; i < len(list); i++ {
				if a, b := seen(m, list[i-1])[0], seen(m, list[i])[0]; !(b > a) {
					t.Errorf("%s, %s: color %d has lightness %.1f, the one before %.1f", theme, eye, i, b, a)
				}
			}
		}
	}
}

// The color inside the target is well apart from the nearest ones outside, for
// every eye; 2.3 is a just noticeable difference (from memory).
func TestTargetStandsOut(t *testing.T) {
	for theme, p := range themes {
		r := &p.Squat
		for eye, m := range eyes {
			in := seen(m, r.Inside)
			for side, c := range map[string]color.RGBA{"below": r.Below[0], "above": r.Above[0]} {
				if d := apart(in, seen(m, c)); d < 20 {
					t.Errorf("%s, %s: inside and just %s are only %.1f apart", theme, eye, side, d)
				}
			}
		}
	}
}

// Dots are graphical objects: contrast of 3 to 1 at least (WCAG 2.1, 1.4.11).
func TestRampStandsOutFromTheBackground(t *testing.T) {
	for theme, p := range themes {
		for i, c := range all(&p.Squat) {
			if got := contrast.Ratio(c, p.Background); got < 3 {
				t.Errorf("%s: color %d %v has a contrast of %.2f", theme, i, c, got)
			}
		}
	}
}

// Neighbors on one side are nearly the same step apart.
func TestRampHasEvenSteps(t *testing.T) {
	for theme, p := range themes {
		for side, list := range map[string][Shades]color.RGBA{"below": p.Squat.Below, "above": p.Squat.Above} {
			first := toLab(list[0])
			last := toLab(list[Shades-1])
			for i := range list {
				part := apart(first, toLab(list[i])) / apart(first, last)
				// Rounding to 8 bits.
				if want := float64(i) / (Shades - 1); math.Abs(part-want) > 0.05 {
					t.Errorf("%s, %s: color %d is %.3f of the way, want %.3f", theme, side, i, part, want)
				}
			}
		}
	}
}

func TestLabGoesThereAndBack(t *testing.T) {
	for _, hex := range []uint32{0, 0xffffff, 0xff0000, 0x00ff00, 0x0000ff, 0x123456, 0xc0ffee} {
		if got := fromLab(toLab(rgb(hex))); got != rgb(hex) {
			t.Errorf("%06x came back as %v", hex, got)
		}
	}
	// White is (1, 0, 0) in OKLab; red as published, rounded.
	for hex, want := range map[uint32][3]float64{0xffffff: {1, 0, 0}, 0xff0000: {0.628, 0.225, 0.126}} {
		if got := toLab(rgb(hex)); apart(got, want) > 1e-3 {
			t.Errorf("%06x is %v, want %v", hex, got, want)
		}
	}
}

func TestScale(t *testing.T) {
	s, r := Scale{Target: [2]float64{1, 1.6}, Low: 0.4, High: 2.2}, &Light.Squat
	for x, want := range map[float64]color.RGBA{
		1: r.Inside, 1.3: r.Inside, 1.6: r.Inside,
		0.999: r.Below[0], 0.7: r.Below[Shades/2], 0.41: r.Below[Shades-1], 0.4: r.Below[Shades-1], -5: r.Below[Shades-1],
		1.601: r.Above[0], 2.19: r.Above[Shades-1], 2.2: r.Above[Shades-1], 1e300: r.Above[Shades-1],
	} {
		if got := s.Shade(r, x); got != want {
			t.Errorf("%v is %v, want %v", x, got, want)
		}
	}
	// A scale of no width has its last color beside the target.
	if got := (Scale{Target: [2]float64{1, 1}, Low: 1, High: 1}).Shade(r, 1.5); got != r.Above[Shades-1] {
		t.Errorf("beyond a scale of no width the color is %v", got)
	}
}
