package contrast

import (
	"image/color"
	"math"
	"testing"
)

// Black on white has the greatest ratio that the guidelines name, 21, whichever
// is above; gray #767676 on white is their best-known limit, 4.54 (common
// practice).
func TestRatio(t *testing.T) {
	gray := color.Gray{Y: 0x76}
	for _, c := range []struct {
		a, b color.Color
		want float64
	}{{color.White, color.Black, 21}, {color.Black, color.White, 21}, {color.White, color.White, 1}, {gray, color.White, 4.54}} {
		if got := Ratio(c.a, c.b); math.Abs(got-c.want) > 0.005 {
			t.Errorf("%v on %v has %v, want %v", c.a, c.b, got, c.want)
		}
	}
}
