package document

import (
	"fmt"
	"slices"
	"strings"

	"bowline/model/car"
)

// CopySetup adds a setup like setup i behind it, under a name of its own and
// without the runs, which were made with the other one, and makes it the
// current one.
func (d *Document) CopySetup(i int) []car.Problem {
	problems := d.Apply("Copy setup", func(c *car.Car) {
		twin := c.Setups[i]
		twin.Name, twin.Runs = c.FreeSetupName(twin.Name), nil
		c.Setups = slices.Insert(c.Setups, i+1, twin)
	})
	if len(problems) == 0 {
		d.SelectSetup(i + 1)
	}
	return problems
}

// RenameSetup gives setup i another name, without spaces around it. A name that
// another setup has is refused as NameTaken says.
func (d *Document) RenameSetup(i int, name string) []car.Problem {
	name = strings.TrimSpace(name)
	if taken := NameTaken(d.now.car, i, name); taken != nil {
		return []car.Problem{*taken}
	}
	return d.Apply("Rename setup", func(c *car.Car) { c.Setups[i].Name = name })
}

// NameTaken says that another setup than setup i has a name; nil when none has.
func NameTaken(c *car.Car, i int, name string) *car.Problem {
	other := c.SetupNamed(name)
	if other < 0 || other == i {
		return nil
	}
	return &car.Problem{
		Path:  fmt.Sprintf("setup.%d.name", i),
		Wrong: fmt.Sprintf("setup %d is called %q too", other+1, name),
		Right: "give each setup a name of its own",
	}
}

// MoveSetup moves setup i up or down in the list by so many places; beyond the
// list it stays where it is.
func (d *Document) MoveSetup(i, by int) []car.Problem {
	j := i + by
	if j < 0 || j >= len(d.now.car.Setups) {
		return nil
	}
	return d.Apply("Move setup", func(c *car.Car) {
		moved := c.Setups[i]
		c.Setups = slices.Insert(slices.Delete(c.Setups, i, i+1), j, moved)
	})
}

// DeleteSetup deletes setup i with the runs logged with it, and returns it. The
// last one is refused.
func (d *Document) DeleteSetup(i int) (deleted car.Setup, problems []car.Problem) {
	c := d.now.car
	if len(c.Setups) == 1 {
		return car.Setup{}, []car.Problem{{Path: fmt.Sprintf("setup.%d", i), Wrong: "a car needs a setup and this is the only one", Right: "add a copy first"}}
	}
	deleted = c.Setups[i]
	problems = d.Apply("Delete setup", func(c *car.Car) { c.Setups = slices.Delete(c.Setups, i, i+1) })
	if len(problems) > 0 {
		return car.Setup{}, problems
	}
	return deleted, nil
}
