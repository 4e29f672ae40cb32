package holes

import (
	"strings"

	"bowline/app/panel"
	"bowline/app/readout"
	"bowline/app/study"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
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
	grown  func()
	say    func(string)
	scroll *container.Scroll // that it stands in
}

// filterAcross is the number of fields beside each other.
const filterAcross = 3

// filterHint says what may be typed.
const filterHint = "Write <5, >100, 100 to 160 or 3; Enter takes it."

// newFilter returns the fields, which stand in a scroll of the page; grown is
// called when they take more room.
func newFilter(host panel.Host, scroll *container.Scroll, grown func()) *filter {
	f := &filter{study: host.Study, scroll: scroll, grown: grown, say: host.Say, units: host.Study.Units()}
	f.clear = widget.NewButton("Clear", f.empty)
	hint := panel.Small(filterHint)
	rows := container.NewVBox(container.NewBorder(nil, nil, nil, f.clear, hint))
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
		e := newFilterField(f, c)
		f.fields = append(f.fields, e)
		cells, whys = append(cells, container.New(layout.NewCustomPaddedVBoxLayout(0), e.label, container.NewStack(panel.UnderWheel(e, scroll.Scrolled), e.mark))), append(whys, e.why)
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
	u := f.study.Units()
	if u == f.units {
		return
	}
	for _, e := range f.fields {
		e.name(u)
		if e.take(f.units) { // What is being typed is in those before.
			e.write(e.condition.In(u))
		}
	}
	f.units = u
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
		e.restore()
	}
	f.study.SetConditions(nil)
}

// filterField is where the condition on a column is typed.
type filterField struct {
	widget.Entry
	filter    *filter
	column    *holes.Column
	condition holes.Condition // taken last
	shown     string          // text of the condition
	label     *readout.Prose
	why       *readout.Prose    // it is refused
	mark      *canvas.Rectangle // likewise
}

func newFilterField(f *filter, c *holes.Column) *filterField {
	e := &filterField{filter: f, column: c, mark: canvas.NewRectangle(nil)}
	e.label = readout.NewProse("", theme.SizeNameCaptionText, theme.ColorNameForeground, fyne.TextStyle{})
	e.why = panel.Prose(theme.ColorNameError)
	e.mark.StrokeWidth = 2
	e.mark.Hide()
	e.why.Hide()
	e.Wrapping = fyne.TextWrap(fyne.TextTruncateClip) // A long text scrolls within the field.
	e.ExtendBaseWidget(e)
	e.name(f.units)
	return e
}

// title is what the field is about.
func (e *filterField) title() string { return strings.ReplaceAll(e.column.Title, "\n", " ") }

// name writes the label with the unit.
func (e *filterField) name(u units.System) {
	text := e.title()
	if symbol := u.Symbol(e.column.Quantity); symbol != "" {
		text += ", " + symbol
	}
	e.label.Set(text)
}

// pending reports whether something was typed that has not been taken.
func (e *filterField) pending() bool { return e.Text != e.shown }

// write shows a text as taken.
func (e *filterField) write(text string) {
	e.shown = text
	if e.Text != text {
		e.SetText(text)
	}
}

// restore shows the condition taken last.
func (e *filterField) restore() {
	e.refuse("")
	e.write(e.condition.In(e.filter.study.Units()))
}

// take takes what was typed in some units, if anything, and reports whether it
// could be.
func (e *filterField) take(u units.System) bool {
	e.refuse("")
	if !e.pending() {
		return true
	}
	c, err := e.column.Parse(e.Text, u)
	if err != nil {
		e.refuse(e.title() + ": " + err.Error() + ".")
		return false
	}
	e.condition = c
	e.write(c.In(u))
	e.filter.study.Then(func() { e.filter.study.SetConditions(e.filter.conditions()) })
	return true
}

// refuse says why what was typed is not taken; an empty text takes that back.
func (e *filterField) refuse(why string) {
	e.mark.Hidden = why == ""
	e.mark.StrokeColor = theme.Color(theme.ColorNameError)
	e.mark.Refresh()
	if panel.Tell(e.why, why) {
		e.filter.grown()
	}
}

// FocusGained brings the field into sight and says what its column is.
func (e *filterField) FocusGained() {
	e.Entry.FocusGained()
	panel.Reveal(e.filter.scroll, e)
	e.filter.say(e.title() + ": " + e.column.Help + " " + filterHint)
}

// FocusLost takes what was typed.
func (e *filterField) FocusLost() {
	e.Entry.FocusLost()
	e.filter.say("")
	e.take(e.filter.study.Units())
}

// TypedKey takes what was typed on Enter, and takes it back on Escape.
func (e *filterField) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		e.take(e.filter.study.Units())
	case fyne.KeyEscape:
		e.restore()
	default:
		e.Entry.TypedKey(key)
	}
}
