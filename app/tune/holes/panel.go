// Package holes is the panel of all combinations of holes, ranked by the target.
package holes

import (
	"fmt"

	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Panel is the page Holes of the tab Tune.
type Panel struct {
	panel.Face
	study    *study.Study
	page     *form.Page
	verdict  *form.Prose
	progress *form.Prose
	button   *widget.Button // stops the search or starts it again
	status   *fyne.Container
	launches *launches
	target   *target
	filter   *filter
	list     *list
	chosen   *card
	worth    *worth
	folds    struct{ target, filter, worth *form.Fold }
}

// New returns the panel: verdict, target and filter and the combination picked in words,
// the list of all combinations as evidence.
func New(host panel.Host) panel.Panel {
	s := host.Study
	p := &Panel{study: s, page: host.Page, verdict: form.Words(theme.ColorNameForeground), progress: form.Words(theme.ColorNamePlaceHolder)}
	p.verdict.KeepRows(verdictRows)
	p.button = widget.NewButton("Stop", p.press)
	p.status = container.NewBorder(nil, nil, nil, p.button, p.progress)
	p.status.Hide()
	p.launches = newLaunches(s)

	on := p.page.Host()
	on.Help = host.Say
	p.target, p.filter = newTarget(host, on), newFilter(host, on)
	p.folds.target = form.NewFold("Target and wishes", p.target.object, p.page.Settle)
	p.folds.filter = form.NewFold("Filter", p.filter.object, p.page.Settle)
	p.chosen = newCard(host)
	p.list = newList(s, host.Say, p.chosen.useHoles)
	p.worth = newWorth(s)
	p.folds.worth = form.NewFold("What each hole in use is worth", p.worth.object, p.Refresh)
	p.Face = panel.Face{
		Name: "Holes",
		Said: form.Stacked(p.verdict, p.status, p.launches.object,
			p.folds.target.Object, p.folds.filter.Object, p.chosen.object, p.folds.worth.Object),
		Shown:    panel.Gallery(panel.Exhibit{Name: "Combinations", Object: p.list.object, Tools: p.list.every}),
		Computed: study.WantsSearch,
	}
	p.Refresh()
	return p
}

// verdictRows are the lines of most verdicts in a panel as wide as it is at first.
const verdictRows = 3

// CommitPending implements panel.Typing.
func (p *Panel) CommitPending() bool { return p.target.inputs.CommitPending() }

// RestorePending implements panel.Typing.
func (p *Panel) RestorePending() { p.target.inputs.RestorePending() }

// press does what the button beside the progress says.
func (p *Panel) press() {
	if p.study.SearchProgress().Phase == study.SearchStopped {
		p.study.ResumeSearch()
	} else {
		p.study.StopSearch()
	}
}

// Refresh writes words, list and card.
func (p *Panel) Refresh() {
	p.launches.refresh()
	p.target.refresh()
	p.filter.refresh()
	p.list.refresh()
	p.chosen.refresh()
	if p.folds.worth.IsOpen() {
		p.worth.refresh()
	}
	p.verdict.Set(p.verdictWords())
	text, button := p.progressWords()
	p.progress.Set(text)
	p.status.Hidden = text == ""
	p.button.Hidden = button == ""
	if button != "" && p.button.Text != button {
		p.button.SetText(button)
	}
	p.folds.target.Retitle(p.target.title())
	p.folds.filter.Retitle(p.listed())
	p.list.table.SetPlaceholder(p.empty())
	p.page.Settle()
}

// progressWords say how the search stands, and what the button beside them
// would do; both are empty while there is nothing to tell.
func (p *Panel) progressWords() (text, button string) {
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
func (p *Panel) listed() string {
	all := len(p.study.Ranking())
	if p.filter.active() == 0 || all == 0 {
		return "Filter"
	}
	return fmt.Sprintf("Filter: %s of %s listed", units.Count(len(p.study.Listed())), units.Count(all))
}

// empty says why the list is.
func (p *Panel) empty() string {
	if p.study.Table() == nil {
		return "The combinations are listed here as soon as they are found."
	}
	return "No combination meets all conditions of the filter."
}

// verdictWords are the verdict: how many combinations meet the target, what the best
// one needs, and where the holes in use stand.
func (p *Panel) verdictWords() string {
	places := p.study.Ranking()
	if len(places) == 0 {
		return "Every combination of holes is searched for the one nearest to the target."
	}
	return words.Ranking(places, p.study.Place(p.study.Present()), wishes(p.study).Any())
}
