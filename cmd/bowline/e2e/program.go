package e2e

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// pollEvery is how often a condition outside our process is looked at again.
const pollEvery = 20 * time.Millisecond

// Program is the window under test, running on a display.
type Program struct {
	States *StateLog // What the window has shown.

	display *Display
	process *child
	window  string // The X server's number of the window.
	log     string // The file that takes standard output and standard error.
}

// StartProgram runs binary on the display with the car file and waits until its window can be seen. home is an empty folder: the program's
// working folder and HOME, so that it finds neither the settings of whoever runs the test nor a FyneApp.toml that would switch the
// toolkit's thread warnings off. On an error the program is no longer running.
func StartProgram(display *Display, binary, home, car string) (*Program, error) {
	p := &Program{
		States:  &StateLog{file: filepath.Join(home, "states.jsonl")},
		display: display,
		log:     filepath.Join(home, "bowline.log"),
	}
	output, err := os.Create(p.log)
	if err != nil {
		return nil, err
	}
	defer output.Close()
	cmd := exec.Command(binary, "-statelog", p.States.file, car)
	cmd.Dir = home
	cmd.Env = environment(display.Name, home)
	cmd.Stdout, cmd.Stderr = output, output
	if p.process, err = startChild(cmd); err != nil {
		return nil, err
	}
	if err := p.awaitWindow(); err != nil {
		return nil, errors.Join(err, p.Stop(), errors.New("log:\n"+p.Log()))
	}
	return p, nil
}

// environment is all that the program sees of ours: software drawing at scale 1, and an allocator that keeps the memory of textures.
func environment(display, home string) []string {
	return []string{
		"PATH=" + os.Getenv("PATH"),
		"HOME=" + home,
		"DISPLAY=" + display,
		"LANG=en_US.UTF-8",
		"FYNE_SCALE=1",
		"LIBGL_ALWAYS_SOFTWARE=1",
		"MALLOC_TRIM_THRESHOLD_=536870912",
		"MALLOC_MMAP_THRESHOLD_=33554432",
		"MALLOC_TOP_PAD_=67108864",
	}
}

// awaitWindow waits until the window can be seen.
func (p *Program) awaitWindow() error {
	for deadline := time.Now().Add(startTimeout); time.Now().Before(deadline); time.Sleep(pollEvery) {
		if p.process.ended() {
			return errors.New("the program ended before its window opened")
		}
		// xdotool fails while there is no such window.
		found, err := p.display.tool("", "xdotool", "search", "--onlyvisible", "--name", "Bowline")
		if err == nil {
			p.window, _, _ = strings.Cut(found, "\n")
			return nil
		}
	}
	return fmt.Errorf("no window called Bowline within %v", startTimeout)
}

// Title returns the window's title.
func (p *Program) Title() (string, error) {
	return p.display.tool("", "xdotool", "getwindowname", p.window)
}

// Size returns the window's width and height in pixels.
func (p *Program) Size() (width, height int, err error) {
	text, err := p.display.tool("", "xdotool", "getwindowgeometry", "--shell", p.window)
	if err != nil {
		return 0, 0, err
	}
	values := map[string]int{}
	for line := range strings.Lines(text) {
		name, value, _ := strings.Cut(strings.TrimSpace(line), "=")
		if n, err := strconv.Atoi(value); err == nil {
			values[name] = n
		}
	}
	if values["WIDTH"] <= 0 || values["HEIGHT"] <= 0 {
		return 0, 0, fmt.Errorf("xdotool told no size: %q", text)
	}
	return values["WIDTH"], values["HEIGHT"], nil
}

// Play lets xdotool carry out a script, all in one process so that moves follow each other like those of a hand.
func (p *Program) Play(s *Script) error {
	_, err := p.display.tool(s.text(p.window), "xdotool", "-")
	return err
}

// Screenshot writes what the screen shows to a PNG file.
func (p *Program) Screenshot(file string) error { return p.display.Screenshot(file) }

// Log returns all that the program has printed.
func (p *Program) Log() string {
	text, err := os.ReadFile(p.log)
	if err != nil {
		return "cannot be read: " + err.Error()
	}
	return string(text)
}

// Stop ends the program: SIGTERM first, SIGKILL when that does not help. It is an error when the program had ended before, did not obey, or
// did not end well.
func (p *Program) Stop() error { return p.process.stop() }
