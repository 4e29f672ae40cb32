package scene_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"bowline/app/scene"
	"bowline/model/units"
	"bowline/plotting/palette"
	"bowline/plotting/palette/contrast"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// plate is a label of two lines of some thing.
func plate(kind scene.Kind, at r3.Vec, beside r2.Vec, rank scene.Rank) scene.Item {
	return scene.Item{ID: scene.ID{Kind: kind}, Shape: scene.Label, Points: []r3.Vec{at}, Text: "Upper bars pull", Figure: "left 1,893 · right 3,661 lb — 84 %", Stroke: scene.Pull, Beside: beside, Rank: rank}
}

// sign is what stands at a point.
func sign(kind scene.Kind, at r3.Vec) scene.Item {
	return scene.Item{ID: scene.ID{Kind: kind}, Shape: scene.Disc, Points: []r3.Vec{at}, Pixels: 6, Fill: scene.Ink, Pick: 6}
}

// placed returns the label of a kind in a picture.
func placed(t *testing.T, p *scene.Picture, kind scene.Kind) scene.Placed {
	t.Helper()
	for _, l := range p.Labels {
		if l.ID.Kind == kind {
			return l
		}
	}
	t.Fatalf("no label of kind %d; left out are %v", kind, p.LeftOut)
	return scene.Placed{}
}

// off returns how far a point is from a box.
func off(b scene.Box, p r2.Vec) float64 {
	return math.Hypot(math.Max(0, math.Max(b.Left-p.X, p.X-b.Right)), math.Max(0, math.Max(b.Top-p.Y, p.Y-b.Bottom)))
}

// With nothing in the way a label stands beside its thing, on the side asked for.
func TestALabelStandsOnItsSide(t *testing.T) {
	for _, beside := range []r2.Vec{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
		var p scene.Picture
		p.Project([]scene.Item{plate(scene.UpperBar, pixels(20, 10), beside, scene.Foremost)}, in(800, 600))
		l := placed(t, &p, scene.UpperBar)
		middle := r2.Vec{X: (l.Box.Left+l.Box.Right)/2 - l.Point.X, Y: l.Point.Y - (l.Box.Top+l.Box.Bottom)/2}
		if d := off(l.Box, l.Point); d < 1 || d > 16 || r2.Cos(middle, beside) < 0.99 || l.Point != (r2.Vec{X: 420, Y: 290}) || l.Leader[0] != l.Leader[1] {
			t.Errorf("%v: the label of %v stands at %v with leader %v", beside, l.Point, l.Box, l.Leader)
		}
	}
}

// A label goes round what it may not cover, with a leader from its edge to the edge of
// its thing.
func TestALabelGoesRoundWhatMattersWithALeader(t *testing.T) {
	wall := scene.Item{ID: scene.ID{Kind: scene.UpperBar}, Points: []r3.Vec{pixels(-130, 0), pixels(130, 0)}, Width: 90, Stroke: scene.Pull, Pick: 6}
	beyond := scene.Item{Shape: scene.Area, Points: []r3.Vec{pixels(0, 60), pixels(10, 60), pixels(5, 70)}, Clear: true}
	var p scene.Picture
	p.Project([]scene.Item{wall, beyond, sign(scene.InstantCenter, pixels(0, 0)), sign(scene.CG, pixels(0, 110)), plate(scene.InstantCenter, pixels(0, 0), r2.Vec{Y: 1}, scene.Leading)}, in(800, 600))
	l := placed(t, &p, scene.InstantCenter)
	if bar := (scene.Box{Left: 270, Top: 255, Right: 530, Bottom: 345}); l.Box.Meets(bar) || l.Box.Meets(scene.Box{Left: 400, Top: 230, Right: 410, Bottom: 240}) {
		t.Errorf("the label stands at %v", l.Box)
	}
	from, to := l.Leader[0], l.Leader[1]
	if off(l.Box, from) > 0 || l.Box.Grown(-0.5).Holds(from) || math.Abs(r2.Norm(r2.Sub(to, l.Point))-6) > 1e-9 {
		t.Errorf("the leader of %v at %v runs from %v to %v", l.Point, l.Box, from, to)
	}
}

