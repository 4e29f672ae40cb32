package window

import (
	"image"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	_ "bowline/app/internal/forgetful"
	"bowline/app/internal/screen"
	"bowline/app/panel/paneltest"
	"bowline/app/runner/runnertest"
	"bowline/model/car"
	"bowline/model/carfile"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

const inch = 0.0254

// desk is a window with a person before it.
type desk struct {
	*Window
	t     testing.TB
	queue *runnertest.Queue
}

// sitDown opens a window of an app. Options that are left out are filled in.
func sitDown(t testing.TB, app fyne.App, o Options) *desk {
	t.Helper()
	d := &desk{t: t, queue: runnertest.NewQueue()}
	o.Library, o.Post = carfile.Stock(), d.queue.Post
	if o.Folder == "" {
		o.Folder = t.TempDir()
	}
	w, err := New(app, o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(w.charts.Close)
	t.Cleanup(w.study.Close)
	d.Window = w
	// With a picture the toolkit forgets what no window shows any more.
	t.Cleanup(func() { test.NewCanvas().Capture() })
	d.settle()
	return d
}

// newDesk opens the demo car in an app of its own.
func newDesk(t testing.TB) *desk { return sitDown(t, test.NewTempApp(t), Options{}) }

// openDesk opens a copy of the reference car's file.
func openDesk(t testing.TB) (d *desk, path string) {
	path = carFile(t)
	return sitDown(t, test.NewTempApp(t), Options{Path: path}), path
}

// carFile copies the reference car into a folder of its own.
func carFile(t testing.TB) string {
	t.Helper()
	data, err := os.ReadFile("../../testdata/reference.toml")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "number7.toml")
	write(t, path, string(data))
	return path
}

func write(t testing.TB, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

func read(t testing.TB, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// missing reports whether there is no such file.
func missing(path string) bool {
	_, err := os.Stat(path)
	return os.IsNotExist(err)
}

// settle lets everything come to its turn, the workers' results too.
func (d *desk) settle() {
	d.queue.Settle(func() bool { return d.charts.Busy() || d.study.Busy() })
}

// frame draws the side view and the charts on show, as a picture of the window
// would.
func (d *desk) frame() {
	for _, r := range rasters(d.window.Content()) {
		size := r.Size()
		if size.Width >= 1 && size.Height >= 1 {
			r.Generator(int(size.Width), int(size.Height))
		}
	}
	d.settle()
}

// sideView returns the picture of the side view.
func (d *desk) sideView() image.Image {
	r := test.WidgetRenderer(d.view).Objects()[0].(*canvas.Raster)
	return r.Generator(int(r.Size().Width), int(r.Size().Height))
}

// rasters lists those that can be seen.
func rasters(o fyne.CanvasObject) []*canvas.Raster {
	var list []*canvas.Raster
	for _, o := range screen.Seen(o) {
		if r, ok := o.(*canvas.Raster); ok {
			list = append(list, r)
		}
	}
	return list
}

// edit makes a small change of the car.
func (d *desk) edit() {
	d.t.Helper()
	if p := d.doc.Apply("CG height", func(c *car.Car) { c.Body.CGHeight += 0.25 * inch }); p != nil {
		d.t.Fatal(p)
	}
	d.settle()
}

// question returns the dialog on top; nil for none.
func (d *desk) question() fyne.CanvasObject { return d.window.Canvas().Overlays().Top() }

// asked returns all words of the dialog on top.
func (d *desk) asked() string {
	if d.question() == nil {
		return ""
	}
	var words []string
	for _, o := range screen.Seen(d.question()) {
		if l, ok := o.(*widget.Label); ok {
			words = append(words, l.Text)
		}
	}
	return strings.Join(words, "\n")
}

// answer taps a button of the dialog on top, named by its English word: the
// toolkit writes its own in the language of the system.
func (d *desk) answer(name string) {
	d.t.Helper()
	buttons := map[string]*widget.Button{}
	if d.question() != nil {
		for _, o := range screen.Seen(d.question()) {
			if b, ok := o.(*widget.Button); ok {
				buttons[b.Text] = b
			}
		}
	}
	b, ok := buttons[name]
	if !ok {
		b, ok = buttons[lang.L(name)]
	}
	if !ok {
		d.t.Fatalf("there is no %q to answer, but %q", name, slices.Sorted(maps.Keys(buttons)))
	}
	test.Tap(b)
	d.settle()
}

// name gives a file dialog the name of a file and takes it.
func (d *desk) name(file string) {
	d.t.Helper()
	if d.question() == nil {
		d.t.Fatal("no file is asked for")
	}
	for _, o := range screen.Seen(d.question()) {
		if e, ok := o.(*widget.Entry); ok {
			e.SetText(file)
			d.answer("Save")
			return
		}
	}
	d.t.Fatalf("no file is asked for, but %q", d.asked())
}

func (d *desk) wantAsked(words ...string) {
	d.t.Helper()
	got := d.asked()
	for _, w := range words {
		if !strings.Contains(got, w) {
			d.t.Errorf("the dialog says %q, which lacks %q", got, w)
		}
	}
}

func (d *desk) wantNoQuestion() {
	d.t.Helper()
	if d.question() != nil {
		d.t.Errorf("a dialog asks %q", d.asked())
	}
}

func (d *desk) wantTitle(want string) {
	d.t.Helper()
	if got := d.window.Title(); got != want {
		d.t.Errorf("the title is %q, want %q", got, want)
	}
}

// wantSaid compares the line under the panes.
func (d *desk) wantSaid(want string) {
	d.t.Helper()
	if d.status.Text != want {
		d.t.Errorf("the window says %q, want %q", d.status.Text, want)
	}
}

// item returns a menu item by its menu and the beginning of its label.
func (d *desk) item(menu, label string) *fyne.MenuItem {
	d.t.Helper()
	for _, m := range d.window.MainMenu().Items {
		if m.Label != menu {
			continue
		}
		for _, i := range m.Items {
			if strings.HasPrefix(i.Label, label) {
				return i
			}
		}
	}
	d.t.Fatalf("there is no %q in %q", label, menu)
	return nil
}

// choose takes a menu item.
func (d *desk) choose(menu, label string) {
	d.t.Helper()
	i := d.item(menu, label)
	if i.Disabled {
		d.t.Fatalf("%q is disabled", i.Label)
	}
	i.Action()
	d.settle()
}

// show puts the panel with a title on show.
func (d *desk) show(title string) {
	d.t.Helper()
	index := d.panels.named(title)
	if index < 0 {
		d.t.Fatalf("there is no panel %q", title)
	}
	if registry[index].when == always {
		d.study.SetLaunching(false)
	}
	d.Window.show(index)
	d.settle()
}

// titles are the panels' titles.
func (d *desk) titles() []string {
	var list []string
	for _, p := range d.panels.list {
		list = append(list, p.Title())
	}
	return list
}

// says writes all words of the panel on show.
func (d *desk) says() string {
	p := d.panels.current()
	return paneltest.Texts(p.Words()) + "\n" + paneltest.Texts(p.Evidence())
}
