package holes

import (
	"cmp"
	"slices"
)

// Sort orders places by a column; equals stay in the order they are in, and
// places without a value come last either way.
func Sort(places []Place, by *Column, descending bool) {
	type entry struct {
		value float64
		has   bool
		from  int
	}
	entries := make([]entry, len(places))
	for i := range places {
		x, ok := by.Value(&places[i])
		entries[i] = entry{x, ok, i}
	}
	slices.SortStableFunc(entries, func(a, b entry) int {
		switch {
		case a.has && !b.has:
			return -1
		case b.has && !a.has:
			return 1
		case descending:
			return cmp.Compare(b.value, a.value)
		}
		return cmp.Compare(a.value, b.value)
	})
	before := slices.Clone(places)
	for i := range entries {
		places[i] = before[entries[i].from]
	}
}

// ColumnCondition is a condition on the values of a column.
type ColumnCondition struct {
	Column    *Column
	Condition Condition
}

// Filter returns the places that meet all conditions, in the order they are in.
func Filter(places []Place, conditions []ColumnCondition) []Place {
	met := make([]Place, 0, len(places))
	for i := range places {
		p := &places[i]
		missed := func(c ColumnCondition) bool {
			x, ok := c.Column.Value(p)
			return !c.Condition.Met(x, ok)
		}
		if !slices.ContainsFunc(conditions, missed) {
			met = append(met, *p)
		}
	}
	return met
}
