package plotting

import (
	"fmt"
	"math"

	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/plot/plotter"
)

const (
	// leastRuns is the least number of runs that have a trend.
	leastRuns = 3
	// fewRuns is the number of runs below which a trend says that there are few.
	fewRuns = 10
	// significant is the least slope over its standard error that is not put down
	// to chance, with a confidence of about 95 %.
	significant = 2
	// squatsApart is the difference from which on two anti-squats are two [1]:
	// that shown on screen.
	squatsApart = 0.001
	// perSquat is the change of anti-squat for which the slope is written [1].
	perSquat = 0.1
)

// trend is a straight line through runs, their 60-ft time over anti-squat.
type trend struct {
	runs             int
	intercept, slope float64 // [s], [s over 1]
	// residual is the residual standard deviation of the times,
	// s = √(Σ(y − ŷ)²/(n − 2)) [s], and slopeError the standard error of the
	// slope, s/√(Σ(x − x̄)²) [s over 1]: Draper & Smith, Applied Regression
	// Analysis, ch. 1 (from memory).
	residual, slopeError float64
}

// fit finds the line of least squares through points, time over anti-squat. It
// returns false for fewer than three points and for points at one anti-squat.
func fit(points plotter.XYs) (trend, bool) {
	if len(points) < leastRuns {
		return trend{}, false
	}
	across := chart.Nowhere()
	x, y := make([]float64, len(points)), make([]float64, len(points))
	for i, at := range points {
		x[i], y[i] = at.X, at.Y
		across = across.With(at.X)
	}
	if across.Length() < squatsApart {
		return trend{}, false
	}
	t := trend{runs: len(points)}
	t.intercept, t.slope = stat.LinearRegression(x, y, nil, false)
	var off, apart float64
	center := stat.Mean(x, nil)
	for i := range x {
		off += math.Pow(y[i]-t.at(x[i]).Y, 2)
		apart += math.Pow(x[i]-center, 2)
	}
	t.residual = math.Sqrt(off / float64(len(x)-2))
	t.slopeError = t.residual / math.Sqrt(apart)
	return t, true
}

// at returns the point of the line at an anti-squat.
func (t trend) at(squat float64) plotter.XY {
	return plotter.XY{X: squat, Y: t.intercept + t.slope*squat}
}

// words write the slope: "0.006 s quicker per 10 points more anti-squat over 9 runs".
func (t trend) words(s units.System) string {
	change := s.Format(units.Time, math.Abs(t.slope*perSquat))
	switch {
	case change == s.Format(units.Time, 0):
		change = "No change to speak of"
	case t.slope < 0:
		change += " quicker"
	default:
		change += " slower"
	}
	return change + fmt.Sprintf(" per %.0f points more anti-squat over ", 100*perSquat) + counted(t.runs, "run")
}

// caution says what the trend is not.
func (t trend) caution() string {
	switch {
	case t.runs < fewRuns:
		return "; few runs, so take it as a hint"
	case math.Abs(t.slope) < significant*t.slopeError:
		return "; the times scatter too much to be sure, so take it as a hint"
	}
	return "; track and weather count as well, so take it as a hint"
}
