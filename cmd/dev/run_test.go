package main

import (
	"net"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// environment returns a getenv over NAME=value pairs.
func environment(pairs map[string]string) func(string) string {
	return func(name string) string { return pairs[name] }
}

func TestDisplayProblem(t *testing.T) {
	for _, c := range []struct {
		name      string
		env       map[string]string
		answering string // The one address that answers.
		want      string // What the problem says; empty for none.
	}{
		{"nothing set", nil, "", "no display"},
		{"local and answering", map[string]string{"DISPLAY": ":0"}, "unix /tmp/.X11-unix/X0", ""},
		{"local, abstract socket only", map[string]string{"DISPLAY": ":1.0"}, "unix @/tmp/.X11-unix/X1", ""},
		{"local and dead", map[string]string{"DISPLAY": ":0"}, "unix /tmp/.X11-unix/X1", "does not answer"},
		{"forwarded", map[string]string{"DISPLAY": "localhost:10.0"}, "tcp localhost:6010", ""},
		{"Wayland without X", map[string]string{"WAYLAND_DISPLAY": "wayland-0"}, "", "Xwayland"},
		{"Wayland with X", map[string]string{"WAYLAND_DISPLAY": "wayland-0", "DISPLAY": ":0"}, "unix /tmp/.X11-unix/X0", ""},
		{"no number", map[string]string{"DISPLAY": "host:"}, "", "should be a number"},
		{"no colon", map[string]string{"DISPLAY": "0"}, "", "should look like"},
	} {
		reach := func(network, address string) bool { return network+" "+address == c.answering }
		err := displayProblem(environment(c.env), reach)
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: problem %v, want %q", c.name, err, c.want)
		}
	}
}

func TestDialAnswersOnlyWhereSomethingListens(t *testing.T) {
	socket := filepath.Join(t.TempDir(), "X0")
	if dialAnswers("unix", socket) {
		t.Error("a socket that does not exist answers")
	}
	listener, err := net.Listen("unix", socket)
	if err != nil {
		t.Fatal(err)
	}
	defer listener.Close()
	if !dialAnswers("unix", socket) {
		t.Error("a listening socket does not answer")
	}
}

func TestMemoryTuningLeavesTheUsersSettings(t *testing.T) {
	set := func(name string) (string, bool) { return "", name == "MALLOC_TOP_PAD_" }
	got := memoryTuning("linux", set)
	if want := []string{"MALLOC_TRIM_THRESHOLD_=536870912", "MALLOC_MMAP_THRESHOLD_=33554432"}; !slices.Equal(got, want) {
		t.Errorf("settings %v, want %v", got, want)
	}
	if got := memoryTuning("darwin", set); got != nil {
		t.Errorf("settings where there is no glibc: %v", got)
	}
}
