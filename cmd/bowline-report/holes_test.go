package main

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bowline/plotting/paper/papertest"
)

// words returns the text of a PDF's only page, without spaces.
func words(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(data, []byte("(D:20310517080910")) {
		t.Error("the document has another date")
	}
	pages, err := papertest.Pages(data)
	if err != nil || len(pages) != 1 {
		t.Fatalf("%d pages, %v", len(pages), err)
	}
	return strings.Join(strings.Fields(papertest.Text(pages[0])), "")
}

// The card is of the setup and to the holes asked for; the report is the same as
// without it.
func TestCard(t *testing.T) {
	path := filepath.Join(t.TempDir(), "card.pdf")
	got := command("-card", path, "-holes", "5, 3,1,3", "-setup", "tame", "-demo")
	if got.status != 0 || got.stderr != "" || got.stdout != command("-setup", "tame", "-demo").stdout {
		t.Errorf("%+v", got)
	}
	text := words(t, path)
	for _, want := range []string{"SaltgrassNo.7", "setuptame", "2031-05-17", "holes3·4·2·4→5·3·1·3", "Upperbar,chassis:hole3→5", "Lowerbar,housing:hole4→3"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
}

// Holes that cannot be used are refused with what is wrong, no report is
// written, and the other files are.
func TestRefusedCard(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "card.pdf")
	far := changed(t, "[25.5, 10.75]]", "[25.5, 10.75], [3.0, 12.0]]")
	for _, c := range []struct {
		car, holes, want string
	}{
		{reference, "9,1,1,1", "bowline-report: " + reference + ": -holes 9,1,1,1: the new holes: the upper chassis bracket has no hole 9; give a number from 1 to 3\n"},
		{far, "1,4,1,1", "bowline-report: " + far + ": -holes 1,4,1,1: holes 1·4·1·1 cannot be used: the bars do not reach the rear droop of 4 in: "},
	} {
		tables := filepath.Join(folder, c.holes)
		got := command("-card", path, "-holes", c.holes, "-csv", tables, c.car)
		if got.status != 1 || got.stdout != "" || !strings.HasPrefix(got.stderr, c.want) {
			t.Errorf("%+v, want %q", got, c.want)
		}
		if _, err := os.Stat(filepath.Join(tables, "bars.csv")); err != nil {
			t.Error(err)
		}
		if _, err := os.Stat(path); err == nil {
			t.Error("a card was written")
		}
	}
}

// A card never takes the place of what it was made from.
func TestCardOverAnInput(t *testing.T) {
	car := changed(t, "Reference", "Precious")
	got := command("-card", car, "-holes", "1,1,1,1", car)
	if want := "bowline-report: " + car + ": is read from, and it would be replaced; give -card another file\n"; got != (outcome{1, "", want}) {
		t.Errorf("%+v, want %q", got, want)
	}
	if data, err := os.ReadFile(car); err != nil || !strings.Contains(string(data), "Precious") {
		t.Errorf("the car is gone: %v, %.80q", err, data)
	}
}

// The search is written instead of the report, counted from the setup asked for,
// and to a table with all combinations when there are tables.
func TestSearch(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "tables")
	got := command("-search", "3", "-setup", "lower bar up", "-csv", folder, reference)
	if got.status != 0 || got.stderr != "" || !strings.HasPrefix(got.stdout, "Reference, setup \"lower bar up\"\n\nCOMBINATIONS OF HOLES\n  3 of 36; 36 can be used.") || strings.Contains(got.stdout, "LAUNCH") {
		t.Errorf("%+v", got)
	}
	if n := strings.Count(got.stdout, ", holes "); n != 3 {
		t.Errorf("%d reasons in\n%s", n, got.stdout)
	}
	file, err := os.Open(filepath.Join(folder, "holes.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil || len(lines) != 37 {
		t.Fatalf("%d lines, %v", len(lines), err)
	}
	// The setup's own holes are the only ones that no end is moved for.
	moved := slices.Index(lines[0], "moved_ends")
	for _, line := range lines[1:] {
		if present := slices.Equal(line[2:6], []string{"3", "1", "1", "1"}); present != (line[moved] == "0") {
			t.Errorf("%q", line)
		}
	}
	if _, err := os.Stat(filepath.Join(folder, "travel.csv")); err != nil {
		t.Error(err)
	}
	if all := command("-search", "1000", reference); all.status != 0 || !strings.Contains(all.stdout, "  36 of 36; ") {
		t.Errorf("%+v", all)
	}
}

