package around

import (
	"math"

	"bowline/app/scene"
	"bowline/app/scene/parts"
	"bowline/app/scene/side"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Sizes [m] and widths [px].
const (
	gridStep  = 12 * units.Inch // between the lines on the ground
	gridReach = 8               // lines to either side
	gridAhead = 14              // lines ahead
	gridBack  = 6               // lines behind
	arrowLong = 20 * units.Inch // of the arrow of arrowLoad
	twistOut  = 7 * units.Inch  // radius of the driveshaft's arrow
	holeSize  = 2.6
	pivotSize = 4.5
	thin      = 1.0
)

// arrowLoad is the force that an arrow of length arrowLong stands for [N].
const arrowLoad = 10000 * units.PoundForce

// Fill implements scene.Viewpoint.
func (v *Viewpoint) Fill(l *scene.List, p scene.Pointer) {
	l.Clear()
	r, s := v.study.Result(), v.study.Station()
	setup := r.Options.Setup
	i, launching := v.study.Instant()
	if launching {
		v.stance = parts.Launched(v.study.Launch(), i)
	} else {
		v.stance = parts.Standing(r, s)
	}
	b := &v.parts
	b.Start(l, r.Car, v.stance, v.Plane())
	v.ground(l)
	if launching {
		b.Track()
		b.Flush()
	}
	b.Frame()
	b.Flush()
	b.Wheels()
	b.Flush()
	v.listGhosts(l, launching)
	b.Housing()
	b.CoilOvers()
	b.Driveshaft()
	b.Locator(setup)
	b.WheelieBar()
	b.Brackets()
	loads := v.loads()
	b.Bars(setup, &loads)
	b.Flush()
	v.holes(l, p)
	v.forces(l, &loads)
	v.twist(l)
	v.labels(l, &loads)
}

// listGhosts lists the bars of the setups that the one shown is held against, and in a
// launch their tires.
func (v *Viewpoint) listGhosts(l *scene.List, launching bool) {
	for n, other := range v.study.Others() {
		g := side.GhostOf(v.study, other)
		stance := parts.Standing(g.Result, g.Station)
		if g.Stance != nil {
			stance = *g.Stance
		} else if launching {
			continue // its launch is not there yet
		}
		b := &v.ghost
		b.Start(l, g.Result.Car, stance, v.Plane())
		if launching {
			b.GhostTires(n + 1)
		}
		setup := g.Result.Options.Setup
		b.GhostBars(setup, n+1)
		b.Flush()
		id := parts.BarID(launch.UpperRight)
		id.Ghost = n + 1
		housing, chassis := b.Joints(launch.UpperRight, setup)
		l.Add(scene.Item{ID: id, Shape: scene.Label, Points: l.Points(r3.Scale(0.5, r3.Add(housing, chassis))), Text: g.Name, Stroke: scene.Muted, Beside: r2.Vec{X: 1, Y: -1}, Rank: scene.Ordinary})
	}
}

// loads returns what the bars carry, by launch.RodID.
func (v *Viewpoint) loads() (loads [len(launch.Bars)]parts.BarLoad) {
	r, e := v.study.Result(), v.study.Envelope()
	i, launching := v.study.Instant()
	load := v.study.Case().Of(&v.study.Station().Loads)
	for _, bar := range launch.Bars {
		tension, unknown := 0.0, false
		switch {
		case launching:
			tension = v.study.Launch().Tension[bar][i]
		case load.Balanced:
			tension = analysis.Tension(bar.Pair(), load)
		default:
			unknown = true
		}
		loads[bar] = parts.Loaded(r, &e, bar, tension, unknown)
	}
	return loads
}

// ground lists lines on the track, which runs by in a launch.
func (v *Viewpoint) ground(l *scene.List) {
	id := scene.ID{Kind: scene.Ground}
	if v.from == Behind {
		half := float64(gridReach) * gridStep
		l.Add(scene.Item{ID: id, Points: l.Points(r3.Vec{Y: -half}, r3.Vec{Y: half}), Stroke: scene.GroundColor, Width: 1.6, Pick: 6})
		return
	}
	into := math.Mod(v.stance.Come, gridStep)
	for i := -gridReach; i <= gridReach; i++ {
		y := float64(i) * gridStep
		l.Add(scene.Item{ID: id, Points: l.Points(r3.Vec{X: -gridBack * gridStep, Y: y}, r3.Vec{X: gridAhead * gridStep, Y: y}), Stroke: scene.Grid, Width: thin})
	}
	for i := -gridBack; i <= gridAhead; i++ {
		x := float64(i)*gridStep - into
		l.Add(scene.Item{ID: id, Points: l.Points(r3.Vec{X: x, Y: -gridReach * gridStep}, r3.Vec{X: x, Y: gridReach * gridStep}), Stroke: scene.Grid, Width: thin})
	}
}

// holes lists the holes on both sides, those in use larger.
func (v *Viewpoint) holes(l *scene.List, p scene.Pointer) {
	c := v.study.Document().Car()
	holes := &c.Setups[v.study.Document().Setup()].Holes
	for _, row := range car.Rows {
		for i, h := range *row.In(c) {
			used := i == *row.Of(holes)
			for _, side := range []scene.Side{scene.Left, scene.Right} {
				id := scene.ID{Kind: scene.Hole, Side: side, Row: row, Index: i}
				item := scene.Item{Shape: scene.Disc, Pixels: holeSize, Fill: scene.Background, Stroke: scene.HoleColor, Width: thin, Pick: 6}
				if used {
					id.Kind = scene.Pivot
					item.Pixels, item.Stroke, item.Width, item.Pick = pivotSize, scene.Ink, 1.6, 9
				}
				if p.Hot == id {
					item.Stroke = scene.Accent
				}
				item.ID, item.Points = id, l.Points(v.parts.Hole(row, map[scene.Side]float64{scene.Left: 1, scene.Right: -1}[side], h))
				l.Add(item)
			}
		}
	}
}

// forces lists what each bar does to the chassis, as arrows to scale.
func (v *Viewpoint) forces(l *scene.List, loads *[len(launch.Bars)]parts.BarLoad) {
	for _, bar := range launch.Bars {
		load := &loads[bar]
		if load.Unknown || load.Tension == 0 {
			continue
		}
		housing, chassis := v.parts.Joints(bar, v.study.Document().Setup())
		// A bar that pushes drives the chassis ahead.
		way := r3.Scale(-load.Tension/arrowLoad*arrowLong, r3.Unit(r3.Sub(chassis, housing)))
		color := scene.Push
		if load.Tension > 0 {
			color = scene.Pull
		}
		id := parts.BarID(bar)
		l.Add(scene.Item{ID: scene.ID{Kind: scene.BarForce, Side: id.Side, Index: int(bar)}, Shape: scene.Force, Points: l.Points(chassis, r3.Add(chassis, way)), Stroke: color, Width: 2.2, Pick: 5})
	}
}

// twist lists which way the driveshaft turns the axle, in a launch.
func (v *Viewpoint) twist(l *scene.List) {
	i, launching := v.study.Instant()
	c := v.study.Document().Car()
	if !launching || !c.Driveline.Given {
		return
	}
	torque := v.study.Launch().Torque[i] / c.Drive.Axle
	if torque == 0 {
		return
	}
	at := v.stance.Axle.At(r3.Vec{X: c.Driveline.PinionJoint.X + 3*units.Inch, Z: c.Driveline.PinionJoint.Y})
	// It acts about −x on the axle: over the top to the left, where it presses the tire down.
	var path [14]r3.Vec
	sweep := -math.Copysign(1.5*math.Pi, torque)
	for k := range path {
		sin, cos := math.Sincos(math.Pi/2 + sweep*(float64(k)/float64(len(path)-1)-0.5))
		path[k] = r3.Add(at, r3.Vec{Y: twistOut * cos, Z: twistOut * sin})
	}
	id := scene.ID{Kind: scene.Twist}
	l.Add(scene.Item{ID: id, Shape: scene.Force, Points: l.Points(path[:]...), Stroke: scene.Whole, Width: 2.6, Pick: 6})
	figure := v.study.Units().Format(units.Torque, math.Abs(torque))
	l.Add(scene.Item{ID: id, Shape: scene.Label, Points: l.Points(path[len(path)/2]), Text: "Driveshaft twists", Figure: figure, Stroke: scene.Whole, Beside: r2.Vec{Y: 1}, Rank: scene.Ordinary})
}

// beside is where the words of a bar stand best: on its side of the car, those of the upper
// bars above, and from above behind.
func (v *Viewpoint) beside(bar launch.RodID) r2.Vec {
	lower, right := bar.Pair() == car.Lower, bar.Side() == launch.Right
	sign := func(on bool) float64 { return map[bool]float64{true: 1, false: -1}[on] }
	if v.from == Above {
		return r2.Vec{X: sign(lower), Y: sign(!right)}
	}
	return r2.Vec{X: sign(right), Y: sign(!lower)}
}

// labels lists what each bar carries.
func (v *Viewpoint) labels(l *scene.List, loads *[len(launch.Bars)]parts.BarLoad) {
	r, e, u := v.study.Result(), v.study.Envelope(), v.study.Units()
	_, launching := v.study.Instant()
	for _, bar := range launch.Bars {
		load := &loads[bar]
		housing, chassis := v.parts.Joints(bar, v.study.Document().Setup())
		name, figure, color := words.Capital(bar.String()), "no force", scene.Slack
		if !load.Unknown {
			use, way := r.Hold(bar.Pair(), load.Tension)
			name += [...]string{column.Push: " pushes", column.Pull: " pulls"}[way]
			figure = u.Format(units.Force, use.Force) + " — " + units.Share(use.Share)
			color = parts.NumberColor(load.Tension, use.Share)
			if !launching && load.Most > 1 && load.Most > use.Share {
				figure, color = figure+"; "+words.Most(e.Of(bar), u), scene.Bad
			}
		}
		l.Add(scene.Item{ID: parts.BarID(bar), Shape: scene.Label, Points: l.Points(r3.Scale(0.5, r3.Add(housing, chassis))), Text: name, Figure: figure, Stroke: color, Beside: v.beside(bar), Rank: scene.Foremost})
	}
}
