// Package travel is the panel that checks the bars over the travel: the load of
// each and its share of the limit.
package travel

import (
	"fmt"
	"slices"
	"strings"

	"bowline/app/form"
	"bowline/app/panel"
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
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Panel is the tab Check while the car stands at a travel.
type Panel struct {
	panel.Face
	study     *study.Study
	verdict   *form.Prose
	basis     *form.Prose
	warnings  *form.Prose
	numbers   *readout.Table
	pulls     *form.Prose
	strengths *readout.Table
}

// Rows of what is carried.
const (
	rowLength = iota
	rowHit
	rowHooked
	rowPush
	rowPushWhere
	rowPushLimit
	rowPushMode
	rowPull
	rowPullWhere
	rowPullLimit
	rowCount
)

var rowNames = [rowCount]string{
	rowLength: "Pin to pin", rowHit: "Hit, here", rowHooked: "Hooked, here",
	rowPush: "Worst push", rowPushWhere: "  where", rowPushLimit: "Push allowed", rowPushMode: "Governed by",
	rowPull: "Worst pull", rowPullWhere: "  where", rowPullLimit: "Pull allowed",
}

// Rows of where the strength comes from.
const (
	strengthJohnson = iota
	strengthYield
	strengthEuler
	strengthTube
	strengthWeld
	strengthWall
	strengthSlender
	strengthCount
)

var strengthNames = [strengthCount]string{
	strengthJohnson: "Johnson–Euler", strengthYield: "First yield, bowed", strengthEuler: "Euler",
	strengthTube: "Tension yield, tube", strengthWeld: "Tension yield, weld", strengthWall: "OD over wall", strengthSlender: "Slenderness",
}

// New returns the panel: words and loads over the forces, where the strength
// comes from and the bow.
func New(host panel.Host) panel.Panel {
	p := &Panel{
		study:     host.Study,
		verdict:   form.Words(theme.ColorNameForeground),
		basis:     form.Caption("", theme.ColorNamePlaceHolder),
		warnings:  form.Words(theme.ColorNameWarning),
		numbers:   readout.New([]string{"Upper, each", "Lower, each"}, rowNames[:]),
		pulls:     form.Words(theme.ColorNameForeground),
		strengths: readout.New([]string{"Upper, failing", "Lower, failing"}, strengthNames[:]),
	}
	p.Face = panel.Face{
		Name:     "Check",
		Said:     container.NewVBox(p.verdict, p.basis, p.warnings, p.numbers, p.pulls, p.strengths),
		Shown:    panel.Gallery(host.Charts(plotting.BarForceKey, plotting.BowKey)...),
		Drawn:    []chart.Key{plotting.BarForceKey, plotting.BowKey},
		Computed: study.WantsLaunch,
	}
	p.Refresh()
	return p
}

// Refresh writes verdict, warnings and numbers.
func (p *Panel) Refresh() {
	r, u := p.study.Result(), p.study.Units()
	v, e := p.study.LoadVerdict(), p.study.Envelope()
	p.verdict.Set(words.LoadVerdict(v, u))
	p.verdict.SetColor(panel.StandingColor(v.Standing))
	p.basis.Set(words.Basis(p.study.Basis()))
	warnings := slices.DeleteFunc(p.study.Warnings(), func(w analysis.Warning) bool { return w.Demand == v.Demand && v.Demand.Force > 0 })
	p.warnings.Set(words.List(words.Warnings(warnings, u))) // but for what the headline says
	p.pulls.Set(strings.Join(words.PullLimits(r, u), " "))
	for _, pair := range car.Pairs {
		p.column(pair, r, u)
		p.worst(pair, &e, u)
	}
}

// column writes one pair of bars.
func (p *Panel) column(pair car.Pair, r *analysis.Result, u units.System) {
	b := &r.Bars[pair]
	set := func(row int, text string) { p.numbers.Set(row, int(pair), text, "") }
	force := func(x float64) string { return u.Format(units.Force, x) }
	set(rowLength, u.Format(units.Length, b.Length))
	for row, c := range map[int]analysis.Case{rowHit: analysis.Hit, rowHooked: analysis.Hooked} {
		text, color := "no force", fyne.ThemeColorName("")
		if c.Of(&p.study.Station().Loads).Balanced {
			use, way := r.Use(pair, c, p.study.Station())
			text, color = words.Load(way, use, u), panel.LoadColor(way, use.Share)
		}
		p.numbers.Set(row, int(pair), text, color)
	}
	set(rowPushLimit, force(b.Push.Allowable))
	set(rowPushMode, words.FailureCell(b.Push.Kind))
	pull := force(b.Pull.Allowable)
	if b.Pull.Kind == column.WeldYield {
		pull += ", at weld"
	}
	set(rowPullLimit, pull)
	p.strength(pair, b, u)
}

// worst writes the most that side view and launch ask of one pair, and where.
func (p *Panel) worst(pair car.Pair, e *analysis.Envelope, u units.System) {
	for row, way := range map[int]column.Direction{rowPush: column.Push, rowPull: column.Pull} {
		d := e.OfPair(pair, way)
		p.numbers.Set(row, int(pair), words.Demand(d, u), panel.LoadColor(way, d.Share))
		p.numbers.Set(row+1, int(pair), words.Where(d, u), "")
	}
}

// strength writes what one pair's tube can take before the factor.
func (p *Panel) strength(pair car.Pair, b *column.Result, u units.System) {
	for row, x := range map[int]float64{strengthJohnson: b.Johnson, strengthYield: b.FirstYield, strengthEuler: b.Euler} {
		p.strengths.Set(row, int(pair), u.Format(units.Force, x), "")
	}
	p.strengths.Set(strengthTube, int(pair), u.Format(units.Force, b.Squash), "")
	weld := "as the tube"
	if b.Welded > 0 {
		weld = u.Format(units.Force, b.Welded)
	}
	p.strengths.Set(strengthWeld, int(pair), weld, "")
	color := fyne.ThemeColorName("")
	if b.Wall.Slender() {
		color = theme.ColorNameError
	}
	p.strengths.Set(strengthWall, int(pair), fmt.Sprintf("%.1f, limit %.1f", b.Wall.Ratio, b.Wall.Limit), color)
	p.strengths.Set(strengthSlender, int(pair), fmt.Sprintf("%.1f", b.Slenderness), "")
}
