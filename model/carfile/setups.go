package carfile

import (
	"fmt"
	"strings"
	"time"

	"bowline/model/car"
	"bowline/model/units"
)

// setups are the [[setup]] tables.
type setups struct{}

// setupKeys are the keys of a setup, of a car that has no other.
var setupKeys = func() []key {
	keys := []key{{name: "name", kind: text{at: func(c *car.Car) *string { return &c.Setups[0].Name }}}}
	for _, row := range car.Rows {
		keys = append(keys, key{name: row.SetupKey(), kind: hole(func(c *car.Car) *int { return row.Of(&c.Setups[0].Holes) })})
	}
	for _, bar := range car.BarTurns {
		keys = append(keys, key{name: bar.Key, optional: true, fine: true, kind: number{quantity: units.Number, at: func(c *car.Car) *float64 { return bar.Of(&c.Setups[0].Turns) }}})
	}
	return append(keys,
		key{name: "note", optional: true, kind: text{at: func(c *car.Car) *string { return &c.Setups[0].Note }}},
		key{name: "run", comment: "one pass on a track", optional: true, fine: true, kind: runs{}})
}()

// usualSetup is a car with a setup that has what is left out of one.
var usualSetup = &car.Car{Setups: make([]car.Setup, 1)}

func (k setups) read(r *reader, path string, raw any, c *car.Car) {
	list, ok := tableList(raw)
	if !ok {
		r.note(path, "is "+kindOf(raw), k.give(r.units))
		return
	}
	if len(list) > car.MaxSetups {
		r.note(path, fmt.Sprintf("there are %d setups", len(list)), fmt.Sprintf("give 1 to %d", car.MaxSetups))
		return
	}
	c.Setups = make([]car.Setup, len(list))
	for i, values := range list {
		r.table(indexPath(path, i), setupKeys, values, &car.Car{Setups: c.Setups[i : i+1]})
	}
}

// tableList returns the tables of an array of them, however it is written.
func tableList(raw any) ([]map[string]any, bool) {
	if list, ok := raw.([]map[string]any); ok {
		return list, true
	}
	list, ok := raw.([]any)
	tables := make([]map[string]any, len(list))
	for i, element := range list {
		if tables[i], ok = element.(map[string]any); !ok {
			return nil, false
		}
	}
	return tables, ok
}

func (k setups) unknown(c *car.Car) { c.Setups = nil }

func (k setups) value(c *car.Car) value {
	list := make([]value, len(c.Setups))
	for i := range c.Setups {
		list[i] = fieldsOf(setupKeys, &car.Car{Setups: c.Setups[i : i+1]}, usualSetup)
	}
	return list
}

func (k setups) give(units.System) string {
	return "add [[setup]] tables with " + strings.Join(names(setupKeys, true), ", ")
}

// runs are the [[setup.run]] tables of a car's only setup.
type runs struct{}

// runKeys are the keys of a run, of a car that has no other.
var runKeys = func() []key {
	keys := []key{{name: "date", kind: day(func(c *car.Car) *string { return &theRun(c).Date })}}
	words := func(t *car.RunText) key {
		return key{name: t.Key, optional: true, kind: text{at: func(c *car.Car) *string { return t.Of(theRun(c)) }}}
	}
	figure := func(n *car.RunNumber) key {
		return key{name: n.Key, optional: true, fine: true, kind: figure{number{quantity: n.Quantity, field: n, at: func(c *car.Car) *float64 { return n.Of(theRun(c)) }}}}
	}
	// What a time slip has comes first, what the program knows last.
	keys = append(keys, words(car.RunTexts[0]), figure(car.RunNumbers[0]))
	for _, t := range car.RunTexts[1:] {
		keys = append(keys, words(t))
	}
	for _, n := range car.RunNumbers[1:] {
		keys = append(keys, figure(n))
	}
	return keys
}()

// theRun returns the run of a car that has no other.
func theRun(c *car.Car) *car.Run { return &c.Setups[0].Runs[0] }

// withRun returns a car with nothing but the first of the runs.
func withRun(runs []car.Run) *car.Car { return &car.Car{Setups: []car.Setup{{Runs: runs[:1]}}} }

// usualRun is a car with a run that has what is left out of one.
var usualRun = withRun(make([]car.Run, 1))

func (k runs) read(r *reader, path string, raw any, c *car.Car) {
	list, ok := tableList(raw)
	if !ok {
		r.note(path, "is "+kindOf(raw), k.give(r.units))
		return
	}
	if len(list) > car.MaxRuns {
		r.note(path, fmt.Sprintf("there are %d runs", len(list)), fmt.Sprintf("give at most %d", car.MaxRuns))
		return
	}
	var read []car.Run
	if len(list) > 0 {
		read = make([]car.Run, len(list))
	}
	for i, values := range list {
		r.table(indexPath(path, i), runKeys, values, withRun(read[i:]))
	}
	c.Setups[0].Runs = read
}

func (k runs) unknown(c *car.Car) { c.Setups[0].Runs = nil }

func (k runs) value(c *car.Car) value {
	logged := c.Setups[0].Runs
	list := make([]value, len(logged))
	for i := range logged {
		list[i] = fieldsOf(runKeys, withRun(logged[i:]), usualRun)
	}
	return list
}

func (k runs) give(units.System) string {
	return "add [[setup.run]] tables with " + strings.Join(names(runKeys, true), ", ")
}

// figure is a number of a run. One that is not known is left out.
type figure struct{ number }

func (k figure) read(r *reader, path string, raw any, c *car.Car) {
	k.number.read(r, path, raw, c)
	if *k.at(c) == 0 {
		r.note(path, "is 0, which is taken for not known", "give another number, or leave it out")
	}
}

func (k figure) value(c *car.Car) value {
	if *k.at(c) == 0 {
		return nil
	}
	return k.number.value(c)
}

// day is a date, in quotes or without.
type day func(*car.Car) *string

// localDate is the time zone of what TOML calls a local date, one without a time.
const localDate = "date-local"

func (k day) read(r *reader, path string, raw any, c *car.Car) {
	*k(c) = ""
	switch v := raw.(type) {
	case string:
		*k(c) = v
	case time.Time:
		if v.Location().String() != localDate {
			r.note(path, "is a time, or a date with one", k.give(r.units))
			return
		}
		*k(c) = r.literal(path)
	default:
		r.note(path, "is "+kindOf(raw), k.give(r.units))
	}
}

func (k day) unknown(c *car.Car) { *k(c) = "" }

func (k day) value(c *car.Car) value { return date(*k(c)) }

func (k day) give(units.System) string { return car.GiveDate }
