package inputs_test

import (
	"math"
	"testing"

	"bowline/app/document"
	"bowline/app/form"
	"bowline/app/inputs"
	_ "bowline/app/internal/forgetful"
	"bowline/app/internal/screen"
	"bowline/app/look"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/stock"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"gonum.org/v1/gonum/spatial/r2"
)

const (
	inch  = 0.0254
	pound = 0.45359237
	lbf   = pound * 9.80665
)

// library holds two materials and two tube sizes.
func library() stock.Library {
	const psi = lbf / (inch * inch)
	return stock.Library{
		Materials: []stock.Material{
			{Name: "4130 normalized", E: 29e6 * psi, Yield: 75e3 * psi, Ultimate: 95e3 * psi, Density: 7833},
			{Name: "1020 DOM", E: 29e6 * psi, Yield: 60e3 * psi, Ultimate: 70e3 * psi, Density: 7861},
		},
		Tubes: []stock.Tube{
			{Name: "1 1/4 x 0.095", OD: 1.25 * inch, Wall: 0.095 * inch},
			{Name: "1 1/2 x 0.120", OD: 1.5 * inch, Wall: 0.120 * inch},
		},
	}
}

// places are side-view points in inches.
func places(xz ...float64) []r2.Vec {
	var list []r2.Vec
	for i := 0; i < len(xz); i += 2 {
		list = append(list, r2.Vec{X: xz[i] * inch, Y: xz[i+1] * inch})
	}
	return list
}

// saltgrass is a car of the Saltgrass Racing team.
func saltgrass() *car.Car {
	c := car.Defaults()
	c.Body = car.Body{
		Name: "Saltgrass No. 7", Wheelbase: 105 * inch, Mass: 2650 * pound, RearMass: 1325 * pound, CGHeight: 19.5 * inch,
		UnsprungRear: 390 * pound, UnsprungFront: 130 * pound, TrackRear: 56 * inch, TrackFront: 58 * inch,
	}
	c.Tires.RearRadius, c.Tires.FrontRadius, c.Tires.Grip = 16*inch, 12.5*inch, 2.6
	c.Chassis = car.Bracket{Upper: places(22.5, 18.5, 22.5, 17.75, 22.5, 17), Lower: places(25.5, 12.25, 25.5, 11.5, 25.5, 10.75), SpreadUpper: 36 * inch, SpreadLower: 36 * inch}
	c.Housing = car.Bracket{Upper: places(2.5, 6.5, 2.5, 5.75), Lower: places(2.5, -5, 2.5, -5.75), SpreadUpper: 36 * inch, SpreadLower: 36 * inch}
	c.UpperBar = car.Bar{OD: 1.25 * inch, Wall: 0.095 * inch, Material: "4130 normalized", RodEnd: "3/4-16"}
	c.LowerBar = c.UpperBar
	c.Springs.RearRate, c.Springs.FrontRate = 150*lbf/inch, 120*lbf/inch
	c.Springs.RearAxleMount, c.Springs.RearChassisMount = places(-2, -3)[0], places(-2, 29)[0]
	c.Springs.RearDroop, c.Springs.RearBump = 4*inch, 3*inch
	c.Drive = car.Drive{Torque: 780 * lbf * 12 * inch, Speed: units.US.ToSI(units.Speed, 5200), Converter: 1.7, Gear: 1.8, Axle: 4.1, Efficiency: 0.9}
	c.Setups = []car.Setup{
		{Name: "baseline", Holes: car.Holes{ChassisUpper: 2, ChassisLower: 1}},
		{Name: "bite", Holes: car.Holes{ChassisUpper: 0, ChassisLower: 1}, Note: "Loose track."},
	}
	return c
}

// desk is a panel in a window, and its document.
type desk struct {
	t      testing.TB
	doc    *document.Document
	panel  *inputs.Panel
	window fyne.Window
}

func newDesk(t testing.TB) *desk {
	t.Helper()
	test.NewTempApp(t)
	// With a picture the toolkit forgets what no window shows any more.
	t.Cleanup(func() { test.NewCanvas().Capture() })
	fyne.CurrentApp().Settings().SetTheme(look.New(look.Light))
	file, err := carfile.New("saltgrass.toml", saltgrass(), units.US, library())
	if err != nil {
		t.Fatal(err)
	}
	doc := document.New(library(), t.TempDir(), file)
	p := inputs.New(doc, library())
	w := test.NewTempWindow(t, p)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(290, 900))
	return &desk{t, doc, p, w}
}

// systems are the units that a panel can show.
var systems = [...]units.System{units.US, units.SI}

// titles lists the sections from top to bottom.
func (d *desk) titles() []string {
	open := d.panel.OpenSections()
	d.openAll()
	all := d.panel.OpenSections()
	d.panel.SetOpenSections(open)
	return all
}

