package plotting

import (
	"math"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
	"bowline/plotting/chart"
)

const (
	// pushInSight is how many times the largest force the lower bars' push
	// limit may be and still be drawn as a line; beyond, it would leave the
	// curves flat, and its value stands at the edge.
	pushInSight = 5
	// limitInSight is the same for the other limits, over the largest force
	// of their direction.
	limitInSight = 1.6
	// forceInSight is the largest force shown, over the larger of lower push
	// and upper pull limit; only near travels where the bars hardly hold the axle is it more.
	forceInSight = 3
)

// directions are those in which a bar has a limit.
var directions = [...]column.Direction{column.Push, column.Pull}

// directionInks color what pushes and what pulls, as on the stage.
var directionInks = [...]chart.Ink{column.Push: pushInk, column.Pull: pullInk}

// tensionInk is the color of a force, pull positive.
func tensionInk(tension float64) chart.Ink {
	if tension < 0 {
		return pushInk
	}
	return pullInk
}

// limits are the allowable loads of a result's bars and what a chart of forces
// shows of them.
type limits struct {
	r *analysis.Result
	// loaded reports whether some force on a pair has a direction.
	loaded func(car.Pair, column.Direction) bool
}

// forceAxis is the y axis of bar forces.
func forceAxis() chart.Axis {
	return chart.Axis{Quantity: units.Force, Low: "push", High: "pull", LowInk: pushInk, HighInk: pullInk, Unsigned: true, Least: 1}
}

// holdAgainst adds the limits to a chart of forces, and what must be in sight:
// its lines, the other forces given, and the limits that leave them readable.
func holdAgainst(c *chart.Chart, l limits, others ...float64) {
	rules := l.rules()
	c.Rules = append([]chart.Rule{{Ink: chart.MutedInk, At: 0}}, rules...)
	c.Y.Sight = l.sight(c.Lines, others, rules)
}

// rules returns the allowable loads that some force comes up against, and
// that of the lower bars in push always. One that both pairs share is one.
func (l limits) rules() []chart.Rule {
	var list []chart.Rule
	for _, d := range directions {
		shown := func(p car.Pair) bool { return l.loaded(p, d) || p == car.Lower && d == column.Push }
		upper, lower := l.r.Limit(car.Upper, d).Allowable, l.r.Limit(car.Lower, d).Allowable
		if shown(car.Upper) && shown(car.Lower) && upper == lower {
			list = append(list, limitRule(d.String()+" limit of all bars", 1, l.r.Limit(car.Upper, d)))
			continue
		}
		for _, p := range car.Pairs {
			if shown(p) {
				list = append(list, limitRule(pairNames[p]+" "+d.String()+" limit", pairWidths[p], l.r.Limit(p, d)))
			}
		}
	}
	return list
}

// limitRule draws an allowable load in the color of its direction, with its name and
// value, and where on the bar it holds when that is not the tube.
func limitRule(name string, width float64, limit column.Limit) chart.Rule {
	if limit.Kind == column.WeldYield {
		name += " at weld"
	}
	return chart.Rule{
		Ink: directionInks[limit.Kind.Direction()], Dash: chart.Long, Width: width, At: signed(limit.Kind.Direction(), limit.Allowable), Edge: true,
		Caption: chart.ValueCaption(name, units.Force, limit.Allowable),
	}
}

// signed gives a magnitude the sign of its direction, pull positive.
func signed(d column.Direction, magnitude float64) float64 {
	if d == column.Push {
		return -magnitude
	}
	return magnitude
}

// sight decides what must be in sight: zero, all forces that are not beyond
// reason, and those limits that leave the curves readable. Beyond a limit, or where
// another one is named at the edge, there is room for its label.
func (l limits) sight(curves []chart.Line, others []float64, rules []chart.Rule) chart.Span {
	forces := l.span(curves, others)
	sight, room := forces, chart.Span{}
	for _, limit := range rules {
		if math.Abs(limit.At) <= l.reach(forces, limit.At) {
			sight = sight.With(limit.At)
		}
		if limit.At < 0 {
			room.Min = -chart.LabelRoom
		} else {
			room.Max = chart.LabelRoom
		}
	}
	return chart.Between(sight.Min+room.Min*sight.Length(), sight.Max+room.Max*sight.Length())
}

// span returns zero and the forces, each up to forceInSight; without any, what
// the bars may carry.
func (l limits) span(curves []chart.Line, others []float64) chart.Span {
	push, pull := l.r.Limit(car.Lower, column.Push).Allowable, l.r.Limit(car.Upper, column.Pull).Allowable
	most := forceInSight * math.Max(push, pull)
	var s chart.Span
	take := func(force float64) { s = s.With(chart.Between(-most, most).Clamp(force)) }
	for _, c := range curves {
		for _, run := range c.Runs {
			for _, at := range run {
				take(at.Y)
			}
		}
	}
	for _, force := range others {
		take(force)
	}
	if s == (chart.Span{}) {
		return chart.Between(-push, pull)
	}
	return s
}

// reach returns how large a limit may be and still be drawn as a line.
func (l limits) reach(forces chart.Span, limit float64) float64 {
	switch {
	case limit == -l.r.Limit(car.Lower, column.Push).Allowable:
		return pushInSight * math.Max(forces.Max, -forces.Min)
	case limit < 0:
		return -limitInSight * forces.Min
	}
	return limitInSight * forces.Max
}

// limitColumns starts a column for each allowable load.
func limitColumns(t *chart.TableBuilder) {
	for _, p := range car.Pairs {
		for _, d := range directions {
			t.Add(pairNames[p]+" "+d.String()+" limit", "pull positive", units.Force)
		}
	}
}

// limitCells fills them.
func limitCells(t *chart.TableBuilder, r *analysis.Result) {
	for _, p := range car.Pairs {
		for _, d := range directions {
			t.Cell(signed(d, r.Limit(p, d).Allowable), true)
		}
	}
}
