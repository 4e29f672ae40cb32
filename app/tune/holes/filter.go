package holes

import (
	"strings"

	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/study"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// filter has a field for each column that combinations can be listed by.
type filter struct {
	study  *study.Study
	fields []*filterField
	clear  *widget.Button
	object fyne.CanvasObject
	units  units.System // that the fields are in
}

// filterAcross is the number of fields beside each other.
const filterAcross = 3

// filterHint says what may be typed.
const filterHint = "Write <5, >100, 100 to 160 or 3; Enter takes it."

// newFilter returns the fields, which stand on a page.
func newFilter(host panel.Host, on form.Host) *filter {
	f := &filter{study: host.Study, units: host.Study.Units()}
	f.clear = widget.NewButton("Clear", f.empty)
	hint := form.Caption(filterHint, theme.ColorNamePlaceHolder)
	rows := form.Stacked(container.NewBorder(nil, nil, nil, f.clear, hint))
	var cells []fyne.CanvasObject
	var whys []fyne.CanvasObject
	end := func() {
		rows.Add(container.NewGridWithColumns(filterAcross, cells...))
		for _, why := range whys {
			rows.Add(why)
		}
		cells, whys = nil, nil
	}
	for _, c := range holes.Columns {
		if c.Uses&holes.InFilter == 0 {
			continue
		}
		e := newFilterField(f, c, on)
		f.fields = append(f.fields, e)
		cells, whys = append(cells, container.New(layout.NewCustomPaddedVBoxLayout(0), e.label, e.Entry)), append(whys, e.Why())
		if len(cells) == filterAcross {
			end()
		}
	}
	if len(cells) > 0 {
		end()
	}
	f.object = container.New(layout.NewCustomPaddedLayout(0, theme.Padding(), theme.Padding(), 2*theme.Padding()), rows)
	return f
}

// refresh writes labels, and conditions in the units shown.
func (f *filter) refresh() {
	if !f.study.LaunchesHoles() {
		for _, e := range f.fields {
			if e.column.OfLaunch && !e.condition.Any() {
				e.condition = holes.Condition{} // The study has dropped it with the launches.
				e.Restore()
			}
		}
	}
	u := f.study.Units()
	if u == f.units {
		return
	}
	for _, e := range f.fields {
		e.Commit() // What is being typed is in the units before.
	}
	f.units = u
	for _, e := range f.fields {
		e.name()
		e.Update()
	}
}

// active returns how many conditions there are.
func (f *filter) active() int { return len(f.conditions()) }

func (f *filter) conditions() []holes.ColumnCondition {
	var list []holes.ColumnCondition
	for _, e := range f.fields {
		if !e.condition.Any() {
			list = append(list, holes.ColumnCondition{Column: e.column, Condition: e.condition})
		}
	}
	return list
}

// empty takes all conditions back, and what is refused.
func (f *filter) empty() {
	for _, e := range f.fields {
		e.condition = holes.Condition{}
		e.Restore()
	}
	f.study.SetConditions(nil)
}

// filterField is where the condition on a column is typed.
type filterField struct {
	*form.Entry
	filter    *filter
	column    *holes.Column
	condition holes.Condition
	label     *form.Prose
}

func newFilterField(f *filter, c *holes.Column, host form.Host) *filterField {
	e := &filterField{Entry: form.NewEntry().In(host), filter: f, column: c, label: form.Caption("", theme.ColorNameForeground)}
	e.Get = func(bool) string { return e.condition.In(f.units) }
	e.Take = e.take
	e.Help = e.title() + ": " + c.Help + " " + filterHint
	e.name()
	return e
}

// title is what the field is about.
func (e *filterField) title() string { return strings.ReplaceAll(e.column.Title, "\n", " ") }

// name writes the label with the unit.
func (e *filterField) name() {
	text := e.title()
	if symbol := e.filter.units.Symbol(e.column.Quantity); symbol != "" {
		text += ", " + symbol
	}
	e.label.Set(text)
}

// take lists by the condition typed.
func (e *filterField) take(typed string) []form.Fault {
	c, err := e.column.Parse(typed, e.filter.units)
	if err != nil {
		return form.Wrong(e.title() + ": " + err.Error() + ".")
	}
	e.condition = c
	s := e.filter.study
	s.Then(func() { s.SetConditions(e.filter.conditions()) })
	return nil
}
