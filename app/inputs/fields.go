package inputs

import (
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"bowline/app/document"
	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"

	"fyne.io/fyne/v2"
)

// Document is what the inputs need of a *document.Document.
type Document interface {
	Car() *car.Car
	Setup() int
	Units() units.System
	Dragging() bool
	Begin(label string)
	End()
	Cancel()
	Apply(label string, edit func(*car.Car)) []car.Problem
	SelectSetup(i int)
	CopySetup(i int) []car.Problem
	DeleteSetup(i int) (deleted car.Setup, problems []car.Problem)
	MoveSetup(i, by int) []car.Problem
	Listen(hear func(document.Event)) (cancel func())
}

// Fields are rows about the car of a document, which they follow.
type Fields struct {
	*form.Form

	// Said hears what is to be told of an edit; nil for nobody.
	Said func(string)

	// Later has a function run by the goroutine of the window after a while.
	Later func(after time.Duration, run func())

	doc     Document
	library stock.Library
	behind  bool // a drag has gone on since the values were shown
}

// newFields returns fields without rows, which listen to doc for good.
func newFields(doc Document, library stock.Library, host form.Host) *Fields {
	f := &Fields{Form: form.New(host, columns(), doc.Units), Later: later, doc: doc, library: library}
	doc.Listen(f.hear)
	return f
}

// columns have room for the widest unit of a plain number.
func columns() form.Columns {
	c := form.Columns{Label: "Upper housing", Number: "0000.000"}
	most := float32(0)
	for _, t := range car.Sections {
		for _, f := range t.Fields {
			for _, s := range []units.System{units.US, units.SI} {
				symbol := s.Symbol(f.Quantity)
				if width := fyne.MeasureText(symbol, 1000, fyne.TextStyle{}).Width; width > most {
					c.Unit, most = symbol, width
				}
			}
		}
	}
	return c
}

// hear follows a change of the document.
func (f *Fields) hear(e document.Event) {
	if e.Has(document.Loaded) {
		f.UpdateAll()
		f.RestorePending()
	}
	switch changed := e.Has(document.Changed | document.SetupSelected | document.UnitsChanged); {
	case !f.doc.Dragging():
		if changed || f.behind {
			f.catchUp()
		}
	case changed && !f.behind:
		f.behind = true
		f.Later(dragPace, func() {
			if f.behind {
				f.catchUp()
			}
		})
	}
}

// dragPace is how far the values may be behind a drag: the toolkit takes as
// long for one text that changes as the side view for all of the car.
const dragPace = 100 * time.Millisecond

// later is what Fields.Later is by default.
func later(after time.Duration, run func()) {
	time.AfterFunc(after, func() { fyne.Do(run) })
}

// catchUp shows the document as it is now.
func (f *Fields) catchUp() {
	f.behind = false
	f.Update()
}

// setup returns the current setup.
func (f *Fields) setup() *car.Setup { return &f.doc.Car().Setups[f.doc.Setup()] }

// edit makes one change of the car, named action in the list of steps to undo.
func (f *Fields) edit(action string, change func(*car.Car)) []form.Fault {
	return faults(f.doc.Apply(action, change))
}

// editSetup is edit for the current setup.
func (f *Fields) editSetup(action string, change func(*car.Setup)) []form.Fault {
	i := f.doc.Setup()
	return f.edit(action, func(c *car.Car) { change(&c.Setups[i]) })
}

// faults says what speaks against a change.
func faults(problems []car.Problem) []form.Fault {
	var list []form.Fault
	for _, p := range problems {
		list = append(list, form.Fault{Path: p.Path, Text: spoken(p.Wrong + "; " + p.Right)})
	}
	return list
}

// spoken puts labels in the place of keys of the car file.
func spoken(text string) string {
	for _, s := range car.Sections {
		for _, f := range s.Fields {
			text = strings.ReplaceAll(text, f.Path, lower(f.Label))
		}
	}
	return text
}

// lower writes a label within a sentence; abbreviations keep their capitals.
func lower(label string) string {
	first, n := utf8.DecodeRuneInString(label)
	if second, _ := utf8.DecodeRuneInString(label[n:]); unicode.IsUpper(second) {
		return label
	}
	return string(unicode.ToLower(first)) + label[n:]
}

// capital writes a word at the start of a sentence.
func capital(word string) string { return strings.ToUpper(word[:1]) + word[1:] }
