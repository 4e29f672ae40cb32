package launch

import (
	"context"
	"slices"
)

// holdBisections halve the range of torques between none and the car's: what is found
// is right to 0.2 % of the latter.
const holdBisections = 9

// maxHoldSteps bounds the steps of a launch that is run that often.
const maxHoldSteps = maxSteps / holdBisections

// holds returns the engine torque at launch speed that the rear tires just hold: the
// greatest part of the car's with which no rear tire slips beyond its peak grip from
// the start to the end, times the car's. The whole torque curve and what the
// converter takes up are scaled with it. s is the car at rest.
func (m *model) holds(ctx context.Context, s state, r *Result) (float64, error) {
	whole := m.Drive
	least, most := 0.0, 1.0
	for range holdBisections {
		part := (least + most) / 2
		m.Drive = whole.scaled(part)
		spun, err := m.spinsAtAll(ctx, s, r)
		if err != nil {
			return 0, err
		}
		if spun {
			most = part
		} else {
			least = part
		}
	}
	m.Drive = whole
	return least * whole.Capacity * whole.Speed * whole.Speed, nil
}

// scaled returns the drive with a part of the engine's torque.
func (d Drive) scaled(part float64) Drive {
	d.Torque = slices.Clone(d.Torque)
	for k := range d.Torque {
		d.Torque[k].Torque *= part
	}
	d.Capacity *= part
	return d
}

// spinsAtAll reports whether a rear tire slips beyond its peak grip in a launch from
// rest in s with the options and the step of r.
func (m *model) spinsAtAll(ctx context.Context, s state, r *Result) (bool, error) {
	var i instant
	var method scheme
	c := clock{start: m.distance(&s), options: &r.Options}
	for n := 0; ; n++ {
		t := float64(n) * r.Step
		m.evaluate(t, &s, &i)
		c.pass(t, m.distance(&s))
		if _, spins := m.spins(&s); spins || s.diverged(&i) {
			return true, nil
		}
		if ended, _ := m.ended(&c, t >= r.Options.Limit, &i); ended {
			return false, ctx.Err()
		}
		m.rates(&s, &i, &method.k[0])
		method.step(m, t, r.Step, &s, &i)
	}
}
