package chart

import "testing"

func TestWrap(t *testing.T) {
	l := (typeset{}).of(10, false)
	words := "a bar that fails at launch can hurt someone"
	lines := l.wrap(words, 80)
	if len(lines) < 2 {
		t.Fatalf("%q", lines)
	}
	joined := ""
	for i, line := range lines {
		if l.width(line) > 80 {
			t.Errorf("%q is %v wide", line, l.width(line))
		}
		if i > 0 {
			joined += " "
		}
		joined += line
	}
	if joined != words {
		t.Errorf("%q", joined)
	}
	if got := l.wrap("", 80); got != nil {
		t.Errorf("%q", got)
	}
}

func TestDotted(t *testing.T) {
	l := (typeset{}).of(10, false)
	line := "a bar that fails at launch"
	if got := l.dotted(line, 500); got != line+" …" {
		t.Errorf("%q", got)
	}
	got := l.dotted(line, l.width(line))
	if got != "a bar that fails at …" || l.width(got) > l.width(line) {
		t.Errorf("%q is %v wide", got, l.width(got))
	}
	if got := l.dotted(line, 12); got != "…" {
		t.Errorf("%q", got)
	}
}
