package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestFormatProblem(t *testing.T) {
	for source, want := range map[string]string{
		"package a\n\nvar x = 1\n": "",
		"package a\nvar  x=1\n":    "is not formatted",
		"package a\nvar x = \n":    "does not parse",
	} {
		got := formatProblem([]byte(source))
		if (want == "") != (got == "") || !strings.HasPrefix(got, want) {
			t.Errorf("%q: problem %q, want %q", source, got, want)
		}
	}
}

func TestCheckFormatNamesTheFilesAndSkipsDotFolders(t *testing.T) {
	root := t.TempDir()
	for path, text := range map[string]string{
		"good.go":        "package a\n",
		"sub/bad.go":     "package   a\n",
		"sub/notes.txt":  "package   a\n",
		".hidden/bad.go": "package   a\n",
	} {
		path = filepath.Join(root, path)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	err := checkFormat(root)
	if err == nil || !strings.HasPrefix(err.Error(), filepath.Join(root, "sub", "bad.go")) || strings.Contains(err.Error(), "\n") {
		t.Errorf("error %v, want sub/bad.go alone", err)
	}
}
