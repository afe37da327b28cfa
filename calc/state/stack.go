package state

// speck is a volume in m³ too small to be left behind alone: a cubic millimetre's
// thousandth, far below a drop. What is taken from a slug may be more than asked
// for by as much. That loses nothing, since every move goes by what was taken.
const speck = 1e-12

// A slug is a volume of one fluid.
type slug struct {
	fluid  int
	volume float64 // m³
}

// A stack is the fluids of a conduit from the top down, neighbours different.
type stack []slug

// held returns the volume of the stack in m³.
func (s stack) held() float64 {
	volume := 0.0
	for i := range s {
		volume += s[i].volume
	}
	return volume
}

// of returns the volume in m³ that the stack holds of one fluid.
func (s stack) of(fluid int) float64 {
	volume := 0.0
	for i := range s {
		if s[i].fluid == fluid {
			volume += s[i].volume
		}
	}
	return volume
}

// addTop lays a volume on top of the stack.
func (s *stack) addTop(fluid int, volume float64) {
	if !(volume > 0) {
		return
	}
	if len(*s) > 0 && (*s)[0].fluid == fluid {
		(*s)[0].volume += volume
		return
	}
	*s = append(*s, slug{})
	copy((*s)[1:], *s)
	(*s)[0] = slug{fluid, volume}
}

// addBottom lays a volume under the stack.
func (s *stack) addBottom(fluid int, volume float64) {
	if !(volume > 0) {
		return
	}
	if n := len(*s); n > 0 && (*s)[n-1].fluid == fluid {
		(*s)[n-1].volume += volume
		return
	}
	*s = append(*s, slug{fluid, volume})
}

// bandTop is addTop for two streams that meet: where the fluid is the second from
// the top it is added there, so that streams taken in turns lie as two bands and
// not as many thin ones.
func (s *stack) bandTop(fluid int, volume float64) {
	if len(*s) > 1 && (*s)[1].fluid == fluid && volume > 0 {
		(*s)[1].volume += volume
		return
	}
	s.addTop(fluid, volume)
}

// bandBottom is bandTop at the bottom.
func (s *stack) bandBottom(fluid int, volume float64) {
	if n := len(*s); n > 1 && (*s)[n-2].fluid == fluid && volume > 0 {
		(*s)[n-2].volume += volume
		return
	}
	s.addBottom(fluid, volume)
}

// takeTop takes up to a volume in m³ of the uppermost fluid, and returns what fluid
// and how much. It returns nothing from an empty stack or for no volume.
func (s *stack) takeTop(volume float64) (fluid int, took float64) {
	if len(*s) == 0 || !(volume > 0) {
		return 0, 0
	}
	top := &(*s)[0]
	fluid, took = top.fluid, volume
	if top.volume-volume < speck {
		took = top.volume
		n := copy(*s, (*s)[1:])
		*s = (*s)[:n]
		return fluid, took
	}
	top.volume -= volume
	return fluid, took
}

// takeBottom takes up to a volume in m³ of the lowest fluid, as takeTop does.
func (s *stack) takeBottom(volume float64) (fluid int, took float64) {
	n := len(*s)
	if n == 0 || !(volume > 0) {
		return 0, 0
	}
	low := &(*s)[n-1]
	fluid, took = low.fluid, volume
	if low.volume-volume < speck {
		took = low.volume
		*s = (*s)[:n-1]
		return fluid, took
	}
	low.volume -= volume
	return fluid, took
}

// fromTop takes a volume in m³ from the top, fluid by fluid, or what there is of it.
func (s *stack) fromTop(volume float64) func(yield func(fluid int, took float64) bool) {
	return func(yield func(int, float64) bool) {
		for volume > 0 {
			fluid, took := s.takeTop(volume)
			if took == 0 || !yield(fluid, took) {
				return
			}
			volume -= took
		}
	}
}

// fromBottom is fromTop from the bottom.
func (s *stack) fromBottom(volume float64) func(yield func(fluid int, took float64) bool) {
	return func(yield func(int, float64) bool) {
		for volume > 0 {
			fluid, took := s.takeBottom(volume)
			if took == 0 || !yield(fluid, took) {
				return
			}
			volume -= took
		}
	}
}

// turn moves a volume in m³ from the bottom of one stack round the end of the
// string to the bottom of another.
func turn(from, to *stack, volume float64) {
	for fluid, took := range from.fromBottom(volume) {
		to.addBottom(fluid, took)
	}
}

// swallow moves a volume in m³ from the top of one stack to the bottom of another:
// out of the pocket into what comes down on it.
func swallow(from, to *stack, volume float64) {
	for fluid, took := range from.fromTop(volume) {
		to.addBottom(fluid, took)
	}
}
