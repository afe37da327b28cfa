package chance

import "math/rand/v2"

// Block is how many trials draw from one stream. It is part of the result: another size gives other draws.
const Block = 32

// Draw is where a trial gets its chance from.
type Draw struct{ from *rand.Rand }

// Triangle draws from a distribution. A constant takes a draw as well, so that closing one range leaves the draws of the others.
func (d *Draw) Triangle(t Triangle) float64 { return t.Quantile(d.from.Float64()) }

// Trial works out one trial and writes each outcome to its place; not a number stands for an outcome that it does not have.
type Trial func(d *Draw, outcomes []float64)

// Run makes trials, from one block up to another, the last not counted, and returns each outcome over all of them, in their order.
// Each worker asks once for its trial, which may keep scratch of its own: nothing else is shared between workers. Blocks run apart
// and put together give what they give at once.
func Run(seed uint64, from, to, outcomes int, worker func() Trial) [][]float64 {
	columns := make([][]float64, outcomes)
	for k := range columns {
		columns[k] = make([]float64, (to-from)*Block)
	}
	shared(to-from, func() func(int) {
		try, row := worker(), make([]float64, outcomes)
		return func(piece int) {
			d := stream(seed, from+piece)
			for n := piece * Block; n < (piece+1)*Block; n++ {
				try(d, row)
				for k, value := range row {
					columns[k][n] = value
				}
			}
		}
	})
	return columns
}

// Blocks returns how many blocks hold no fewer than so many trials.
func Blocks(trials int) int { return (trials + Block - 1) / Block }

// stream returns the draws of a block. The number of the block is scattered first: generators whose states differ by one would begin
// alike.
func stream(seed uint64, block int) *Draw {
	return &Draw{rand.New(rand.NewPCG(seed, scattered(uint64(block))))}
}

// scattered mixes the bits of a number, one to one (SplitMix64: Steele, Lea and Flood 2014, Fast splittable pseudorandom number
// generators; constants from memory).
func scattered(n uint64) uint64 {
	n += 0x9e3779b97f4a7c15
	n = (n ^ n>>30) * 0xbf58476d1ce4e5b9
	n = (n ^ n>>27) * 0x94d049bb133111eb
	return n ^ n>>31
}
