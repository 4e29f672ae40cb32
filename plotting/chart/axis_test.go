package chart_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"

	"pgregory.net/rapid"
)

// number is a number beside the y axis of a drawn chart and where it stands.
type number struct {
	text string
	at   float64 // [SI]
}

// numbers draws a chart whose y axis shows a span [SI] and returns its numbers
// from below.
func numbers(t charttest.TB, y chart.Axis, s units.System, shown chart.Span) []number {
	t.Helper()
	const width, height = 700, 600
	y.Sight = shown
	c := made("a", chart.Axis{Label: "Time", Quantity: units.Time, Sight: chart.Between(0.1, 0.9), Tight: true}, y, fake{})
	style := light
	style.Units = s
	// An axis holds still as long as it fits.
	style.Frame = chart.Frame{Key: c.Key, Units: s, X: chart.Between(0.1, 0.9), Y: shown}
	_, layout := charttest.Draw(t, c, width, height, style, chart.Marker{})
	if layout.Frame.Y != shown {
		t.Fatalf("%v is shown as %v", shown, layout.Frame.Y)
	}
	spy := charttest.NewSpy(width, height)
	spy.DrawStyle(c, style)
	var list []number
	for _, text := range spy.Texts {
		px, py := spy.Pixels(text)
		if strings.Trim(text.Text, "−0123456789,.") == "" && px < layout.Left {
			_, at := layout.ToData(px, py)
			list = append(list, number{text.Text, at})
		}
	}
	return list
}

func TestNumbersOfAnAxis(t *testing.T) {
	force := chart.Axis{Label: "Force", Quantity: units.Force, Unsigned: true}
	length := chart.Axis{Label: "Length", Quantity: units.Length}
	percent := chart.Axis{Label: "Share", Quantity: units.Percent}
	for _, c := range []struct {
		axis     chart.Axis
		units    units.System
		from, to float64 // in the unit shown
		want     string
	}{
		{force, units.US, -11000, 7000, "10,000 5,000 0 5,000"},
		{force, units.US, -6000, 9000, "5,000 2,500 0 2,500 5,000 7,500"},
		{force, units.SI, -1.2e6, 1e5, "1,200,000 1,000,000 800,000 600,000 400,000 200,000 0"},
		{length, units.US, -4, 3, "−4 −3 −2 −1 0 1 2 3"},
		{length, units.US, 0, 0.05, "0.00 0.01 0.02 0.03 0.04 0.05"},
		{length, units.US, 0, 0.17, "0.000 0.025 0.050 0.075 0.100 0.125 0.150"},
		{length, units.SI, -101.6, 76.2, "−100 −50 0 50"},
		{percent, units.US, 90, 201, "100 120 140 160 180 200"},
	} {
		f := c.units.Factor(c.axis.Quantity)
		var got []string
		for _, n := range numbers(t, c.axis, c.units, chart.Between(c.from*f, c.to*f)) {
			got = append(got, n.text)
		}
		if all := strings.Join(got, " "); all != c.want {
			t.Errorf("%v %g to %g: %q, want %q", c.units, c.from, c.to, all, c.want)
		}
	}
}

// Numbers are at round multiples of the unit, in order, in sight, neither few
// nor many, and tell the value at their place.
func TestNumbersOfAnySpan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(-1e6, 1e6).Draw(t, "from")
		length := math.Pow(10, rapid.Float64Range(-3, 6).Draw(t, "log length"))
		s := units.System(rapid.IntRange(0, 1).Draw(t, "units"))
		shown := chart.Between(from, from+length)
		list := numbers(t, chart.Axis{Label: "Length", Quantity: units.Length}, s, shown)
		if len(list) < 3 || len(list) > 8 {
			t.Fatalf("%d numbers", len(list))
		}
		var values []float64
		for i, n := range list {
			value, err := strconv.ParseFloat(strings.NewReplacer(",", "", "−", "-").Replace(n.text), 64)
			if err != nil {
				t.Fatal(err)
			}
			// They stand within a pixel of their place.
			if off := s.ToSI(units.Length, value) - n.at; math.Abs(off) > length/300 {
				t.Fatalf("%s stands %g m off in %v", n.text, off, shown)
			}
			if i > 1 && math.Abs((value-values[i-1])/(values[1]-values[0])-1) > 1e-4 {
				t.Fatalf("numbers are uneven: %v", list)
			}
			values = append(values, value)
		}
		if !slices.IsSorted(values) || len(slices.Compact(slices.Clone(values))) != len(values) {
			t.Fatalf("numbers repeat: %v", list)
		}
	})
}

// Both halves of an axis with two sides have room for their word.
func TestHalvesHaveRoom(t *testing.T) {
	show := func(sight chart.Span) chart.Span {
		y := chart.Axis{Label: "Force", Quantity: units.Force, Unsigned: true, Least: 1, Sight: sight}
		return made("a", axis(0, 1), y, fake{}).Frame(&chart.Style{Units: units.SI}).Y
	}
	for _, sight := range []chart.Span{chart.Between(-10000, 1), chart.Between(-1, 10000)} {
		if got := show(sight); -got.Min < 0.24*got.Length() || got.Max < 0.24*got.Length() {
			t.Errorf("%v is shown in %v", sight, got)
		}
	}
	if got := show(chart.Between(-10000, 0)); got.Max != 0 {
		t.Errorf("nothing pulls, yet the axis runs to %g", got.Max)
	}
}
