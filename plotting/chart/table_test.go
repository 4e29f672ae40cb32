package chart_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/units"
	"bowline/plotting/chart"
)

// Tables of different positions: each row in its place, in order.
func TestTablesOfSeveral(t *testing.T) {
	of := func(setup string, at ...float64) *chart.Chart {
		var f fake
		for _, x := range at {
			f.rows = append(f.rows, [2]float64{x, 10 * x})
		}
		return made(setup, axis(0, 1), axis(0, 1), f)
	}
	a, b, c := of("a", 1, 2, 4), of("b", 0, 2+1e-13, 3, 5), of("c", 2, 6)
	got := chart.Compare(a, b).Table(units.SI)
	if !slices.Equal(got.Header, []string{"time [s]", "x, a [s]", "x, b [s]"}) {
		t.Errorf("%q", got.Header)
	}
	want := [][]float64{{0, -1, 0}, {1, 10, -1}, {2, 20, 20}, {3, -1, 30}, {4, 40, -1}, {5, -1, 50}}
	wantRows(t, got, want)
	got = chart.Compare(a, b, c).Table(units.SI)
	for i := range want {
		want[i] = append(want[i], -1)
	}
	want[2][3] = 20
	wantRows(t, got, append(want, []float64{6, -1, -1, 60}))
}

// wantRows compares the values of a table; -1 is none.
func wantRows(t *testing.T, table chart.Table, want [][]float64) {
	t.Helper()
	var rows [][]float64
	for _, row := range table.Rows {
		var values []float64
		for _, cell := range row {
			if cell.Given {
				values = append(values, math.Round(1e9*cell.Value)/1e9)
			} else {
				values = append(values, -1)
			}
		}
		rows = append(rows, values)
	}
	if !slices.EqualFunc(rows, want, slices.Equal[[]float64]) {
		t.Errorf("%v, want %v", rows, want)
	}
}

func TestPlainNumbers(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want string
	}{{0, "0"}, {-4, "-4"}, {0.1 + 0.2, "0.3"}, {1e-7, "0.0000001"}, {123456789.123456, "123456789.1"}, {1e15, "1000000000000000"}} {
		var out strings.Builder
		table := chart.Table{Header: []string{"x"}, Rows: [][]chart.Cell{{{Value: c.x, Given: true}}}}
		if err := table.WriteCSV(&out); err != nil || out.String() != "x\n"+c.want+"\n" {
			t.Errorf("%g: %q, %v, want %q", c.x, out.String(), err, c.want)
		}
	}
}
