// Package panel is what a panel of the window is and what it is handed: words
// and evidence about the car, shown in a tab beside the side view. The frame,
// package window, gives each panel its place, decides which one is on show and
// refreshes that one, once a frame at most.
package panel

import (
	"time"

	"bowline/app/form"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
)

// Panel is one page of words, numbers and charts about the study. Its
// constructor takes a Host and returns it with everything written.
type Panel interface {
	// Title names the panel on its tab and in the menu.
	Title() string

	// Words is what the panel says: verdict, numbers, what is to be done.
	Words() fyne.CanvasObject

	// Evidence is what its words rest on: charts, lists, numbers behind them.
	Evidence() fyne.CanvasObject

	// Charts are the keys of the charts among its evidence, which are drawn
	// while it is on show.
	Charts() []chart.Key

	// Wants is what has to be computed while it is on show.
	Wants() study.Wants

	// Refresh shows the study as it is now. It is called before the panel comes
	// on show, and then once a frame in which the study has changed.
	Refresh()
}

// Face is all of a panel but Refresh, for a panel of which it stays the same:
// panels embed it.
type Face struct {
	Name     string
	Said     fyne.CanvasObject // the words
	Shown    fyne.CanvasObject // the evidence
	Drawn    []chart.Key
	Computed study.Wants
}

// Title implements Panel.
func (f *Face) Title() string { return f.Name }

// Words implements Panel.
func (f *Face) Words() fyne.CanvasObject { return f.Said }

// Evidence implements Panel.
func (f *Face) Evidence() fyne.CanvasObject { return f.Shown }

// Charts implements Panel.
func (f *Face) Charts() []chart.Key { return f.Drawn }

// Wants implements Panel.
func (f *Face) Wants() study.Wants { return f.Computed }

// Typing is a panel in which values of the car are typed.
type Typing interface {
	// CommitPending takes what has been typed, and reports whether it could be.
	CommitPending() bool

	// RestorePending takes back what has been typed and is refused.
	RestorePending()
}

// Keeper is a panel that holds something typed that is not part of the car yet.
type Keeper interface {
	// Leave asks what is to become of it, if there is anything, and goes on
	// when that is settled.
	Leave(then func())
}

// Host is what the frame hands to a panel.
type Host struct {
	Study *study.Study

	// Page is what the panel's words stand on.
	Page *form.Page

	// Chart returns the view of one of the panel's charts.
	Chart func(key chart.Key) fyne.CanvasObject

	// Say writes a line below the panes; without text the hint stands there.
	Say func(text string)

	// Refused says there why an edit was not taken.
	Refused func([]car.Problem)

	// Ask puts a question with an answer for each button, the mild one last.
	Ask func(title, question string, answers ...Answer)

	// Later has a function run after a while by the goroutine that owns the
	// window.
	Later func(after time.Duration, run func())

	// PrintCard asks for a file for the card that says how to get from the
	// current setup to other holes.
	PrintCard func(to car.Holes)
}

// Answer is a button of a question; Do may be nil.
type Answer struct {
	Name string
	Do   func()
}

// FarAway is from which distance on a list does not tell how far off an instant
// center is [m].
const FarAway = 9.99
