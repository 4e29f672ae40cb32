//go:build e2e

package e2e

import (
	"math"
	"testing"
	"time"
)

// BenchmarkDrag drags the hole of a bar's end in circles, as fast as a mouse tells, and reports how many different pictures of the side
// view there are a second. The toolkit makes 60 at most.
func BenchmarkDrag(b *testing.B) {
	p, s := open(b)
	at := s.Pivot("lower_chassis")
	const radius, turns, moves = 25.0, 8, 500
	if err := p.Play(new(Script).Move(at).Hold("shift").Pause(holdFor).Press().Pause(holdFor)); err != nil {
		b.Fatal(err)
	}
	circles := new(Script)
	for i := 1; i <= moves; i++ {
		sin, cos := math.Sincos(2 * math.Pi * turns * float64(i) / moves)
		circles.Move(Point{at.X + radius*sin, at.Y + radius*(1-cos)}).Pause(moveEvery)
	}
	if _, err := p.States.Count(); err != nil {
		b.Fatal(err)
	}
	pictures := 0
	for b.Loop() {
		if err := p.Play(circles); err != nil {
			b.Fatal(err)
		}
		n, err := p.States.Count()
		if err != nil {
			b.Fatal(err)
		}
		pictures += n
	}
	b.ReportMetric(float64(pictures)/b.Elapsed().Seconds(), "pictures/s")
	if err := p.Play(new(Script).Release().Free("shift")); err != nil {
		b.Fatal(err)
	}
}

// How many pictures a second the window makes while the launch plays with the whole car in
// sight: the toolkit does 60 at most.
func BenchmarkPlay(b *testing.B) {
	p, _ := open(b)
	if err := p.Play(new(Script).Key("ctrl+6").Pause(time.Second)); err != nil {
		b.Fatal(err)
	}
	pictures := 0
	const watched = 3 * time.Second
	for b.Loop() {
		if err := p.Play(new(Script).Key("Home").Key("space").Pause(200 * time.Millisecond)); err != nil {
			b.Fatal(err)
		}
		if _, err := p.States.Count(); err != nil {
			b.Fatal(err)
		}
		if err := p.Play(new(Script).Pause(watched)); err != nil {
			b.Fatal(err)
		}
		n, err := p.States.Count()
		if err != nil {
			b.Fatal(err)
		}
		pictures += n
	}
	b.ReportMetric(float64(pictures)/float64(b.N)/watched.Seconds(), "pictures/s")
}
