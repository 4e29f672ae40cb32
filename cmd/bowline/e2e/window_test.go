//go:build e2e

package e2e

import (
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

const (
	screenWidth, screenHeight = 1600, 1000

	stateTimeout = 20 * time.Second
	quietTime    = 400 * time.Millisecond // More than twenty frames without a change.
)

// bowline is the program under test.
var bowline = flag.String("bowline", "", "`path` of the built program to drive")

func TestMain(m *testing.M) {
	flag.Parse()
	if *bowline == "" {
		fmt.Fprintln(os.Stderr, "name the program to drive: go test -tags e2e ./cmd/bowline/e2e -args -bowline PATH")
		os.Exit(2)
	}
	os.Exit(m.Run())
}

// open shows the test's car in the window and returns the program with the state it has come to rest in. When the test ends, the program
// must end well and must not have complained about calls on the wrong thread; of a failure a picture is kept.
func open(t testing.TB) (*Program, State) {
	t.Helper()
	display, err := StartDisplay(screenWidth, screenHeight)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := display.Close(); err != nil {
			t.Error(err)
		}
	})
	car, err := filepath.Abs(filepath.Join("testdata", "drag.toml"))
	if err != nil {
		t.Fatal(err)
	}
	p, err := StartProgram(display, *bowline, t.TempDir(), car)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { finish(t, p) })
	first, err := p.States.Wait(stateTimeout, "the first picture", func(State) bool { return true })
	if err != nil {
		t.Fatal(err)
	}
	return p, settle(t, p, first)
}

// finish ends the program and holds its manners against it.
func finish(t testing.TB, p *Program) {
	if t.Failed() {
		file := filepath.Join(t.ArtifactDir(), "screen.png")
		if err := p.Screenshot(file); err != nil {
			t.Error(err)
		}
		t.Log("picture of the screen:", file)
	}
	if err := p.Stop(); err != nil {
		t.Error(err)
	}
	log := p.Log()
	if strings.Contains(log, "Error in Fyne call thread") {
		t.Error("the toolkit was called on the wrong thread")
	}
	if t.Failed() {
		t.Logf("the program's output:\n%s", log)
	}
}

// settle waits until the window shows nothing new and returns the last state.
func settle(t testing.TB, p *Program, from State) State {
	t.Helper()
	s, err := p.States.Settle(from, quietTime, stateTimeout)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestWindowOpensWithItsCar(t *testing.T) {
	p, s := open(t)
	title, err := p.Title()
	if err != nil {
		t.Fatal(err)
	}
	if want := "Saltgrass No. 7 — Bowline"; title != want {
		t.Errorf("title %q, want %q", title, want)
	}
	checkSideView(t, s, baseline)
	checkPicture(t, p, s)
}

// checkPicture sees to it that every pivot lies inside the window and that something is drawn there.
func checkPicture(t *testing.T, p *Program, s State) {
	t.Helper()
	width, height, err := p.Size()
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "screen.png")
	if err := p.Screenshot(file); err != nil {
		t.Fatal(err)
	}
	picture := readPicture(t, file)
	for _, name := range pivots {
		at := s.Pivot(name)
		if at.X < 0 || at.Y < 0 || at.X >= float64(width) || at.Y >= float64(height) {
			t.Errorf("%s is drawn at %v, outside the window of %d × %d", name, at, width, height)
		} else if n := colorsAround(picture, at); n < 2 {
			t.Errorf("nothing is drawn at %s, %v: all of one color", name, at)
		}
	}
}

// readPicture reads a PNG file.
func readPicture(t *testing.T, file string) image.Image {
	t.Helper()
	source, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer source.Close()
	picture, err := png.Decode(source)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// colorsAround counts the colors in a small square about a place; the window lies in the screen's corner.
func colorsAround(picture image.Image, at Point) int {
	const reach = 12
	colors := map[color.Color]bool{}
	for y := int(at.Y) - reach; y <= int(at.Y)+reach; y++ {
		for x := int(at.X) - reach; x <= int(at.X)+reach; x++ {
			if (image.Point{X: x, Y: y}).In(picture.Bounds()) {
				colors[picture.At(x, y)] = true
			}
		}
	}
	return len(colors)
}

// dragLowerChassis drags the lower bar's front end from its baseline hole into the next one up and returns the state it comes to rest in.
func dragLowerChassis(t *testing.T, p *Program, before State) State {
	t.Helper()
	from, to := before.Pivot("lower_chassis"), viewOf(t, before, baseline).pixel(raised.lowerChassis)
	if err := p.Play(new(Script).Drag(from, to)); err != nil {
		t.Fatal(err)
	}
	return settle(t, p, await(t, p, "lower_chassis", to))
}

// await waits until a pivot is drawn at a place.
func await(t *testing.T, p *Program, pivot string, at Point) State {
	t.Helper()
	s, err := p.States.Wait(stateTimeout, fmt.Sprintf("%s at %.1f", pivot, at), func(s State) bool {
		return distance(s.Pivot(pivot), at) < pixelTolerance
	})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestDraggingAPivotPutsTheBarInTheNextHole(t *testing.T) {
	p, before := open(t)
	after := dragLowerChassis(t, p, before)
	if after.Revision <= before.Revision {
		t.Errorf("revision %d after the drag, %d before it", after.Revision, before.Revision)
	}
	checkSideView(t, after, raised)
	if math.Abs(after.UpperPush-before.UpperPush) < 1 {
		t.Errorf("the force in the upper bar stayed at %g N through the drag", after.UpperPush)
	}
}

func TestOneUndoTakesTheWholeDragBack(t *testing.T) {
	p, before := open(t)
	dragLowerChassis(t, p, before)
	if err := p.Play(new(Script).Key("ctrl+z")); err != nil {
		t.Fatal(err)
	}
	after := settle(t, p, await(t, p, "lower_chassis", before.Pivot("lower_chassis")))
	checkSideView(t, after, baseline)
}

// On the page of all combinations of holes, a double click where the closed form puts the instant center of other holes has them used.
func TestDoubleClickOnAnInstantCenterUsesItsHoles(t *testing.T) {
	p, before := open(t)
	const search = time.Second // Far more than the search of 36 combinations takes.
	if err := p.Play(new(Script).Key("ctrl+2").Pause(search)); err != nil {
		t.Fatal(err)
	}
	before = settle(t, p, before) // The page shows the target too.
	v := viewOf(t, before, baseline)
	if err := p.Play(new(Script).DoubleClick(v.pixel(raised.center()))); err != nil {
		t.Fatal(err)
	}
	after := settle(t, p, await(t, p, "lower_chassis", v.pixel(raised.lowerChassis)))
	checkSideView(t, after, raised)
	if err := p.Play(new(Script).Key("ctrl+z")); err != nil {
		t.Fatal(err)
	}
	checkSideView(t, settle(t, p, await(t, p, "lower_chassis", before.Pivot("lower_chassis"))), baseline)
}
