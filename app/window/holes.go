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
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// holesPanel answers the racer which holes to use: every combination, ranked by
// the target.
type holesPanel struct {
	study    *study.Study
	verdict  *readout.Prose
	progress *readout.Prose
	button   *widget.Button // stops the search or starts it again
	status   *fyne.Container
	target   *holesTarget
	filter   *holesFilter
	list     *holesList
	chosen   *chosenHoles
	worth    *holesWorth
	folds    struct{ target, filter, worth *fold }
	tools    *container.Scroll
	page     *fyne.Container
	object   fyne.CanvasObject
	heights  heights // that the page was laid out for last
}

// heights are what the parts of the page over the list ask for.
type heights struct{ verdict, progress, tools float32 }

// newHolesPanel returns the page: words, target and filter, and below them the
// list over what is to be known of the combination picked.
func newHolesPanel(w *Window) *holesPanel {
	p := &holesPanel{study: w.study, verdict: prose(theme.ColorNameForeground), progress: prose(theme.ColorNamePlaceHolder)}
	p.verdict.KeepRows(verdictRows)
	p.button = widget.NewButton("Stop", p.press)
	p.status = container.NewBorder(nil, nil, nil, p.button, p.progress)
	p.status.Hide()

	shelf := container.NewVBox()
	p.tools = container.NewVScroll(shelf)
	p.target = newHolesTarget(w.study, w.study.Library(), p.tools, p.relayout, w.say)
	p.filter = newHolesFilter(w.study, p.tools, p.relayout, w.say)
	p.folds.target = newFold("Target and wishes", p.target.object, func() { p.turned(p.folds.target) })
	p.folds.filter = newFold("Filter", p.filter.object, func() { p.turned(p.folds.filter) })
	shelf.Add(p.folds.target.object)
	shelf.Add(p.folds.filter.object)

	p.chosen = newChosenHoles(w.study, w.refused, w.say, w.printCard)
	p.list = newHolesList(w.study, w.say, p.chosen.useHoles)
	p.worth = newHolesWorth(w.study)
	p.folds.worth = newFold("What each hole in use is worth", p.worth.object, func() { p.refresh(); p.relayout() })
	split := container.NewVSplit(p.list.table, scrolled(p.chosen.object, p.folds.worth.object))
	split.SetOffset(listShare)
	p.page = container.New(&holesLayout{panel: p, split: split}, p.verdict, p.status, p.tools, split)
	p.object = container.NewVScroll(p.page)
	return p
}

// verdictRows are the lines of most verdicts in a panel as wide as it is at first.
const verdictRows = 3

func (p *holesPanel) charts() []chart.Key { return nil }

func (p *holesPanel) wants() study.Wants { return study.WantsSearch }

// press does what the button beside the progress says.
func (p *holesPanel) press() {
	if p.study.SearchProgress().Phase == study.SearchStopped {
		p.study.ResumeSearch()
	} else {
		p.study.StopSearch()
	}
}

// toolOpen tells whether the list has to share its room with an open tool. The
// fold below the card needs the card's own room, and goes before.
func (p *holesPanel) toolOpen() bool {
	return (p.folds.target.isOpen() || p.folds.filter.isOpen()) && !p.folds.worth.isOpen()
}

// relayout makes room for what has changed its height.
func (p *holesPanel) relayout() {
	if p.page != nil {
		p.page.Refresh()
	}
}

// turned makes room for a fold of the tools and brings it into sight.
func (p *holesPanel) turned(f *fold) {
	p.relayout()
	if f.isOpen() {
		p.tools.ScrollToOffset(f.object.Position())
	}
}

// refresh writes words, list and card.
func (p *holesPanel) refresh() {
	p.target.refresh()
	p.filter.refresh()
	p.list.refresh()
	p.chosen.refresh()
	if p.folds.worth.isOpen() {
		p.worth.refresh()
	}
	p.verdict.Set(p.words())
	text, button := p.progressWords()
	p.progress.Set(text)
	p.status.Hidden = text == ""
	p.button.Hidden = button == ""
	if button != "" && p.button.Text != button {
		p.button.SetText(button)
	}
	p.folds.target.retitle(p.target.title())
	p.folds.filter.retitle(p.listed())
	p.list.table.SetPlaceholder(p.empty())
	now := heights{p.verdict.MinSize().Height, p.progress.MinSize().Height, p.tools.Content.MinSize().Height}
	if now != p.heights {
		p.heights = now
		p.relayout()
	}
}

