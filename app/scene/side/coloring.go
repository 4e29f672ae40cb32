package side

import (
	"math"
	"slices"
	"strings"

	"bowline/app/scene"
	"bowline/model/holes"
	"bowline/model/units"
	"bowline/plotting/palette"
)

// leastReach is the least that the colors run on below and above the target's
// anti-squat [1].
const leastReach = 0.2

// colored returns dots without any, with the scale and the legend of their colors: of
// anti-squat around its target, or of the column By around the holes in use.
func (c *Cloud) colored(places []holes.Place, target [2]float64) scene.Dots {
	if c.By == nil {
		reach := math.Max(target[1]-target[0], leastReach)
		percent := func(x float64) float64 { return math.Round(100*x) / 100 }
		return scene.Dots{
			Scale: palette.Scale{Target: target, Low: percent(target[0] - reach), High: percent(target[1] + reach)},
			Title: "Anti-squat at ride height, %", Mark: "target",
			Figure: func(x float64) string { return units.US.FigureExact(units.Percent, x) },
		}
	}
	title := strings.ReplaceAll(c.By.Title, "\n", " ")
	if symbol := c.Units.Symbol(c.By.Quantity); symbol != "" {
		title += ", " + symbol
	}
	return scene.Dots{
		Scale: c.around(places), Title: title, Mark: "in use",
		Figure: func(x float64) string { return c.By.Figure(x, c.Units) },
	}
}

// value returns what a place's color stands for, and false where it has no such value.
func (c *Cloud) value(p *holes.Place) (float64, bool) {
	if c.By == nil {
		k := p.Combination()
		return k.AntiSquat, k.HasAntiSquat
	}
	return c.By.Value(p)
}

// around returns a scale around the value of the holes in use, or the middle of all where
// these have none, that most values are within.
func (c *Cloud) around(places []holes.Place) palette.Scale {
	var values []float64
	middle, known := 0.0, false
	for i := range places {
		x, ok := c.value(&places[i])
		if !ok {
			continue
		}
		values = append(values, x)
		if places[i].Present {
			middle, known = x, true
		}
	}
	if len(values) == 0 {
		return palette.Scale{Target: [2]float64{middle, middle}, Low: middle - 1, High: middle + 1}
	}
	slices.Sort(values)
	last := len(values) - 1
	if !known {
		middle = values[last/2]
	}
	cut := int(float64(last) * (1 - mostOf) / 2)
	low, high := min(values[cut], middle), max(values[last-cut], middle)
	// Either side is seen, however far the holes in use are from the middle.
	least := math.Max((high-low)/8, c.Units.ToSI(c.By.Quantity, math.Pow(10, -float64(c.By.Decimals(c.Units)))))
	return palette.Scale{Target: [2]float64{middle, middle}, Low: min(low, middle-least), High: max(high, middle+least)}
}
