package units

import "math"

// What follows writes a value with a sign as a magnitude and the trade's word for
// the side it is on.

// Directed writes the magnitude of an SI value as Format does and the word for
// its sign behind it, as in "12.00 in behind"; alone what ReadsZero.
func (s System) Directed(q Quantity, si float64, positive, negative string) string {
	text := s.Format(q, math.Abs(si))
	switch {
	case s.ReadsZero(q, si):
		return text
	case si > 0:
		return text + " " + positive
	}
	return text + " " + negative
}

// Travel writes the travel of a wheel from ride height, bump positive [m]:
// "2.00 in bump", "50.8 mm droop", "ride height".
func (s System) Travel(q float64) string {
	if s.ReadsZero(Length, q) {
		return "ride height"
	}
	return s.Directed(Length, q, "bump", "droop")
}

// Travels writes a range of travel, the unit and the side once where both ends
// are on one side: "0.50 in droop to 1.20 in bump", "2.26 to 2.09 in droop".
func (s System) Travels(from, to float64) string {
	first, last := s.Travel(from), s.Travel(to)
	switch {
	case first == last:
		return first
	case s.Shown(Length, from)*s.Shown(Length, to) > 0:
		first = s.Figure(Length, math.Abs(from), 0)
	}
	return first + " to " + last
}

// Nose writes an angle of the pinion, the chassis or another thing with a nose,
// or its change, nose-up positive [rad]: "0.45° nose up", "0.00°".
func (s System) Nose(angle float64) string { return s.Directed(Angle, angle, "nose up", "nose down") }

// ForeAft writes a shift along the car, forward positive [m]: "0.12 in forward",
// "0.12 in back".
func (s System) ForeAft(shift float64) string { return s.Directed(Length, shift, "forward", "back") }