// openAll opens all sections.
func (d *desk) openAll() {
	titles := []string{
		inputs.TitleSetup, inputs.TitleCar, inputs.TitleTires, inputs.TitleChassis, inputs.TitleHousing, inputs.TitleUpperBars, inputs.TitleLowerBars,
		inputs.TitleSprings, inputs.TitleDrive, inputs.TitleDriveline, inputs.TitleLocator, inputs.TitleCheck,
	}
	for _, s := range car.Sections {
		titles = append(titles, s.Title)
	}
	d.panel.SetOpenSections(titles)
}

// entry returns an entry of the row at a path: the first, or the second of a pair.
func (d *desk) entry(path string, i int) *form.Entry {
	d.t.Helper()
	return as[*form.Entry](d.t, d.row(path).Editors[i])
}

// row returns the row at a path of the car file.
func (d *desk) row(path string) *form.Row {
	d.t.Helper()
	r := d.panel.Row(path)
	if r == nil {
		d.t.Fatalf("there is no row of %s", path)
	}
	return r
}

// labeled returns the row of a section with a label.
func (d *desk) labeled(title, label string) *form.Row {
	d.t.Helper()
	for r := range d.panel.Rows() {
		if r.Section().Title == title && r.Label == label {
			return r
		}
	}
	d.t.Fatalf("there is no row %q in %q", label, title)
	return nil
}

// button returns the button with a label in a section; the last of several.
func (d *desk) button(title, label string) *form.Button {
	d.t.Helper()
	var found *form.Button
	for r := range d.panel.Rows() {
		for _, e := range append(r.Editors, r.End) {
			if b, ok := e.(*form.Button); ok && r.Section().Title == title && b.About.Label == label {
				found = b
			}
		}
	}
	if found == nil {
		d.t.Fatalf("there is no button %q in %q", label, title)
	}
	return found
}

// typed moves the focus to an entry and types in place of its text.
func (d *desk) typed(e *form.Entry, text string) {
	d.window.Canvas().Focus(e)
	e.SelectAll()
	for _, r := range text {
		e.TypedRune(r)
	}
	if text == "" {
		d.press(fyne.KeyDelete)
	}
}

// press types a key that is no text where the focus is.
func (d *desk) press(key fyne.KeyName) {
	d.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
}

// set types a text into the first entry of the row at a path, and Enter.
func (d *desk) set(path, text string) *form.Entry {
	d.t.Helper()
	e := d.entry(path, 0)
	d.typed(e, text)
	d.press(fyne.KeyReturn)
	return e
}

// pick chooses an option of a row.
func (d *desk) pick(r *form.Row, option string) {
	as[*form.Select](d.t, r.Editors[0]).SetSelected(option)
}

// why returns what is written under a row.
func why(r *form.Row) string { return r.Why().Text() }

// seen lists all that can be seen of the panel, from top to bottom.
func (d *desk) seen() []fyne.CanvasObject { return screen.Seen(d.window.Canvas().Content()) }

// says reports whether a text is drawn somewhere in the panel.
func (d *desk) says(text string) bool {
	for _, o := range d.seen() {
		switch o := o.(type) {
		case *canvas.Text:
			if o.Text == text {
				return true
			}
		case *form.Prose:
			if o.Text() == text {
				return true
			}
		}
	}
	return false
}

// help returns what stands at the foot.
func (d *desk) help() *form.Prose {
	var last *form.Prose
	for _, o := range d.seen() {
		if p, ok := o.(*form.Prose); ok {
			last = p
		}
	}
	return last
}

// scroll returns what the sections scroll in.
func (d *desk) scroll() *container.Scroll {
	d.t.Helper()
	for _, o := range d.seen() {
		if s, ok := o.(*container.Scroll); ok {
			return s
		}
	}
	d.t.Fatal("nothing scrolls")
	return nil
}

func (d *desk) wantText(e *form.Entry, want string) {
	d.t.Helper()
	if e.Text != want {
		d.t.Errorf("the entry shows %q, want %q", e.Text, want)
	}
}

// wantDefault sees to it that an entry is empty and shows a default faintly.
func (d *desk) wantDefault(e *form.Entry, want string) {
	d.t.Helper()
	if e.Text != "" || e.PlaceHolder != want {
		d.t.Errorf("the entry shows %q and faintly %q, want %q faintly", e.Text, e.PlaceHolder, want)
	}
}

func (d *desk) wantUndo(want string) {
	d.t.Helper()
	if got := d.doc.UndoLabel(); got != want {
		d.t.Errorf("the last undo step is %q, want %q", got, want)
	}
}

// want compares a number.
func want(t testing.TB, what string, got, want float64) {
	t.Helper()
	if got != want && !(math.Abs(got-want) <= 1e-12*math.Abs(want)) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// as returns x, which must be a T.
func as[T any](t testing.TB, x any) T {
	t.Helper()
	v, ok := x.(T)
	if !ok {
		t.Fatalf("a %T is no %T", x, v)
	}
	return v
}
