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

func TestRunDeleted(t *testing.T) {
	if got, want := words.RunDeleted(car.Run{Date: "2031-05-02"}), "The run of 2031-05-02 is deleted. Undo brings it back."; got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
}
