package anyplan_test

import (
	"math/rand/v2"
	"testing"

	"borewalk/model"
	"borewalk/model/anyplan"
	"borewalk/model/planfile"
)

// TestAnyPlanIsOneThatIsRead: what is made is saved and read again, so that a fault found with it is a fault of a plan.
func TestAnyPlanIsOneThatIsRead(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 30 {
		src := make([]byte, random.IntN(300))
		for i := range src {
			src[i] = byte(random.Uint32())
		}
		plan := anyplan.From(src)
		text, err := planfile.New(plan).Bytes()
		if err != nil {
			t.Fatal(err)
		}
		again, err := planfile.Read("any.toml", text)
		if err != nil {
			t.Fatalf("%v\nfrom %x", err, src)
		}
		if model.Hash(again.Plan) != model.Hash(plan) {
			t.Errorf("another plan is read from %x", src)
		}
	}
}
