package holes_test

import (
	"context"
	"testing"

	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/holes"
)

// saltgrass reads the car with the largest brackets of the examples.
func saltgrass(t testing.TB) *car.Car {
	t.Helper()
	const path = "../../assets/cars/saltgrass-7.toml"
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

func BenchmarkSearch(b *testing.B) {
	c, lib := saltgrass(b), carfile.Stock()
	count := 0
	for b.Loop() {
		table, err := holes.Search(context.Background(), c, lib, holes.Options{})
		if err != nil {
			b.Fatal(err)
		}
		count += len(table.Combinations)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(count), "µs/combination")
}

// All combinations launched, on as many cores as there are.
func BenchmarkLaunchAll(b *testing.B) {
	c := saltgrass(b)
	table := search(b, c, holes.Options{})
	count := 0
	for b.Loop() {
		count += launched(b, table, c, 0, holes.LaunchOptions{}).Done
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(count), "µs/combination")
}