// Holes that overload a bar come after all that do not, however near to the
// target they are.
func TestSearchPutsOverloadLast(t *testing.T) {
	folder := t.TempDir()
	heavy := changed(t, "torque = 1400.0", "torque = 1520.0")
	if got := command("-search", "1", "-csv", folder, heavy); got.status != 0 {
		t.Fatalf("%+v", got)
	}
	data, err := os.ReadFile(filepath.Join(folder, "holes.csv"))
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	share := slices.Index(lines[0], "highest_share [%]")
	over, turns := false, 0
	for _, line := range lines[1:] {
		if is := len(strings.Split(line[share], ".")[0]) > 2; is != over {
			over = is
			turns++
		}
	}
	if turns != 1 || !over {
		t.Errorf("%d changes between held and overloaded, want 1", turns)
	}
}

// With the launches, the combinations that came to 60 ft stand by their times within
// those that load no bar beyond its limit, and within those that do.
func TestSearchWithLaunches(t *testing.T) {
	folder := t.TempDir()
	weak := changed(t, "torque = 1400.0", "torque = 700.0")
	if got := command("-search", "2", "-launch-all", "-by", "time", "-csv", folder, weak); got.status != 0 || got.stderr != "" || !strings.Contains(got.stdout, "60 ft") {
		t.Fatalf("%+v", got)
	}
	data, err := os.ReadFile(filepath.Join(folder, "holes.csv"))
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at, share, before, overloaded := slices.Index(lines[0], "sixty_ft [s]"), slices.Index(lines[0], "envelope_share [%]"), 0.0, 0
	for _, line := range lines[1:] {
		seconds, err := strconv.ParseFloat(line[at], 64)
		load, err2 := strconv.ParseFloat(line[share], 64)
		if err != nil || err2 != nil || line[len(line)-1] != "finished" {
			t.Fatalf("%v %v of %q", err, err2, line)
		}
		switch {
		case load > 100:
			if overloaded++; overloaded == 1 {
				before = 0
			}
		case overloaded > 0:
			t.Errorf("a share of %v %% after an overload", load)
		}
		if seconds < before-1e-9 {
			t.Errorf("%v s after %v", seconds, before)
		}
		before = seconds
	}
	if overloaded == 0 || overloaded == len(lines)-1 {
		t.Errorf("%d are overloaded, so that nothing is sorted by that", overloaded)
	}
}

func TestSearchOfTooManyHoles(t *testing.T) {
	row := strings.TrimSuffix(strings.Repeat("[22.5, 17.0], ", 63), ", ")
	many := changed(t,
		"upper = [[22.5, 18.5], [22.5, 17.75], [22.5, 17.0]]", "upper = ["+row+"]",
		"lower = [[25.5, 12.25], [25.5, 11.5], [25.5, 10.75]]", "lower = ["+strings.ReplaceAll(row, "17.0", "11.5")+"]",
		"upper = [[2.5, 6.5], [2.5, 5.75]]", "upper = ["+strings.ReplaceAll(row, "22.5, 17.0", "2.5, 6.5")+"]",
		"lower = [[2.5, -5.0], [2.5, -5.75]]", "lower = ["+strings.ReplaceAll(row, "22.5, 17.0", "2.5, -5.0")+"]")
	got := command("-search", "3", many)
	want := "bowline-report: " + many + ": the brackets offer 15752961 choices of holes, and a search takes 250000; take holes out of the longest rows\n"
	if got != (outcome{1, "", want}) {
		t.Errorf("%+v, want %q", got, want)
	}
}
