package preload

import (
	"strings"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/assets"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"
)

const heavy = "cars/saltgrass-heavy.toml"

// desk is a person who looks at the preload.
type desk struct {
	*paneltest.Desk
	p *Panel
}

// showing shows the preload of an example car whose threads leave little to search.
func showing(t *testing.T, name string) *desk {
	t.Helper()
	d := paneltest.Demo(t, New)
	d.Example(name)
	shorten(d)
	return &desk{d, d.Panel.(*Panel)}
}

// shorten leaves a turn of thread either way.
func shorten(d *paneltest.Desk) {
	d.T.Helper()
	if p := d.Doc.Apply("Threads", func(c *car.Car) {
		for _, p := range car.Pairs {
			*p.Threads(c) = car.Threads{Shown: 1, JamNut: 0.25 * paneltest.Inch, Length: 1.125 * paneltest.Inch}
		}
	}); p != nil {
		d.T.Fatal(p)
	}
	d.Settle()
}

// At first there is what the setup does, and nothing to take.
func TestBeforeASearch(t *testing.T) {
	d := showing(t, heavy)
	l := d.Study.Launch()
	if got, want := d.Says(), words.RearApart(l, units.US); !strings.Contains(got, want) {
		t.Errorf("it says %q, want %q in it", got, want)
	}
	if !d.p.take.Disabled() || !d.p.stop.Disabled() || d.p.search.Disabled() || d.p.choices.Visible() {
		t.Error("there is something to take, to stop or to choose")
	}
	e := d.Study.Result().Envelope(l)
	for i, name := range words.BarNames() {
		if got, want := strings.Join(d.Row(name), " "), "— "+units.Share(e.Of(launch.RodID(i)).Share)+" — —"; got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	if got, want := d.Cell("60 ft", "Before"), words.SixtyFeet(l, units.US); got != want || d.Cell("60 ft", "After") != "—" {
		t.Errorf("60 ft is %q, want %q", got, want)
	}
}

// What is found is shown, and another way when it is chosen.
func TestWhatIsFoundIsShown(t *testing.T) {
	d := showing(t, heavy)
	d.Tap(d.p.search)
	r, of := d.Study.FoundTurns()
	if of != study.TurnsFound || len(r.Ways) < 2 {
		t.Fatalf("found %v, %+v", of, r)
	}
	d.wantWay(t, r.Best)
	other := (r.Best + 1) % len(r.Ways)
	d.p.choice.SetSelectedIndex(other)
	d.Settle()
	d.wantWay(t, other)
}

// wantWay checks that a way is shown.
func (d *desk) wantWay(t *testing.T, way int) {
	t.Helper()
	r, _ := d.Study.FoundTurns()
	w := &r.Ways[way]
	if got, want := d.Says(), words.EvenTurns(r, w); !strings.Contains(got, want) {
		t.Errorf("it says %q, want %q in it", got, want)
	}
	if got, want := d.p.choice.Selected, words.TurnsWay(r, w); got != want || !d.p.choices.Visible() || d.p.take.Disabled() {
		t.Errorf("%q is chosen, want %q", got, want)
	}
	for _, bar := range launch.Bars {
		want := strings.Join([]string{words.TurnOf(r, w, bar), units.Share(r.Before.Envelope.Of(bar).Share), units.Share(w.Envelope.Of(bar).Share), words.ThreadLeft(r, w, bar)}, " ")
		if got := strings.Join(d.Row(words.BarNames()[bar]), " "); got != want {
			t.Errorf("%s: %q, want %q", bar, got, want)
		}
	}
	for row, want := range words.EvenCar(&w.State, &w.Effect, units.US) {
		if got := d.Cell(words.EvenCarNames[row], "After"); got != want {
			t.Errorf("%s: %q, want %q", words.EvenCarNames[row], got, want)
		}
	}
}

// The way shown is taken as one step; after an edit what was found is said to be of the
// car before, and cannot be taken.
func TestTurnsAreTakenOnce(t *testing.T) {
	d := showing(t, heavy)
	d.Tap(d.p.search)
	r, _ := d.Study.FoundTurns()
	d.p.choice.SetSelectedIndex(1)
	d.Tap(d.p.take)
	if got := d.Doc.Car().Setups[0].Turns; got != r.Ways[1].Turns {
		t.Errorf("the setup has %+v, want %+v", got, r.Ways[1].Turns)
	}
	if !strings.Contains(d.Says(), words.TurnsTaken) || !d.p.take.Disabled() {
		t.Errorf("taken, it says %q", d.Says())
	}
	d.Undo()
	if got := d.Doc.Car().Setups[0].Turns; got != (car.Turns{}) || strings.Contains(d.Says(), words.TurnsTaken) || d.p.take.Disabled() {
		t.Errorf("undone, the setup has %+v", got)
	}
	d.Edit()
	if !strings.Contains(d.Says(), words.TurnsOutdated) || !strings.Contains(d.Says(), words.EvenTurns(r, &r.Ways[1])) || !d.p.take.Disabled() {
		t.Errorf("edited, it says %q", d.Says())
	}
	d.Example(heavy)
	if strings.Contains(d.Says(), words.TurnsOutdated) || d.Cell("60 ft", "After") != "—" {
		t.Errorf("with another car it says %q", d.Says())
	}
}

// A search ends when somebody stops it, and with an edit.
func TestASearchIsStopped(t *testing.T) {
	d := showing(t, heavy)
	for _, c := range []struct {
		what   string
		end    func()
		edited bool
	}{{"stopped", func() { d.Tap(d.p.stop) }, false}, {"edited", d.Edit, true}} {
		d.Study.SearchTurns()
		d.p.Refresh()
		if !d.p.search.Disabled() || d.p.stop.Disabled() || !strings.Contains(d.Says(), "Searching") {
			t.Errorf("searching, it says %q", d.Says())
		}
		c.end()
		if r, _ := d.Study.FoundTurns(); r != nil || d.p.search.Disabled() || !d.p.stop.Disabled() {
			t.Errorf("%s, it has found %+v", c.what, r)
		}
		if got := strings.Contains(d.Says(), words.TurnsProgress(false, 0, true, nil)); got != c.edited {
			t.Errorf("%s, it says %q", c.what, d.Says())
		}
	}
}

// A car that is even enough is said to be.
func TestNothingToTurn(t *testing.T) {
	d := showing(t, "cars/saltgrass-light.toml")
	d.Tap(d.p.search)
	r, _ := d.Study.FoundTurns()
	if r == nil || len(r.Ways) > 0 || !strings.Contains(d.Says(), words.NoTurns(r)) || !d.p.take.Disabled() {
		t.Errorf("it says %q", d.Says())
	}
}

// Tables are legible in the width of a panel, and every letter is in the font.
func TestTablesAndLetters(t *testing.T) {
	check, letters := paneltest.Lettering(t)
	d := showing(t, heavy)
	for _, name := range assets.CarNames() {
		d.Example(name)
		shorten(d.Desk)
		d.Tap(d.p.search)
		for _, u := range []units.System{units.US, units.SI} {
			d.Doc.SetUnits(u)
			d.Settle()
			check(d.Says())
			for _, bar := range words.BarNames() {
				cells := d.Row(bar)
				paneltest.WantRoom(t, name, bar, false, columns[0]*paneltest.PanelWidth-paneltest.TextGap)
				for i, text := range cells {
					paneltest.WantRoom(t, name+", "+bar, text, false, columns[1+i]*paneltest.PanelWidth-paneltest.TextGap)
				}
			}
			for _, row := range words.EvenCarNames {
				for _, text := range d.Row(row) {
					paneltest.WantRoom(t, name+", "+row, text, false, paneltest.ValueRoom)
				}
			}
		}
	}
	for _, turn := range []string{words.OwnTurns(-23.0 - 5.0/6), words.OwnTurns(-11.17)} {
		paneltest.WantRoom(t, "a turn", turn, false, columns[1]*paneltest.PanelWidth-paneltest.TextGap)
	}
	if *letters < 2000 {
		t.Errorf("only %d letters were looked at", *letters)
	}
}
