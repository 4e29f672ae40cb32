package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"bowline/app/report"
	"bowline/model/preload"
)

// checkPreload refuses what does not go with a search for turns.
func (q *request) checkPreload() error {
	switch {
	case q.preload && q.search != 0:
		return errors.New("-preload and -search exclude each other; each is written instead of the report")
	case q.preload && q.json:
		return errors.New("-preload and -json exclude each other; what -preload finds is text")
	}
	return nil
}

// writeTurns searches for the turns that make the rear tires most even and writes them.
func (q *request) writeTurns(out io.Writer, in *analyzed) error {
	r := in.result
	found, err := preload.Find(context.Background(), r.Car, r.Options.Setup, in.library, preload.Options{})
	if err != nil {
		return fmt.Errorf("%s: %w", q.name(), err)
	}
	return report.WritePreload(out, found, in.units)
}