// progressWords say how the search stands, and what the button beside them
// would do; both are empty while there is nothing to tell.
func (p *holesPanel) progressWords() (text, button string) {
	switch now := p.study.SearchProgress(); now.Phase {
	case study.SearchFailed:
		return "Not searched: " + now.Err.Error() + ".", ""
	case study.SearchStopped:
		if p.study.Table() == nil {
			return "The search was stopped.", "Search"
		}
		return "The search was stopped; the list is of the car as it was before.", "Search"
	case study.SearchRuns:
		return fmt.Sprintf("%s of %s combinations searched", units.Count(now.Done), units.Count(now.Total)), "Stop"
	}
	return "", ""
}

// listed says how many combinations the filter lets through.
func (p *holesPanel) listed() string {
	all := len(p.study.Ranking())
	if p.filter.active() == 0 || all == 0 {
		return "Filter"
	}
	return fmt.Sprintf("Filter: %s of %s listed", units.Count(len(p.study.Listed())), units.Count(all))
}

// empty says why the list is.
func (p *holesPanel) empty() string {
	if p.study.Table() == nil {
		return "The combinations are listed here as soon as they are found."
	}
	return "No combination meets all conditions of the filter."
}

// words are the verdict: how many combinations meet the target, what the best
// one needs, and where the holes in use stand.
func (p *holesPanel) words() string {
	places := p.study.Ranking()
	if len(places) == 0 {
		return "Every combination of holes is searched for the one nearest to the target."
	}
	inside, wished, refused := 0, 0, 0
	for i := range places {
		switch o := &places[i]; {
		case !o.Combination().Usable():
			refused++
		case o.Unmet == 0:
			wished++
			fallthrough
		default:
			if o.Inside {
				inside++
			}
		}
	}
	all := units.Count(len(places))
	said := []string{fmt.Sprintf("%s of %s combinations meet the target", units.Count(inside), all)}
	switch inside {
	case 0:
		said[0] = fmt.Sprintf("None of %s combinations meets the target", all)
	case 1:
		said[0] = fmt.Sprintf("1 of %s combinations meets the target", all)
	}
	if asked := wishes(p.study); asked != (holes.Wishes{Order: asked.Order}) {
		said = append(said, fulfilled(wished))
	}
	text := strings.Join(append(said, best(&places[0])), "; ") + "."
	if o := p.study.Place(p.study.Present()); o != nil {
		text += fmt.Sprintf(" Holes in use: %s, rank %s.", o.Holes(), units.Count(o.Rank))
	}
	switch refused {
	case 0:
	case 1:
		text += " 1 cannot be used."
	default:
		text += fmt.Sprintf(" %s cannot be used.", units.Count(refused))
	}
	return text
}

// fulfilled says how many combinations fulfil all wishes.
func fulfilled(n int) string {
	switch n {
	case 0:
		return "none fulfils all wishes"
	case 1:
		return "1 fulfils all wishes"
	}
	return units.Count(n) + " fulfil all wishes"
}

// best says what the best combination needs.
func best(p *holes.Place) string {
	name := "the best, " + p.Holes().String() + ","
	switch {
	case !p.Combination().Usable():
		return "no combination can be used"
	case p.Present:
		return "the holes in use are the best"
	case !p.HasTurns:
		return name + " is ahead of the holes in use"
	}
	return name + " needs " + needs(p)
}

// needs says how bars are to be turned, or made anew.
func needs(p *holes.Place) string {
	var said []string
	and := " and "
	for _, pair := range car.Pairs {
		bars := pair.Bars()
		turn := adjuster.InFlats(p.Turns[pair])
		switch {
		case p.Recut(pair):
			said = append(said, "new tubes for the "+bars)
			and = ", and "
		case !turn.None():
			said = append(said, "the "+bars+" "+turn.String())
		}
	}
	if len(said) == 0 {
		return "no bar turned"
	}
	return strings.Join(said, and)
}
