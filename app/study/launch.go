package study

import (
	"slices"

	"bowline/model/analysis"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r2"
)

// playback is the launch that is looked at.
type playback struct {
	on     bool
	result *launch.Result // nil before the first is done
	time   float64        // [s]
	path   [][]r2.Vec     // of the instant center, broken where there is none [m]
}

// Launching reports whether the launch is looked at rather than a travel.
func (s *Study) Launching() bool { return s.playback.on }

// SetLaunching switches between launch and travel. While the launch is looked
// at it is wanted, and so are those of the setups compared.
func (s *Study) SetLaunching(on bool) {
	s.change(func() Change { return set(&s.playback.on, on, Choice|Position) })
}

// Launch returns the launch of the current setup, or nil before the first. While a new
// one is computed it is that of the car or the setup before.
func (s *Study) Launch() *launch.Result { return s.playback.result }

// LaunchOutdated reports whether the launch is missing or does not belong to
// the current car, or one of a setup compared is or does not.
func (s *Study) LaunchOutdated() bool {
	return s.launchMissing(s.doc.Setup()) || slices.ContainsFunc(s.compared.others, func(o *Comparison) bool { return o.Outdated })
}

// LaunchOf returns the newest launch of a setup of the current car, or nil, and
// whether it is that of the car as it is.
func (s *Study) LaunchOf(setup int) (l *launch.Result, current bool) {
	l = s.launches[s.doc.Car().Setups[setup].Name]
	return l, s.isCurrent(l, setup)
}

// isCurrent reports whether a launch is that of a setup of the car as it is.
func (s *Study) isCurrent(l *launch.Result, setup int) bool {
	return l != nil && l.Car == s.doc.Car() && l.Setup == setup
}

// play looks at a launch of the current setup.
func (s *Study) play(l *launch.Result) {
	p := &s.playback
	p.result, p.path = l, centerPath(l)
	p.time = within(p.time, 0, s.LaunchEnd())
}

// LaunchEnd returns when the launch ends [s]; 0 without one.
func (s *Study) LaunchEnd() float64 {
	r := s.playback.result
	if r == nil || len(r.Time) == 0 {
		return 0
	}
	return r.Time[len(r.Time)-1]
}

// CenterPath returns where the instant center goes over the launch, ahead of
// the point below the rear axle and above the ground, in pieces that are broken
// where there is none or it is far off [m].
func (s *Study) CenterPath() [][]r2.Vec { return s.playback.path }

const (
	// pathStep is the time between two points of the instant center's path [s].
	pathStep = 0.01
	// pathReach is how far off an instant center counts as none [m].
	pathReach = 5
)

// centerPath follows the instant center over a launch.
func centerPath(r *launch.Result) [][]r2.Vec {
	var path [][]r2.Vec
	var piece []r2.Vec
	every := max(1, int(pathStep/r.Options.Output+0.5))
	for i := 0; i < len(r.Frames); i += every {
		v := r.SideView(i)
		if !v.HasInstantCenter || r2.Norm(v.InstantCenter) > pathReach {
			path, piece = appendPiece(path, piece), nil
			continue
		}
		piece = append(piece, v.InstantCenter)
	}
	return appendPiece(path, piece)
}

// appendPiece adds a piece that is a line.
func appendPiece(path [][]r2.Vec, piece []r2.Vec) [][]r2.Vec {
	if len(piece) < 2 {
		return path
	}
	return append(path, piece)
}

// Time returns the time of the launch looked at, from the brake's first give
// [s].
func (s *Study) Time() float64 { return s.playback.time }

// SetTime looks at another time [s]; beyond the launch, at its end.
func (s *Study) SetTime(t float64) {
	s.change(func() Change {
		s.timeVisit.end()
		return s.windTo(t)
	})
}

// windTo goes to a time of the launch.
func (s *Study) windTo(t float64) Change {
	return set(&s.playback.time, within(t, 0, s.LaunchEnd()), Position)
}

// Instant returns the index of the launch's history that is looked at, and
// false when there is none.
func (s *Study) Instant() (int, bool) {
	r := s.playback.result
	if !s.playback.on || r == nil || len(r.Frames) == 0 {
		return 0, false
	}
	return min(int(s.playback.time/r.Options.Output+0.5), len(r.Frames)-1), true
}

// instantOf returns the station at an instant of a launch. It carries the
// position only: what each bar carries is in the launch's history.
func instantOf(r *launch.Result, i int) analysis.Station {
	v := r.SideView(i)
	return analysis.Station{
		Pose:          v.Pose,
		InstantCenter: v.InstantCenter, HasInstantCenter: v.HasInstantCenter,
		AntiSquat: v.AntiSquat, HasAntiSquat: v.HasAntiSquat,
		CG: v.CG,
	}
}
