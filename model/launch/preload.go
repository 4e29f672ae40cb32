package launch

// freeLengthStep is the step in a bar's free length of the central differences
// below [m].
const freeLengthStep = 1e-6

// perTurn returns the change of the loads of a car at rest in s for a turn of each
// bar that lengthens it: the derivative with respect to the bar's free length times
// its lead. With a singular stiffness the changes are zero and it returns false.
func (m *model) perTurn(s *state) (changes [barCount]Static, ok bool) {
	var i instant
	stiff := m.stiffness(s)
	for _, bar := range Bars {
		free := m.Rods[bar].Free
		m.Rods[bar].Free = free + freeLengthStep
		more := m.residual(s, &i)
		m.Rods[bar].Free = free - freeLengthStep
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
			m.Rods[bar].Free = free + sign*freeLengthStep
			step := by
			for k := range step {
				step[k] *= sign
			}
			next := s.moved(&step)
			m.evaluate(braked, &next, &i)
			return static(&i)
		}
		changes[bar] = difference(at(1), at(-1), m.Rods[bar].Lead/(2*freeLengthStep))
		m.Rods[bar].Free = free
	}
	return changes, true
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
