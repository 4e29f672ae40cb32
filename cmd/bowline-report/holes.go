package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"bowline/app/report"
	"bowline/model/car"
	"bowline/model/holes"
)

// holeNumbers is the value of -holes: a hole of each row, in the order of
// car.Rows and counted from 1.
type holeNumbers struct {
	car.Holes
	given bool
}

// String implements flag.Value.
func (h *holeNumbers) String() string {
	if !h.given {
		return ""
	}
	return strings.ReplaceAll(h.Holes.String(), "·", ",")
}

// Set implements flag.Value.
func (h *holeNumbers) Set(text string) error {
	list := strings.Split(text, ",")
	if len(list) != len(car.Rows) {
		return errors.New("give four numbers, as in 4,3,2,3")
	}
	for i, row := range car.Rows {
		n, err := strconv.Atoi(strings.TrimSpace(list[i]))
		if err != nil || n < 1 {
			return fmt.Errorf("the %s hole %q is no number from 1 on", row, strings.TrimSpace(list[i]))
		}
		*row.Of(&h.Holes) = n - 1
	}
	h.given = true
	return nil
}

// checkHoles refuses options about holes that do not go together.
func (q *request) checkHoles(flags *flag.FlagSet) error {
	var searched bool
	flags.Visit(func(f *flag.Flag) { searched = searched || f.Name == "search" })
	switch {
	case q.card != "" && !q.holes.given:
		return errors.New("-card is without holes to go to; give -holes N,N,N,N too")
	case q.card == "" && q.holes.given:
		return errors.New("-holes is without a card to write; give -card FILE too")
	case q.card != "" && q.pdf != "" && samePath(q.card, q.pdf):
		return errors.New("-card and -pdf are the same file; give each one of its own")
	case searched && q.search < 1:
		return fmt.Errorf("-search %d is too few; give a number from 1 on", q.search)
	case !searched && (q.launchAll || q.by != ""):
		return errors.New("-launch-all and -by are about a search; give -search N too")
	case searched && q.json:
		return errors.New("-search and -json exclude each other; -search with -csv DIR writes a table for other programs")
	}
	return nil
}

// orderNames are the values of -by, by holes.Order.
var orderNames = [len(holes.Orders)]string{
	holes.NearestTarget: "target", holes.LeastPush: "push", holes.LeastShare: "share", holes.FewestTurns: "turns",
	holes.Quickest: "time", holes.LeastEnvelope: "envelope", holes.MostEven: "even", holes.LeastLift: "lift",
}

// order reads the value of -by, that of the target for none.
func (q *request) order() (holes.Order, error) {
	if q.by == "" {
		return holes.NearestTarget, nil
	}
	i := slices.Index(orderNames[:], q.by)
	if i < 0 {
		return 0, fmt.Errorf("-by %q is unknown; give one of %s", q.by, strings.Join(orderNames[:], ", "))
	}
	return holes.Orders[i], nil
}

// checkOrder refuses an order that is none, and one by launches without these.
func (q *request) checkOrder() error {
	o, err := q.order()
	if err == nil && o.NeedsLaunches() && !q.launchAll {
		return fmt.Errorf("-by %s needs the launch of every combination; give -launch-all too", q.by)
	}
	return err
}

// samePath reports whether two names lead to the same file, there or not.
func samePath(a, b string) bool {
	absoluteA, errA := filepath.Abs(a)
	absoluteB, errB := filepath.Abs(b)
	return errA == nil && errB == nil && absoluteA == absoluteB || sameFile(a, b)
}

// saveCard writes the card from the setup asked for to the holes asked for.
func (q *request) saveCard(in *analyzed, now time.Time) error {
	card, err := report.NewCard(context.Background(), in.result.Car, in.result.Options.Setup, q.holes.Holes, in.library, in.units)
	if err != nil {
		return fmt.Errorf("%s: -holes %s: %w", q.name(), &q.holes, err)
	}
	return card.Save(q.card, now)
}

// rank searches all combinations of holes, launches them where that is asked for, and
// ranks them, those within the bars' loads first.
func (q *request) rank(in *analyzed) ([]holes.Place, error) {
	c, setup := in.result.Car, in.result.Options.Setup
	table, err := holes.Search(context.Background(), c, in.library, holes.Options{})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", q.name(), err)
	}
	if q.launchAll {
		launches, err := holes.LaunchAll(context.Background(), table, c, setup, holes.LaunchOptions{})
		if err != nil {
			return nil, fmt.Errorf("%s: %w", q.name(), err)
		}
		table = table.With(launches)
	}
	order, err := q.order()
	if err != nil {
		return nil, err
	}
	target := holes.TargetOf(c)
	wishes := holes.Wishes{Order: order, WithinLoad: true, WithinLift: q.launchAll}
	return holes.Rank(table, c, setup, target, wishes.Of(target)), nil
}
