package study

import "bowline/model/analysis"

// Envelope returns the most that the side view and the newest launch ask of each bar of
// the current setup. Basis says how far that can be relied on.
func (s *Study) Envelope() analysis.Envelope { return s.result.Envelope(s.playback.result) }

// LoadVerdict returns how near the bars of the current setup come to what they may
// carry, in the side view and in the newest launch.
func (s *Study) LoadVerdict() analysis.LoadVerdict { return s.result.LoadVerdict(s.playback.result) }

// Warnings returns what somebody should know of the current setup, of its newest
// launch too.
func (s *Study) Warnings() []analysis.Warning { return s.result.Warnings(s.playback.result) }

// Basis returns what Envelope, LoadVerdict and Warnings rest on besides the side view.
func (s *Study) Basis() analysis.Basis {
	l := s.playback.result
	switch {
	case l == nil:
		return analysis.OnSideView
	case s.doc.Dragging():
		return analysis.OnLaunchBehind
	case !s.isCurrent(l, s.doc.Setup()):
		return analysis.OnLaunchBefore
	case len(l.Time) == 0:
		return analysis.OnNoLaunch
	}
	return analysis.OnLaunch
}
