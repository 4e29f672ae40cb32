package words

import (
	"fmt"

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

// Ramp says how much of the engine's torque there is at the release, and when all of
// it.
func Ramp(c *car.Car, s units.System) string {
	ramp := c.Launch.Engine.Ramp
	if len(ramp) == 0 {
		return "All of the torque from the release on."
	}
	text := units.WholePercent(ramp[0].Share) + " of the torque at the release"
	most := ramp[0]
	for _, p := range ramp {
		if p.Share > most.Share {
			most = p
		}
	}
	switch full, ok := c.Launch.Engine.FullAt(); {
	case ok && full > 0:
		text += ", all of it at " + s.Format(units.Time, full)
	case most.Share > ramp[0].Share:
		text += fmt.Sprintf(", at most %s at %s", units.WholePercent(most.Share), s.Format(units.Time, most.Time))
		return text + "."
	case len(ramp) > 1 && !ok:
		text += ", and never more"
	}
	if most.Share > 1 && most.Share > ramp[0].Share {
		text += fmt.Sprintf(", up to %s at %s", units.WholePercent(most.Share), s.Format(units.Time, most.Time))
	}
	return text + "."
}
