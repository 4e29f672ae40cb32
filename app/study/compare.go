package study

import (
	"slices"

	"bowline/model/analysis"
	"bowline/model/launch"
)

// Comparison is another setup that the current one is compared with, at the
// travel or the instant of the launch that is looked at.
type Comparison struct {
	Setup    int    // index of the setup
	Name     string // of the setup
	Result   *analysis.Result
	Station  analysis.Station
	Launch   *launch.Result // the newest one; nil until there is one
	Outdated bool           // there is no launch, or it is that of an older car
}

// compared are the setups that the current one is compared with.
type compared struct {
	chosen []*Comparison
	others []*Comparison // those of chosen that are not the current setup
	setups int           // that the car had when they were found last
}

// Compare compares the current setup with others, in this order; without any it
// ends the comparison. A setup given twice counts once. From now on they are
// followed by name while setups are moved, renamed or deleted.
func (s *Study) Compare(setups ...int) {
	s.change(func() Change {
		c, was := s.doc.Car(), s.compared.chosen
		var chosen []*Comparison
		for _, i := range setups {
			name := c.Setups[i].Name
			if named(chosen, name) != nil {
				continue
			}
			o := named(was, name)
			if o == nil {
				o = &Comparison{Setup: i, Name: name}
			}
			chosen = append(chosen, o)
		}
		if slices.Equal(chosen, was) {
			return 0
		}
		s.compared = compared{chosen: chosen, setups: len(c.Setups)}
		return Compared
	})
}

// named returns the setup of a name in a list, or nil.
func named(list []*Comparison, name string) *Comparison {
	if i := slices.IndexFunc(list, func(o *Comparison) bool { return o.Name == name }); i >= 0 {
		return list[i]
	}
	return nil
}

// Others returns the setups that the current one is compared with, in the order
// chosen. The current setup is not among them, even when it was chosen. Do not
// change them, nor keep them beyond the next change.
func (s *Study) Others() []*Comparison { return s.compared.others }

// Chosen returns the indices of all setups chosen for comparison, the current
// one too when it is among them.
func (s *Study) Chosen() []int {
	var list []int
	for _, o := range s.compared.chosen {
		list = append(list, o.Setup)
	}
	return list
}

// followCompared finds the setups compared in the car as it is now, analyzes them,
// and returns Compared when one has been deleted.
func (s *Study) followCompared() Change {
	var c Change
	k := &s.compared
	if !s.findCompared() {
		c = Compared
	}
	k.others = k.others[:0]
	for _, o := range k.chosen {
		if o.Setup == s.doc.Setup() {
			o.Result = s.result
			continue
		}
		o.Result = s.run(o.Setup)
		k.others = append(k.others, o)
	}
	return c
}

// findCompared finds the setups compared by their names and reports whether all
// are there still. A renamed one is found at its place; a deleted one is
// compared no more.
func (s *Study) findCompared() bool {
	k, c := &s.compared, s.doc.Car()
	sameNumber := k.setups == len(c.Setups)
	k.setups = len(c.Setups)
	found := make([]*Comparison, 0, len(k.chosen))
	for _, o := range k.chosen {
		i := c.SetupNamed(o.Name)
		if i < 0 && sameNumber && named(k.chosen, c.Setups[o.Setup].Name) == nil {
			i = o.Setup
		}
		if i >= 0 {
			o.Setup, o.Name = i, c.Setups[i].Name
			found = append(found, o)
		}
	}
	all := len(found) == len(k.chosen)
	k.chosen = found
	return all
}
