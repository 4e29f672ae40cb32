package document

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// touch makes an empty file and returns its path.
func touch(t testing.TB, folder, name string) string {
	t.Helper()
	path := filepath.Join(folder, name)
	must(t, os.WriteFile(path, nil, 0o600))
	return path
}

func TestRecentKeepsTheLastFiles(t *testing.T) {
	cars, state := t.TempDir(), filepath.Join(t.TempDir(), "state")
	r := LoadRecent(state)
	if paths := r.Paths(); len(paths) != 0 {
		t.Errorf("starts with %v", paths)
	}
	var all []string
	for i := range 10 {
		all = append(all, touch(t, cars, fmt.Sprintf("%d.toml", i)))
		must(t, r.Add(all[i]))
	}
	must(t, r.Add(filepath.Join(cars, "other", "..", "5.toml")))
	want := []string{all[5], all[9], all[8], all[7], all[6], all[4], all[3], all[2]}
	for _, list := range []*Recent{r, LoadRecent(state)} {
		if got := list.Paths(); !slices.Equal(got, want) {
			t.Errorf("%v, want %v", got, want)
		}
	}
}

func TestRecentTakesARelativePath(t *testing.T) {
	cars := t.TempDir()
	path := touch(t, cars, "car.toml")
	t.Chdir(cars)
	r := LoadRecent(t.TempDir())
	must(t, r.Add("car.toml"))
	must(t, r.Add(path))
	if got := r.Paths(); !slices.Equal(got, []string{path}) {
		t.Errorf("%v, want %s alone", got, path)
	}
}

func TestRecentRemembersMissingFiles(t *testing.T) {
	cars, state := t.TempDir(), t.TempDir()
	r := LoadRecent(state)
	first, second := touch(t, cars, "first.toml"), touch(t, cars, "second.toml")
	must(t, r.Add(first))
	must(t, r.Add(second))
	must(t, os.Remove(second))
	must(t, os.Mkdir(second, 0o700))
	r = LoadRecent(state)
	if got := r.Paths(); !slices.Equal(got, []string{first}) {
		t.Errorf("%v while the second is missing", got)
	}
	must(t, r.Add(first))
	must(t, os.Remove(second))
	touch(t, cars, "second.toml")
	if got := LoadRecent(state).Paths(); !slices.Equal(got, []string{first, second}) {
		t.Errorf("%v when the second is back", got)
	}
}

func TestRecentToleratesABrokenFile(t *testing.T) {
	cars := t.TempDir()
	path := touch(t, cars, "car.toml")
	for content, want := range map[string][]string{
		"":              nil,
		"[\"/a":         nil,
		`{"paths": []}`: nil,
		`[1, 2]`:        nil,
		`null`:          nil,
		`["recent_test.go", "", "` + path + `", "` + path + `"]`: {path},
	} {
		state := t.TempDir()
		must(t, os.WriteFile(filepath.Join(state, recentName), []byte(content), 0o600))
		r := LoadRecent(state)
		if got := r.Paths(); !slices.Equal(got, want) {
			t.Errorf("%q: %v, want %v", content, got, want)
		}
		must(t, r.Add(path))
		if got := LoadRecent(state).Paths(); !slices.Equal(got, []string{path}) {
			t.Errorf("%q: %v after adding", content, got)
		}
	}
}

func TestRecentThatCannotBeWritten(t *testing.T) {
	cars := t.TempDir()
	path := touch(t, cars, "car.toml")
	state := filepath.Join(t.TempDir(), "state")
	blockFolder(t, state)
	r := LoadRecent(state)
	if r.Add(path) == nil {
		t.Error("no error")
	}
	if got := r.Paths(); !slices.Equal(got, []string{path}) {
		t.Errorf("%v, want the file nevertheless", got)
	}
}
