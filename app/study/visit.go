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
	s.change(func() Change {
		s.travelVisit.begin(s.travel)
		return s.moveTo(q)
	})
}

// StayAtTravel ends a visit where it is.
func (s *Study) StayAtTravel() { s.stay(&s.travelVisit) }

// LeaveTravel ends a visit and goes back to where it started. Without a visit
// nothing happens.
func (s *Study) LeaveTravel() {
	s.change(func() Change {
		if from, ok := s.travelVisit.end(); ok {
			return s.moveTo(from)
		}
		return 0
	})
}

// VisitTime looks at another time of the launch as SetTime does, until LeaveTime
// goes back to the time before. SetTime and StayAtTime end the visit there.
func (s *Study) VisitTime(t float64) {
	s.change(func() Change {
		s.timeVisit.begin(s.playback.time)
		return s.windTo(t)
	})
}

// StayAtTime ends a visit where it is.
func (s *Study) StayAtTime() { s.stay(&s.timeVisit) }

// stay ends a visit where it is.
func (s *Study) stay(v *visit) {
	s.change(func() Change {
		v.end()
		return 0
	})
}

// LeaveTime ends a visit and goes back to where it started. Without a visit
// nothing happens.
func (s *Study) LeaveTime() {
	s.change(func() Change {
		if from, ok := s.timeVisit.end(); ok {
			return s.windTo(from)
		}
		return 0
	})
}
