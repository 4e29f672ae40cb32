package palette

import (
	"image/color"
	"math"
)

// Shades is how many colors a ramp has on either side of its middle.
const Shades = 24

// Ramp colors values by where they are to a target interval: one color inside
// it, and colors that run off below it and above it. From far below to far
// above they grow lighter all along, so that their order is seen in gray and by
// the color-blind as well.
type Ramp struct {
	Inside       color.RGBA
	Below, Above [Shades]color.RGBA // the nearest to the target first
}

// newRamp makes a ramp of the colors far below and just below the target,
// inside it, just above it and far above.
func newRamp(farBelow, below, inside, above, farAbove uint32) Ramp {
	r := Ramp{Inside: rgb(inside)}
	for i := range Shades {
		part := float64(i) / (Shades - 1)
		r.Below[i] = between(rgb(below), rgb(farBelow), part)
		r.Above[i] = between(rgb(above), rgb(farAbove), part)
	}
	return r
}

// between mixes two opaque colors in the space OKLab, where equal steps look
// equal (B. Ottosson, "A perceptual color space for image processing", 2020).
func between(a, b color.RGBA, part float64) color.RGBA {
	from, to := toLab(a), toLab(b)
	var mixed [3]float64
	for i := range mixed {
		mixed[i] = from[i] + part*(to[i]-from[i])
	}
	return fromLab(mixed)
}

// toLab turns an opaque color into OKLab.
func toLab(c color.RGBA) [3]float64 {
	r, g, b := linear(c.R), linear(c.G), linear(c.B)
	l := math.Cbrt(0.4122214708*r + 0.5363325363*g + 0.0514459929*b)
	m := math.Cbrt(0.2119034982*r + 0.6806995451*g + 0.1073969566*b)
	s := math.Cbrt(0.0883024619*r + 0.2817188376*g + 0.6299787005*b)
	return [3]float64{
		0.2104542553*l + 0.7936177850*m - 0.0040720468*s,
		1.9779984951*l - 2.4285922050*m + 0.4505937099*s,
		0.0259040371*l + 0.7827717662*m - 0.8086757660*s,
	}
}

// fromLab is the inverse of toLab; what a screen cannot show is brought to the
// nearest that it can, channel by channel.
func fromLab(c [3]float64) color.RGBA {
	cube := func(x float64) float64 { return x * x * x }
	l := cube(c[0] + 0.3963377774*c[1] + 0.2158037573*c[2])
	m := cube(c[0] - 0.1055613458*c[1] - 0.0638541728*c[2])
	s := cube(c[0] - 0.0894841775*c[1] - 1.2914855480*c[2])
	return color.RGBA{
		R: encoded(4.0767416621*l - 3.3077115913*m + 0.2309699292*s),
		G: encoded(-1.2684380046*l + 2.6097574011*m - 0.3413193965*s),
		B: encoded(-0.0041960863*l - 0.7034186147*m + 1.7076147010*s),
		A: 0xff,
	}
}

// linear turns a channel of sRGB into linear light, 0 to 1 (IEC 61966-2-1).
func linear(channel uint8) float64 {
	x := float64(channel) / 255
	if x <= 0.04045 {
		return x / 12.92
	}
	return math.Pow((x+0.055)/1.055, 2.4)
}

// encoded is the inverse of linear, rounded to the nearest.
func encoded(light float64) uint8 {
	light = math.Max(0, math.Min(1, light))
	x := 12.92 * light
	if light > 0.0031308 {
		x = 1.055*math.Pow(light, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * x))
}

// Scale lays a ramp along values, with a target interval at its middle.
type Scale struct {
	Target    [2]float64 // least and greatest
	Low, High float64    // where the ramp ends; values beyond have its last color
}

// Shade returns the ramp's color of a value.
func (s Scale) Shade(r *Ramp, x float64) color.RGBA {
	switch {
	case x < s.Target[0]:
		return r.Below[shade(s.Target[0]-x, s.Target[0]-s.Low)]
	case x > s.Target[1]:
		return r.Above[shade(x-s.Target[1], s.High-s.Target[1])]
	}
	return r.Inside
}

// shade is the index of a value that is by off the target on a side that
// reaches so far.
func shade(by, reach float64) int {
	if !(by < reach) {
		return Shades - 1
	}
	return int(by / reach * Shades)
}
