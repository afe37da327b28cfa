package sheet_test

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"image/png"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

var (
	pdfStream = regexp.MustCompile(`(?s)/FlateDecode /Length (\d+)>>\nstream\n`)
	pdfText   = regexp.MustCompile(`BT (-?[\d.]+) (-?[\d.]+) Td \(((?:\\.|[^\\)])*)\) Tj ET`)
	pdfEscape = regexp.MustCompile(`\\(.)`)
)

// pdfWords is a text on a page of a PDF with its place in points from the lower left.
type pdfWords struct {
	x, y float64
	text string // in the code page
}

// pdfPages reads the texts of each page, whose content is one stream.
func pdfPages(t interface {
	Helper()
	Fatal(...any)
}, file string) (pages [][]pdfWords) {
	t.Helper()
	for _, at := range pdfStream.FindAllStringSubmatchIndex(file, -1) {
		n, _ := strconv.Atoi(file[at[2]:at[3]])
		r, err := zlib.NewReader(strings.NewReader(file[at[1] : at[1]+n]))
		if err != nil {
			t.Fatal(err)
		}
		content, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		var page []pdfWords
		for _, m := range pdfText.FindAllSubmatch(content, -1) {
			x, _ := strconv.ParseFloat(string(m[1]), 64)
			y, _ := strconv.ParseFloat(string(m[2]), 64)
			page = append(page, pdfWords{x, y, string(pdfEscape.ReplaceAll(m[3], []byte("$1")))})
		}
		pages = append(pages, page)
	}
	if n := strings.Count(file, "/Type /Page\n"); !strings.HasPrefix(file, "%PDF-1") || n == 0 || n != len(pages) {
		t.Fatal(fmt.Sprintf("%d pages, %d streams, it begins %.8q", n, len(pages), file))
	}
	return pages
}

// all joins the texts of a page, each on a line.
func all(page []pdfWords) string {
	var b strings.Builder
	for _, w := range page {
		b.WriteString(w.text + "\n")
	}
	return b.String()
}

// forEveryPaper returns a demo of which every paper of a section has something to say: a watch stands on it, it has a trial and a range.
func forEveryPaper(t *testing.T, name string, section int) *model.Plan {
	t.Helper()
	plan := demo(t, name)
	onWatch(t, plan, section, 0.7)
	plan.Trials = append(plan.Trials, model.Trial{Name: "heavier", Section: model.SectionLabel(plan, section),
		Changes: []model.TrialChange{{Path: string(model.PathOf(section, "density")), Value: "+0.02 sg"}}})
	plan.Sections[section].Ranges.FractureLess = quantity.Value{SI: 30, Unit: plan.Sections[section].Density.Unit}
	return plan
}

// TestEveryPageOfAPDFSaysWhereItBelongs: name, revision, hash, time, number and caution stand on each page of every paper, and every
// text within its edges.
func TestEveryPageOfAPDFSaysWhereItBelongs(t *testing.T) {
	for _, name := range plans.Names() {
		plan := forEveryPaper(t, name, 3)
		result := calc.Evaluate(plan)
		for paper := range sheet.PaperNames() {
			o := options(plan)
			o.Paper, o.Format, o.Section = sheet.Paper(paper), sheet.PDF, 3
			o.Against = sheet.Against{Plan: demo(t, name), Name: "the baseline"}
			var b bytes.Buffer
			if err := sheet.Write(&b, plan, result, o); err != nil {
				t.Fatal(err)
			}
			pages := pdfPages(t, b.String())
			for n, page := range pages {
				text := all(page)
				for _, words := range []string{plan.Well.Name + "\n", "revision 1, input hash 6b0e9f21, printed 2031-05-04 16:20 +02:00\n", "Planning aid. Verify by",
					fmt.Sprintf("page %d of %d\n", n+1, len(pages))} {
					if !strings.Contains(text, words) {
						t.Errorf("%s, %s, page %d does not say %q", name, sheet.PaperNames()[paper], n+1, words)
					}
				}
				for _, w := range page {
					if w.x < 40 || w.x > 560 || w.y < 15 || w.y > 820 {
						t.Errorf("%s, %s, page %d: %q stands at %g, %g", name, sheet.PaperNames()[paper], n+1, w.text, w.x, w.y)
					}
				}
			}
		}
	}
}

// drawnInText is what charts and schematics of a text paper are made of: lines with an axis, with the numbers along it, or with what
// their letters mean, and signs among words. The drawings of a chapter stand in another order in a PDF.
var drawnInText = regexp.MustCompile(`(?m)^(\s*[\d.]*\s*[|+].*|\s+\d+(\s+\d+){3,}\s*|[a-zA-Z] \S+(\s+[a-zA-Z] \S.*)+)$|^Depths in .* shortened\.$|^12\.\d|\S*[|+~=/.]{2}\S*|-+\+[-+]*|\S*[|~]\S*`)

