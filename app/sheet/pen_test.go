package sheet

import "testing"

func TestHairlineIsWholeDevicePixels(t *testing.T) {
	for scale, want := range map[float32]int{0.5: 1, 1: 1, 1.25: 1, 1.5: 2, 2: 2, 3: 3} {
		img := drawn(t, scale, func(p *Pen) { p.Box(0, 0, 100, p.Hairline(), red) })
		if r, n := colored(img, red); r.Dy() != want || n != r.Dx()*want {
			t.Errorf("at scale %v a thin line is %d pixels thick, want %d", scale, r.Dy(), want)
		}
	}
}
