package report

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"bowline/app/words"
	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/stock"
	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/paper"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot/vg"
)

// Card is a card to tape to the car: how to get from a setup to other holes,
// what that does, and what to check before the round. It never changes.
type Card struct {
	car           *car.Car
	setup         int
	to            car.Holes
	change        adjuster.Change
	before, after writer
	units         units.System
}

// NewCard works out how to get from a setup of a car that passes Validate to
// other holes, with the turns of the setup kept as preload, and what both do
// over the travel and in the launch. It refuses a setup and holes that do not exist, holes that
// cannot be used, and bars that cannot be put together with the setup's turns,
// in words with values in the unit system s, which the card is written in.
func NewCard(ctx context.Context, c *car.Car, setup int, to car.Holes, lib stock.Library, s units.System) (*Card, error) {
	var turns car.Turns
	if setup >= 0 && setup < len(c.Setups) {
		turns = c.Setups[setup].Turns
	}
	change, err := adjuster.Plan(c, setup, to, turns)
	if err != nil {
		return nil, err
	}
	var wrong []string
	for _, p := range c.CheckHoles(to, c.Capacity(lib), s) {
		wrong = append(wrong, p.Wrong+"; "+p.Right)
	}
	if len(wrong) > 0 {
		return nil, fmt.Errorf("holes %s cannot be used: %s", to, strings.Join(wrong, "; "))
	}
	if change.Turned.Cannot != nil {
		return nil, errors.New("the bars " + words.Effect(change.Turned, s) + "; give the setup fewer turns")
	}
	with := *c
	with.Setups = []car.Setup{{Name: c.Setups[setup].Name, Holes: to, Turns: turns}}
	k := &Card{car: c, setup: setup, to: to, change: change, units: s}
	if k.before, err = carded(ctx, c, setup, lib, s); err != nil {
		return nil, err
	}
	if k.after, err = carded(ctx, &with, 0, lib, s); err != nil {
		return nil, err
	}
	return k, nil
}

// carded analyzes and launches a setup.
func carded(ctx context.Context, c *car.Car, setup int, lib stock.Library, s units.System) (writer, error) {
	r, err := analysis.Run(ctx, c, lib, analysis.Options{Setup: setup})
	if err != nil {
		return writer{}, err
	}
	l, err := launch.Run(ctx, c, setup, lib, launch.Options{})
	return writer{Result: r, launch: l, units: s}, err
}

const (
	cardEdge   = 0.5 * vg.Inch // From the page's upper edge to the card.
	markLength = 14            // Of a cut mark [pt].
	markGap    = 4             // Between a cut mark and the card's corner [pt].
	markWidth  = 0.5           // [pt]
)

// Write writes a PDF document of one page, letter for US units and A4 for SI:
// the card, 4 × 6 in or 100 × 150 mm, between cut marks, and the caution.
func (k *Card) Write(out io.Writer, date time.Time) error {
	page := newSheets(k.units)
	doc := paper.New(page.width, page.height, k.title(), date)
	doc.NextPage()
	on := k.layout(date)
	corner := vg.Point{X: (page.width - on.width) / 2, Y: page.height - cardEdge - on.height}
	doc.Push()
	doc.Translate(corner)
	on.draw(doc)
	cutMarks(doc, on.width, on.height)
	doc.Pop()
	small := face(footSize, xfont.WeightNormal)
	lines := measure(small).wrap(chart.Caution, (page.width - 2*margin).Points())
	doc.SetColor(ink.Ink)
	for i, s := range lines {
		doc.FillString(small, vg.Point{X: margin, Y: margin + vg.Length(len(lines)-1-i)*footSize*pitch}, s)
	}
	_, err := doc.WriteTo(out)
	return err
}

// Save writes the document of Write to a file, which it replaces as a whole or
// not at all. It fails as carfile.Write does.
func (k *Card) Save(path string, date time.Time) error {
	return save(path, func(w io.Writer) error { return k.Write(w, date) })
}

func (k *Card) title() string {
	return fmt.Sprintf("%s, setup %q to holes %s", plainText(k.car.Body.Name), k.car.Setups[k.setup].Name, k.to)
}

// cutMarks draws two lines outside each corner of a card at the origin.
func cutMarks(p *paper.Canvas, width, height vg.Length) {
	p.SetColor(ink.Muted)
	p.SetLineWidth(markWidth)
	for _, x := range []vg.Length{0, width} {
		for _, y := range []vg.Length{0, height} {
			outX, outY := vg.Length(-1), vg.Length(-1)
			if x > 0 {
				outX = 1
			}
			if y > 0 {
				outY = 1
			}
			for _, end := range [][2]vg.Point{
				{{X: x + outX*markGap, Y: y}, {X: x + outX*(markGap+markLength), Y: y}},
				{{X: x, Y: y + outY*markGap}, {X: x, Y: y + outY*(markGap+markLength)}},
			} {
				var mark vg.Path
				mark.Move(end[0])
				mark.Line(end[1])
				p.Stroke(mark)
			}
		}
	}
}

// from returns the holes of the setup.
func (k *Card) from() car.Holes { return k.car.Setups[k.setup].Holes }
