package runlog

import (
	"fmt"
	"strconv"

	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/units"
)

// runField is one line of the form.
type runField struct {
	*form.Draft
	label string
	// read puts a text into a run, or says why not.
	read func(text string, r *car.Run) (wrong string)
	// write returns the text of a run.
	write func(r *car.Run) string
	// first returns the text of a new run; nil for none.
	first func() string
}

// field returns a line that shows the run edited, or what a new one begins with.
func (f *runForm) field(label string) *runField {
	field := &runField{Draft: form.NewDraft(f.on.Host()), label: label}
	field.Get = func(bool) string {
		switch {
		case f.editing != nil:
			return field.write(&f.editing.Run)
		case field.first != nil:
			return field.first()
		}
		return ""
	}
	field.Check = func(typed string) string { return field.read(typed, new(car.Run)) }
	field.Typed = func() { f.tell("") }
	field.Submit = func() { f.submit() }
	return field
}

func (f *runForm) dateField() *runField {
	field := f.field("Date")
	field.read = func(text string, r *car.Run) string {
		if !car.IsDate(text) {
			return fmt.Sprintf("%q is no day of the calendar; %s", text, car.GiveDate)
		}
		r.Date = text
		return ""
	}
	field.write = func(r *car.Run) string { return r.Date }
	field.first = func() string { return f.today().Format(car.DateForm) }
	return field
}

func (f *runForm) textField(t *car.RunText, first func() string) *runField {
	field := f.field(t.Label)
	field.read = func(text string, r *car.Run) string {
		*t.Of(r) = text
		return ""
	}
	field.write = func(r *car.Run) string { return *t.Of(r) }
	field.first = first
	return field
}

// likelyTime is an example of a 60-ft time [s].
const likelyTime = 1.35

func (f *runForm) numberField(n *car.RunNumber) *runField {
	field := f.field(n.Label)
	field.read = func(text string, r *car.Run) string {
		*n.Of(r) = 0
		if text == "" {
			return ""
		}
		x, err := form.ParseNumber(text, n.Quantity, f.study.Units(), likelyTime)
		if err != nil {
			return err.Error()
		}
		if p, ok := n.Check(x, f.study.Units()); !ok {
			return p.Wrong + "; " + p.Right
		}
		*n.Of(r) = x
		return ""
	}
	field.write = func(r *car.Run) string {
		if x := *n.Of(r); x != 0 {
			return strconv.FormatFloat(units.US.Exact(n.Quantity, x), 'f', -1, 64)
		}
		return ""
	}
	return field
}
