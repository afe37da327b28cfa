package tomldoc

import "strings"

// gap returns what stands between block i and the next: from the line end
// behind its last line on.
func (d *Document) gap(i int) string {
	if i+1 < len(d.blocks) {
		return d.text[d.blocks[i].end:d.blocks[i+1].start]
	}
	return d.text[d.blocks[i].end:]
}

// blankBefore reports whether a blank line stands before block i, which is not
// the first.
func (d *Document) blankBefore(i int) bool { return endsBlank(d.gap(i - 1)) }

// separated reports whether the document has a blank line before most of its
// headers. A document without headers counts as one that has.
func (d *Document) separated() bool {
	blank, all := 0, 0
	for i := 1; i < len(d.blocks); i++ {
		if d.blocks[i].start == 0 {
			continue // nothing stands before it
		}
		all++
		if d.blankBefore(i) {
			blank++
		}
	}
	return 2*blank >= all
}

// endsBlank reports whether a gap ends with a blank line.
func endsBlank(gap string) bool {
	_, tail := splitGap(gap)
	return strings.Count(tail, "\n") > 1
}

// splitGap parts a gap behind its last comment: remarks holds all comments,
// tail only line ends and blanks. One of them may be empty.
func splitGap(gap string) (remarks, tail string) {
	n := len(strings.TrimRight(gap, " \t\r\n"))
	if n > 0 {
		n = lineEnd(gap, n)
	}
	return gap[:n], gap[n:]
}

// trimLineEnds takes blank lines off the front of s.
func trimLineEnds(s string) string {
	for {
		end := lineEnd(s, 0)
		if end == len(s) || strings.Trim(s[:end], " \t") != "" {
			return s
		}
		s = s[strings.IndexByte(s, '\n')+1:]
	}
}

// joiner joins blocks and the gaps between them. The gap behind the last block
// is held back, so that new blocks can come before it.
type joiner struct {
	lineEnd string
	out     []byte
	gap     string
	apart   bool // a blank line is to follow what was written last
}

// block writes an old block behind the gap. remark tells that its last lines
// are comments.
func (j *joiner) block(text string, remark bool) {
	if text != "" {
		j.flush()
		j.out = append(j.out, text...)
	}
	j.apart = remark
}

// flush writes the gap. A comment at the end of what stands before a header
// must not come to stand directly above it: it would belong to it.
func (j *joiner) flush() {
	remarks, tail := splitGap(j.gap)
	j.out = append(j.out, remarks...)
	if len(j.out) == 0 {
		j.out = append(j.out, tail...)
		return
	}
	ends := strings.Count(tail, "\n")
	if ends == 0 {
		tail += j.lineEnd
		ends++
	}
	if ends == 1 && (j.apart || remarks != "") {
		tail += j.lineEnd
	}
	j.out = append(j.out, tail...)
	j.gap = ""
}

// fresh writes new blocks before the gap.
func (j *joiner) fresh(f fresh) {
	if len(j.out) > 0 {
		j.out = append(j.out, j.lineEnd...)
		if f.apart || j.apart {
			j.out = append(j.out, j.lineEnd...)
		}
	}
	j.out = append(j.out, f.text...)
	j.apart = f.apart
}

// passOver adds the gap behind a removed block to the one before it. All
// comments are kept; of the blank lines the wider, or at the end of the
// document the last.
func (j *joiner) passOver(gap string, atEnd bool) {
	remarks, tail := splitGap(j.gap)
	moreRemarks, moreTail := splitGap(gap)
	if atEnd || strings.Count(moreTail, "\n") > strings.Count(tail, "\n") {
		tail = moreTail
	}
	j.gap = remarks + moreRemarks + tail
}

// finish returns the whole text. A text that was empty gets a final line end.
func (j *joiner) finish(wasEmpty bool) string {
	j.out = append(j.out, j.gap...)
	if wasEmpty && len(j.out) > 0 {
		j.out = append(j.out, j.lineEnd...)
	}
	return string(j.out)
}
