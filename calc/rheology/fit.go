package rheology

import (
	"fmt"
	"math"
)

// The indices among which a fit is looked for.
const (
	leastIndex = 0.1
	mostIndex  = 1.5
)

// Bingham returns the straight line that fits the shear stresses of readings best by least squares, its yield not below
// zero; through two readings it is the line through both. The error says what is missing.
func Bingham(readings []Reading) (Law, error) {
	s, err := gather(readings, "Bingham", 2)
	if err != nil {
		return Law{}, err
	}
	yield, consistency, _ := s.straight(1, true)
	return Law{yield, consistency, 1}.sound("Bingham")
}

// PowerLaw returns the power law that fits the shear stresses of readings best by least squares; through two readings it is
// the law through both, n = log(R/r) / log(speed/speed). The error says what is missing.
func PowerLaw(readings []Reading) (Law, error) {
	const name = "power law"
	s, err := gather(readings, name, 2)
	if err != nil {
		return Law{}, err
	}
	return s.best(name, false)
}

// HerschelBulkley returns the law of Herschel and Bulkley that fits the shear stresses of readings best by least squares,
// its yield not below zero. It wants three readings. The error says what is missing.
func HerschelBulkley(readings []Reading) (Law, error) {
	const name = "Herschel-Bulkley"
	s, err := gather(readings, name, 3)
	if err != nil {
		return Law{}, err
	}
	return s.best(name, true)
}

// sample is what a fit works with: rates over the highest one, so that powers stay near one, and stresses in Pa.
type sample struct {
	logs, stresses []float64
	top            float64
	room           [12]float64 // for both, when there are few
}

// gather turns readings into a sample. It refuses readings that are no numbers above zero, fewer different speeds than a law
// has parameters, and stresses that do not rise.
func gather(readings []Reading, name string, least int) (*sample, error) {
	s := &sample{}
	s.logs, s.stresses = s.room[:0:6], s.room[6:6:12]
	speeds := 0
	var slowest, fastest Reading
	for k, r := range readings {
		if !(r.Speed > 0) || !(r.Dial >= 0) || math.IsInf(r.Speed, 0) || math.IsInf(r.Dial, 0) {
			return nil, fmt.Errorf("%s: a reading of %g at %g rpm; give numbers above zero", name, r.Dial, r.Speed)
		}
		fresh := true
		for _, before := range readings[:k] {
			fresh = fresh && before.Speed != r.Speed
		}
		if fresh {
			speeds++
		}
		if k == 0 || r.Speed > fastest.Speed {
			fastest = r
		}
		if k == 0 || r.Speed < slowest.Speed {
			slowest = r
		}
	}
	if speeds < least {
		return nil, fmt.Errorf("%s wants readings at %d speeds, there are %d", name, least, speeds)
	}
	if !(fastest.Dial > slowest.Dial) {
		return nil, fmt.Errorf("%s: the readings do not rise from %g to %g rpm", name, slowest.Speed, fastest.Speed)
	}
	s.top = fastest.Rate()
	for _, r := range readings {
		s.logs = append(s.logs, math.Log(r.Speed/fastest.Speed))
		s.stresses = append(s.stresses, r.Stress())
	}
	return s, nil
}

// straight returns the yield and consistency that fit best for an index, and the sum of squares that is left in Pa². The
// law is linear in both. A yield below zero is none, and so it is where none is wanted.
func (s *sample) straight(index float64, yielding bool) (yield, consistency, left float64) {
	count := float64(len(s.logs))
	var room [6]float64
	powers := room[:0]
	var x, y, xx, xy float64
	for k, log := range s.logs {
		power := math.Exp(index * log)
		powers = append(powers, power)
		x += power
		y += s.stresses[k]
		xx += power * power
		xy += power * s.stresses[k]
	}
	if yielding {
		consistency = (xy - x*y/count) / (xx - x*x/count)
		yield = (y - consistency*x) / count
	}
	if !(yield > 0) {
		yield, consistency = 0, xy/xx
	}
	for k, power := range powers {
		off := yield + consistency*power - s.stresses[k]
		left += off * off
	}
	return yield, consistency * math.Pow(s.top, -index), left
}

// best returns the law with the index that leaves the least squares: looked for in even steps, since there may be more than
// one hollow, and then by the golden section within the best of them. The best at an end of the range is none.
func (s *sample) best(name string, yielding bool) (Law, error) {
	const steps, fine = 14, 1e-9
	at := func(k int) float64 { return leastIndex + (mostIndex-leastIndex)*float64(k)/steps }
	hollow, least := 0, math.Inf(1)
	for k := range steps + 1 {
		if _, _, left := s.straight(at(k), yielding); left < least {
			hollow, least = k, left
		}
	}
	low, high := at(max(hollow-1, 0)), at(min(hollow+1, steps))
	const golden = 0.6180339887498949 // (√5 - 1) / 2
	a, b := high-golden*(high-low), low+golden*(high-low)
	_, _, atA := s.straight(a, yielding)
	_, _, atB := s.straight(b, yielding)
	for high-low > fine {
		if atA < atB {
			high, b, atB = b, a, atA
			a = high - golden*(high-low)
			_, _, atA = s.straight(a, yielding)
		} else {
			low, a, atA = a, b, atB
			b = low + golden*(high-low)
			_, _, atB = s.straight(b, yielding)
		}
	}
	index := (low + high) / 2
	if end := 1e-6; index < leastIndex+end || index > mostIndex-end {
		return Law{}, fmt.Errorf("%s: no index between %g and %g fits the readings best; look at them again", name, leastIndex, mostIndex)
	}
	yield, consistency, _ := s.straight(index, yielding)
	return Law{yield, consistency, index}.sound(name)
}

// sound refuses a law that is none.
func (l Law) sound(name string) (Law, error) {
	if !(l.Consistency > 0) || math.IsInf(l.Consistency, 0) {
		return Law{}, fmt.Errorf("%s: the readings do not rise with speed", name)
	}
	return l, nil
}