// A label stays where it is while its thing moves a little, and goes with it when that
// goes on.
func TestALabelStaysUntilItsThingHasGone(t *testing.T) {
	var p scene.Picture
	var first scene.Box
	for i := range 200 {
		p.Project([]scene.Item{plate(scene.UpperBar, pixels(float64(i), 0), r2.Vec{Y: 1}, scene.Foremost)}, in(800, 600))
		l := placed(t, &p, scene.UpperBar)
		if i == 0 {
			first = l.Box
		}
		went := l.Box.Left - first.Left
		if i < 30 && went != 0 || math.Abs(went-float64(i)) > 45 || off(l.Box, l.Point) > 80 {
			t.Fatalf("%d px on, the label has gone %v px", i, went)
		}
	}
}

// Labels move with a picture that is dragged, and are placed anew in one of another size.
func TestLabelsMoveWithTheView(t *testing.T) {
	var p scene.Picture
	items := []scene.Item{plate(scene.UpperBar, pixels(0, 0), r2.Vec{Y: 1}, scene.Foremost)}
	v := in(800, 600)
	p.Project(items, v)
	before := placed(t, &p, scene.UpperBar).Box
	p.Project(items, v.Panned(r2.Vec{X: 30, Y: -20}))
	if after := placed(t, &p, scene.UpperBar).Box; after.Left-before.Left != 30 || after.Top-before.Top != -20 {
		t.Errorf("dragged by (30, −20), the label goes from %v to %v", before, after)
	}
	p.Project(items, in(400, 300))
	if l := placed(t, &p, scene.UpperBar); off(l.Box, l.Point) > 16 {
		t.Errorf("in another size the label of %v stands at %v", l.Point, l.Box)
	}
}

// Labels leave the places where dots appear.
func TestLabelsGoOutOfTheWayOfDots(t *testing.T) {
	var p scene.Picture
	words := plate(scene.CG, pixels(0, 40), r2.Vec{Y: -1}, scene.Ordinary)
	p.Project([]scene.Item{words}, in(800, 600))
	crowded := scene.Box{Left: 360, Top: 260, Right: 440, Bottom: 340}
	if b := placed(t, &p, scene.CG).Box; !b.Meets(crowded) {
		t.Fatalf("without dots the label stands at %v", b)
	}
	p.Project([]scene.Item{crowd(0, 0), words}, in(800, 600))
	if b := placed(t, &p, scene.CG).Box; b.Meets(crowded) {
		t.Errorf("the label stays on dots, at %v", b)
	}
}

// A label keeps its width while digits come and go.
func TestALabelKeepsItsWidth(t *testing.T) {
	var p scene.Picture
	item := plate(scene.UpperBar, pixels(0, 0), r2.Vec{Y: 1}, scene.Foremost)
	p.Project([]scene.Item{item}, in(800, 600))
	before := placed(t, &p, scene.UpperBar).Box
	for _, figure := range []string{"left 893 · right 3,661 lb — 84 %", "left 1,893 · right 3,661 lb — 8 %", "left 1,111 · right 1,111 lb — 11 %"} {
		item.Figure = figure
		p.Project([]scene.Item{item}, in(800, 600))
		if after := placed(t, &p, scene.UpperBar).Box; after != before {
			t.Errorf("%q: the box goes from %v to %v", figure, before, after)
		}
	}
}

// Where there is no room for all, those that come last are left out, and which.
func TestLabelsWithoutRoomAreLeftOut(t *testing.T) {
	var p scene.Picture
	p.Project([]scene.Item{
		plate(scene.WholeLine, pixels(0, 0), r2.Vec{}, scene.Secondary), plate(scene.CG, pixels(0, 0), r2.Vec{}, scene.Ordinary),
		plate(scene.InstantCenter, pixels(0, 0), r2.Vec{}, scene.Leading), plate(scene.LowerBar, pixels(0, 0), r2.Vec{}, scene.Foremost),
	}, in(260, 100))
	if len(p.Labels) != 2 || p.Labels[0].ID.Kind != scene.LowerBar || p.Labels[1].ID.Kind != scene.InstantCenter {
		t.Errorf("%d labels are placed: %+v", len(p.Labels), p.Labels)
	}
	if len(p.LeftOut) != 2 || p.LeftOut[0].Kind != scene.CG || p.LeftOut[1].Kind != scene.WholeLine {
		t.Errorf("left out are %v", p.LeftOut)
	}
}

