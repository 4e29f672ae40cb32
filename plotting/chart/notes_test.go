package chart_test

import (
	"strings"
	"testing"

	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
)

// A long note is broken at spaces into lines that fit; none of it is lost.
func TestNotesAreWrapped(t *testing.T) {
	const note = "a bar that fails at launch can hurt someone who stands beside it or sits in the car that it belongs to"
	c := made("a", axis(0, 1), axis(0, 1), fake{})
	c.AddNote(func(chart.Frame) string { return note })
	var counts []int
	for width := 200.0; width < 900; width += 37 {
		var lines []string
		for _, x := range charttest.Texts(c, units.US, width, 500) {
			if strings.Contains(note, x.Text) && strings.Contains(x.Text, " ") {
				lines = append(lines, x.Text)
				if x.Outside(charttest.Points(width), charttest.Points(500)) {
					t.Errorf("%g px: %q is cut off", width, x.Text)
				}
			}
		}
		if strings.Join(lines, " ") != note {
			t.Errorf("%g px: %q", width, lines)
		}
		counts = append(counts, len(lines))
	}
	if counts[0] < 3 || counts[len(counts)-1] != 1 {
		t.Errorf("%v lines", counts)
	}
}

// Where there is little height the data keep their room; what is left of a note
// ends in dots.
func TestNotesMakeRoomForTheData(t *testing.T) {
	c := made("a", axis(0, 1), axis(0, 1), fake{})
	c.AddNote(func(chart.Frame) string { return strings.Repeat("a bar that fails at launch ", 30) })
	for height := 150.0; height < 500; height += 20 {
		_, layout := charttest.Draw(t, c, 420, int(height), light, chart.Marker{})
		words := strings.Join(charttest.Words(c, units.US, 420, height), "\n")
		room, cut := layout.Bottom-layout.Top, strings.Contains(words, " …\n")
		// No line is left out that has room.
		if height > 170 && room < 90 || cut && room > 125 || !cut && strings.Count(words, "bar") < 30 {
			t.Errorf("%g px: %g px for the data, %q", height, room, words)
		}
	}
}
