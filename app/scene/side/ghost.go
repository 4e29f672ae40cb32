package side

import (
	"fmt"
	"math"
	"strings"

	"bowline/app/scene"
	"bowline/app/scene/parts"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Ghost is a setup that the one shown is held against, at the same travel or
// instant.
type Ghost struct {
	Name    string
	Result  *analysis.Result
	Station *analysis.Station
	Tension *[2][2]float64 // in a launch, as in Instant; nil where it is not known
	Stance  *parts.Stance  // in its launch; nil as at the station
}

// GhostOf returns a setup that a study's is held against, where it is now.
func GhostOf(s *study.Study, c *study.Comparison) Ghost {
	g := Ghost{Name: c.Name, Result: c.Result, Station: &c.Station}
	if i, ok := s.Instant(); ok && c.Launch != nil && len(c.Launch.Frames) > 0 {
		i = min(i, len(c.Launch.Frames)-1)
		tension, stance := c.Launch.Tensions(i), parts.Launched(c.Launch, i)
		g.Tension, g.Stance = &tension, &stance
	}
	return g
}

// ghosts draws bars, holes and instant centers of the setups held against this
// one.
func (b *builder) ghosts() {
	for i := range b.options.Ghosts {
		b.ghost(&b.options.Ghosts[i], i+1)
	}
}

// ghost draws one of them, counted from 1.
func (b *builder) ghost(g *Ghost, number int) {
	of := b.beside(g.Result, g.Station)
	if g.Stance != nil {
		of.parts.Start(b.list, g.Result.Car, *g.Stance, Plane)
		of.parts.Part(far)
		of.parts.GhostTires(number)
		of.parts.GhostBars(g.Result.Options.Setup, number)
		of.parts.Flush()
	}
	ic, near := g.Station.InstantCenter, g.Station.HasInstantCenter
	near = near && math.Abs(ic.X) < farCenter && math.Abs(ic.Y) < farCenter
	for _, pair := range car.Pairs {
		if near {
			housing, chassis := of.seen(pair)
			b.add(scene.Item{ID: scene.ID{Kind: scene.BarLine, Index: int(pair), Ghost: number}, Points: b.middle(nearer(ic, housing, chassis), ic), Stroke: scene.Muted, Width: thin, Dashed: true, Pick: closePick})
		}
		if g.Stance == nil {
			b.add(scene.Item{ID: barID(pair, number), Points: b.list.Points(of.ends(pair)), Stroke: scene.Muted, Width: line, Dashed: true, Pick: closePick})
		}
	}
	for _, row := range car.Rows {
		id := scene.ID{Kind: scene.Pivot, Row: row, Index: *row.Of(&g.Result.Car.Setups[g.Result.Options.Setup].Holes), Ghost: number}
		b.add(scene.Item{ID: id, Shape: scene.Disc, Points: b.list.Points(of.pivot(row)), Pixels: pivotSize + 2, Stroke: scene.Muted, Width: line, Dashed: true, Pick: easyPick})
	}
	if near {
		id := scene.ID{Kind: scene.InstantCenter, Ghost: number}
		b.add(scene.Item{ID: id, Shape: scene.Disc, Points: b.middle(ic), Pixels: 6.5, Stroke: scene.Background, Width: 4})
		b.add(scene.Item{ID: id, Shape: scene.Disc, Points: b.middle(ic), Pixels: 6.5, Stroke: scene.Muted, Width: 2, Pick: easyPick})
		b.label(id, across(ic, 0), g.Name, "", scene.Muted, r2.Vec{Y: -1}, scene.Ordinary)
		return
	}
	housing, chassis := of.ends(car.Upper)
	b.label(barID(car.Upper, number), r3.Scale(0.5, r3.Add(housing, chassis)), g.Name, "", scene.Muted, r2.Vec{Y: -1}, scene.Ordinary)
}

// describe names a part of a ghost.
func (g *Ghost) describe(id scene.ID, o Options) []string {
	s, of := g.Station, fmt.Sprintf(" of %q", g.Name)
	switch id.Kind {
	case scene.BarLine:
		return []string{"Line of the " + id.Pair().Bars() + of}
	case scene.Pivot:
		return []string{fmt.Sprintf("%s hole %d%s", words.Capital(id.Row.String()), id.Index+1, of), placeWords(id.Row.Hole(g.Result.Car, g.Result.Options.Setup), id.Row.OnChassis(), o.Units)}
	case scene.InstantCenter:
		lines := []string{"Instant center" + of, words.Center(s.InstantCenter, o.Units)}
		if s.HasAntiSquat {
			lines = append(lines, "anti-squat "+o.Units.Format(units.Percent, s.AntiSquat))
		}
		return lines
	}
	launching := o.Launch != nil
	o.Most = analysis.Envelope{}
	if o.Launch = nil; launching && g.Tension != nil {
		o.Launch = &Instant{Tension: *g.Tension}
	}
	lines := describeBar(id.Pair(), g.Result, s, o)
	if launching && g.Tension == nil {
		lines = lines[:1]
	}
	name, rest, _ := strings.Cut(lines[0], ",")
	lines[0] = name + of + "," + rest
	return lines
}
