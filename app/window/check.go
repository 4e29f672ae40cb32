package window

import (
	"fmt"
	"strings"

	"bowline/app/readout"
	"bowline/app/study"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// checkPanel answers the builder: what each bar carries and how far that is
// from its limit.
type checkPanel struct {
	study    *study.Study
	verdict  *widget.Label
	warnings *widget.Label
	numbers  *readout.Table
	object   fyne.CanvasObject
}

// Rows of the numbers.
const (
	checkLength = iota
	checkHit
	checkHooked
	checkPush
	checkPushLimit
	checkPushMode
	checkPull
	checkPullLimit
	checkJohnson
	checkYield
	checkEuler
	checkWall
	checkSlender
	checkRows
)

var checkNames = [checkRows]string{
	checkLength: "Pin to pin", checkHit: "Hit, here", checkHooked: "Hooked, here",
	checkPush: "Worst push", checkPushLimit: "Push allowed", checkPushMode: "Governed by",
	checkPull: "Worst pull", checkPullLimit: "Pull allowed",
	checkJohnson: "Johnson–Euler", checkYield: "First yield, bowed", checkEuler: "Euler", checkWall: "OD over wall", checkSlender: "Slenderness",
}

// newCheckPanel returns the panel with its charts below the numbers.
func newCheckPanel(s *study.Study, charts ...fyne.CanvasObject) *checkPanel {
	p := &checkPanel{
		study:    s,
		verdict:  words(),
		warnings: words(),
		numbers:  readout.New([]string{"Upper, each", "Lower, each"}, checkNames[:]),
	}
	p.warnings.Importance = widget.WarningImportance
	p.object = scrolled(append([]fyne.CanvasObject{p.verdict, p.warnings, p.numbers}, charts...)...)
	s.Listen(func(study.Change) { p.refresh() })
	p.refresh()
	return p
}

// refresh writes verdict, warnings and numbers.
func (p *checkPanel) refresh() {
	r, u := p.study.Result(), p.study.Units()
	setWords(p.verdict, r.LoadVerdict(u))
	lines := make([]string, len(r.Warnings))
	for i, w := range r.Warnings {
		lines[i] = "▲ " + w.Text(u)
	}
	setWords(p.warnings, strings.Join(lines, "\n"))
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
			text = fmt.Sprintf("%s, %.0f %%", force(use.Force), 100*use.Share)
			color = theme.ColorNameSuccess
			if use.Share > 1 {
				color = theme.ColorNameError
			}
		}
		p.numbers.Set(row, int(pair), text, color)
	}
	set(checkPushLimit, force(b.Push.Allowable))
	set(checkPushMode, b.Push.Kind.String())
	set(checkPullLimit, force(b.Pull.Allowable))
	set(checkJohnson, force(b.Johnson))
	set(checkYield, force(b.FirstYield))
	set(checkEuler, force(b.Euler))
	wall, color := fmt.Sprintf("%.1f of %.1f", b.Wall.Ratio, b.Wall.Limit), fyne.ThemeColorName("")
	if b.Wall.Slender() {
		color = theme.ColorNameError
	}
	p.numbers.Set(checkWall, int(pair), wall, color)
	set(checkSlender, fmt.Sprintf("%.1f", b.Slenderness))
}
