package controls

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"bowline/app/look"
	"bowline/app/panel/paneltest"
	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/app/stage"
	"bowline/assets"
	"bowline/model/launch"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

// leaving shows the time line of the demo car's launch.
func leaving(t *testing.T) (*paneltest.Desk, *TimeBar) {
	t.Helper()
	d := paneltest.Demo(t, nothing)
	d.Study.SetLaunching(true)
	d.Settle()
	b := NewTimeBar(d.Study)
	window := test.NewTempWindow(t, b.Object)
	window.SetPadded(false)
	window.Resize(fyne.NewSize(700, 40))
	return d, b
}

// wantTime compares the time looked at.
func wantTime(t *testing.T, d *paneltest.Desk, what string, want float64) {
	t.Helper()
	if got := d.Study.Time(); math.Abs(got-want) > 1e-9 {
		t.Errorf("%s it is %v s, want %v s", what, got, want)
	}
}

func TestPlaying(t *testing.T) {
	d, b := leaving(t)
	test.Tap(b.play)
	if !b.player.Playing() {
		t.Fatal("it does not play")
	}
	start := b.player.last
	b.player.step(start.Add(100 * time.Millisecond))
	wantTime(t, d, "after 0.1 s at 1/5 speed", 0.02)
	test.Tap(b.play)
	b.player.step(start.Add(time.Second))
	wantTime(t, d, "paused", 0.02)
	if b.player.Playing() {
		t.Error("paused, it plays")
	}
	// At its end it stops, and begins anew from there.
	test.Tap(b.play)
	b.player.step(b.player.last.Add(time.Hour))
	wantTime(t, d, "at the end", d.Study.LaunchEnd())
	if b.player.Playing() {
		t.Error("at the end it plays")
	}
	test.Tap(b.play)
	wantTime(t, d, "played anew", 0)
	// A hand on the line stops it.
	test.TapAt(b.track, fyne.NewPos(float32(b.track.axis().place(0.3)), trackLine))
	if b.player.Playing() || math.Abs(d.Study.Time()-0.3) > 0.002 {
		t.Errorf("a click at 0.3 s: %v s, playing %v", d.Study.Time(), b.player.Playing())
	}
}

// With the loop on, the launch begins again from its end, where it has been seen.
func TestTheLoopBeginsAgain(t *testing.T) {
	d, b := leaving(t)
	test.Tap(b.loop)
	test.Tap(b.play)
	b.player.step(b.player.last.Add(time.Hour))
	wantTime(t, d, "at the end", d.Study.LaunchEnd())
	b.player.step(b.player.last.Add(50 * time.Millisecond))
	wantTime(t, d, "a frame later", 0)
	if !b.player.Playing() {
		t.Error("it stands")
	}
}

// A frame is asked for when the launch has another one, and not before.
func TestPlayingChangesTheStudyOncePerOutputStep(t *testing.T) {
	d, b := leaving(t)
	b.SetPace(0)
	test.Tap(b.play)
	positions := map[float64]bool{}
	now := b.player.last
	for range 60 {
		now = now.Add(time.Second / 60)
		b.player.step(now)
		positions[d.Study.Time()] = true
	}
	// A second at 1/50 is 20 ms of the launch.
	if got := d.Study.Time(); math.Abs(got-0.02) > 0.001 || len(positions) < 18 || len(positions) > 22 {
		t.Errorf("after a second at 1/50 it is %v s, over %d positions", got, len(positions))
	}
}

// What is played goes on with the launch of the edited car, waits for one that is not
// there, and ends with the look at the launch.
func TestPlayingThroughEdits(t *testing.T) {
	d, b := leaving(t)
	test.Tap(b.play)
	b.player.step(b.player.last.Add(time.Second))
	before := d.Study.Launch()
	d.Edit()
	wantTime(t, d, "after an edit", 0.2)
	b.player.step(b.player.last.Add(time.Second))
	wantTime(t, d, "a second later", 0.4)
	if d.Study.Launch() == before || !b.player.Playing() {
		t.Errorf("another launch %v, playing %v", d.Study.Launch() != before, b.player.Playing())
	}
	d.Study.SetLaunching(false)
	if b.player.Playing() {
		t.Error("it plays while a travel is looked at")
	}
	d.Study.SetLaunching(true)
	test.Tap(b.play)
	if err := d.Doc.OpenBytes("other.toml", example(t, 1)); err != nil {
		t.Fatal(err)
	}
	if b.player.Playing() {
		t.Error("it plays another car")
	}
	b.Restart()
	if !b.player.Playing() || d.Study.Launch() != nil {
		t.Fatal("it does not wait for the launch")
	}
	d.Settle()
	b.player.step(b.player.last.Add(time.Second))
	wantTime(t, d, "a second after the launch is there", 0.2)
}

