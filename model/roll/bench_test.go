package roll_test

import (
	"testing"

	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/roll"
)

func BenchmarkRoll(b *testing.B) {
	p := parameters(b, cars[1])
	f, _ := carfile.Read(cars[1], carfile.Stock())
	limits := roll.Limits{15 * degree, 15 * degree, 15 * degree, 15 * degree}
	l := roll.New(&p)
	b.Run("New", func(b *testing.B) {
		for b.Loop() {
			launch.New(f.Car, 0, carfile.Stock())
		}
	})
	b.Run("Stiffness", func(b *testing.B) {
		for b.Loop() {
			l.Stiffness(0)
		}
	})
	b.Run("Limit", func(b *testing.B) {
		for b.Loop() {
			l.Limit(0, limits)
		}
	})
	b.Run("Pose", func(b *testing.B) {
		for b.Loop() {
			l.Pose(0.07, 3*degree)
		}
	})
}
