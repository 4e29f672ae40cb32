package window

import (
	"fmt"

	"bowline/app/readout"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// checkPanel answers the builder: what each bar carries and how far that is
// from its limit.
type checkPanel struct {
	study     *study.Study
	verdict   *readout.Prose
	warnings  *readout.Prose
	numbers   *readout.Table
	strengths *readout.Table
	object    fyne.CanvasObject
}

// Rows of what is carried.
const (
	checkLength = iota
	checkHit
	checkHooked
	checkPush
	checkPushLimit
	checkPushMode
	checkPull
	checkPullLimit
	checkRows
)

var checkNames = [checkRows]string{
	checkLength: "Pin to pin", checkHit: "Hit, here", checkHooked: "Hooked, here",
	checkPush: "Worst push", checkPushLimit: "Push allowed", checkPushMode: "Governed by",
	checkPull: "Worst pull", checkPullLimit: "Pull allowed",
}

// Rows of where the strength comes from.
const (
	strengthJohnson = iota
	strengthYield
	strengthEuler
	strengthWall
	strengthSlender
	strengthRows
)

var strengthNames = [strengthRows]string{
	strengthJohnson: "Johnson–Euler", strengthYield: "First yield, bowed", strengthEuler: "Euler", strengthWall: "OD over wall", strengthSlender: "Slenderness",
}

// newCheckPanel returns the panel: words, loads, forces over travel, then
// where the strength comes from and the bow.
func newCheckPanel(s *study.Study, forces, bow fyne.CanvasObject) *checkPanel {
	p := &checkPanel{
		study:     s,
		verdict:   prose(theme.ColorNameForeground),
		warnings:  prose(theme.ColorNameWarning),
		numbers:   readout.New([]string{"Upper, each", "Lower, each"}, checkNames[:]),
		strengths: readout.New([]string{"Upper, failing", "Lower, failing"}, strengthNames[:]),
	}
	p.object = scrolled(p.verdict, p.warnings, p.numbers, forces, p.strengths, bow)
	p.refresh()
	return p
}

func (p *checkPanel) charts() []chart.Key { return []chart.Key{plotting.BarForceKey, plotting.BowKey} }

func (p *checkPanel) wants() study.Wants { return 0 }

// refresh writes verdict, warnings and numbers.
func (p *checkPanel) refresh() {
	r, u := p.study.Result(), p.study.Units()
	p.verdict.Set(words.LoadVerdict(r.LoadVerdict(), u))
	p.warnings.Set(words.List(words.Warnings(r.Warnings, u)))
	for _, pair := range car.Pairs {
		p.column(pair, r, u)
	}
}

// column writes one pair of bars.
func (p *checkPanel) column(pair car.Pair, r *analysis.Result, u units.System) {
	b := &r.Bars[pair]
	set := func(row int, text string) { p.numbers.Set(row, int(pair), text, "") }
	force := func(x float64) string { return u.Format(units.Force, x) }
	set(checkLength, u.Format(units.Length, b.Length))
	for row, c := range map[int]analysis.Case{checkHit: analysis.Hit, checkHooked: analysis.Hooked} {
		text, color := "no force", fyne.ThemeColorName("")
		if c.Of(&p.study.Station().Loads).Balanced {
			use, way := r.Use(pair, c, p.study.Station())
			text = fmt.Sprintf("%s %s", way, force(use.Force))
			if use.Share > 1 {
				color = theme.ColorNameError
			}
		}
		p.numbers.Set(row, int(pair), text, color)
	}
	for row, way := range map[int]column.Direction{checkPush: column.Push, checkPull: column.Pull} {
		text, color := "none", fyne.ThemeColorName("")
		if use := r.Worst[pair][way]; use.Force > 0 {
			text = force(use.Force) + ", " + units.Share(use.Share)
			color = theme.ColorNameSuccess
			if use.Share > 1 {
				color = theme.ColorNameError
			}
		}
		p.numbers.Set(row, int(pair), text, color)
	}
	set(checkPushLimit, force(b.Push.Allowable))
	set(checkPushMode, words.FailureCell(b.Push.Kind))
	set(checkPullLimit, force(b.Pull.Allowable))
	p.strength(pair, b, u)
}

// strength writes what one pair's tube can take before the factor.
func (p *checkPanel) strength(pair car.Pair, b *column.Result, u units.System) {
	for row, x := range map[int]float64{strengthJohnson: b.Johnson, strengthYield: b.FirstYield, strengthEuler: b.Euler} {
		p.strengths.Set(row, int(pair), u.Format(units.Force, x), "")
	}
	color := fyne.ThemeColorName("")
	if b.Wall.Slender() {
		color = theme.ColorNameError
	}
	p.strengths.Set(strengthWall, int(pair), fmt.Sprintf("%.1f, limit %.1f", b.Wall.Ratio, b.Wall.Limit), color)
	p.strengths.Set(strengthSlender, int(pair), fmt.Sprintf("%.1f", b.Slenderness), "")
}
