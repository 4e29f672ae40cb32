package study

import "bowline/model/analysis"

// ResultOf returns the analysis of any setup of the current car at the front
// travel looked at. Those of the current setup and of the one that it is held
// against are there already.
func (s *Study) ResultOf(setup int) *analysis.Result {
	if setup == s.doc.Setup() {
		return s.result
	}
	if o := s.Other(); o != nil && setup == o.Setup {
		return o.Result
	}
	return s.run(setup)
}
