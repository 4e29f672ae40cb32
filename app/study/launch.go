package study

import (
	"bowline/model/analysis"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r2"
)

// playback is the launch that is looked at.
type playback struct {
	on       bool
	compared bool           // launches of two setups are held against each other beside a travel
	result   *launch.Result // nil before the first is done
	revision uint64         // of the car that result belongs to
	time     float64        // [s]
	path     [][]r2.Vec     // of the instant center, broken where there is none [m]

	otherName     string // of the setup that the other launch is of
	otherRevision uint64
}

// Launching tells whether the launch is looked at rather than a travel.
func (s *Study) Launching() bool { return s.playback.on }

// SetLaunching switches between launch and travel.
func (s *Study) SetLaunching(on bool) {
	if on == s.playback.on {
		return
	}
	s.playback.on = on
	s.place()
	s.tell(Choice | Position)
}

// SetComparingLaunches says whether somebody looks at the launches of the
// current setup and the one that it is held against, whatever else is looked at.
func (s *Study) SetComparingLaunches(on bool) {
	if on != s.playback.compared {
		s.playback.compared = on
		s.tell(Launches)
	}
}

// WantsLaunch tells whether somebody looks at a launch, so that a missing one is
// to be computed: over time, or of two setups against each other.
func (s *Study) WantsLaunch() bool {
	return s.playback.on || s.playback.compared && s.Other() != nil
}

// Launch returns the newest launch, or nil. While a new one is computed it is
// that of an older car.
func (s *Study) Launch() *launch.Result { return s.playback.result }

// LaunchOutdated tells whether the launch does not belong to the current car,
// or that of the other setup is missing or does not.
func (s *Study) LaunchOutdated() bool {
	_, missing := s.MissingLaunch()
	return missing
}

// MissingLaunch returns the setup whose launch is to be computed next: the
// current one, then the one that it is held against; false when there are both.
func (s *Study) MissingLaunch() (setup int, ok bool) {
	p := &s.playback
	if p.result == nil || p.revision != s.doc.Revision() {
		return s.doc.Setup(), true
	}
	if o := s.Other(); o != nil && (o.Launch == nil || p.otherName != s.other.name || p.otherRevision != s.doc.Revision()) {
		return o.Setup, true
	}
	return 0, false
}

// PutLaunch takes a launch of the car at a revision. One that is older than
// what there is, or from before another car was loaded, is dropped.
func (s *Study) PutLaunch(r *launch.Result, revision uint64) {
	if r == nil || s.playback.result != nil && revision < s.playback.revision {
		return
	}
	s.playback.result, s.playback.revision, s.playback.path = r, revision, centerPath(r)
	s.playback.time = within(s.playback.time, 0, s.LaunchEnd())
	s.place()
	s.tell(Launches | Position)
}

// PutOtherLaunch takes a launch of the setup that the current one is held
// against, of the car at a revision. One of another setup and one that is older
// than what there is are dropped.
func (s *Study) PutOtherLaunch(r *launch.Result, setup int, revision uint64) {
	p := &s.playback
	if r == nil || !s.other.on || setup != s.other.Setup {
		return
	}
	if s.other.Launch != nil && p.otherName == s.other.name && revision < p.otherRevision {
		return
	}
	s.other.Launch, p.otherName, p.otherRevision = r, s.other.name, revision
	s.place()
	s.tell(Launches | Position)
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
	t = within(t, 0, s.LaunchEnd())
	if t == s.playback.time {
		return
	}
	s.playback.time = t
	if s.playback.on {
		s.place()
	}
	s.tell(Position)
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
