package parts

import (
	"math"

	"bowline/app/scene"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r3"
)

// BarLoad is what one bar carries.
type BarLoad struct {
	Tension float64 // pull positive [N]
	Share   float64 // of what it may carry that way [1]
	Most    float64 // the largest share that is asked of it anywhere [1]
	Unknown bool    // bars and springs do not hold the axle
}

// Loaded returns a bar's load: a tension, or none that is known, held against what the bar may
// carry, and the most that is asked of it.
func Loaded(r *analysis.Result, e *analysis.Envelope, bar launch.RodID, tension float64, unknown bool) BarLoad {
	use, _ := r.Hold(bar.Pair(), tension)
	return BarLoad{Tension: tension, Share: use.Share, Most: e.Of(bar).Share, Unknown: unknown}
}

// color returns what a load is drawn in, and the heads of its arrows.
func (l *BarLoad) color() (c scene.Color, arrows int) {
	switch {
	case l.Unknown || l.Tension == 0:
		return scene.Slack, 0
	case l.Tension > 0:
		return scene.Pull, -1
	}
	return scene.Push, 1
}

// NumberColor returns the color of words about a tension, pull positive [N], that is a share
// of what the bar may carry: that of push or pull, and of what is beyond a limit.
func NumberColor(tension, share float64) scene.Color {
	if share > 1 {
		return scene.Bad
	}
	color, _ := (&BarLoad{Tension: tension}).color()
	return color
}

// BarID names a bar of the car shown.
func BarID(bar launch.RodID) scene.ID {
	return scene.ID{Kind: [...]scene.Kind{car.Upper: scene.UpperBar, car.Lower: scene.LowerBar}[bar.Pair()], Side: sideOf(int(bar.Side()))}
}

// Joints returns where a bar of a setup is held, at the housing and at the chassis.
func (b *Builder) Joints(bar launch.RodID, setup int) (housing, chassis r3.Vec) {
	j := b.car.Rods(setup)[bar]
	return b.stance.Axle.At(j.Axle), b.stance.Chassis.At(j.Chassis)
}

// Bars adds the four bars of a setup, each a tube of its diameter between rod ends. It is
// filled from the housing on to its share of what it may carry, in the color of push or
// pull, and hatched beyond the whole of it; a tick stands at the most that is asked of it.
func (b *Builder) Bars(setup int, loads *[4]BarLoad) {
	for _, bar := range launch.Bars {
		b.bar(bar, setup, &loads[bar])
	}
}

func (b *Builder) bar(bar launch.RodID, setup int, load *BarLoad) {
	id := BarID(bar)
	spec := bar.Pair().Bar(b.car)
	housing, chassis := b.Joints(bar, setup)
	length := r3.Norm(r3.Sub(chassis, housing))
	if length == 0 {
		return
	}
	at := middle(housing, chassis)
	put := func(i scene.Item) {
		if bar.Side() == launch.Left {
			i.Shift = b.far
		}
		b.add(at, i)
	}
	thread, _ := spec.ThreadDiameter()
	pitch, _ := spec.Pitch()
	shown := max(spec.Threads.Shown, 4) * pitch
	// From the ball: head, thread in sight, jam nut, adapter, tube.
	head := 0.75 * thread
	nut := head + shown
	collar := nut + 0.56*thread
	start := min(collar+0.5*inch, 0.4*length)
	part := func(d float64) float64 { return d / length }
	place := func(t float64) r3.Vec { return along(housing, chassis, t) }
	segment := func(from, to, girth float64, fill, edge scene.Color) {
		put(scene.Item{ID: id, Points: b.list.Points(place(from), place(to)), Girth: girth, Stroke: fill, Edge: edge})
		put(scene.Item{ID: id, Points: b.list.Points(place(1-from), place(1-to)), Girth: girth, Stroke: fill, Edge: edge})
	}
	color, arrows := load.color()
	segment(part(head), part(start), 0.9*thread, scene.Raised, scene.Housing)
	segment(part(nut), part(collar), min(1.5*thread, 1.3*spec.OD), scene.Raised, scene.Housing)
	segment(part(collar), part(start), 0.92*spec.OD, scene.Raised, scene.Housing)
	from, to := part(start), 1-part(start)
	tube := b.list.Points(place(from), place(to))
	if load.Share > 1 || load.Most > 1 {
		put(scene.Item{ID: id, Points: tube, Girth: spec.OD, Width: 8, Stroke: scene.Bad})
	}
	put(scene.Item{ID: id, Points: tube, Girth: spec.OD, Stroke: scene.Raised, Edge: color, Pick: 6})
	if share := min(load.Share, 1); share > 0 && !load.Unknown {
		put(scene.Item{ID: id, Points: b.list.Points(place(from), place(from+share*(to-from))), Girth: 0.82 * spec.OD, Stroke: color})
	}
	aside := r3.Cross(b.eye, r3.Sub(chassis, housing))
	if n := r3.Norm(aside); n > 0 {
		aside = r3.Scale(spec.OD/2/n, aside)
		if load.Share > 1 {
			b.hatch(put, id, place, from, to, part(spec.OD), aside)
		}
		if load.Most > 0 {
			tick := place(from + min(load.Most, 1)*(to-from))
			put(scene.Item{ID: id, Points: b.list.Points(r3.Add(tick, r3.Scale(1.5, aside)), r3.Sub(tick, r3.Scale(1.5, aside))), Stroke: scene.Ink, Width: line})
		}
	}
	if arrows != 0 {
		put(scene.Item{ID: id, Points: tube, Girth: spec.OD, Arrows: arrows})
	}
	for _, end := range []r3.Vec{housing, chassis} {
		put(scene.Item{ID: id, Shape: scene.Disc, Points: b.list.Points(end), Radius: max(head, 0.55*inch), Fill: scene.Raised, Stroke: scene.Housing, Width: thin})
	}
}

// hatch strikes a tube out.
func (b *Builder) hatch(put func(scene.Item), id scene.ID, place func(float64) r3.Vec, from, to, step float64, aside r3.Vec) {
	n := min(int(math.Ceil((to-from)/step)), 40)
	for i := range n {
		x := from + (to-from)*float64(i)/float64(n)
		put(scene.Item{ID: id, Points: b.list.Points(r3.Sub(place(x), aside), r3.Add(place(min(x+step, to)), aside)), Stroke: scene.Background, Width: line})
	}
}
