package scene

import (
	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Viewpoint is one way to look at the car that is studied. It says what is drawn
// and onto which plane; it is asked anew for every picture.
type Viewpoint interface {
	// Fill fills a list with what is drawn, back to front.
	Fill(l *List, p Pointer)
	// Plane returns the plane that the items are projected onto.
	Plane() Plane
	// Fits returns what can be kept in sight, first what the view begins with, then the
	// whole car, which a launch is looked at with.
	Fits() []Fit
	// Describe says in a few words, a line each, what an item is and its numbers;
	// nothing of what is not there.
	Describe(id ID, p Pointer) []string
	// Hands returns what a person can do in the view, or nil where it is only
	// looked at.
	Hands() Hands
}

// Pointer is what the pointer is at.
type Pointer struct {
	Hot  ID   // under it
	Held bool // which is being dragged
}

// Fit is a part of the car that a view can keep in sight.
type Fit struct {
	Key     Key // the letter that asks for it
	Framing func(width, height float64) Framing
}

// Framing is what a fit shows in a picture of some size.
type Framing struct {
	View   View
	Sights []r3.Vec // what is brought back into sight when an edit takes it out, ground's frame [m]
	Of     int      // says what it is fitted to; when that is another thing, the view is fitted anew
}

// Hands are what a person can do in a view. What is refused says why.
type Hands interface {
	// Cursor returns what the pointer looks like over an item.
	Cursor(id ID) Cursor
	// Point is told what is under the pointer by now.
	Point(id ID)
	// Hold takes hold of what is at a point of a picture [px], with Shift or
	// without; nil leaves the drag to the picture, which moves as a whole.
	Hold(p *Picture, at r2.Vec, shift bool) Hold
	// Click is a press and release on an item, with Shift or without.
	Click(id ID, shift bool) []car.Problem
	// DoubleClick follows the second of two clicks on the same item.
	DoubleClick(id ID) []car.Problem
	// Press is a key with Shift or without: a letter or one of the Keys.
	Press(k Key, shift bool) []car.Problem
}

// Hold is what the pointer has taken hold of until End or Cancel. What it does
// to the car is one step to undo.
type Hold interface {
	// To brings it to a point of a view [px] and returns what is dragged by now.
	To(v View, at r2.Vec) (ID, []car.Problem)
	// End lets go of it.
	End()
	// Cancel lets go of it and takes back what the drag has done.
	Cancel()
}

// Key is a key of the keyboard: a letter or digit as it is typed, in lower case,
// or one of the Keys.
type Key string

// The Keys that are no letters.
const (
	LeftKey     Key = "left"
	RightKey    Key = "right"
	UpKey       Key = "up"
	DownKey     Key = "down"
	EnterKey    Key = "enter"
	SpaceKey    Key = "space"
	HomeKey     Key = "home"
	EndKey      Key = "end"
	PageUpKey   Key = "page up"
	PageDownKey Key = "page down"
)

// Cursor is what the pointer looks like.
type Cursor int

// The cursors.
const (
	Arrow   Cursor = iota
	Hand           // something to click
	Cross          // it can be dragged
	Across         // it can be dragged to the left and right
	Upright        // it can be dragged up and down
)