// example returns an example car's file.
func example(t *testing.T, index int) []byte {
	t.Helper()
	data, err := assets.Cars.ReadFile(assets.CarNames()[index])
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestTheMarkerIsDragged(t *testing.T) {
	d, b := leaving(t)
	c := fyne.CurrentApp().Driver().CanvasForObject(b.track)
	drag := func(to float64) {
		e := &fyne.DragEvent{}
		e.Position = fyne.NewPos(float32(b.track.axis().place(to)), trackLine)
		b.track.Dragged(e)
	}
	test.Drag(c, b.track.Position().AddXY(float32(b.track.axis().place(0.5)), trackLine), 1, 0)
	if math.Abs(d.Study.Time()-0.5) > 1e-4 {
		t.Errorf("dragged at 0.5 s it is %v s", d.Study.Time())
	}
	for _, to := range []float64{0.1, 0.7, 0.25} {
		if drag(to); math.Abs(d.Study.Time()-to) > 1e-4 {
			t.Errorf("dragged to %v s it is %v s", to, d.Study.Time())
		}
	}
	drag(-1)
	wantTime(t, d, "dragged beyond the start", 0)
	drag(9)
	wantTime(t, d, "dragged beyond the end", d.Study.LaunchEnd())
	b.track.DragEnd()
}

// Every event and peak is a mark: a click on it goes to its very time, and keys walk
// through all of them.
func TestMarksAreJumpedTo(t *testing.T) {
	d, b := leaving(t)
	r := d.Study.Launch()
	var want []float64
	for _, e := range r.Events {
		want = append(want, e.From)
	}
	for _, bar := range launch.Bars {
		if p := r.Peaks[bar]; p.Pull > 0 {
			want = append(want, p.PullTime)
		}
		if p := r.Peaks[bar]; p.Push > 0 {
			want = append(want, p.PushTime)
		}
	}
	slices.Sort(want)
	if len(want) < 5 {
		t.Fatalf("%d marks prove little", len(want))
	}
	for _, at := range want {
		test.TapAt(b.track, fyne.NewPos(float32(b.track.axis().place(at)), trackLine))
		if !slices.Contains(want, d.Study.Time()) || math.Abs(d.Study.Time()-at) > 0.01 {
			t.Errorf("a click at %v s goes to %v s", at, d.Study.Time())
		}
	}
	for _, c := range b.track.captions(b.track.axis()) {
		d.Study.SetTime(d.Study.LaunchEnd())
		test.TapAt(b.track, fyne.NewPos(float32(c.from+c.to)/2, captionBase-3))
		wantTime(t, d, "after a click on "+b.track.marks[c.mark].caption, b.track.marks[c.mark].at)
	}
	seen := func(key scene.Key) []float64 {
		var list []float64
		for range 100 {
			before := d.Study.Time()
			if b.Press(key, false); d.Study.Time() == before {
				break
			}
			list = append(list, d.Study.Time())
		}
		return list
	}
	for _, keys := range [][2]scene.Key{{scene.PageDownKey, scene.PageUpKey}, {"]", "["}} {
		b.Press(scene.HomeKey, false)
		walked := seen(keys[0])
		for _, at := range want {
			near := func(x float64) bool { return math.Abs(x-at) <= r.Options.Output }
			if !slices.ContainsFunc(walked, near) {
				t.Errorf("%s does not come by %v s: %v", keys[0], at, walked)
			}
		}
		wantTime(t, d, "after the last mark", d.Study.LaunchEnd())
		if back := seen(keys[1]); len(back) < len(walked)-1 || back[len(back)-1] != 0 {
			t.Errorf("%s walks %v, forward it was %v", keys[1], back, walked)
		}
	}
}

// The mark that the pointer or the time is at says what it is.
func TestMarksAreNamed(t *testing.T) {
	d, b := leaving(t)
	for i, m := range b.track.marks {
		d.Study.SetTime(m.at)
		if !strings.Contains(b.track.String(), b.track.marks[b.track.current()].caption) {
			t.Errorf("at %q the track says %q", m.caption, b.track.String())
		}
		d.Study.SetTime(d.Study.LaunchEnd())
		e := &desktop.MouseEvent{}
		e.Position = fyne.NewPos(float32(b.track.axis().place(m.at)), trackLine)
		b.track.MouseMoved(e)
		if hot := b.track.hot; hot < 0 || !strings.Contains(b.track.String(), b.track.marks[hot].caption) || b.track.Cursor() != desktop.PointerCursor {
			t.Errorf("pointed at mark %d, %q, the track says %q", i, m.caption, b.track.String())
		}
		b.track.MouseOut()
	}
}

// While time runs the captions stay as they are.
func TestCaptionsStayDuringPlayback(t *testing.T) {
	d, b := leaving(t)
	said := func() string { return strings.SplitN(b.track.String(), "\n", 2)[1] }
	b.Restart()
	first := said()
	for range 400 {
		b.player.step(b.player.last.Add(5 * time.Millisecond))
		if now := said(); b.player.Playing() && now != first {
			t.Fatalf("at %v s the captions are %q, at the start %q", d.Study.Time(), now, first)
		}
	}
	if d.Study.Time() < 0.3 {
		t.Errorf("only %v s were played", d.Study.Time())
	}
}

// Captions never lie on each other or beyond their room, whatever the car, the width
// and the mark chosen, and the most urgent is always there.
func TestCaptionsHaveRoom(t *testing.T) {
	d := paneltest.Demo(t, nothing)
	d.Study.SetLaunching(true)
	width := func(s string) float64 { return 6 * float64(len(s)) }
	written := 0
	for _, name := range assets.CarNames() {
		d.Example(name)
		marks := marksOf(d.Study.Launch())
		for _, room := range []float64{150, 380, 700, 1600} {
			place := func(at float64) float64 { return 10 + at/d.Study.LaunchEnd()*room }
			for chosen := -1; chosen < len(marks); chosen++ {
				placed := placeCaptions(marks, chosen, place, width, 0, room)
				written += len(placed)
				for i, c := range placed {
					if c.from < 0 || c.to > room || math.Abs(c.to-c.from-width(marks[c.mark].caption)) > 1e-9 {
						t.Errorf("%s: %q from %v to %v of %v", name, marks[c.mark].caption, c.from, c.to, room)
					}
					if start, end := extent(&marks[c.mark], place); end < c.from-captionShift || start > c.to+captionShift {
						t.Errorf("%s: %q is far from its mark", name, marks[c.mark].caption)
					}
					for _, o := range placed[:i] {
						if c.from < o.to && o.from < c.to {
							t.Errorf("%s: %q lies on %q", name, marks[c.mark].caption, marks[o.mark].caption)
						}
					}
				}
				first := chosen
				if first < 0 {
					first = slices.IndexFunc(marks, func(m mark) bool { return m.urgency == strongest })
				}
				if at := place(marks[first].at); at <= room-10 && !slices.ContainsFunc(placed, func(c caption) bool { return c.mark == first }) {
					t.Errorf("%s, %v px: nothing says %q", name, room, marks[first].caption)
				}
			}
		}
	}
	if written < 60 {
		t.Errorf("only %d captions", written)
	}
}

// The keys of the time line are those of the launch: while a travel is looked at, they
// are left to the stage.
func TestKeys(t *testing.T) {
	d, b := leaving(t)
	output := d.Study.Launch().Options.Output
	end := d.Study.LaunchEnd()
	for _, step := range []struct {
		key   scene.Key
		shift bool
		want  float64
	}{
		{scene.RightKey, false, output}, {scene.RightKey, true, 11 * output}, {scene.LeftKey, false, 10 * output},
		{scene.LeftKey, true, 0}, {scene.LeftKey, true, 0}, {scene.EndKey, false, end}, {scene.RightKey, false, end}, {scene.HomeKey, false, 0},
	} {
		if !b.Press(step.key, step.shift) {
			t.Errorf("%s is not taken", step.key)
		}
		wantTime(t, d, string(step.key), step.want)
	}
	b.Press(scene.SpaceKey, false)
	if !b.player.Playing() {
		t.Error("space does not play")
	}
	b.Press(scene.RightKey, false)
	if b.player.Playing() {
		t.Error("a step does not stand still")
	}
	for range len(paces) {
		b.Press(scene.UpKey, false)
	}
	if b.speed.Text != "1" {
		t.Errorf("the fastest speed is %q", b.speed.Text)
	}
	for range len(paces) {
		b.Press(scene.DownKey, false)
	}
	if b.speed.Text != "1/50" {
		t.Errorf("the slowest speed is %q", b.speed.Text)
	}
	if b.Press("f", false) || b.Press("1", false) {
		t.Error("keys of the stage are taken")
	}
	d.Study.SetLaunching(false)
	for _, key := range []scene.Key{scene.SpaceKey, scene.LeftKey, scene.HomeKey, "["} {
		if b.Press(key, false) {
			t.Errorf("while a travel is looked at, %s is taken", key)
		}
	}
}

// Time and distance fit into rooms that are the same at every time of every car, so
// they keep still.
func TestTheReadoutKeepsStill(t *testing.T) {
	d, b := leaving(t)
	face := big()
	time, distance := rooms(face)
	for _, name := range assets.CarNames() {
		d.Example(name)
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			for at := 0.0; at <= d.Study.LaunchEnd(); at += 0.1 {
				d.Study.SetTime(at)
				written, come := b.track.readout()
				if float32(face.Width(written)) > time || float32(face.Width(come)) > distance || !strings.HasPrefix(b.track.String(), written+", "+come) {
					t.Errorf("%q and %q do not fit into %v and %v", written, come, time, distance)
				}
			}
		}
	}
}

