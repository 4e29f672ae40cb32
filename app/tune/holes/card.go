package holes

import (
	"fmt"
	"strings"

	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/readout"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// card is about the combination that is picked, or else about the holes in
// use: why it stands where it does, how to get there and what changes.
type card struct {
	study   *study.Study
	title   *form.Prose
	order   *form.Prose // which number of the title is which hole
	reason  *form.Prose
	pairs   [2]*form.Prose // how to turn the bars, by car.Pair
	rest    *form.Prose
	changes *readout.Table
	launch  *readout.Table // what changes in the launch; hidden while that is not wanted
	use     *widget.Button
	keep    *widget.Button
	print   *widget.Button
	object  *fyne.Container // hidden while there are no combinations
	refused func([]car.Problem)
	say     func(string)
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
	changeAhead: "IC ahead", changeUp: "IC up", changeSquat: "Anti-squat", changePinion: "Pinion change", changePush: "Lower push", changeShare: "Share of limit",
}

// changeKeys are the columns of package holes that the rows show.
var changeKeys = [changeRows]string{
	changeAhead: "instant_center_x", changeUp: "instant_center_z", changeSquat: "anti_squat", changePinion: "pinion_change", changePush: "hit_lower_push", changeShare: "highest_share",
}

// launchNames and launchKeys are those of what changes in the launch.
var (
	launchNames = []string{"60 ft", "Share, launch", "Rear tires apart", "Front lift"}
	launchKeys  = []string{"sixty_ft", "envelope_share", "rear_apart", "front_lift"}
)

// newCard returns the card.
func newCard(host panel.Host) *card {
	s := host.Study
	c := &card{
		study:   s,
		title:   form.Heading(""),
		order:   form.Caption("", theme.ColorNamePlaceHolder),
		reason:  form.Words(theme.ColorNameForeground),
		rest:    form.Words(theme.ColorNameForeground),
		changes: readout.New([]string{"In use", "These", "Change"}, changeNames[:]),
		launch:  readout.New([]string{"In the launch", "", ""}, launchNames),
		refused: host.Refused,
		say:     host.Say,
	}
	c.changes.SetShares(changeNameShare, changeValueShare, changeValueShare, changeWordsShare)
	c.launch.SetShares(changeNameShare, changeValueShare, changeValueShare, changeWordsShare)
	c.use = widget.NewButton("Use these holes", func() { c.useHoles(c.index()) })
	c.use.Importance = widget.HighImportance
	c.keep = widget.NewButton("Keep as a setup", c.keepHoles)
	c.print = widget.NewButton("Card as PDF…", func() {
		if p := s.Place(c.index()); p != nil {
			host.PrintCard(p.Holes())
		}
	})
	turns := container.New(form.Stack{})
	for p := range c.pairs {
		c.pairs[p] = form.Words(theme.ColorNameForeground)
		turns.Add(c.pairs[p])
	}
	c.object = form.Group(c.title, container.NewHBox(c.use, c.keep, c.print), c.order, c.reason, turns, c.rest, c.changes, c.launch)
	return c
}

// Parts of the width of the changes.
const (
	changeNameShare  = 0.26
	changeWordsShare = 0.27
	changeValueShare = (1 - changeNameShare - changeWordsShare) / 2
)

// index returns the combination that the card is about.
func (c *card) index() int {
	if i := c.study.Picked(); i != study.None {
		return i
	}
	return c.study.Present()
}

// useHoles takes the holes of a combination.
func (c *card) useHoles(index int) {
	if p := c.study.Place(index); p != nil {
		c.tell(c.study.UseHoles(p.Holes()))
	}
}

// keepHoles makes a setup of the holes of the card, unless there is one.
func (c *card) keepHoles() {
	if p := c.study.Place(c.index()); p != nil {
		had, problems := c.study.KeepHoles(p.Holes())
		c.tell(problems)
		if doc := c.study.Document(); had {
			c.say(fmt.Sprintf("The setup %q has the holes %s and these turns already.", doc.Car().Setups[doc.Setup()].Name, p.Holes()))
		}
	}
}

// tell says why holes are not taken.
func (c *card) tell(problems []car.Problem) {
	if len(problems) > 0 {
		c.refused(problems)
	}
}

// refresh writes the card.
func (c *card) refresh() {
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
	c.order.Set(words.WhichHoles(p.Holes()))
	c.reason.Set(words.Sentence(words.Reason(p, u)))
	form.Enable(c.use, p.Combination().Usable() && !present)
	form.Enable(c.keep, p.Combination().Usable())
	form.Enable(c.print, p.Combination().Usable())
	c.writeTurns(p, u)
	c.writeChanges(p, u)
}

// writeTurns says how to get to the holes from the current setup.
func (c *card) writeTurns(p *holes.Place, u units.System) {
	doc := c.study.Document()
	plan, err := adjuster.Plan(doc.Car(), doc.Setup(), p.Holes(), doc.Car().Setups[doc.Setup()].Turns)
	if !p.Combination().Usable() || err != nil {
		for _, t := range c.pairs {
			t.Tell("")
		}
		c.rest.Tell("")
		return
	}
	lines := words.Plan(&plan, u)
	for i, t := range c.pairs {
		t.Tell(lines[i])
		t.SetColor(threadColor(&plan.Pairs[i]))
	}
	c.rest.Tell(strings.Join(lines[len(c.pairs):], "\n"))
}

// threadColor warns of a pair of which a bar has little thread engaged, and more
// so of one that needs a new tube.
func threadColor(p *adjuster.PairChange) fyne.ThemeColorName {
	switch {
	case p.Recut():
		return theme.ColorNameError
	case p.Left.After.Status == adjuster.Shallow || p.Right.After.Status == adjuster.Shallow:
		return theme.ColorNameWarning
	}
	return theme.ColorNameForeground
}

// writeChanges holds the combination against the holes in use.
func (c *card) writeChanges(p *holes.Place, u units.System) {
	for row, key := range changeKeys {
		c.writeChange(c.changes, row, key, p, u)
	}
	if c.launch.Hidden = !c.study.LaunchesHoles(); c.launch.Hidden {
		return
	}
	for row, key := range launchKeys {
		c.writeChange(c.launch, row, key, p, u)
	}
}

// writeChange writes a column's values in a row.
func (c *card) writeChange(t *readout.Table, row int, key string, p *holes.Place, u units.System) {
	present := c.study.Place(c.study.Present())
	k, _ := holes.ColumnOf(key)
	t.Set(row, 0, k.Text(present, u), "")
	t.Set(row, 1, k.Text(p, u), valueColor(k, p))
	text := "–"
	from, known := k.Value(present)
	if to, ok := k.Value(p); ok && known && p != present {
		text = changeText(key, u, k.Quantity, from, to)
	}
	t.Set(row, 2, text, "")
}

// changeText writes by how much a row's value changes.
func changeText(key string, u units.System, q units.Quantity, from, to float64) string {
	switch key {
	case changeKeys[changeAhead]:
		return words.Ahead(from, to, u)
	case changeKeys[changeUp]:
		return words.Up(from, to, u)
	}
	return words.Difference(u, q, from, to, "more", "less")
}
