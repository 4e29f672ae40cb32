// Package e2e drives the built window the way a person does, with mouse and keyboard on an X server without a screen, and reads what the
// window then shows from the log of states that it keeps (bowline -statelog FILE).
//
// The tests that open a window carry the build tag e2e and take the program to drive as an argument:
//
//	go build -tags migrated_fynedo -o /tmp/bowline ./cmd/bowline
//	go test -tags e2e ./cmd/bowline/e2e -args -bowline /tmp/bowline
//
// They need Xvfb, xdotool and ImageMagick's import.
package e2e

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"time"
)

const (
	// startTimeout is how long an X server or a window may take to come up on a busy machine.
	startTimeout = 60 * time.Second
	// stopTimeout is how long a program may take to end after it was asked to.
	stopTimeout = 10 * time.Second
)

// Display is an X server that draws into memory only.
type Display struct {
	Name   string // As in DISPLAY, such as ":7".
	server *child
}

// StartDisplay starts a server with one screen of width × height pixels, 24 bits deep and 96 dots an inch, on the first free display
// number. It fails when Xvfb is not there or does not come up.
func StartDisplay(width, height int) (*Display, error) {
	numbers, numberFile, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	defer numbers.Close()
	defer numberFile.Close()
	// The server writes its display number to the first file beyond the standard three.
	cmd := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", fmt.Sprintf("%dx%dx24", width, height), "-dpi", "96", "-nolisten", "tcp", "-noreset")
	cmd.ExtraFiles = []*os.File{numberFile}
	var complaints bytes.Buffer
	cmd.Stderr = &complaints
	server, err := startChild(cmd)
	if err != nil {
		return nil, err
	}
	// With our copy closed, reading ends when the server does.
	numberFile.Close()
	if err := numbers.SetReadDeadline(time.Now().Add(startTimeout)); err != nil {
		return nil, errors.Join(err, server.stop())
	}
	number, err := bufio.NewReader(numbers).ReadString('\n')
	if err != nil {
		stopped := server.stop()
		return nil, errors.Join(fmt.Errorf("no display number from Xvfb: %w\n%s", err, complaints.String()), stopped)
	}
	return &Display{Name: ":" + strings.TrimSpace(number), server: server}, nil
}

// Close ends the server.
func (d *Display) Close() error { return d.server.stop() }

// Screenshot writes what the screen shows to a PNG file.
func (d *Display) Screenshot(file string) error {
	_, err := d.tool("", "import", "-window", "root", file)
	return err
}

// tool runs a program on the display, with input on its standard input, and returns what it prints.
func (d *Display) tool(input, name string, args ...string) (string, error) {
	cmd := exec.Command(name, args...)
	cmd.Env = append(os.Environ(), "DISPLAY="+d.Name)
	cmd.Stdin = strings.NewReader(input)
	var complaints bytes.Buffer
	cmd.Stderr = &complaints
	out, err := cmd.Output()
	if err != nil {
		return "", fmt.Errorf("%s: %w %s", name, err, strings.TrimSpace(complaints.String()))
	}
	return strings.TrimSpace(string(out)), nil
}

// child is a running program whose end can be waited for.
type child struct {
	cmd  *exec.Cmd
	done chan struct{} // Closed when the program has ended.
	err  error         // How it ended; set before done is closed.
}

// startChild starts cmd.
func startChild(cmd *exec.Cmd) (*child, error) {
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	c := &child{cmd: cmd, done: make(chan struct{})}
	go func() {
		c.err = cmd.Wait()
		close(c.done)
	}()
	return c, nil
}

// ended reports whether the program has ended.
func (c *child) ended() bool {
	select {
	case <-c.done:
		return true
	default:
		return false
	}
}

// stop asks the program to end and kills it when it does not. A program that had ended before, one that ends with an error and one that
// had to be killed are errors.
func (c *child) stop() error {
	name := c.cmd.Args[0]
	if c.ended() {
		return fmt.Errorf("%s had ended by itself: %w", name, describeEnd(c.err))
	}
	if err := c.cmd.Process.Signal(syscall.SIGTERM); err != nil {
		return fmt.Errorf("%s cannot be asked to end: %w", name, err)
	}
	select {
	case <-c.done:
		if c.err != nil {
			return fmt.Errorf("%s, asked to end: %w", name, c.err)
		}
		return nil
	case <-time.After(stopTimeout):
	}
	if err := c.cmd.Process.Kill(); err != nil {
		return fmt.Errorf("%s cannot be killed: %w", name, err)
	}
	<-c.done
	return fmt.Errorf("%s did not end within %v after SIGTERM and was killed", name, stopTimeout)
}

// describeEnd turns a good end into an error too, for a program that should still run.
func describeEnd(err error) error {
	if err == nil {
		return errors.New("exit status 0")
	}
	return err
}
