package inputs_test

import (
	"testing"
	"time"

	"bowline/app/inputs"
	"bowline/model/car"
)

// BenchmarkRefresh measures how long the panel takes to follow a drag of one
// hole, all sections open: two entries and the name of a hole change.
func BenchmarkRefresh(b *testing.B) {
	d := newDesk(b)
	d.openAll()
	d.panel.Later = func(time.Duration, func()) {}
	d.doc.Begin("Move pivot")
	defer d.doc.End()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		b.StopTimer()
		d.doc.Apply("Move pivot", func(c *car.Car) {
			c.Chassis.Upper[2].X = (22.5 + 0.01*float64(i%50+1)) * inch
			c.Chassis.Upper[2].Y = (17 + 0.01*float64(i%50+1)) * inch
		})
		b.StartTimer()
		d.panel.Update()
	}
}

// BenchmarkUnchanged measures a refresh in which no text changes.
func BenchmarkUnchanged(b *testing.B) {
	d := newDesk(b)
	d.openAll()
	b.ReportAllocs()
	for b.Loop() {
		d.panel.Update()
	}
}

// BenchmarkNew measures how long the panel takes to come up.
func BenchmarkNew(b *testing.B) {
	d := newDesk(b)
	b.ReportAllocs()
	for b.Loop() {
		inputs.New(d.doc, library())
	}
}

// BenchmarkApply measures one change as it is typed or dragged, document included.
func BenchmarkApply(b *testing.B) {
	d := newDesk(b)
	d.openAll()
	d.doc.Begin("Move pivot")
	defer d.doc.End()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		d.doc.Apply("Move pivot", func(c *car.Car) { c.Chassis.Upper[2].X = (22.5 + 0.01*float64(i%50+1)) * inch })
	}
}
