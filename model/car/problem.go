package car

import (
	"fmt"
	"strconv"
	"strings"
)

// Problem is one thing that keeps a car from being computed.
type Problem struct {
	Path  string // entry of the car file; list items count from 0, as in "setup.1.chassis_upper"
	Wrong string // what is wrong, with the value
	Right string // what would be right
}

// Key writes the path for people, counting from 1 as they do:
// "setup 2: chassis_upper", "setup 2: run 3: date",
// "chassis_bracket.upper: hole 3", "drive.curve: point 2".
func (p Problem) Key() string {
	parts := strings.Split(p.Path, ".")
	number := func(i int) string {
		n, err := strconv.Atoi(parts[i])
		if err != nil {
			return parts[i]
		}
		return strconv.Itoa(n + 1)
	}
	switch {
	case parts[0] == "setup" && len(parts) == 2:
		return "setup " + number(1)
	case parts[0] == "setup" && len(parts) > 3 && parts[2] == "run":
		key := "setup " + number(1) + ": run " + number(3)
		if len(parts) > 4 {
			key += ": " + strings.Join(parts[4:], ".")
		}
		return key
	case parts[0] == "setup" && len(parts) > 2:
		return "setup " + number(1) + ": " + strings.Join(parts[2:], ".")
	case parts[0] == "drive" && len(parts) > 2:
		return parts[0] + "." + parts[1] + ": point " + number(2)
	case strings.HasSuffix(parts[0], "_bracket") && len(parts) > 2:
		return parts[0] + "." + parts[1] + ": hole " + number(2)
	}
	return p.Path
}

// String writes the problem in one line.
func (p Problem) String() string { return fmt.Sprintf("%s: %s; %s", p.Key(), p.Wrong, p.Right) }
