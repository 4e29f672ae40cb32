package launch

// probe is the change of a bar's length by which the answer of a resting car
// is found [m].
const probe = 1e-6

// perTurn returns how a car at rest in s answers a turn of each bar that
// lengthens it: the derivative by the bar's free length times its lead. Where
// the stiffness cannot be solved for, the answers are zero and it returns
// false.
func (m *model) perTurn(s *state) (answers [barCount]Static, ok bool) {
	var i instant
	stiff := m.stiffness(s)
	for _, bar := range Bars {
		free := m.Rods[bar].Free
		m.Rods[bar].Free = free + probe
		more := m.residual(s, &i)
		m.Rods[bar].Free = free - probe
		less := m.residual(s, &i)
		for k := range more {
			more[k] = (more[k] - less[k]) / 2
		}
		by, solved := solve(stiff, &more)
		if !solved {
			m.Rods[bar].Free = free
			return [barCount]Static{}, false
		}
		at := func(sign float64) Static {
			m.Rods[bar].Free = free + sign*probe
			step := by
			for k := range step {
				step[k] *= sign
			}
			next := s.moved(&step)
			m.evaluate(braked, &next, &i)
			return static(&i)
		}
		answers[bar] = difference(at(1), at(-1), m.Rods[bar].Lead/(2*probe))
		m.Rods[bar].Free = free
	}
	return answers, true
}

// difference returns f·(a − b).
func difference(a, b Static, f float64) Static {
	for k := range a.Tension {
		a.Tension[k] = f * (a.Tension[k] - b.Tension[k])
	}
	for k := range Sides {
		a.RearLoad[k] = f * (a.RearLoad[k] - b.RearLoad[k])
		a.FrontLoad[k] = f * (a.FrontLoad[k] - b.FrontLoad[k])
		a.Push[k] = f * (a.Push[k] - b.Push[k])
	}
	return a
}
