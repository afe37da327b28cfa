package schematic

import (
	"fmt"

	"borewalk/ui/canvas"
)

// Legend returns the lines that explain the signs of the picture, for the help and the manual.
func Legend(g canvas.Glyphs) []string {
	return []string{
		fmt.Sprintf("%c %c   wall and shoe of a string that is set", g.WallSet, g.ShoeLeft),
		fmt.Sprintf("%c %c   wall and shoe of the string to be set in this section", g.WallPlanned, g.ShoeLeft),
		fmt.Sprintf("%c     wall of a string still to come", g.WallLater),
		fmt.Sprintf("%c%c%c   top of a liner, hung in the string outside it", g.HostLeft, g.Horizontal, g.HangerLeft),
		fmt.Sprintf("%c     rock          %c  washed-out wall of the open hole", g.Rock, g.Washout),
		fmt.Sprintf("%c     sea surface   %c  seabed", g.Sea, g.Seabed),
		fmt.Sprintf("%c%c%c   BOP           %c%c wellhead with a string landed in it", g.StackLeft, g.Stack, g.StackRight, g.Wellhead, g.Landed),
		fmt.Sprintf("%c     the depth being edited", g.Mark),
		fmt.Sprintf("%c %c %c %c %c %c   at a cement job: mud, spacer, lead, tail, displacer, plug", g.FillMud, g.FillSpacer, g.FillLead, g.FillTail,
			g.FillDisplacer, g.Plug),
		fmt.Sprintf("%c %c %c %c   at a kick: mud, kill mud, gas, mud in the riser over the BOP", g.FillMud, g.FillDisplacer, g.FillGas, g.FillOtherMud),
		fmt.Sprintf("%c%c%c   at a kick: choke line beside the riser; %c sea where it is let go", g.WallSet, g.FillGas, g.WallSet, g.Sea),
		"Depths are along hole from the rotary. The water is shortened.",
	}
}
