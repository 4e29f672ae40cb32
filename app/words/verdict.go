package words

import (
	"fmt"
	"strings"

	"bowline/model/analysis"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
)

// Verdicts says how a setup stands, the loads first, those of a launch included
// unless that is nil, then the instant center.
func Verdicts(r *analysis.Result, l *launch.Result, s units.System) []string {
	return []string{LoadVerdict(r.LoadVerdict(l), s), CenterVerdict(r.CenterVerdict(), s)}
}

// LoadVerdict says how near the bars come to what they may carry and what stands
// in the way, in one or two sentences.
func LoadVerdict(v analysis.LoadVerdict, s units.System) string {
	if v.Standing == analysis.Unloaded {
		return "No bar is loaded: nothing drives the axle."
	}
	d := v.Demand
	text := fmt.Sprintf("%s reach %s of what they may carry, in %s at %s in the %s case. ", Capital(d.Bar.Pair().Bars()), units.Share(d.Share), d.Way, s.Travel(d.Travel), d.Source)
	if d.Source == analysis.FromLaunch {
		preload := ""
		if v.Preload {
			preload = ", with the preload of this setup"
		}
		text = fmt.Sprintf("The %s reaches %s of what it may carry, in %s at %s of the launch%s. ", d.Bar, units.Share(d.Share), d.Way, s.Format(units.Time, d.Time), preload)
	}
	switch v.Standing {
	case analysis.FactorShort:
		return text + fmt.Sprintf("The tube would still hold: %s comes at %.1f times this load, less than the factor of %.4g asked for.", v.Governs, v.Margin, v.Factor)
	case analysis.Failing:
		return text + fmt.Sprintf("The tube fails: %s comes at %s of this load.", v.Governs, units.WholePercent(v.Margin))
	}
	return text + fmt.Sprintf("It would fail first by %s, at %.1f times this load.", v.Governs, v.Margin)
}

// Basis says what a verdict on the loads rests on, in a line.
func Basis(b analysis.Basis) string {
	return [...]string{
		analysis.OnSideView:     "Of the side view alone: the launch is being computed.",
		analysis.OnLaunch:       "Of side view and launch, the car as it is.",
		analysis.OnLaunchBefore: "Of the side view as it is, and the launch of the car before the edit.",
		analysis.OnLaunchBehind: "Of side view and launch; the launch follows while you drag.",
		analysis.OnNoLaunch:     "Of the side view alone: this car cannot be launched.",
	}[b]
}

// CenterVerdict says where the instant center is at ride height, what anti-squat
// that makes against the target, and whether the rear rises.
func CenterVerdict(v analysis.CenterVerdict, s units.System) string {
	if !v.HasAntiSquat {
		return "The line of action stands upright over the rear contact: anti-squat has no value here."
	}
	where := "The bars are parallel"
	if v.HasInstantCenter {
		where = "Instant center " + Center(v.InstantCenter, s)
	}
	is := map[analysis.Against]string{analysis.Below: "below", analysis.Inside: "inside", analysis.Above: "above"}[v.Against]
	text := fmt.Sprintf("%s: anti-squat %s, %s the target of %s to %s.", where, units.WholePercent(v.AntiSquat), is, units.Decimal(100*v.Target[0], 0), units.WholePercent(v.Target[1]))
	switch v.Rear {
	case analysis.RearRises:
		return text + " Hooked, the rear rises off its springs."
	case analysis.RearSquats:
		return text + " Hooked, the rear squats on its springs."
	case analysis.RearSteady:
		return text + " Hooked, the rear neither rises nor squats."
	}
	return text
}

// FailureCell names a way to fail in the width of a cell of a table.
func FailureCell(k column.Kind) string {
	switch k {
	case column.BowYield:
		return "first yield, bowed"
	case column.LocalBuckling:
		return "local buckling"
	case column.TubeYield:
		return "tension yield, tube"
	case column.WeldYield:
		return "tension yield, weld"
	}
	return strings.TrimPrefix(k.String(), "column ")
}
