package holes_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"pgregory.net/rapid"
)

func columnOf(t testing.TB, key string) *holes.Column {
	t.Helper()
	c, ok := holes.ColumnOf(key)
	if !ok {
		t.Fatalf("no column %q", key)
	}
	return c
}

func TestColumnsAreFitToShow(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range holes.Columns {
		if seen[c.Key] || seen[c.Title] || !regexp.MustCompile(`^[a-z_]+$`).MatchString(c.Key) {
			t.Errorf("%q %q: key or title is taken or odd", c.Key, c.Title)
		}
		seen[c.Key], seen[c.Title] = true, true
		if lines := strings.Split(c.Title, "\n"); len(lines) > 2 || slices.ContainsFunc(lines, func(l string) bool { return l == "" || len(l) > 14 }) {
			t.Errorf("%q: title %q is too long", c.Key, c.Title)
		}
		if !strings.HasSuffix(c.Help, ".") || c.Uses == 0 {
			t.Errorf("%q: help %q, uses %v", c.Key, c.Help, c.Uses)
		}
	}
	if _, ok := holes.ColumnOf("wheels"); ok {
		t.Error("a column that does not exist")
	}
}

// The values of the table by hand as they are shown.
func TestColumnTextsByHand(t *testing.T) {
	c, table := byHand(t)
	table.Combinations[5].AntiSquatRange, table.Combinations[5].Closure = [2]float64{0.9, 1.7}, [2]float64{-9 * inch, 7.5 * inch}
	table.Combinations[5].PinionRange = [2]float64{-1.5 * degree, 1 * degree}
	places := holes.Rank(table, c, 0, box, holes.Wishes{})
	find := func(index int) *holes.Place {
		return &places[slices.IndexFunc(places, func(p holes.Place) bool { return p.Index == index })]
	}
	shown := map[string]string{
		"holes": "2·1·1·2", "chassis_upper": "2", "chassis_lower": "1", "housing_upper": "1", "housing_lower": "2",
		"instant_center_x": "61.20 in", "instant_center_z": "10.00 in", "anti_squat": "130.0 %",
		"anti_squat_least": "90.0 %", "anti_squat_greatest": "170.0 %", "pinion_change": "1.50°", "closure_droop": "9.00 in", "closure_bump": "7.50 in",
		"hit_lower_push": "6,000 lb", "hooked_lower_push": "3,600 lb", "hit_upper_pull": "0 lb", "hooked_upper_pull": "0 lb", "highest_share": "55.0 %",
		"sixty_ft": "–", "envelope_share": "–", "rear_apart": "–", "front_lift": "–",
		"upper_length": "20.50 in", "lower_length": "19.00 in", "upper_turns": "+4.00", "lower_turns": "−8.00", "moved_ends": "2", "distance": "0.120",
	}
	for _, c := range holes.Columns {
		if got := c.Text(find(5), units.US); got != shown[c.Key] {
			t.Errorf("%s: %q, want %q", c.Key, got, shown[c.Key])
		}
		_, hasValue := c.Value(find(8))
		if always := strings.Contains(c.Key, "chassis") || strings.Contains(c.Key, "housing") || c.Key == "holes" || c.Key == "moved_ends"; hasValue != always || !always && c.Text(find(8), units.US) != "–" {
			t.Errorf("%s of holes that cannot be used: %q", c.Key, c.Text(find(8), units.US))
		}
	}
	if text := columnOf(t, "hit_lower_push").Text(find(5), units.SI); text != "26,689 N" {
		t.Errorf("in SI: %q", text)
	}
	if text := columnOf(t, "instant_center_x").Text(find(6), units.US); text != "–" {
		t.Errorf("instant center of parallel bars: %q", text)
	}
}

