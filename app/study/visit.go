package study

// visit is a stay at another position, by somebody who points at it and goes back
// afterward. The zero value is none.
type visit struct {
	on   bool
	from float64 // where to go back to
}

// begin remembers the position that a visit starts from.
func (v *visit) begin(from float64) {
	if !v.on {
		*v = visit{true, from}
	}
}

// end returns where to go back to, and false when there is no visit.
func (v *visit) end() (from float64, ok bool) {
	from, ok = v.from, v.on
	*v = visit{}
	return from, ok
}

// VisitTravel looks at another rear travel as SetTravel does, until LeaveTravel
// goes back to the travel before. SetTravel and StayAtTravel end the visit where
// the car is.
func (s *Study) VisitTravel(q float64) {
	s.travelVisit.begin(s.travel)
	s.lookAtTravel(q)
}

// StayAtTravel ends a visit where it is.
func (s *Study) StayAtTravel() { s.travelVisit.end() }

// LeaveTravel ends a visit and goes back to where it started. Without a visit
// nothing happens.
func (s *Study) LeaveTravel() {
	if from, ok := s.travelVisit.end(); ok {
		s.lookAtTravel(from)
	}
}

// VisitTime looks at another time of the launch as SetTime does, until LeaveTime
// goes back to the time before. SetTime and StayAtTime end the visit there.
func (s *Study) VisitTime(t float64) {
	s.timeVisit.begin(s.playback.time)
	s.lookAtTime(t)
}

// StayAtTime ends a visit where it is.
func (s *Study) StayAtTime() { s.timeVisit.end() }

// LeaveTime ends a visit and goes back to where it started. Without a visit
// nothing happens.
func (s *Study) LeaveTime() {
	if from, ok := s.timeVisit.end(); ok {
		s.lookAtTime(from)
	}
}