// At any width the buttons lie above the line and before the readout, and captions end
// before them.
func TestThePartsOfTheTimeLineStandApart(t *testing.T) {
	_, b := leaving(t)
	for _, width := range []float32{b.Object.MinSize().Width, 400, 568, 1300} {
		b.Object.Resize(fyne.NewSize(width, b.Object.MinSize().Height))
		end := b.play.Position().X + b.play.Size().Width
		if x := b.track.Position().X; x < end || x+b.track.Size().Width > width {
			t.Errorf("%v px: the track is at %v, play ends at %v", width, b.track.Position(), end)
		}
		for _, c := range b.track.captions(b.track.axis()) {
			end = max(end, b.track.Position().X+float32(c.to))
		}
		for _, o := range []fyne.CanvasObject{b.speed, b.loop} {
			if o.Position().X < end || o.Position().Y+o.Size().Height > trackLine-knob {
				t.Errorf("%v px: a button is at %v with size %v, what is before it ends at %v", width, o.Position(), o.Size(), end)
			}
			end = o.Position().X + o.Size().Width
		}
		if end > width-b.track.readoutRoom()+0.01 {
			t.Errorf("%v px: the buttons end at %v, on the readout", width, end)
		}
	}
}

// The track stands on the axis of a chart, and has a margin of its own without one.
func TestTheTrackStandsOnTheChartsAxis(t *testing.T) {
	_, b := leaving(t)
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(b.track).X
	at := func(time float64) float64 { return float64(corner) + b.track.axis().place(time) }
	usual := at(0)
	shown := true
	b.Axis = func() (start, end float64, ok bool) { return 101.5, 650.25, shown }
	if end := at(b.track.axis().end); at(0) != 101.5 || math.Abs(end-650.25) > 1e-6 {
		t.Errorf("the track goes from %v to %v", at(0), end)
	}
	if shown = false; at(0) != usual {
		t.Errorf("without a chart the track begins at %v, it was %v", at(0), usual)
	}
	// A chart that leaves no room for the buttons is not followed.
	b.Axis = func() (start, end float64, ok bool) { return 12, 650, true }
	if at(0) != usual {
		t.Errorf("the track begins at %v, below the buttons", at(0))
	}
}

// Choosing the launch in the toolbar is told once, and not what the study does else.
func TestTheToolbarTellsOfTheLaunchChosen(t *testing.T) {
	d := see(t)
	b := over(d, stage.New(d.Study, side.New(d.Study), look.Current))
	told := 0
	b.Launched = func() { told++ }
	d.Study.SetLaunching(true)
	d.Study.SetLaunching(false)
	if told != 0 {
		t.Error("it tells of what nobody has chosen here")
	}
	b.load.SetSelected(launchWord)
	b.load.SetSelected(launchWord)
	if told != 1 || !d.Study.Launching() {
		t.Errorf("told %d times, launching %v", told, d.Study.Launching())
	}
	b.load.SetSelected("Hit")
	if told != 1 {
		t.Error("it tells of the launch left")
	}
}
