// Package preload is the panel of the preload: how uneven left and right rear tire are
// through the launch, and the turns of the four bars that make them most even, searched
// when somebody asks for them.
package preload

import (
	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/readout"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/adjuster"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/preload"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Panel is the page Preload of the tab Tune.
type Panel struct {
	panel.Face
	study   *study.Study
	refused func([]car.Problem)
	page    *form.Page

	apart    *form.Prose
	search   *widget.Button
	stop     *widget.Button
	progress *form.Prose
	verdict  *form.Prose
	notice   *form.Prose // what the verdict is of, where that is not the car as it is
	choice   *form.Select
	choices  *fyne.Container
	bars     *readout.Table
	car      *readout.Table
	then     *form.Prose
	take     *widget.Button

	of  *preload.Result // what the way shown is one of
	way int
}

// Words of the buttons.
const (
	searchText = "Find the turns that even the rear tires"
	stopText   = "Stop"
	takeText   = "Take these turns"
)

// columns are the parts of the width that the names of the bars and their values take.
var columns = [...]float32{0.2, 0.36, 0.12, 0.12, 0.2}

// New returns the panel: how uneven the rear tires are and the button that searches,
// and below them what has been found.
func New(host panel.Host) panel.Panel {
	s := host.Study
	p := &Panel{
		study: s, refused: host.Refused, page: host.Page,
		apart:    form.Words(theme.ColorNameForeground),
		progress: form.Words(theme.ColorNamePlaceHolder),
		verdict:  form.Words(theme.ColorNameForeground),
		notice:   form.Words(theme.ColorNameWarning),
		bars:     readout.New([]string{"Turn", "Before", "After", "Thread left"}, words.BarNames()),
		car:      readout.New([]string{"Before", "After"}, words.EvenCarNames),
		then:     form.Caption("", theme.ColorNamePlaceHolder),
	}
	p.search = widget.NewButton(searchText, s.SearchTurns)
	p.stop = widget.NewButton(stopText, s.StopTurns)
	p.take = widget.NewButton(takeText, p.takeTurns)
	p.take.Importance = widget.HighImportance
	p.bars.SetShares(columns[0], columns[1:]...)
	p.choice = form.NewSelect(p.options, func() string { return p.option(p.way) }, form.Always(p.choose))
	p.choices = container.NewBorder(nil, nil, container.New(form.FixedWidth(100), widget.NewLabel("Turning")), nil, p.choice)
	p.Face = panel.Face{
		Name: "Preload",
		Said: form.Stacked(p.apart,
			container.NewBorder(nil, nil, nil, p.stop, p.search), p.progress,
			p.verdict, p.notice, p.choices,
			form.Heading("What to turn, and what each bar reaches of its limit"), p.bars,
			p.then, container.NewHBox(p.take)),
		Shown:    panel.Gallery(panel.Exhibit{Name: "What the car does", Object: container.NewScroll(p.car)}),
		Computed: study.WantsLaunch,
	}
	p.Refresh()
	return p
}

// choose shows another way.
func (p *Panel) choose(way int) {
	p.way = way
	p.Refresh()
}

// takeTurns gives the setup the turns of the way shown.
func (p *Panel) takeTurns() {
	if problems := p.study.TakeTurns(p.way); len(problems) > 0 {
		p.refused(problems)
	}
}

// options names the ways found.
func (p *Panel) options() (list []string) {
	if p.of != nil {
		for i := range p.of.Ways {
			list = append(list, p.option(i))
		}
	}
	return list
}

// option names one of them.
func (p *Panel) option(way int) string {
	if p.of == nil || len(p.of.Ways) == 0 {
		return ""
	}
	return words.TurnsWay(p.of, &p.of.Ways[way])
}

// Refresh shows what is known of the preload.
func (p *Panel) Refresh() {
	if r, _ := p.study.FoundTurns(); r != p.of {
		p.of, p.way = r, 0
		if r != nil {
			p.way = max(0, r.Best)
		}
	}
	p.apart.Set(p.apartWords())
	now := p.study.TurnsProgress()
	form.Enable(p.search, !now.Runs)
	form.Enable(p.stop, now.Runs)
	p.progress.Set(words.TurnsProgress(now.Runs, now.Launches, now.Edited, now.Err))
	p.writeFound()
	p.page.Settle()
}

// apartWords say how uneven the rear tires are as the setup stands.
func (p *Panel) apartWords() string {
	if l, current := p.launch(); current {
		return words.RearApart(l, p.study.Units())
	}
	return "The launch is being computed."
}

// launch returns the launch of the setup and whether it is that of the car as it is.
func (p *Panel) launch() (*launch.Result, bool) {
	return p.study.LaunchOf(p.study.Document().Setup())
}

// writeFound writes what the last search has found.
func (p *Panel) writeFound() {
	r, of := p.study.FoundTurns()
	var way *preload.Way
	verdict, then := "", ""
	if r != nil {
		verdict = words.NoTurns(r)
		if len(r.Ways) > 0 {
			way = &r.Ways[p.way]
			verdict, then = words.EvenTurns(r, way), words.TurnsThen(r, way)
		}
	}
	p.verdict.Set(verdict)
	p.notice.Set(map[study.Turns]string{study.TurnsTaken: words.TurnsTaken, study.TurnsOutdated: words.TurnsOutdated}[of])
	p.notice.SetColor(map[bool]fyne.ThemeColorName{true: theme.ColorNameSuccess, false: theme.ColorNameWarning}[of == study.TurnsTaken])
	p.choices.Hidden = r == nil || len(r.Ways) < 2
	p.choice.Update()
	p.then.Set(then)
	form.Enable(p.take, way != nil && of == study.TurnsFound)
	p.writeBefore(r)
	p.writeWay(r, way)
}

// writeBefore writes what bars and car do before they are turned: in the search, or as
// they are.
func (p *Panel) writeBefore(r *preload.Result) {
	var before *preload.State
	if l, current := p.launch(); r != nil {
		before = &r.Before
	} else if current {
		before = &preload.State{Unevenness: l.Unevenness(), Launch: l, Envelope: p.study.Result().Envelope(l)}
	}
	p.writeState(0, before, nil)
	for _, bar := range launch.Bars {
		p.writeShare(bar, 1, before)
	}
}

// writeWay writes what a way does; nil for none.
func (p *Panel) writeWay(r *preload.Result, w *preload.Way) {
	if w == nil {
		p.writeState(1, nil, nil)
		for _, bar := range launch.Bars {
			p.bars.Set(int(bar), 0, none, "")
			p.writeShare(bar, 2, nil)
			p.bars.Set(int(bar), 3, none, "")
		}
		return
	}
	p.writeState(1, &w.State, &w.Effect)
	for _, bar := range launch.Bars {
		p.bars.Set(int(bar), 0, words.TurnOf(r, w, bar), "")
		p.writeShare(bar, 2, &w.State)
		p.bars.Set(int(bar), 3, words.ThreadLeft(r, w, bar), "")
	}
}

// none stands where there is nothing to show.
const none = "—"

// writeShare writes what a bar reaches of its limit.
func (p *Panel) writeShare(bar launch.RodID, column int, s *preload.State) {
	if s == nil {
		p.bars.Set(int(bar), column, none, "")
		return
	}
	share := s.Envelope.Of(bar).Share
	p.bars.Set(int(bar), column, units.Share(share), panel.ShareColor(share))
}

// writeState writes what the car does.
func (p *Panel) writeState(column int, s *preload.State, effect *adjuster.Effect) {
	list := make([]string, len(words.EvenCarNames))
	for row := range list {
		list[row] = none
	}
	if s != nil && len(s.Launch.Time) > 0 {
		list = words.EvenCar(s, effect, p.study.Units())
	}
	for row, text := range list {
		p.car.Set(row, column, text, "")
	}
}
