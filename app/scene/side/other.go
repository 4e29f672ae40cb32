package side

import (
	"fmt"
	"math"
	"strings"

	"bowline/app/scene"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// Other is a setup that the one shown is held against, at the same travel or
// instant.
type Other struct {
	Name    string
	Result  *analysis.Result
	Station *analysis.Station
	Tension *[2][2]float64 // in a launch, as in Instant; nil where it is not known
}

// other draws the bars, holes and instant center of the other setup as a ghost.
func (b *builder) other() {
	o := b.options.Other
	if o == nil {
		return
	}
	ghost := builder{result: o.Result, station: o.Station}
	ic, near := o.Station.InstantCenter, o.Station.HasInstantCenter
	near = near && math.Abs(ic.X) < farCenter && math.Abs(ic.Y) < farCenter
	for _, pair := range car.Pairs {
		housing, chassis := ghost.ends(pair)
		if near {
			from := chassis
			if r2.Norm(r2.Sub(ic, housing)) < r2.Norm(r2.Sub(ic, chassis)) {
				from = housing
			}
			b.add(scene.Item{ID: scene.ID{Kind: scene.OtherBarLine, Index: int(pair)}, Points: []r2.Vec{from, ic}, Stroke: scene.Muted, Width: thin, Dashed: true, Pick: closePick})
		}
		b.add(scene.Item{ID: scene.ID{Kind: scene.OtherBar, Index: int(pair)}, Points: []r2.Vec{housing, chassis}, Stroke: scene.Muted, Width: line, Dashed: true, Pick: closePick})
	}
	for _, row := range car.Rows {
		at := ghost.hole(row, row.Hole(o.Result.Car, o.Result.Options.Setup))
		b.add(scene.Item{ID: scene.ID{Kind: scene.OtherHole, Row: row}, Shape: scene.Disc, Points: []r2.Vec{at}, Pixels: pivotSize + 2, Stroke: scene.Muted, Width: line, Dashed: true, Pick: easyPick})
	}
	if near {
		b.add(scene.Item{ID: scene.ID{Kind: scene.OtherCenter}, Shape: scene.Disc, Points: []r2.Vec{ic}, Pixels: 6.5, Stroke: scene.Background, Width: 4})
		b.add(scene.Item{ID: scene.ID{Kind: scene.OtherCenter}, Shape: scene.Disc, Points: []r2.Vec{ic}, Pixels: 6.5, Stroke: scene.Muted, Width: 2, Pick: easyPick})
		b.label(scene.ID{Kind: scene.OtherCenter}, ic, o.Name, scene.Muted, r2.Vec{X: 0.5, Y: 1}, r2.Vec{Y: -13})
		return
	}
	housing, chassis := ghost.ends(car.Upper)
	b.label(scene.ID{Kind: scene.OtherBar}, r2.Scale(0.5, r2.Add(housing, chassis)), o.Name, scene.Muted, r2.Vec{X: 0.5, Y: 1}, r2.Vec{Y: -13})
}

// describe names a part of the other setup.
func (other *Other) describe(id scene.ID, o Options) []string {
	if other == nil {
		return nil
	}
	s, of := other.Station, fmt.Sprintf(" of %q", other.Name)
	pair := car.Pair(id.Index)
	switch id.Kind {
	case scene.OtherBarLine:
		return []string{"Line of the " + pair.Bars() + of}
	case scene.OtherHole:
		row := strings.ToUpper(id.Row.String()[:1]) + id.Row.String()[1:]
		hole := *id.Row.Of(&other.Result.Car.Setups[other.Result.Options.Setup].Holes)
		return []string{fmt.Sprintf("%s hole %d%s", row, hole+1, of), placeWords(id.Row.Hole(other.Result.Car, other.Result.Options.Setup), id.Row.OnChassis(), o.Units)}
	case scene.OtherCenter:
		lines := []string{"Instant center" + of, o.Units.Format(units.Length, s.InstantCenter.X) + " ahead of the contact, " + o.Units.Format(units.Length, s.InstantCenter.Y) + " up"}
		if s.HasAntiSquat {
			lines = append(lines, "anti-squat "+o.Units.Format(units.Percent, s.AntiSquat))
		}
		return lines
	}
	launching := o.Launch != nil
	if o.Launch = nil; launching && other.Tension != nil {
		o.Launch = &Instant{Tension: *other.Tension}
	}
	lines := describeBar(pair, other.Result, s, o)
	if launching && other.Tension == nil {
		lines = lines[:1]
	}
	name, rest, _ := strings.Cut(lines[0], ",")
	lines[0] = name + of + "," + rest
	return lines
}
