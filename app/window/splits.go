package window

import (
	"bowline/app/panes"

	"fyne.io/fyne/v2"
)

// splits part the window: inputs at the left, words at the right, and between them the
// stage over the evidence.
type splits struct {
	inputs, words, evidence *panes.Split
}

// Preferences that the window keeps of them: sizes chosen by hand [px].
const (
	prefInputs   = "inputs"
	prefWords    = "words"
	prefEvidence = "evidence"
	prefFolded   = "folded" // whether the inputs are
)

// Usual sizes: the panes at the sides keep theirs, so that what a larger window adds goes
// to the stage.
const (
	usualInputs   = 280  // [px]
	leastWords    = 340  // [px]
	mostWords     = 460  // [px]
	wordsShare    = 0.3  // of the width that the inputs leave
	evidenceShare = 0.42 // of the height
	mostEvidence  = 420  // [px]
)

func usualWords(whole float32) float32 { return min(max(wordsShare*whole, leastWords), mostWords) }

func usualEvidence(whole float32) float32 { return min(evidenceShare*whole, mostEvidence) }

// build puts the parts of the window together, as they were left.
func (s *splits) build(inputs, stage, evidence, words fyne.CanvasObject, p fyne.Preferences) {
	s.evidence = panes.New(panes.Below, evidence, steady(stage), usualEvidence)
	s.words = panes.New(panes.Right, words, s.evidence, usualWords)
	s.inputs = panes.New(panes.Left, steady(inputs), s.words, func(float32) float32 { return usualInputs })
	for key, split := range s.kept() {
		split.Choose(float32(p.Float(key)))
		split.Changed = func() { s.keep(p) }
	}
	s.inputs.Fold(p.Bool(prefFolded))
}

// kept are the splits whose sizes are kept, by preference.
func (s *splits) kept() map[string]*panes.Split {
	return map[string]*panes.Split{prefInputs: s.inputs, prefWords: s.words, prefEvidence: s.evidence}
}

// keep stores sizes for the next start.
func (s *splits) keep(p fyne.Preferences) {
	for key, split := range s.kept() {
		p.SetFloat(key, float64(split.Chosen()))
	}
	p.SetBool(prefFolded, s.inputs.Folded())
}
