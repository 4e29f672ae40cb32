package side_test

import (
	"image"
	"testing"

	"bowline/app/document"
	"bowline/app/runner/runnertest"
	"bowline/app/scene"
	"bowline/app/scene/scenetest"
	"bowline/app/scene/side"
	"bowline/app/study"
	"bowline/assets"
	"bowline/model/carfile"
	"bowline/model/units"
	"bowline/plotting/palette"
)

// launching studies the launch of an example car.
func launching(t testing.TB, name string) *study.Study {
	t.Helper()
	data, err := assets.Cars.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	file, err := carfile.Decode("car.toml", data, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	queue := runnertest.NewQueue()
	s := study.New(document.New(carfile.Stock(), t.TempDir(), file), study.Options{Library: carfile.Stock(), Post: queue.Post})
	t.Cleanup(s.Close)
	s.SetLaunching(true)
	queue.Settle(s.Busy)
	return s
}

func TestLabelsKeepClearOverALaunch(t *testing.T) {
	for _, name := range assets.CarNames() {
		t.Run(name, func(t *testing.T) {
			s := launching(t, name)
			scenetest.PlayLabels(t, s, side.New(s))
		})
	}
}

// A picture of a launch that plays, listed, placed and drawn.
func BenchmarkPlaying(b *testing.B) {
	s := launching(b, "cars/saltgrass-7.toml")
	v := side.New(s)
	view := v.Fits()[side.FitCar].Framing(820, 420).View
	img, renderer := image.NewRGBA(image.Rect(0, 0, 820, 420)), scene.NewRenderer()
	var list scene.List
	var p scene.Picture
	for _, part := range []string{"list", "place", "all"} {
		b.Run(part, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				if part != "place" || i == 0 {
					s.SetTime(s.Launch().Time[i*5%len(s.Launch().Time)])
					v.Fill(&list, scene.Pointer{})
				}
				if part != "list" {
					p.Project(list.Items, view)
				}
				if part == "all" {
					renderer.Draw(img, 1, &p, units.US, &palette.Dark)
				}
			}
		})
	}
}

// Once a picture of a launch has been drawn, drawing it again takes no memory.
func TestDrawingTakesNoMemory(t *testing.T) {
	p := launched(t, side.Instant{Tension: [2][2]float64{{10000, 30000}, {-20000, 60000}}, Distance: 3})
	img := image.NewRGBA(image.Rect(0, 0, 800, 600))
	r := scene.NewRenderer()
	r.Draw(img, 1, p, units.US, &palette.Light)
	if n := testing.AllocsPerRun(5, func() { r.Draw(img, 1, p, units.US, &palette.Light) }); n > 0 {
		t.Errorf("drawing takes memory %v times", n)
	}
}