// TestAPDFHoldsWhatTheTextHolds: every word and number of a sheet but those of its drawings.
func TestAPDFHoldsWhatTheTextHolds(t *testing.T) {
	plan := forEveryPaper(t, "saltlantern-1", 4)
	for paper := range sheet.PaperNames() {
		o := options(plan)
		o.Section, o.Paper, o.ASCII = 4, sheet.Paper(paper), true
		o.Against = sheet.Against{Plan: demo(t, "saltlantern-1"), Name: "the baseline"}
		text, _, _ := strings.Cut(runningHead.ReplaceAllString(write(t, plan, o), ""), "\nWell schematic\n")
		text = drawnInText.ReplaceAllString(text, "")
		if o.Paper == sheet.TrialsSheet {
			text = strings.ReplaceAll(text, "Trial 1:", "") // the text's own label for a long name
		}
		o.Format = sheet.PDF
		var words strings.Builder
		for _, page := range pdfPages(t, write(t, plan, o)) {
			words.WriteString(strings.Join(strings.Fields(all(page)), " ") + " ")
		}
		has := map[string]bool{}
		for _, word := range strings.Fields(words.String()) {
			has[strings.TrimSuffix(word, ":")] = true
		}
		for _, word := range strings.Fields(text) {
			if word = strings.TrimSuffix(word, ":"); !has[word] && len(word) > 1 && word != "--" && strings.Trim(word, "-") != "" && !strings.Contains(word, "[") {
				t.Errorf("%s: %q is not in the PDF", sheet.PaperNames()[paper], word)
			}
		}
	}
}

// TestAPDFIsTheSameEveryTime: it hangs on the plan and the time given alone.
func TestAPDFIsTheSameEveryTime(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Section, o.Format = 2, sheet.PDF
	first := write(t, plan, o)
	if again := write(t, plan, o); again != first {
		t.Error("the same plan gave two files")
	}
	if !strings.Contains(first, "/CreationDate (D:20310504162000") {
		t.Error("the file is not dated by the options")
	}
	o.Printed = o.Printed.AddDate(1, 0, 0)
	if write(t, plan, o) == first {
		t.Error("another time gave the same file")
	}
}

// TestHostileTextInAPDF: no text breaks the file, leaves the page or brings a control character.
func TestHostileTextInAPDF(t *testing.T) {
	plan := demo(t, "ottermast-2")
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(hostile(), rapid.SampledFrom([]string{")", `\)`, `(`, "endstream\nendobj", "%%EOF", "BT (x) Tj ET"}))
		model.Walk(plan, func(g *model.Group, at model.Place) bool {
			for _, f := range g.Fields {
				if f.Type == model.TextField {
					model.Ref{Group: g, Field: f, Place: at}.Set(plan, model.Entry{Text: text.Draw(t, f.Key)})
				}
			}
			return true
		})
		o := options(plan)
		o.Source, o.Hash, o.Version, o.Format = text.Draw(t, "source"), text.Draw(t, "hash"), text.Draw(t, "version"), sheet.PDF
		o.Section = rapid.IntRange(0, len(plan.Sections)-1).Draw(t, "section")
		for n, page := range pdfPages(t, write(t, plan, o)) {
			for _, w := range page {
				if strings.ContainsFunc(w.text, func(r rune) bool { return r < ' ' }) || w.x < 40 || w.x > 560 || w.y < 15 || w.y > 820 {
					t.Fatalf("page %d: %q at %g, %g", n+1, w.text, w.x, w.y)
				}
			}
			if !strings.Contains(all(page), "Planning aid.") {
				t.Fatalf("page %d says no caution", n+1)
			}
		}
	})
}

// TestAPDFOfNothing: an empty plan and one without depths are printed all the same.
func TestAPDFOfNothing(t *testing.T) {
	if pages := pdfPages(t, write(t, new(model.Plan), sheet.Options{Section: -1, Format: sheet.PDF})); !strings.Contains(all(pages[0]), "unnamed well") {
		t.Error("a plan without a name is not called so")
	}
	f, err := planfile.Read("small", []byte("borewalk = 1\n[well]\nname = \"Reed-1\"\n[[section]]\n"))
	if err != nil {
		t.Fatal(err)
	}
	o := options(f.Plan)
	o.Format = sheet.PDF
	pdfPages(t, write(t, f.Plan, o))
}

// TestAPDFIsRendered by a program that is none of ours, where there is one: as many pages as it says, and none of them blank.
func TestAPDFIsRendered(t *testing.T) {
	renderer, err := exec.LookPath("pdftoppm")
	if err != nil {
		t.Skip("pdftoppm is not installed, so the pages are not looked at")
	}
	plan := demo(t, "saltlantern-1")
	for _, paper := range []sheet.Paper{sheet.Sheets, sheet.KillSheet, sheet.RunningList} {
		o := options(plan)
		o.Section, o.Format, o.Paper = 4, sheet.PDF, paper
		text, folder := write(t, plan, o), t.TempDir()
		if err := os.WriteFile(filepath.Join(folder, "paper.pdf"), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		command := exec.Command(renderer, "-r", "30", "-gray", "-png", filepath.Join(folder, "paper.pdf"), filepath.Join(folder, "page"))
		if said, err := command.CombinedOutput(); err != nil || len(said) > 0 {
			t.Fatalf("%v: %s", err, said)
		}
		pictures, _ := filepath.Glob(filepath.Join(folder, "page*.png"))
		if want := len(pdfPages(t, text)); len(pictures) != want {
			t.Errorf("%d pages are rendered, want %d", len(pictures), want)
		}
		for _, path := range pictures {
			if dark := inked(t, path); dark < 0.01 || dark > 0.5 {
				t.Errorf("%s: %.1f %% of the page is inked", filepath.Base(path), 100*dark)
			}
		}
	}
}

// inked returns the share of a page that is not white.
func inked(t *testing.T, path string) float64 {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	page, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	size, dark := page.Bounds(), 0
	for y := size.Min.Y; y < size.Max.Y; y++ {
		for x := size.Min.X; x < size.Max.X; x++ {
			if r, _, _, _ := page.At(x, y).RGBA(); r < 0xe000 {
				dark++
			}
		}
	}
	return float64(dark) / float64(size.Dx()*size.Dy())
}
