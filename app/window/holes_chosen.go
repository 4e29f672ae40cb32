package window

import (
	"fmt"
	"strings"

	"bowline/app/readout"
	"bowline/app/study"
	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// chosenHoles tells of the combination that is picked, or else of the holes in
// use: why it stands where it does, how to get there and what changes.
type chosenHoles struct {
	study   *study.Study
	title   *readout.Prose
	reason  *readout.Prose
	pairs   [2]turnWords // by car.Pair
	rest    *readout.Prose
	changes *readout.Table
	use     *widget.Button
	keep    *widget.Button
	print   *widget.Button
	object  *fyne.Container // hidden while there are no combinations
	refused func([]car.Problem)
}

// turnWords say how to turn a pair of bars, in a warning color where that does
// not do.
type turnWords struct{ plain, recut *readout.Prose }

func (t turnWords) set(text string, recut bool) {
	if recut {
		tell(t.plain, "")
		tell(t.recut, text)
		return
	}
	tell(t.plain, text)
	tell(t.recut, "")
}

// Rows of what changes.
const (
	changeAhead = iota
	changeUp
	changeSquat
	changePinion
	changePush
	changeShare
	changeRows
)

var changeNames = [changeRows]string{
	changeAhead: "IC ahead", changeUp: "IC up", changeSquat: "Anti-squat", changePinion: "Pinion", changePush: "Lower push", changeShare: "Top share",
}

// changeKeys are the columns of package holes that the rows show.
var changeKeys = [changeRows]string{
	changeAhead: "instant_center_x", changeUp: "instant_center_z", changeSquat: "anti_squat", changePinion: "pinion_change", changePush: "hit_lower_push", changeShare: "highest_share",
}

// newChosenHoles returns the card; refused hears why holes are not taken, and
// printed is asked to put the card on paper.
func newChosenHoles(s *study.Study, refused func([]car.Problem), printed func(car.Holes)) *chosenHoles {
	c := &chosenHoles{
		study:   s,
		title:   readout.NewProse("", theme.SizeNameText, theme.ColorNameForeground, fyne.TextStyle{Bold: true}),
		reason:  words(theme.ColorNameForeground),
		rest:    words(theme.ColorNameForeground),
		changes: readout.New([]string{"In use", "These", "Change"}, changeNames[:]),
		refused: refused,
	}
	c.use = widget.NewButton("Use these holes", func() { c.useHoles(c.index()) })
	c.use.Importance = widget.HighImportance
	c.keep = widget.NewButton("Keep as a setup", c.keepHoles)
	c.print = widget.NewButton("Card as PDF…", func() {
		if p := s.Place(c.index()); p != nil {
			printed(p.Holes())
		}
	})
	turns := container.New(layout.NewCustomPaddedVBoxLayout(0))
	for p := range c.pairs {
		c.pairs[p] = turnWords{words(theme.ColorNameForeground), words(theme.ColorNameError)}
		turns.Add(c.pairs[p].plain)
		turns.Add(c.pairs[p].recut)
	}
	c.object = container.NewVBox(c.title, container.NewHBox(c.use, c.keep, c.print), c.reason, turns, c.rest, c.changes)
	return c
}

// index returns the combination that the card is about.
func (c *chosenHoles) index() int {
	if i := c.study.Picked(); i != study.None {
		return i
	}
	return c.study.Present()
}

// useHoles takes the holes of a combination.
func (c *chosenHoles) useHoles(index int) {
	if p := c.study.Place(index); p != nil {
		c.tell(c.study.UseHoles(p.Holes()))
	}
}

// keepHoles makes a setup of the holes of the card.
func (c *chosenHoles) keepHoles() {
	if p := c.study.Place(c.index()); p != nil {
		c.tell(c.study.KeepHoles(p.Holes()))
	}
}

// tell says why holes are not taken.
func (c *chosenHoles) tell(problems []car.Problem) {
	if len(problems) > 0 {
		c.refused(problems)
	}
}

// refresh writes the card.
func (c *chosenHoles) refresh() {
	p, u := c.study.Place(c.index()), c.study.Units()
	if c.object.Hidden = p == nil; p == nil {
		return
	}
	present := p.Index == c.study.Present()
	title := fmt.Sprintf("Holes %s, rank %s of %s", p.Holes(), units.Count(p.Rank), units.Count(len(c.study.Ranking())))
	if present {
		title += ", in use"
	}
	c.title.Set(title)
	c.reason.Set(sentence(p.Reason(u)))
	enable(c.use, p.Combination().Usable() && !present)
	enable(c.keep, p.Combination().Usable())
	enable(c.print, p.Combination().Usable())
	c.writeTurns(p, u)
	c.writeChanges(p, u)
}

// enable has a button react or not.
func enable(b *widget.Button, on bool) {
	if on == b.Disabled() {
		if on {
			b.Enable()
		} else {
			b.Disable()
		}
	}
}

// sentence writes a phrase as one.
func sentence(phrase string) string {
	if phrase == "" {
		return ""
	}
	return strings.ToUpper(phrase[:1]) + phrase[1:] + "."
}

// writeTurns says how to get to the holes from the current setup.
func (c *chosenHoles) writeTurns(p *holes.Place, u units.System) {
	doc := c.study.Document()
	plan, err := adjuster.Plan(doc.Car(), doc.Setup(), p.Holes(), doc.Car().Setups[doc.Setup()].Turns)
	if !p.Combination().Usable() || err != nil {
		for _, t := range c.pairs {
			t.set("", false)
		}
		tell(c.rest, "")
		return
	}
	lines := plan.Text(u)
	for i, t := range c.pairs {
		t.set(lines[i], plan.Pairs[i].Recut())
	}
	tell(c.rest, strings.Join(lines[len(c.pairs):], "\n"))
}

// writeChanges holds the combination against the holes in use.
func (c *chosenHoles) writeChanges(p *holes.Place, u units.System) {
	present := c.study.Place(c.study.Present())
	for row, key := range changeKeys {
		k, _ := holes.ColumnOf(key)
		c.changes.Set(row, 0, k.Text(present, u), "")
		c.changes.Set(row, 1, k.Text(p, u), valueColor(k, p))
		text := "–"
		from, known := k.Value(present)
		if to, ok := k.Value(p); ok && known && p != present {
			text = signed(u, k.Quantity, to-from)
		}
		c.changes.Set(row, 2, text, "")
	}
}

// signed writes a change with its sign and unit.
func signed(u units.System, q units.Quantity, x float64) string {
	text := u.Format(q, x)
	if x > 0 && !u.ReadsZero(q, x) {
		return "+" + text
	}
	return text
}
