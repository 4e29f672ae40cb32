package document

import (
	"slices"

	"bowline/model/car"
)

// LogRun adds a run to the log of setup i.
func (d *Document) LogRun(i int, r car.Run) []car.Problem {
	return d.Apply("Log run", func(c *car.Car) {
		c.Setups[i].Runs = append(c.Setups[i].Runs, r)
	})
}

// EditRun puts another run in place of one in the log of setup i.
func (d *Document) EditRun(i, run int, r car.Run) []car.Problem {
	return d.Apply("Edit run", func(c *car.Car) { c.Setups[i].Runs[run] = r })
}

// DeleteRun deletes a run from the log of setup i.
func (d *Document) DeleteRun(i, run int) []car.Problem {
	return d.Apply("Delete run", func(c *car.Car) {
		c.Setups[i].Runs = slices.Delete(c.Setups[i].Runs, run, run+1)
	})
}
