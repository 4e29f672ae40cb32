package main

import (
	"slices"
	"strings"
	"testing"
)

// wholeTree lists one file under every allowed name.
func wholeTree() []string {
	return []string{
		".gitignore", ".ci/run", "README.md", "DEVELOPERS.md", "FyneApp.toml", "go.mod", "go.sum",
		"app/window/window.go", "assets/icon.png", "cmd/dev/main.go", "model/car/car.go", "plotting/chart.go", "testdata/car.toml",
	}
}

func TestLayoutAcceptsTheWholeTree(t *testing.T) {
	if got := layoutProblems(wholeTree()); len(got) > 0 {
		t.Errorf("problems in a sound tree: %v", got)
	}
}

func TestLayoutNamesWhatIsTooMuchAndWhatIsMissing(t *testing.T) {
	files := append(wholeTree(), "notes.txt", "tools/a.go", "tools/b.go")
	files = slices.DeleteFunc(files, func(f string) bool { return f == "README.md" || strings.HasPrefix(f, "plotting/") })
	got := layoutProblems(files)
	want := []string{"notes.txt does not belong", "tools does not belong", "plotting is missing", "README.md is missing"}
	if len(got) != len(want) {
		t.Fatalf("problems %v, want %d", got, len(want))
	}
	for i := range want {
		if !strings.HasPrefix(got[i], want[i]) {
			t.Errorf("problem %d: %q, want one that begins %q", i, got[i], want[i])
		}
	}
}
