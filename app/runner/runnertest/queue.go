// Package runnertest stands in for the toolkit's queue in tests of what runs
// on workers.
package runnertest

import "bowline/app/runner"

// Queue is a queue that the test runs.
type Queue = runner.Queue

// NewQueue returns an empty queue.
func NewQueue() *Queue { return runner.NewQueue() }
