// Package side is the side view of the car: its items, the parts of it that a
// picture is fitted to, and the words for what is under the pointer. It looks
// along the car's left: forward is right, up is up.
package side
