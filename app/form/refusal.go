package form

import (
	"slices"
	"strings"
)

// Fault is one thing that speaks against a change.
type Fault struct {
	Path string // of the row that it is about; empty for where the change was tried
	Text string // what is wrong and what would be right
}

// Wrong returns one fault where a change was tried; without a text none.
func Wrong(text string) []Fault {
	if text == "" {
		return nil
	}
	return []Fault{{Text: text}}
}

// refusal is where the reasons stand why changes were refused. Its prose is
// hidden while there is none.
type refusal struct {
	prose   *Prose
	reasons []reason
}

// reason says why a change that was tried in one editor was refused.
type reason struct {
	from origin
	text string
}

// origin is an editor whose change may be refused.
type origin interface {
	home() *Row
	Pending() bool   // It still holds a text that was refused.
	setRefused(bool) // It looks so.
}

func newRefusal(p *Prose) *refusal {
	p.Hide()
	return &refusal{prose: p}
}

// set replaces the reasons, and reports whether what is written has changed.
// Empty texts are no reasons.
func (r *refusal) set(reasons []reason) bool {
	r.reasons = slices.DeleteFunc(slices.Clone(reasons), func(why reason) bool { return why.text == "" })
	texts := make([]string, len(r.reasons))
	for i, why := range r.reasons {
		texts[i] = why.text
	}
	return r.prose.Tell(strings.Join(texts, "\n"))
}

// try makes a change in an editor, and reports whether it was taken. What speaks
// against it is shown.
func (f *Form) try(from origin, change func() []Fault) bool {
	f.forgive(from)
	faults := change()
	if len(faults) == 0 {
		from.home().outdate()
		return true
	}
	f.report(from, faults)
	return false
}

// shownFaults is how many faults of one change are written out.
const shownFaults = 3

// report shows faults where the change was tried, and each at its own row too.
func (f *Form) report(from origin, faults []Fault) {
	home := from.home()
	home.unsay(from)
	var here []string
	for i, fault := range faults {
		if i == shownFaults {
			here = append(here, "And more of that kind.")
			break
		}
		text := fault.Text
		if r := f.Row(fault.Path); r != nil && r != home && fault.Path != "" {
			r.tell(from, text)
			text = r.Label + ": " + text
		}
		here = append(here, text)
	}
	home.tell(from, strings.Join(here, "\n"))
	if !slices.Contains(f.refused, from) {
		f.refused = append(f.refused, from)
	}
	from.setRefused(true)
	f.count()
	if home.section.IsOpen() {
		f.host.reveal(home)
	}
}

// forgive forgets that a change tried in from was refused.
func (f *Form) forgive(from origin) {
	i := slices.Index(f.refused, from)
	if i < 0 {
		return
	}
	f.refused = slices.Delete(f.refused, i, i+1)
	from.setRefused(false)
	for r := range f.Rows() {
		r.unsay(from)
	}
	f.count()
}

// count writes on the headers how many texts below them are refused.
func (f *Form) count() {
	for _, s := range f.sections {
		if s.header == nil {
			continue
		}
		n := 0
		for _, from := range f.refused {
			if from.home().section == s && from.Pending() {
				n++
			}
		}
		s.header.count(n)
	}
}
