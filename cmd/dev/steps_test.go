package main

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"
)

// recorded returns a step that notes its name in log and ends with err.
func recorded(log *[]string, name string, err error, needs ...string) step {
	return step{name: name, needs: needs, run: func(context.Context) error {
		*log = append(*log, name)
		return err
	}}
}

func TestEveryStepIsTriedAndEveryFailureReported(t *testing.T) {
	var log []string
	var out bytes.Buffer
	steps := []step{
		recorded(&log, "one", errors.New("broken glass")),
		recorded(&log, "two", nil),
		recorded(&log, "three", nil, "two", "one"),
		recorded(&log, "four", nil, "three"),
		recorded(&log, "five", errors.New("spilt oil"), "two"),
	}
	err := summarize(&out, runSteps(context.Background(), &out, steps), len(steps))
	if got := strings.Join(log, " "); got != "one two five" {
		t.Errorf("steps tried: %s; want one two five", got)
	}
	if err == nil || err.Error() != "4 of 5 steps did not pass: one, three, four, five" {
		t.Errorf("summary's error: %v", err)
	}
	for _, want := range []string{"=== 1/5 one", "broken glass", "passed: two", "not run: three (needs: one)", "not run: four (needs: three)", "spilt oil"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("output lacks %q:\n%s", want, out.String())
		}
	}
}

func TestSummaryOfASuiteThatPasses(t *testing.T) {
	var log []string
	var out bytes.Buffer
	steps := []step{recorded(&log, "one", nil), recorded(&log, "two", nil, "one")}
	if err := summarize(&out, runSteps(context.Background(), &out, steps), len(steps)); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(out.String(), "all 2 steps passed") {
		t.Errorf("summary: %s", out.String())
	}
}

func TestInterruptStopsTheSuite(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	var log []string
	var out bytes.Buffer
	stop := step{name: "stop", run: func(context.Context) error { cancel(); return nil }}
	steps := []step{stop, recorded(&log, "after", nil)}
	err := summarize(&out, runSteps(ctx, &out, steps), len(steps))
	if len(log) > 0 || err == nil || !strings.Contains(err.Error(), "interrupted after 1 of 2") {
		t.Errorf("after an interrupt: steps %v, error %v", log, err)
	}
}

func TestStepsNeedOnlyEarlierSteps(t *testing.T) {
	for _, goos := range []string{"linux", "darwin", "windows"} {
		seen := map[string]bool{}
		for _, s := range (suite{cc: "gcc"}).steps(goos) {
			for _, n := range s.needs {
				if !seen[n] {
					t.Errorf("%s: step %q needs %q, which does not come before it", goos, s.name, n)
				}
			}
			if seen[s.name] {
				t.Errorf("%s: two steps are called %q", goos, s.name)
			}
			seen[s.name] = true
		}
	}
}

func TestUnknownCommandsAreRefused(t *testing.T) {
	for _, args := range [][]string{nil, {"biuld"}, {"test", "fast"}} {
		if err := dispatch(context.Background(), args); err == nil || !strings.Contains(err.Error(), "usage:") {
			t.Errorf("dev %v: error %v, want one that shows the usage", args, err)
		}
	}
}

func TestShellLineQuotesWhatAShellWouldSplit(t *testing.T) {
	got := shellLine([]string{"A=1"}, "go", "run", "-tags", "", "my car.toml", "it's")
	if want := `A=1 go run -tags '' 'my car.toml' 'it'\''s'`; got != want {
		t.Errorf("line %s, want %s", got, want)
	}
}
