//go:build ci

package main

// leanGraphics has no window to ask for.
func leanGraphics() {}
