package palette

import (
	"image/color"
	"testing"
)

// Push and pull are told apart by every eye, and from a bar without force, from text
// and from what is beyond a limit: more than six just noticeable differences, of 2.3
// each (from memory).
func TestPushAndPullStandApart(t *testing.T) {
	for theme, p := range themes {
		others := map[string]color.RGBA{"slack": p.Slack, "beyond a limit": p.Bad, "ink": p.Ink}
		for eye, m := range eyes {
			push, pull := seen(m, p.Push), seen(m, p.Pull)
			if d := apart(push, pull); d < 60 {
				t.Errorf("%s, %s: push and pull are only %.1f apart", theme, eye, d)
			}
			for name, c := range others {
				for way, of := range map[string][3]float64{"push": push, "pull": pull} {
					if d := apart(of, seen(m, c)); d < 15 {
						t.Errorf("%s, %s: %s and %s are only %.1f apart", theme, eye, way, name, d)
					}
				}
			}
		}
	}
}
