package raster

// clipY cuts the segment from a to b, which must reach into y0 to y1, to it.
func clipY(a, b point, y0, y1 float64) (p, q point) {
	cut := func(end point) point {
		y := min(max(end.y, y0), y1)
		if y == end.y {
			return end
		}
		t := (y - a.y) / (b.y - a.y)
		return point{a.x*(1-t) + b.x*t, y}
	}
	return cut(a), cut(b)
}

// clipX cuts the segment from a to b to x0 to x1; one that lies beside them is
// moved onto the nearer.
func clipX(a, b point, x0, x1 float64) (p, q point) {
	cut := func(end point) point {
		x := min(max(end.x, x0), x1)
		if x == end.x {
			return end
		}
		t := (x - a.x) / (b.x - a.x)
		if !(t >= 0 && t <= 1) {
			return point{x, end.y}
		}
		return point{x, a.y*(1-t) + b.y*t}
	}
	return cut(a), cut(b)
}

// visible returns the part of the segment from a to b that lies in the box,
// or false when there is none. Ends it cuts lie exactly on the sides of the box,
// however far away a and b are.
func visible(a, b point, view box) (p, q point, ok bool) {
	if max(a.y, b.y) < view.y0 || min(a.y, b.y) > view.y1 {
		return a, b, false
	}
	p, q = clipY(a, b, view.y0, view.y1)
	if max(p.x, q.x) < view.x0 || min(p.x, q.x) > view.x1 {
		return a, b, false
	}
	p, q = clipX(p, q, view.x0, view.x1)
	return p, q, true
}
