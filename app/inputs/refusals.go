package inputs

import (
	"slices"
	"strings"

	"bowline/model/car"
)

// CommitPending hands over what has been typed and not been taken yet, and
// tells whether all of it was taken. Call it before undo, a save, another car
// or other units. What is refused stays where it was typed, marked, with the
// reason, and the first of it gets the focus; RestorePending takes it back.
func (p *Panel) CommitPending() bool {
	var refused *entry
	for e := range p.entries() {
		if e.pending() && !e.commit() && refused == nil {
			refused = e
		}
	}
	if refused != nil {
		p.goTo(refused.row, refused)
	}
	return refused == nil
}

// RestorePending takes back what has been typed and not been taken yet.
func (p *Panel) RestorePending() {
	for e := range p.entries() {
		if e.pending() {
			e.restore()
		}
	}
}

// apply makes one change of the car, tried in from, and tells whether it was
// taken. What speaks against it is shown.
func (p *Panel) apply(from origin, action string, change func(*car.Car)) bool {
	return p.try(from, func() []car.Problem { return p.doc.Apply(action, change) })
}

// try is apply for an edit that the document has a method for.
func (p *Panel) try(from origin, edit func() []car.Problem) bool {
	p.forgive(from)
	problems := edit()
	if len(problems) == 0 {
		p.outdate(from.home())
		return true
	}
	p.report(from, problems)
	return false
}

// outdate drops what a row has been told about changes tried elsewhere: its
// value is another one now.
func (p *Panel) outdate(r *row) {
	r.setReasons(slices.DeleteFunc(slices.Clone(r.reasons), func(old reason) bool { return old.from.home() != r }))
}

// shownProblems is how many problems of one change are written out.
const shownProblems = 3

// report shows problems where the change was tried, and each at its own row too.
func (p *Panel) report(from origin, problems []car.Problem) {
	home := from.home()
	var here []string
	for i, problem := range problems {
		text := spoken(problem.Wrong + "; " + problem.Right)
		if i == shownProblems {
			here = append(here, "And more of that kind.")
			break
		}
		if r := p.rowAt(problem.Path); r != nil && r != home {
			r.tell(from, text)
			text = r.label + ": " + text
		}
		here = append(here, text)
	}
	p.refuse(from, strings.Join(here, "\n"))
}

// spoken puts labels in the place of keys of the car file.
func spoken(text string) string {
	for _, s := range car.Sections {
		for _, f := range s.Fields {
			text = strings.ReplaceAll(text, f.Path, lower(f.Label))
		}
	}
	return text
}

// refuse shows why a change was refused where it was tried.
func (p *Panel) refuse(from origin, why string) {
	r := from.home()
	r.unsay(from)
	r.tell(from, why)
	if !slices.Contains(p.refused, from) {
		p.refused = append(p.refused, from)
	}
	from.setRefused(true)
	p.count()
	if r.section.isOpen() {
		p.scrollTo(r)
	}
}

// forgive forgets that a change tried in from was refused.
func (p *Panel) forgive(from origin) {
	i := slices.Index(p.refused, from)
	if i < 0 {
		return
	}
	p.refused = slices.Delete(p.refused, i, i+1)
	from.setRefused(false)
	for r := range p.rows() {
		r.unsay(from)
	}
	p.count()
}

// count writes on the headers how many texts below them are refused.
func (p *Panel) count() {
	for _, s := range p.sections {
		n := 0
		for _, from := range p.refused {
			if from.home().section == s && from.pending() {
				n++
			}
		}
		if n != s.header.refused {
			s.header.refused = n
			s.header.Refresh()
		}
	}
}
