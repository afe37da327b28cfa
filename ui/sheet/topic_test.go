package sheet_test

import (
	"bytes"
	"strings"
	"testing"

	"borewalk/model"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

// TestAPageByItself: what a page has of entries and figures stands on its own sheet, with the cautions of its kinds and no others.
func TestAPageByItself(t *testing.T) {
	plan := demo(t, plans.Default)
	result := evaluate(plan)
	for _, topic := range model.Topics() {
		o := options(plan)
		o.Section = 2
		if topic == model.TopicWell || topic == model.TopicHandover {
			o.Section = -1
		}
		var b bytes.Buffer
		if err := sheet.WriteTopic(&b, plan, result, topic, o); err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(b.String()), " ")
		for _, l := range model.Page(plan, topic, 2) {
			if l.Kind != model.PageEntry || l.Level > 0 && l.Ref.Group.List {
				continue // rows of lists have their columns
			}
			if name := l.Ref.Field.Name; !strings.Contains(text, name+":") && l.Ref.Get(plan).IsSet() {
				t.Errorf("%v: no %s", topic, name)
			}
		}
		for _, f := range result.Sheet(o.Section).Figures {
			if f.Topic == topic && f.OK && !strings.Contains(text, f.Name) {
				t.Errorf("%v: no %s", topic, f.Name)
			}
		}
		if !strings.Contains(text, "Verify by independent calculation") {
			t.Errorf("%v: no caution", topic)
		}
		if maasp := strings.Contains(text, "MAASP: for this mud"); maasp != (topic == model.TopicControl) {
			t.Errorf("%v: caution on MAASP %v", topic, maasp)
		}
	}
	if err := sheet.WriteTopic(&bytes.Buffer{}, plan, result, model.TopicMud, sheet.Options{Section: 9}); err == nil {
		t.Error("a section that is not there is printed")
	}
}
