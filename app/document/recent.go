package document

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"

	"bowline/model/carfile"
)

// MaxRecent bounds the list of recent files.
const MaxRecent = 8

// recentName is the file that holds the list: a JSON array of paths.
const recentName = "recent.json"

// Recent is the list of files opened or saved last. Make one with LoadRecent.
type Recent struct {
	folder string
	paths  []string // absolute, most recent first, each once
}

// LoadRecent reads the list kept in folder. Without one that can be read the
// list starts empty.
func LoadRecent(folder string) *Recent {
	r := &Recent{folder: folder}
	data, err := carfile.ReadAll(filepath.Join(folder, recentName))
	if err != nil {
		return r
	}
	var paths []string
	if json.Unmarshal(data, &paths) != nil {
		return r
	}
	slices.Reverse(paths)
	for _, path := range paths {
		if filepath.IsAbs(path) {
			r.add(path)
		}
	}
	return r
}

// Add puts a file at the head of the list and writes the list to its folder,
// which is made when it is needed. When only writing fails, the list has the
// file nevertheless.
func (r *Recent) Add(path string) error {
	path, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	r.add(path)
	data, err := json.MarshalIndent(r.paths, "", "  ")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(r.folder, 0o700); err != nil {
		return err
	}
	return carfile.Write(filepath.Join(r.folder, recentName), data)
}

func (r *Recent) add(path string) {
	others := slices.DeleteFunc(slices.Clone(r.paths), func(other string) bool { return other == path })
	r.paths = slices.Insert(others, 0, path)
	r.paths = r.paths[:min(len(r.paths), MaxRecent)]
}

// Paths returns the files that are there now, most recent first. One that is
// missing, as on a disk not mounted, keeps its place for the next time.
func (r *Recent) Paths() []string {
	return slices.DeleteFunc(slices.Clone(r.paths), func(path string) bool {
		info, err := os.Stat(path)
		return err != nil || info.IsDir()
	})
}