func TestSortAndFilterByHand(t *testing.T) {
	c, table := byHand(t)
	rank := func() []holes.Place { return holes.Rank(table, c, 0, box, holes.Wishes{}) }
	for _, want := range []struct {
		key        string
		descending bool
		order      []int
	}{
		// From the order 1 2 0 5 3 4 7 6 8 9 10 11.
		{"anti_squat", false, []int{1, 3, 0, 5, 6, 2, 4, 7, 8, 9, 10, 11}},
		{"anti_squat", true, []int{4, 2, 0, 5, 6, 3, 1, 7, 8, 9, 10, 11}},
		{"hit_lower_push", true, []int{4, 0, 1, 2, 3, 5, 6, 7, 8, 9, 10, 11}},
		{"moved_ends", false, []int{0, 1, 2, 4, 8, 5, 3, 6, 9, 10, 7, 11}},
		{"holes", true, []int{11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0}},
	} {
		places := rank()
		holes.Sort(places, columnOf(t, want.key), want.descending)
		if got := indices(places); !slices.Equal(got, want.order) {
			t.Errorf("%s, descending %v: %v, want %v", want.key, want.descending, got, want.order)
		}
	}
	for _, want := range []struct {
		conditions map[string]string
		order      []int
	}{
		{nil, []int{1, 2, 0, 5, 3, 4, 7, 6, 8, 9, 10, 11}},
		{map[string]string{"anti_squat": ""}, []int{1, 2, 0, 5, 3, 4, 7, 6, 8, 9, 10, 11}},
		{map[string]string{"anti_squat": "100 to 130"}, []int{1, 0, 5, 3, 6}},
		{map[string]string{"anti_squat": "100 to 130", "hit_lower_push": "<8000"}, []int{5, 3, 6}},
		{map[string]string{"chassis_upper": "2"}, []int{5, 4, 7, 6}},
		{map[string]string{"chassis_upper": "3"}, []int{8, 9, 10, 11}},
		{map[string]string{"lower_turns": "-2"}, []int{2}},
		{map[string]string{"lower_turns": "-8 to -2"}, []int{2, 5}},
	} {
		var conditions []holes.ColumnCondition
		for key, text := range want.conditions {
			condition, err := columnOf(t, key).Parse(text, units.US)
			if err != nil {
				t.Fatal(err)
			}
			conditions = append(conditions, holes.ColumnCondition{Column: columnOf(t, key), Condition: condition})
		}
		if got := indices(holes.Filter(rank(), conditions)); !slices.Equal(got, want.order) {
			t.Errorf("%v: %v, want %v", want.conditions, got, want.order)
		}
	}
}

// Whatever the car: sorting keeps every place, equals in their order, values in
// order either way and missing ones last; what a column shows, typed into its
// filter, lets that place pass.
func TestColumnsOfAnyCar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, table := fewHoles(t)
		places := holes.Rank(table, c, 0, holes.TargetOf(c), holes.Wishes{})
		by := rapid.SampledFrom(holes.Columns).Draw(t, "column")
		down := rapid.Bool().Draw(t, "descending")
		sorted := slices.Clone(places)
		holes.Sort(sorted, by, down)
		if a, b := indices(sorted), indices(places); !slices.Equal(slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b))) {
			t.Fatalf("%v were %v", a, b)
		}
		for i := 1; i < len(sorted); i++ {
			x, hasX := by.Value(&sorted[i-1])
			y, hasY := by.Value(&sorted[i])
			switch {
			case !hasX && hasY:
				t.Fatal("a missing value comes before another")
			case hasX && hasY && (down && x < y || !down && x > y):
				t.Fatalf("%v comes before %v", x, y)
			case hasX == hasY && x == y && sorted[i-1].Rank > sorted[i].Rank:
				t.Fatal("equals have changed places")
			}
		}
		p := &places[rapid.IntRange(0, len(places)-1).Draw(t, "place")]
		for _, system := range []units.System{units.US, units.SI} {
			for _, column := range holes.Columns {
				x, ok := column.Value(p)
				if math.IsNaN(x) || math.IsInf(x, 0) || column.Text(p, system) == "" {
					t.Fatalf("%s: %v", column.Key, x)
				}
				if !ok || column.Key == "holes" {
					continue
				}
				typed := strings.ReplaceAll(column.Text(p, system), ",", "")
				condition, err := column.Parse(typed, system)
				if err != nil || !condition.Met(x, ok) {
					t.Fatalf("%s: %q, typed as shown, is not met by %v: %v", column.Key, typed, x, err)
				}
			}
		}
	})
}

// The turns in the table put bars of the present length to that of the place.
func TestTurnsOfAnyCar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, table := fewHoles(t)
		setup := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "setup")
		for _, p := range holes.Rank(table, c, setup, holes.TargetOf(c), holes.Wishes{}) {
			if !p.HasTurns {
				continue
			}
			for _, pair := range car.Pairs {
				l, err := c.Linkage(setup)
				if err != nil {
					t.Fatal(err)
				}
				pitch, _ := pair.Bar(c).Pitch()
				if got := pair.Length(l) + p.Turns[pair]*2*pitch; math.Abs(got-p.Combination().Length[pair]) > 1e-12 {
					t.Fatalf("%v turns make %v of %v", p.Turns[pair], got, p.Combination().Length[pair])
				}
			}
		}
	})
}
