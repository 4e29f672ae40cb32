package document

import "reflect"

// MaxSteps bounds how far undo goes back.
const MaxSteps = 500

// step is one edit that can be undone and done again.
type step struct {
	label         string // names the edit, as in "Move pivot"
	before, after state
}

// history is the edits made so far, and those undone, which follow them.
type history struct {
	steps []step
	done  int // steps not undone
}

// push adds an edit and drops those undone.
func (h *history) push(s step) {
	h.steps = append(h.steps[:h.done], s)
	h.steps = h.steps[max(0, len(h.steps)-MaxSteps):]
	h.done = len(h.steps)
}

// Begin starts a drag: all that Apply does until End is one undo step named
// label. It panics within a drag.
func (d *Document) Begin(label string) {
	if d.drag != nil {
		panic("document: Begin of " + label + " within " + d.drag.label)
	}
	d.mayChange()
	d.drag = &step{label: label, before: d.now}
	d.tell()
}

// Dragging reports whether a drag goes on.
func (d *Document) Dragging() bool { return d.drag != nil }

// End ends a drag. One that ends where it began is no step. Without a drag, as
// after loading another car in the middle of one, it does nothing.
func (d *Document) End() {
	if d.drag == nil {
		return
	}
	d.mayChange()
	s := step{d.drag.label, d.drag.before, d.now}
	d.drag = nil
	if !reflect.DeepEqual(s.before.car, s.after.car) {
		d.history.push(s)
	}
	d.tell()
}

// Cancel ends a drag and goes back to where it began. Without a drag it does
// nothing.
func (d *Document) Cancel() {
	if d.drag == nil {
		return
	}
	d.mayChange()
	d.now, d.drag = d.drag.before, nil
	d.tell()
}

// Undo takes back the last step and returns whether there was one. During a
// drag there is none.
func (d *Document) Undo() bool {
	s := d.lastStep()
	if s == nil {
		return false
	}
	d.mayChange()
	d.now = s.before
	d.history.done--
	d.tell()
	return true
}

// Redo does the last step undone again and returns whether there was one.
// During a drag there is none.
func (d *Document) Redo() bool {
	s := d.nextStep()
	if s == nil {
		return false
	}
	d.mayChange()
	d.now = s.after
	d.history.done++
	d.tell()
	return true
}

// UndoLabel names the step that Undo would take back; empty for none.
func (d *Document) UndoLabel() string { return labelOf(d.lastStep()) }

// RedoLabel names the step that Redo would do again; empty for none.
func (d *Document) RedoLabel() string { return labelOf(d.nextStep()) }

// lastStep returns the step to be taken back next, or nil.
func (d *Document) lastStep() *step {
	if d.drag != nil || d.history.done == 0 {
		return nil
	}
	return &d.history.steps[d.history.done-1]
}

// nextStep returns the step to be done again next, or nil.
func (d *Document) nextStep() *step {
	if d.drag != nil || d.history.done == len(d.history.steps) {
		return nil
	}
	return &d.history.steps[d.history.done]
}

func labelOf(s *step) string {
	if s == nil {
		return ""
	}
	return s.label
}
