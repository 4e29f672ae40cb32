package words

import (
	"fmt"

	"bowline/model/car"
)

// SetupDeleted says which setup has been deleted, with which runs, and how it
// comes back.
func SetupDeleted(deleted car.Setup) string {
	switch n := len(deleted.Runs); n {
	case 0:
		return fmt.Sprintf("%q is deleted. Undo brings it back.", deleted.Name)
	case 1:
		return fmt.Sprintf("%q is deleted, and the run logged with it. Undo brings both back.", deleted.Name)
	default:
		return fmt.Sprintf("%q is deleted, and the %d runs logged with it. Undo brings them back.", deleted.Name, n)
	}
}

// RunDeleted says which logged run has been deleted, and how it comes back.
func RunDeleted(deleted car.Run) string {
	return "The run of " + deleted.Date + " is deleted. Undo brings it back."
}
