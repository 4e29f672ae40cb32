package window

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"bowline/app/inputs"
	"bowline/app/panel/paneltest"
	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// stateLine is a line of the state log as its readers expect it.
type stateLine struct {
	Revision      int                   `json:"revision"`
	Event         string                `json:"event"`
	InstantCenter *[2]float64           `json:"instant_center"`
	AntiSquat     float64               `json:"anti_squat"`
	UpperPush     float64               `json:"upper_push"`
	View          map[string][2]float64 `json:"view"`
}

func states(t *testing.T, path string) []stateLine {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var list []stateLine
	for line := range bytes.Lines(data) {
		decoder := json.NewDecoder(bytes.NewReader(line))
		decoder.DisallowUnknownFields()
		var s stateLine
		if err := decoder.Decode(&s); err != nil {
			t.Fatalf("line %q: %v", line, err)
		}
		list = append(list, s)
	}
	return list
}

func TestTheStateLogTellsWhatIsDrawn(t *testing.T) {
	log := filepath.Join(t.TempDir(), "states.jsonl")
	d := sitDown(t, test.NewTempApp(t), Options{Path: carFile(t), StateLog: log})
	d.sideView()
	d.sideView() // The same picture again is no news.
	d.study.Choose(car.ChassisLower, 0)
	d.sideView()
	list := states(t, log)
	if len(list) != 2 || list[1].Revision <= list[0].Revision || list[0].Event != "frame" {
		t.Fatalf("states %+v", list)
	}
	for i, chassisLower := range []float64{11.5, 12.25} {
		s := list[i]
		upper, lower := (17-22.5)/20.0, (chassisLower-11)/23.0
		x := 2.5 + (22.5-11)/(lower-upper)
		z := 11 + lower*(x-2.5)
		if s.InstantCenter == nil || math.Hypot(s.InstantCenter[0]-x*inch, s.InstantCenter[1]-z*inch) > 1e-9 {
			t.Errorf("instant center %v, want (%v, %v)", s.InstantCenter, x*inch, z*inch)
		}
		if want := 100 * z / x * 105 / 19.5; math.Abs(s.AntiSquat-want) > 1e-9 {
			t.Errorf("anti-squat %v, want %v", s.AntiSquat, want)
		}
		if s.UpperPush >= 0 {
			t.Errorf("the upper bar, which pulls, pushes by %v N", s.UpperPush)
		}
		// Pivots stand to each other as their holes do, in pixels of the window.
		u, h := s.View["upper_chassis"], s.View["lower_housing"]
		scale := (u[0] - h[0]) / 20
		if l := s.View["lower_chassis"]; len(s.View) != 4 || math.Abs(l[0]-h[0]-23*scale) > 0.01 || math.Abs(h[1]-l[1]-(chassisLower-11)*scale) > 0.01 {
			t.Errorf("pivots %v", s.View)
		}
		corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(d.view)
		at, _ := d.view.Picture().Pivot(car.HousingLower)
		if i == 1 && math.Hypot(h[0]-float64(corner.X)-at.X, h[1]-float64(corner.Y)-at.Y) > 0.01 {
			t.Errorf("the lower housing pivot is told at %v; the view is at %v and draws it at %v", h, corner, at)
		}
	}
}

func TestParallelBarsInTheStateLog(t *testing.T) {
	log := filepath.Join(t.TempDir(), "states.jsonl")
	d := sitDown(t, test.NewTempApp(t), Options{Path: carFile(t), StateLog: log})
	d.doc.Apply("Parallel", func(c *car.Car) {
		c.Chassis.Upper[2].Y, c.Chassis.Lower[1].Y = 22.5*inch, 11*inch
	})
	d.sideView()
	if list := states(t, log); len(list) != 1 || list[0].InstantCenter != nil || list[0].AntiSquat != 0 {
		t.Errorf("states %+v", list)
	}
}

func TestAStateLogThatCannotBeWritten(t *testing.T) {
	d := sitDown(t, test.NewTempApp(t), Options{StateLog: filepath.Join(t.TempDir(), "none", "states.jsonl")})
	d.wantTitle("Saltgrass No. 7 — Bowline")
	if d.status.Text == hint {
		t.Error("nothing is said of the state log")
	}
	d.sideView()
}

func TestTheLayoutIsKept(t *testing.T) {
	app := test.NewTempApp(t)
	d := sitDown(t, app, Options{})
	if size := d.window.Canvas().Size(); size != fyne.NewSize(firstWidth, firstHeight) || d.split.chosen() != [3]float32{} || d.split.inputs.Folded() {
		t.Errorf("first size %v, splits at %v", size, d.split.chosen())
	}
	d.window.Resize(fyne.NewSize(1400, 900))
	chosen := [3]float32{301, 402, 253}
	d.split.inputs.Choose(chosen[0])
	d.split.words.Choose(chosen[1])
	d.split.evidence.Choose(chosen[2])
	d.choose("View", "Inputs")
	d.choose("File", "Quit")
	d = sitDown(t, app, Options{})
	if size := d.window.Canvas().Size(); size != fyne.NewSize(1400, 900) || d.split.chosen() != chosen || !d.split.inputs.Folded() {
		t.Errorf("at the next start size %v, splits at %v", size, d.split.chosen())
	}
}

func TestOpenSectionsAreKept(t *testing.T) {
	app := test.NewTempApp(t)
	first := sitDown(t, app, Options{})
	if got := first.inputs.OpenSections(); !slices.Equal(got, []string{inputs.TitleSetup}) {
		t.Errorf("at the first start %q are open", got)
	}
	want := []string{inputs.TitleTires, inputs.TitleUpperBars}
	first.inputs.SetOpenSections(want)
	first.keepLayout()
	if got := sitDown(t, app, Options{}).inputs.OpenSections(); !slices.Equal(got, want) {
		t.Errorf("%q are open, kept were %q", got, want)
	}
}

// At its first size the window holds everything, and gives its panels the
// width that their tables are legible in.
func TestTheFirstSizeSuffices(t *testing.T) {
	d := newDesk(t)
	if least := d.window.Content().MinSize(); least.Width > firstWidth || least.Height > firstHeight {
		t.Errorf("the content needs %v", least)
	}
	for _, title := range d.titles() {
		d.show(title)
		p := d.panels.current()
		if width := p.Words().Size().Width; width < paneltest.PanelWidth || p.Evidence().Size().Width < width {
			t.Errorf("the words of %s are %v wide, the evidence %v", title, width, p.Evidence().Size().Width)
		}
	}
}

func TestTheLineUnderThePanes(t *testing.T) {
	d, _ := openDesk(t)
	d.wantSaid(hint)
	d.refused([]car.Problem{{Path: "setup.0", Wrong: "no bar", Right: "choose another hole"}})
	d.wantSaid("Not there: setup 1: no bar; choose another hole")
	d.refused(nil)
	d.wantSaid(hint)
	d.say("Saved")
	d.edit()
	d.wantSaid(hint)
}

// chosen are the sizes of inputs, words and evidence that were chosen by hand.
func (s *splits) chosen() [3]float32 {
	return [3]float32{s.inputs.Chosen(), s.words.Chosen(), s.evidence.Chosen()}
}
