package e2e

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// sample is a line of the log with its revision left open.
const sample = `{"revision":N,"event":"frame","instant_center":[1.05,0.3],"anti_squat":154.6,"upper_push":-30000,` +
	`"view":{"upper_chassis":[400,300],"lower_chassis":[430,380.5],"upper_housing":[200,250],"lower_housing":[200,390]}}` + "\n"

// sampleLine returns the sample with a revision.
func sampleLine(revision string) string { return strings.Replace(sample, "N", revision, 1) }

// logWith returns a StateLog whose file holds text, and a function that appends to it.
func logWith(t *testing.T, text string) (*StateLog, func(string)) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "states.jsonl")
	appendText := func(text string) {
		f, err := os.OpenFile(file, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := f.WriteString(text); err != nil {
			t.Fatal(err)
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
	}
	appendText(text)
	return &StateLog{file: file}, appendText
}

func TestParseState(t *testing.T) {
	s, err := parseState([]byte(sampleLine("3")))
	if err != nil {
		t.Fatal(err)
	}
	if s.Revision != 3 || s.Event != "frame" || *s.InstantCenter != [2]float64{1.05, 0.3} || s.AntiSquat != 154.6 || s.UpperPush != -30000 {
		t.Errorf("state %+v", s)
	}
	if got, want := s.Pivot("lower_chassis"), (Point{430, 380.5}); got != want {
		t.Errorf("lower chassis pivot at %v, want %v", got, want)
	}
	parallel, err := parseState([]byte(strings.Replace(sampleLine("3"), "[1.05,0.3]", "null", 1)))
	if err != nil || parallel.InstantCenter != nil {
		t.Errorf("parallel bars: instant center %v, error %v", parallel.InstantCenter, err)
	}
}

func TestParseStateRefuses(t *testing.T) {
	for name, change := range map[string][2]string{
		"an unknown name": {`"event"`, `"evnt"`},
		"a missing pivot": {`"upper_housing"`, `"upper_hosing"`},
		"no number":       {"154.6", "NaN"},
		"half a line":     {"[200,390]}}", "[200,390"},
	} {
		if _, err := parseState([]byte(strings.Replace(sampleLine("1"), change[0], change[1], 1))); err == nil {
			t.Errorf("%s was accepted", name)
		}
	}
}

func TestStateLogTakesInWholeLinesOnce(t *testing.T) {
	log, more := logWith(t, sampleLine("1")+sampleLine("2")[:40])
	revisions := func() (out []int) {
		for {
			s, ok, err := log.take()
			if err != nil {
				t.Fatal(err)
			}
			if !ok {
				return out
			}
			out = append(out, s.Revision)
		}
	}
	if got := revisions(); len(got) != 1 || got[0] != 1 {
		t.Errorf("first reading: revisions %v, want 1", got)
	}
	if got := revisions(); len(got) != 0 {
		t.Errorf("half a line: revisions %v, want none", got)
	}
	more(sampleLine("2")[40:] + sampleLine("3"))
	if got := revisions(); len(got) != 2 || got[0] != 2 || got[1] != 3 {
		t.Errorf("last reading: revisions %v, want 2 and 3", got)
	}
}

func TestStateLogWithoutAFileIsEmpty(t *testing.T) {
	log := &StateLog{file: filepath.Join(t.TempDir(), "none")}
	if s, ok, err := log.take(); err != nil || ok {
		t.Errorf("state %+v (found: %v), error %v", s, ok, err)
	}
}

func TestWaitFindsAStateOrNamesWhatIsMissing(t *testing.T) {
	log, _ := logWith(t, sampleLine("1")+sampleLine("2")+sampleLine("3"))
	revision := func(n int) func(State) bool { return func(s State) bool { return s.Revision == n } }
	s, err := log.Wait(time.Minute, "revision 2", revision(2))
	if err != nil || s.Revision != 2 {
		t.Fatalf("waited for revision 2: got %d, error %v", s.Revision, err)
	}
	_, err = log.Wait(0, "revision 4", revision(4))
	if err == nil || !strings.Contains(err.Error(), "revision 4") {
		t.Errorf("a state that never comes: error %v", err)
	}
	if s, err = log.Settle(s, pollEvery, time.Minute); err != nil || s.Revision != 2 {
		t.Errorf("nothing new: settled at revision %d, error %v, want 2", s.Revision, err)
	}
}

func TestSettleReturnsTheLastOfABatch(t *testing.T) {
	log, _ := logWith(t, sampleLine("1")+sampleLine("2")+sampleLine("5"))
	first, err := log.Wait(time.Minute, "any state", func(State) bool { return true })
	if err != nil || first.Revision != 1 {
		t.Fatalf("first state: revision %d, error %v, want 1", first.Revision, err)
	}
	if s, err := log.Settle(first, pollEvery, time.Minute); err != nil || s.Revision != 5 {
		t.Errorf("settled at revision %d, error %v, want 5", s.Revision, err)
	}
}
