package window

import (
	"testing"

	"bowline/model/car"
)

// What each edit leads to is found for the newest car, while the page is on show.
func TestTheSearchFollowsTheCarWhileItIsLookedAt(t *testing.T) {
	d, _ := openDesk(t)
	if d.study.Table() != nil {
		t.Fatal("combinations are searched though nobody looks")
	}
	d.show("Holes")
	if d.study.TableOutdated() {
		t.Fatal("nothing is searched")
	}
	d.doc.Begin("Drag")
	for range 20 {
		d.doc.Apply("Move", func(c *car.Car) { c.Chassis.Upper[2].Y += 0.001 })
	}
	d.doc.End()
	d.settle()
	if d.study.TableOutdated() || d.study.Table().Car.Chassis.Upper[2] != d.doc.Car().Chassis.Upper[2] {
		t.Error("the combinations are not those of the newest car")
	}
	found := d.study.Table()
	d.doc.Apply("Rename", func(c *car.Car) { c.Body.Name = "Number 9" })
	d.settle()
	if d.study.Table() != found {
		t.Error("a name is a reason to search again")
	}
	d.show("Here")
	d.edit()
	if d.study.Table() != found || d.study.Busy() {
		t.Error("the search goes on though nobody looks")
	}
	d.show("Holes")
	if d.study.TableOutdated() {
		t.Error("back on the page the combinations are those of the car before")
	}
}
