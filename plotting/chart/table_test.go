package chart

import (
	"math"
	"slices"
	"testing"

	"bowline/model/units"
)

// Tables of different positions: each row in its place, in order.
func TestAlignedTables(t *testing.T) {
	table := func(name string, at ...float64) Table {
		made := NewTable(units.SI, name)
		made.Key("time", "", units.Time)
		made.Add("x", "", units.Time)
		for _, x := range at {
			made.Row(x)
			made.Cell(10*x, true)
		}
		return made.Table
	}
	got := table("a", 1, 2, 4).aligned(table("b", 0, 2+1e-13, 3, 5))
	if !slices.Equal(got.Header, []string{"time [s]", "x, a [s]", "x, b [s]"}) {
		t.Errorf("%q", got.Header)
	}
	var rows [][3]float64
	for _, row := range got.Rows {
		rows = append(rows, [3]float64{row[0].Value, row[1].Value, math.Round(row[2].Value)})
		if row[1].Given != (row[1].Value != 0) || row[2].Given != (row[0].Value == 0 || row[2].Value != 0) {
			t.Errorf("%v", row)
		}
	}
	if rows[2][0] = math.Round(rows[2][0]); !slices.Equal(rows, [][3]float64{{0, 0, 0}, {1, 10, 0}, {2, 20, 20}, {3, 0, 30}, {4, 40, 0}, {5, 0, 50}}) {
		t.Errorf("%v", rows)
	}
}

func TestPlainNumbers(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want string
	}{{0, "0"}, {-4, "-4"}, {0.1 + 0.2, "0.3"}, {1e-7, "0.0000001"}, {123456789.123456, "123456789.1"}, {1e15, "1000000000000000"}} {
		if got := plain(c.x); got != c.want {
			t.Errorf("%g: %q, want %q", c.x, got, c.want)
		}
	}
}