// Labels make room for what is written into a corner, and stay where they went then.
func TestLabelsMakeRoomForACorner(t *testing.T) {
	v := in(800, 600)
	v.Plane = sidePlane
	var p scene.Picture
	items := []scene.Item{plate(scene.UpperBar, pixels(330, -250), r2.Vec{Y: -1}, scene.Foremost)}
	p.Project(items, v)
	before := placed(t, &p, scene.UpperBar).Box
	p.Coordinates(r2.Vec{X: 100, Y: 100}, units.US)
	corner, _ := where(draw(&p, 1, &palette.Dark), palette.Dark.Muted)
	tag := scene.Box{Left: 640, Top: 570, Right: 800, Bottom: 600}
	after := placed(t, &p, scene.UpperBar).Box
	if !before.Meets(tag) || after.Meets(scene.Box{Left: float64(corner.Max.X) - 120, Top: 570, Right: 800, Bottom: 600}) {
		t.Errorf("the label goes from %v to %v beside a tag up to %v", before, after, corner.Max)
	}
	p.Project(items, v)
	if again := placed(t, &p, scene.UpperBar).Box; again != after {
		t.Errorf("the next picture has it at %v, not %v", again, after)
	}
}

// A label stands for its thing, but not before what can be dragged.
func TestALabelIsPickedAsItsThing(t *testing.T) {
	var p scene.Picture
	ground := scene.Item{ID: scene.ID{Kind: scene.RearTire}, Shape: scene.Disc, Points: []r3.Vec{pixels(0, 0)}, Radius: 2, Pick: 6}
	pivot := scene.Item{ID: scene.ID{Kind: scene.Pivot}, Shape: scene.Disc, Points: []r3.Vec{pixels(0, 0)}, Pixels: 6, Pick: 40}
	items := []scene.Item{ground, pivot, plate(scene.UpperBar, pixels(0, 0), r2.Vec{Y: 1}, scene.Foremost)}
	p.Project(items, in(800, 600))
	b := placed(t, &p, scene.UpperBar).Box
	if got := p.Pick(r2.Vec{X: b.Left + 3, Y: b.Top + 3}); got != items[2].ID {
		t.Errorf("on the label is %+v", got)
	}
	if got := p.Pick(r2.Vec{X: 400, Y: b.Bottom - 1}); got != pivot.ID {
		t.Errorf("on the label beside the pivot is %+v", got)
	}
	if got := p.Pick(r2.Vec{X: b.Left + 3, Y: b.Bottom + 3}); got != ground.ID {
		t.Errorf("beside the label is %+v", got)
	}
}

// A plate has a border in the label's color, and its words can be read on it in both
// themes: a contrast of 4.5 to 1 as WCAG 2.2, criterion 1.4.3 asks for.
func TestPlatesAreDrawnAndRead(t *testing.T) {
	for theme, colors := range map[string]*palette.Palette{"light": &palette.Light, "dark": &palette.Dark} {
		var p scene.Picture
		p.Project([]scene.Item{plate(scene.UpperBar, pixels(0, 0), r2.Vec{Y: 1}, scene.Foremost)}, in(400, 300))
		b := placed(t, &p, scene.UpperBar).Box
		img := draw(&p, 1, colors)
		border, _ := where(img, colors.Pull)
		if want := image.Rect(int(b.Left), int(b.Top), int(b.Right), int(b.Bottom)); border != want {
			t.Errorf("%s: the border is %v around %v", theme, border, want)
		}
		half := border
		half.Max.Y -= border.Dy() / 2
		if _, n := such(img, half, func(c color.RGBA) bool { return c == colors.Ink }); n < 20 {
			t.Errorf("%s: %d pixels of the name", theme, n)
		}
		for _, c := range []scene.Color{scene.Ink, scene.Push, scene.Pull, scene.Slack, scene.Bad, scene.Center, scene.Whole} {
			if got := contrast.Ratio(c.In(colors), colors.Raised); got < 4.5 {
				t.Errorf("%s: color %d has a contrast of %.2f on a plate", theme, c, got)
			}
		}
	}
}

// Placing labels takes no memory once there is enough.
func TestLabelsTakeNoMemory(t *testing.T) {
	var p scene.Picture
	items := []scene.Item{
		crowd(100, 50), sign(scene.InstantCenter, pixels(0, 0)), plate(scene.InstantCenter, pixels(0, 0), r2.Vec{Y: 1}, scene.Leading),
		plate(scene.UpperBar, pixels(-100, 40), r2.Vec{Y: 1}, scene.Foremost), label(pixels(30, 30), "100 %", scene.Whole),
	}
	width := 800.0
	if n := testing.AllocsPerRun(50, func() {
		width = 1500 - width // placed anew
		p.Project(items, in(width, 600))
		p.Project(items, in(width, 600))
	}); n > 0 {
		t.Errorf("%v allocations", n)
	}
}
