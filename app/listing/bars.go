package listing

// leastThumb is the least length of a thumb over the width of its bar.
const leastThumb = 2.5

// BarWidth is the width of a bar, of which the thumb takes a part [px].
const BarWidth float32 = 10

// bar is one scroll bar, along its own direction [px].
type bar struct {
	start, length float32 // of the track
	most          float64 // how far can be scrolled
	size          float32 // of the thumb
	at            float32 // where the thumb begins
}

// bar returns the bar of a part of the table.
func (f *frame) bar(which part, v view) bar {
	x, y := f.most()
	b := bar{start: f.heading, length: f.height, most: y}
	page, whole, at := float64(f.height), float64(f.rows)*float64(f.pitch), v.y
	if which == barAcross {
		b = bar{start: 0, length: f.width, most: x}
		page, whole, at = float64(f.width), float64(f.total), v.x
	}
	if whole > 0 {
		b.size = b.length * float32(min(page/whole, 1))
	}
	b.size = min(max(b.size, leastThumb*BarWidth), b.length)
	b.at = b.start
	if b.most > 0 {
		b.at += (b.length - b.size) * float32(at/b.most)
	}
	return b
}

// scrolled returns how far rows are scrolled when the thumb begins at a place.
func (b *bar) scrolled(at float32) float64 {
	if room := b.length - b.size; room > 0 {
		return float64((at-b.start)/room) * b.most
	}
	return 0
}

// grab is what the pressed mouse button holds.
type grab struct {
	part   part
	column int     // of a heading
	grip   float32 // from the start of a thumb to the pointer [px]
}

// takeBar takes hold of a thumb; a press beside it brings it there.
func (t *Table) takeBar(which part, p point) {
	f := t.frame()
	b := f.bar(which, t.view)
	along := along(which, p)
	g := grab{part: which, column: None, grip: along - b.at}
	if g.grip < 0 || g.grip >= b.size {
		g.grip = b.size / 2
	}
	t.grab = g
	t.dragBar(p)
}

// dragBar brings the thumb held to the pointer.
func (t *Table) dragBar(p point) {
	f := t.frame()
	b := f.bar(t.grab.part, t.view)
	to := b.scrolled(along(t.grab.part, p) - t.grab.grip)
	if t.grab.part == barAcross {
		t.scroll(to, t.view.y)
	} else {
		t.scroll(t.view.x, to)
	}
}

// along is the coordinate of a place in the direction of a bar.
func along(which part, p point) float32 {
	if which == barAcross {
		return p.x
	}
	return p.y
}
