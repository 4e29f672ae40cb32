package e2e

import (
	"strings"
	"testing"
	"time"
)

func TestScriptText(t *testing.T) {
	s := new(Script).Click(Point{10.4, 20.6}).Key("ctrl+z").Type("12.5").Pause(1500 * time.Millisecond)
	want := `mousemove --window 42 10 21
sleep 0.060
mousedown 1
sleep 0.060
mouseup 1
key ctrl+z
type 12.5
sleep 1.500
`
	if got := s.text("42"); got != want {
		t.Errorf("script\n%swant\n%s", got, want)
	}
}

func TestDoubleClickPressesTwiceAtOnePlace(t *testing.T) {
	var acts []string
	for _, line := range strings.Split(new(Script).DoubleClick(Point{3, 4}).text("9"), "\n") {
		if !strings.HasPrefix(line, "sleep") {
			acts = append(acts, line)
		}
	}
	if got := strings.Join(acts, ", "); got != "mousemove --window 9 3 4, mousedown 1, mouseup 1, mousedown 1, mouseup 1, " {
		t.Errorf("actions %q", got)
	}
}

func TestDragPressesAtTheStartAndReleasesAtTheEnd(t *testing.T) {
	var acts []string
	for _, line := range strings.Split(new(Script).Drag(Point{100, 200}, Point{140, 120}).text("7"), "\n") {
		if !strings.HasPrefix(line, "sleep") {
			acts = append(acts, line)
		}
	}
	for i, want := range map[int]string{
		0:             "mousemove --window 7 100 200",
		1:             "mousedown 1",
		2:             "mousemove --window 7 101 198",
		len(acts) - 3: "mousemove --window 7 140 120",
		len(acts) - 2: "mouseup 1",
		len(acts) - 1: "",
	} {
		if acts[i] != want {
			t.Errorf("action %d: %q, want %q", i, acts[i], want)
		}
	}
}
