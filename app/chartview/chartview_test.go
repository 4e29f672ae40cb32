package chartview_test

import (
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"bowline/app/chartview"
	"bowline/app/document"
	"bowline/app/form"
	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/model/carfile"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

const inch = 0.0254

// plot is what the pointer meets of a chart.
type plot interface {
	desktop.Hoverable
	fyne.Tappable
	fyne.CanvasObject
}

// desk is a chart of the reference car, whose rear travels from 4 in of droop
// to 3 in of bump, in a window. It stands 1 in up.
type desk struct {
	*study.Study
	t        *testing.T
	view     *chartview.View
	plot     plot
	raster   *canvas.Raster
	values   *form.Prose
	renderer chart.Renderer
	layout   chart.Layout // of the picture shown
	pixels   image.Point  // its size
	units    units.System
	asked    int         // how often a picture was asked for
	exports  []chart.Key // which charts were to be exported
}

func newDesk(t *testing.T, key chart.Key) *desk {
	t.Helper()
	test.NewTempApp(t)
	f, err := carfile.Read("../../testdata/reference.toml", carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	queue := runnertest.NewQueue()
	d := &desk{t: t, Study: study.New(document.New(carfile.Stock(), t.TempDir(), f), study.Options{Library: carfile.Stock(), Post: queue.Post})}
	t.Cleanup(d.Close)
	d.SetTravel(inch)
	d.view = chartview.New(key, chartview.Host{
		At: d.Travel, Visit: d.VisitTravel, Stay: d.StayAtTravel, Leave: d.LeaveTravel,
		Units:   func() units.System { return d.units },
		Resized: func() { d.asked++ },
		Export:  func(key chart.Key) { d.exports = append(d.exports, key) },
	})
	w := test.NewTempWindow(t, d.view)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(430, 340))
	for _, o := range test.LaidOutObjects(d.view) {
		switch o := o.(type) {
		case plot:
			if _, button := o.(*widget.Button); !button {
				d.plot = o
			}
		case *form.Prose:
			d.values = o
		}
	}
	if d.plot == nil || d.values == nil {
		t.Fatal("there is no chart with values below it")
	}
	for _, o := range test.LaidOutObjects(d.plot) {
		if r, ok := o.(*canvas.Raster); ok {
			d.raster = r
		}
	}
	return d
}

// frame draws the chart's part of the view at a scale.
func (d *desk) frame(scale int) image.Image {
	size := d.plot.Size()
	return d.raster.Generator(scale*int(size.Width), scale*int(size.Height))
}

// present draws the picture that the view wants and hands it over.
func (d *desk) present() *image.RGBA {
	d.t.Helper()
	size, dpi := d.view.Want()
	if size == (image.Point{}) {
		d.t.Fatal("no picture is wanted")
	}
	c := plotting.New(d.view.Key(), plotting.Of(d.Result(), nil))
	img := image.NewRGBA(image.Rectangle{Max: size})
	layout, err := d.renderer.Draw(img, dpi, c, chart.Style{Palette: palette.Light, Units: d.units, Frame: d.view.Frame()}, chart.Mark(d.Travel()))
	if err != nil {
		d.t.Fatal(err)
	}
	d.layout, d.pixels = layout, size
	d.view.Present(chartview.Picture{Image: img, Chart: c, Layout: layout})
	return img
}

// over is a mouse event at an x of the chart [SI], in the middle of its height.
func (d *desk) over(x float64) *desktop.MouseEvent {
	size := d.plot.Size()
	px, _ := d.layout.ToPixel(x, 0)
	e := &desktop.MouseEvent{}
	e.Position = fyne.NewPos(float32(px/float64(d.pixels.X))*size.Width, float32((d.layout.Top+d.layout.Bottom)/2/float64(d.pixels.Y))*size.Height)
	return e
}

// margin is a mouse event beside the data.
func margin() *desktop.MouseEvent {
	e := &desktop.MouseEvent{}
	e.Position = fyne.NewPos(2, 2)
	return e
}

func (d *desk) wantTravel(inches float64) {
	d.t.Helper()
	if math.Abs(d.Travel()/inch-inches) > 1e-4 {
		d.t.Errorf("the car is at %v in, want %v in", d.Travel()/inch, inches)
	}
}

func TestNothingIsShownBeforeTheFirstPicture(t *testing.T) {
	d := newDesk(t, "bar-force")
	if size, _ := d.view.Want(); size != (image.Point{}) {
		t.Errorf("before it is on screen the view wants %v", size)
	}
	img := d.frame(1)
	if _, _, _, a := img.At(0, 0).RGBA(); a != 0 || img.Bounds().Dx() > 1000 {
		t.Errorf("an image of %v with opacity %v", img.Bounds(), a)
	}
	// Pointing and leaving do no harm.
	e := &desktop.MouseEvent{}
	e.Position = fyne.NewPos(100, 100)
	d.plot.MouseIn(e)
	d.plot.MouseMoved(e)
	d.plot.MouseOut()
	d.wantTravel(1)
	if d.values.Text() != "" {
		t.Errorf("values %q of no chart", d.values.Text())
	}
}

func TestAPictureIsAskedForWhenTheSizeChanges(t *testing.T) {
	d := newDesk(t, "bar-force")
	d.frame(1)
	size := d.plot.Size()
	want := image.Pt(int(size.Width), int(size.Height))
	if got, dpi := d.view.Want(); d.asked != 1 || got != want || math.Abs(dpi-96) > 0.5 {
		t.Errorf("asked %d times, for %v at %v dpi, want %v", d.asked, got, dpi, want)
	}
	d.frame(1)
	d.present()
	d.frame(1)
	if d.asked != 1 {
		t.Errorf("asked %d times at one size", d.asked)
	}
	d.frame(2)
	if got, dpi := d.view.Want(); d.asked != 2 || got != want.Mul(2) || math.Abs(dpi-192) > 0.5 {
		t.Errorf("asked %d times, for %v at %v dpi, want %v", d.asked, got, dpi, want.Mul(2))
	}
	d.present()
	if img := d.frame(2); img.Bounds().Size() != want.Mul(2) {
		t.Errorf("shown is a picture of %v", img.Bounds())
	}
}

func TestPresentShowsThePicture(t *testing.T) {
	d := newDesk(t, "bar-force")
	d.frame(1)
	picture := d.present()
	if img := d.frame(1); img != image.Image(picture) || img.At(0, 0) != color.Color(palette.Light.Background) {
		t.Error("the picture is not shown")
	}
}

func TestPointingMovesTheCar(t *testing.T) {
	for _, scale := range []int{1, 2} {
		d := newDesk(t, "bar-force")
		d.frame(scale)
		d.present()
		d.plot.MouseIn(d.over(-0.5 * inch))
		d.wantTravel(-0.5)
		d.plot.MouseMoved(d.over(-4 * inch))
		d.wantTravel(-4)
		d.plot.MouseMoved(d.over(2 * inch))
		d.wantTravel(2)
		// Words and margins around the data area stand for no travel.
		d.plot.MouseMoved(margin())
		d.wantTravel(2)
		d.plot.MouseOut()
		d.wantTravel(1)
	}
}

func TestAClickKeepsTheTravel(t *testing.T) {
	d := newDesk(t, "bar-force")
	d.frame(1)
	d.present()
	d.plot.MouseIn(d.over(-0.5 * inch))
	d.plot.MouseMoved(d.over(-2 * inch))
	d.plot.Tapped(&fyne.PointEvent{})
	d.plot.MouseMoved(d.over(-0.5 * inch))
	d.wantTravel(-0.5)
	d.plot.MouseOut()
	d.wantTravel(-2)
}

// The slider and the keyboard go before what the pointer would bring back.
func TestLeavingAfterSomethingElseMovedTheCar(t *testing.T) {
	d := newDesk(t, "bar-force")
	d.frame(1)
	d.present()
	d.plot.MouseIn(d.over(-0.5 * inch))
	d.SetTravel(0)
	d.plot.MouseOut()
	d.wantTravel(0)
	// A pass over the margin moves nothing.
	d.plot.MouseIn(margin())
	d.SetTravel(2 * inch)
	d.plot.MouseOut()
	d.wantTravel(2)
	// Even to where the pointer is.
	d.plot.MouseIn(d.over(-0.5 * inch))
	d.SetTravel(d.Travel())
	d.plot.MouseOut()
	d.wantTravel(-0.5)
}

// Drawing, asking for pictures and new ones change nothing of where the pointer is
// and where the car goes back to.
func TestDrawingLeavesThePointerAlone(t *testing.T) {
	d := newDesk(t, "bar-force")
	d.frame(1)
	d.present()
	d.plot.MouseIn(d.over(-0.5 * inch))
	before := d.values.Text()
	for _, scale := range []int{1, 2, 1} {
		d.frame(scale)
		d.present()
		d.frame(scale)
	}
	d.wantTravel(-0.5)
	if got := d.values.Text(); got != before {
		t.Errorf("%q became %q", before, got)
	}
	d.plot.MouseOut()
	d.wantTravel(1)
}

// While a picture of the new size is on its way the old one is stretched; the
// pointer still means what it points at.
func TestPointingAtAStretchedPicture(t *testing.T) {
	d := newDesk(t, "bar-force")
	d.frame(1)
	d.present()
	d.frame(2)
	d.plot.MouseIn(d.over(-0.5 * inch))
	d.wantTravel(-0.5)
	d.plot.MouseMoved(d.over(2 * inch))
	d.wantTravel(2)
}

func TestValuesInWords(t *testing.T) {
	d := newDesk(t, "bar-force")
	d.frame(1)
	d.present()
	if text := d.values.Text(); !strings.HasPrefix(text, "1.00 in bump  ·  ") || !strings.Contains(text, "lower hit") || !strings.Contains(text, "lb push") {
		t.Errorf("values %q", text)
	}
	d.plot.MouseIn(d.over(-2 * inch))
	if text := d.values.Text(); !strings.HasPrefix(text, "2.00 in droop  ·  ") {
		t.Errorf("pointing at 2 in of droop, values %q", text)
	}
	d.plot.MouseOut()
	d.units = units.SI
	d.present()
	if text := d.values.Text(); !strings.HasPrefix(text, "25.4 mm bump  ·  ") || !strings.Contains(text, " N push") {
		t.Errorf("in SI, values %q", text)
	}
	// At ride height the upper bar of the reference car pulls in the hit case.
	d.SetTravel(0)
	d.present()
	if text := d.values.Text(); !strings.HasPrefix(text, "ride height") || !strings.Contains(text, "pull") {
		t.Errorf("at ride height, values %q", text)
	}
}

// The chart of the bow has no travel to point at: the values are those under
// the pointer.
func TestAChartWithoutTravel(t *testing.T) {
	d := newDesk(t, "bow")
	d.frame(1)
	d.present()
	before := d.values.Text()
	d.plot.MouseIn(d.over(5000))
	d.wantTravel(1)
	if text := d.values.Text(); text == before || text == "" {
		t.Errorf("pointing at the bow shows %q", text)
	}
	d.plot.MouseOut()
	d.wantTravel(1)
	if d.values.Text() != before {
		t.Errorf("with the pointer away the values are %q, before %q", d.values.Text(), before)
	}
}

func TestExportNamesItsChart(t *testing.T) {
	d := newDesk(t, "anti-squat")
	for _, o := range test.LaidOutObjects(d.view) {
		if b, ok := o.(*widget.Button); ok {
			test.Tap(b)
		}
	}
	if len(d.exports) != 1 || d.exports[0] != "anti-squat" || d.view.Key() != "anti-squat" {
		t.Errorf("exports %q", d.exports)
	}
}

// A place along the chart is where the pointer goes to that position, at any scale of
// the screen.
func TestPlacesAlongTheChart(t *testing.T) {
	d := newDesk(t, plotting.BarForceKey)
	if _, ok := d.view.Place(0); ok {
		t.Error("without a picture there is a place")
	}
	for _, scale := range []int{1, 2} {
		d.frame(scale)
		d.present()
		corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(d.plot)
		for _, at := range []float64{-3 * inch, 0, 2.5 * inch} {
			x, ok := d.view.Place(at)
			e := &desktop.MouseEvent{}
			e.Position = fyne.NewPos(float32(x)-corner.X, d.plot.Size().Height/2)
			d.plot.MouseMoved(e)
			if !ok || math.Abs(d.Travel()-at) > 0.02*inch {
				t.Errorf("scale %d: at the place of %v in the travel is %v in", scale, at/inch, d.Travel()/inch)
			}
		}
	}
	d.view.Hide()
	if _, ok := d.view.Place(0); ok {
		t.Error("a chart that is not on show has a place")
	}
}
