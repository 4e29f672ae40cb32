package launch

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"bowline/app/form"
	"bowline/app/sheet"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/assumptions"
	"bowline/model/launch"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// strongest is the number of assumptions that are in sight; the others are in a fold.
const strongest = 5

// assumed is the part of the panel that lists what the car does not say, with what each
// of it is worth, strongest first. While that is being found the list stands without.
type assumed struct {
	study  *study.Study
	page   *form.Page
	how    *form.Prose
	first  *assumedList
	rest   *assumedList
	fold   *form.Fold
	object fyne.CanvasObject
}

func newAssumed(s *study.Study, page *form.Page) *assumed {
	a := &assumed{study: s, page: page, how: form.Caption("", theme.ColorNamePlaceHolder), first: newAssumedList(), rest: newAssumedList()}
	a.fold = form.NewFold("", a.rest, a.settle)
	a.object = form.Group(form.Heading(words.AssumedTitle), a.how, a.first, a.fold.Object)
	return a
}

// settle makes room for what has changed its height.
func (a *assumed) settle() {
	if a.page != nil {
		a.page.Settle()
	}
}

// write lists the assumptions of the newest launch.
func (a *assumed) write(l *launch.Result, u units.System) {
	worth, current, err := a.study.Worth()
	list := worth
	switch {
	case current && err != nil:
		a.how.Set("What each is worth could not be computed: " + err.Error() + ".")
		list = unweighed(l, worth)
	case current:
		a.how.Set(words.AssumedHelp)
	default:
		a.how.Set(words.AssumedPending)
		list = unweighed(l, worth)
	}
	if len(list) == 0 {
		a.how.Set(words.NothingAssumed)
	}
	rows := make([]assumedRow, len(list))
	for i := range list {
		rows[i] = rowOf(&list[i], u)
	}
	n := min(strongest, len(rows))
	changed := a.first.set(rows[:n])
	if a.rest.set(rows[n:]) || changed {
		a.fold.Object.Hidden = len(rows) == n
		a.fold.Retitle(fmt.Sprintf("%d weaker ones", len(rows)-n))
		a.settle()
	}
}

// unweighed lists the assumptions of a launch without what they are worth, in the order
// of what they were worth last.
func unweighed(l *launch.Result, last []assumptions.Worth) []assumptions.Worth {
	var list []assumptions.Worth
	for _, a := range assumptions.Of(l) {
		list = append(list, assumptions.Worth{Assumption: a})
	}
	place := func(w assumptions.Worth) int {
		if i := slices.IndexFunc(last, func(known assumptions.Worth) bool { return known.Path == w.Path }); i >= 0 {
			return i
		}
		return len(last)
	}
	slices.SortStableFunc(list, func(a, b assumptions.Worth) int { return cmp.Compare(place(a), place(b)) })
	return list
}

// assumedRow is what stands of one assumption.
type assumedRow struct{ name, value, effects string }

// rowOf writes an assumption.
func rowOf(w *assumptions.Worth, u units.System) assumedRow {
	var effects []string
	for i, change := range w.Changes {
		var effect *assumptions.Effect
		if i < len(w.Effects) {
			effect = &w.Effects[i]
		}
		effects = append(effects, words.TriedWith(w.Assumption, change, effect, u))
	}
	return assumedRow{w.Name, words.Assumed(w.Assumption, u), strings.Join(effects, tab)}
}

// tab stands between the two effects of a row.
const tab = "\t"

// assumedList writes assumptions, two lines each: name and value, and below what it does
// to put others in its place, the first on the left and the second from the middle on.
type assumedList struct {
	widget.BaseWidget
	rows  []assumedRow
	sheet *sheet.Sheet
}

func newAssumedList() *assumedList {
	l := &assumedList{}
	l.sheet = sheet.New(l.paint)
	l.ExtendBaseWidget(l)
	return l
}

// set writes other rows and reports whether there are more or fewer than before.
func (l *assumedList) set(rows []assumedRow) bool {
	if slices.Equal(rows, l.rows) {
		return false
	}
	changed := len(rows) != len(l.rows)
	l.rows = slices.Clone(rows)
	l.sheet.Refresh()
	return changed
}

// String writes the rows, a line each.
func (l *assumedList) String() string {
	var lines []string
	for _, r := range l.rows {
		lines = append(lines, strings.Join([]string{r.name, r.value, strings.ReplaceAll(r.effects, tab, " | ")}, " | "))
	}
	return strings.Join(lines, "\n")
}

// CreateRenderer implements fyne.Widget.
func (l *assumedList) CreateRenderer() fyne.WidgetRenderer { return l.sheet.Renderer() }

// MinSize implements fyne.Widget.
func (l *assumedList) MinSize() fyne.Size {
	return fyne.NewSize(0, float32(len(l.rows))*assumedHeight())
}

const (
	// nameLine and effectLine are the heights of the two lines over their text size.
	nameLine, effectLine = 1.4, 1.55
	// nameBase and effectBase are where letters stand in them, from their tops.
	nameBase, effectBase = 1.05, 0.95
)

// assumedHeight is the height of a row.
func assumedHeight() float32 {
	return nameLine*theme.TextSize() + effectLine*theme.CaptionTextSize()
}

// paint draws the rows.
func (l *assumedList) paint(p *sheet.Pen) {
	text, caption := theme.TextSize(), theme.CaptionTextSize()
	regular, small := sheet.Face(fyne.TextStyle{}, text), sheet.Face(fyne.TextStyle{}, caption)
	pad, width := theme.Padding(), l.Size().Width
	for i, r := range l.rows {
		top := float32(i) * assumedHeight()
		if i%2 == 1 {
			p.Box(0, top, width, assumedHeight(), theme.Color(theme.ColorNameInputBackground))
		}
		p.Words(pad, top+nameBase*text, r.name, regular, theme.Color(theme.ColorNamePlaceHolder))
		p.Words(width-pad-p.Width(r.value, regular), top+nameBase*text, r.value, regular, sheet.Ink(""))
		for k, effect := range strings.Split(r.effects, tab) {
			p.Words(pad+float32(k)*width/2, top+nameLine*text+effectBase*caption, effect, small, sheet.Ink(""))
		}
	}
}
