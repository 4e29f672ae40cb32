package words_test

import (
	"testing"

	"bowline/app/words"
	"bowline/model/car"
)

func TestSetupDeleted(t *testing.T) {
	for runs, want := range []string{
		`"low" is deleted. Undo brings it back.`,
		`"low" is deleted, and the run logged with it. Undo brings both back.`,
		`"low" is deleted, and the 2 runs logged with it. Undo brings them back.`,
	} {
		if got := words.SetupDeleted(car.Setup{Name: "low", Runs: make([]car.Run, runs)}); got != want {
			t.Errorf("it says %q, want %q", got, want)
		}
	}
}
