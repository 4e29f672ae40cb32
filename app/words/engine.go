package words

import (
	"cmp"
	"fmt"
	"slices"

	"bowline/model/car"
	"bowline/model/units"
)

// PeakPower says what power the torque curve makes, and by what it is scaled to pass
// through the torque at launch.
func PeakPower(c *car.Car, s units.System) string {
	power, speed := c.PeakPower()
	peak := s.Format(units.Power, power) + " at " + s.Format(units.Speed, speed)
	if len(c.Launch.Engine.Curve) == 0 {
		return fmt.Sprintf("The torque stays the same up to the rev limit: %s.", peak)
	}
	text := "Peak " + peak + "."
	if scale := c.TorqueScale(); units.Decimal(scale, 3) != units.Decimal(1, 3) {
		text += fmt.Sprintf(" The launch takes %s times this curve, which passes through %s at %s then.",
			units.Decimal(scale, 3), s.Format(units.Torque, c.Drive.Torque), s.Format(units.Speed, c.Drive.Speed))
	}
	return text
}

// Ramp says how much of the engine's torque there is at the release, when all of it,
// and the most.
func Ramp(c *car.Car, s units.System) string {
	ramp := c.Launch.Engine.Ramp
	switch len(ramp) {
	case 0:
		return "All of the torque from the release on."
	case 1:
		return units.WholePercent(ramp[0].Share) + " of the torque all the way."
	}
	first := ramp[0].Share
	text := units.WholePercent(first) + " of the torque at the release"
	most := slices.MaxFunc(ramp, func(a, b car.RampPoint) int { return cmp.Compare(a.Share, b.Share) })
	full, reached := c.Launch.Engine.FullAt()
	if reached && full > 0 {
		text += ", all of it at " + s.Format(units.Time, full)
	}
	switch when := units.WholePercent(most.Share) + " at " + s.Format(units.Time, most.Time); {
	case most.Share > max(first, 1):
		text += ", up to " + when
	case reached:
	case most.Share > first:
		text += ", at most " + when
	default:
		text += ", and never more"
	}
	return text + "."
}
