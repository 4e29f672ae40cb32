// Package palette holds the colors of everything Bowline draws, for light and
// dark screens. Charts and the side view take them from here and nowhere else.
//
// Push and pull are an orange red and a blue wherever a bar's force is drawn or
// written; they stay apart for the common kinds of color blindness, and place or word
// always tells them apart as well. Upper and lower, left and right have no colors: the
// width of a line, its pattern and its name tell them apart. A Ramp colors values by where
// they are to a target.
package palette

import "image/color"

// Palette gives every drawn thing its color. All are opaque unless the comment
// says otherwise.
type Palette struct {
	Background color.RGBA // behind the side view and the charts
	Raised     color.RGBA // behind tags and legends
	Ink        color.RGBA // main text and outlines
	Muted      color.RGBA // secondary text, axes
	Grid       color.RGBA // grid lines
	Accent     color.RGBA // selection, current setup, markers

	Push  color.RGBA // a bar that pushes
	Pull  color.RGBA // a bar that pulls
	Slack color.RGBA // a bar without force, or whose force is unknown

	Series [6]color.RGBA // what has no meaning but to be told apart, by shape as well

	Good   color.RGBA // inside a target or below a limit
	Bad    color.RGBA // outside, beyond
	Warn   color.RGBA // words that ask for care
	Target color.RGBA // fill of a target region, translucent

	Ground  color.RGBA // the ground line
	Tire    color.RGBA // tire fill
	Rim     color.RGBA // wheel outline
	Housing color.RGBA // housing and its bracket
	Chassis color.RGBA // chassis bracket
	Hole    color.RGBA // unused holes
	Spring  color.RGBA // coil-over
	Shaft   color.RGBA // driveshaft
	Center  color.RGBA // instant center and the bar lines to it
	Action  color.RGBA // line from the tire contact through the instant center
	Whole   color.RGBA // the 100 % line
	CG      color.RGBA // center of gravity
	Ghost   color.RGBA // ride height behind a moved pose

	Frame     color.RGBA // tubes and blocks drawn for orientation only
	FrameEdge color.RGBA // their outlines
	Shell     color.RGBA // the body around them

	Squat Ramp // anti-squat of the combinations of holes
}

func rgb(hex uint32) color.RGBA {
	return color.RGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 0xff}
}

// translucent returns the color premultiplied at an opacity of 0 to 255.
func translucent(hex uint32, alpha uint8) color.RGBA {
	c := rgb(hex)
	scale := func(x uint8) uint8 { return uint8(uint32(x) * uint32(alpha) / 255) }
	return color.RGBA{R: scale(c.R), G: scale(c.G), B: scale(c.B), A: alpha}
}

// Light is for light screens and for paper.
var Light = Palette{
	Background: rgb(0xfbf9f5), Raised: rgb(0xf0ece3), Ink: rgb(0x1d2830), Muted: rgb(0x5c6870), Grid: rgb(0xe3ded3), Accent: rgb(0x0d6f66),
	Push: rgb(0xbe3f08), Pull: rgb(0x0b579b), Slack: rgb(0x616b72),
	Series: [6]color.RGBA{rgb(0x0d6f66), rgb(0x94359a), rgb(0x75671a), rgb(0x1d2830), rgb(0x3f8f2f), rgb(0xc4307c)},
	Good:   rgb(0x2c7a3d), Bad: rgb(0x930a47), Warn: rgb(0x7a6000), Target: translucent(0x2c7a3d, 40),
	Ground: rgb(0x6b5d48), Tire: rgb(0xcdd0d1), Rim: rgb(0x4a555c), Housing: rgb(0x39444b), Chassis: rgb(0x6d5a2c), Hole: rgb(0x98a0a5), Spring: rgb(0x7a8288), Shaft: rgb(0xa8adb0),
	Center: rgb(0x0d6f66), Action: rgb(0x0d6f66), Whole: rgb(0x75671a), CG: rgb(0x1d2830), Ghost: rgb(0xc3c6c6),
	Frame: rgb(0xe9e7e1), FrameEdge: rgb(0xc4c3bd), Shell: rgb(0xf5f2eb),
	Squat: newRamp(0x2b1a78, 0x2a50ba, 0x0c7c40, 0xb57a05, 0xc7803a),
}

// Dark is for dark screens.
var Dark = Palette{
	Background: rgb(0x151b1f), Raised: rgb(0x232b31), Ink: rgb(0xece7dc), Muted: rgb(0x9fa9af), Grid: rgb(0x2a3339), Accent: rgb(0x45c4b5),
	Push: rgb(0xff8a4d), Pull: rgb(0x62b5f5), Slack: rgb(0x8d979d),
	Series: [6]color.RGBA{rgb(0x45c4b5), rgb(0xe28fe6), rgb(0xd6c34a), rgb(0xece7dc), rgb(0x8fd94a), rgb(0xff7fb0)},
	Good:   rgb(0x6fcf83), Bad: rgb(0xff5a88), Warn: rgb(0xf0cf4e), Target: translucent(0x6fcf83, 38),
	Ground: rgb(0xa8926d), Tire: rgb(0x384249), Rim: rgb(0xa9b3b8), Housing: rgb(0xc3cbd0), Chassis: rgb(0xd2b566), Hole: rgb(0x6f7a81), Spring: rgb(0x9aa4aa), Shaft: rgb(0x59646b),
	Center: rgb(0x45c4b5), Action: rgb(0x45c4b5), Whole: rgb(0xd6c34a), CG: rgb(0xece7dc), Ghost: rgb(0x46525a),
	Frame: rgb(0x2b343a), FrameEdge: rgb(0x434e55), Shell: rgb(0x1b2227),
	Squat: newRamp(0x6a55c8, 0x4f8dee, 0x2fbf7c, 0xf5b840, 0xffe9a8),
}
