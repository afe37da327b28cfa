package chance

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// shared does the pieces of a work, numbered from 0, on all cores. Each worker asks once for what it does pieces with. What is done
// must not depend on who does it. A panic in a piece goes on in the caller, who may have a screen to put right.
func shared(pieces int, worker func() func(piece int)) {
	var next atomic.Int64
	var failed atomic.Pointer[any]
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), pieces) {
		wait.Go(func() {
			defer func() {
				if err := recover(); err != nil {
					failed.Store(&err)
				}
			}()
			do := worker()
			for k := next.Add(1) - 1; k < int64(pieces); k = next.Add(1) - 1 {
				do(int(k))
			}
		})
	}
	wait.Wait()
	if err := failed.Load(); err != nil {
		panic(*err)
	}
}
