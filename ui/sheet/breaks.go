package sheet

// piece is what stays together on one page of text or of a PDF, with its height in lines or in mm.
type piece struct {
	height float64
	gap    float64 // above it, but not at the head of a page
	hold   bool    // something must follow it on its page, as on a heading
	again  int     // how many pieces further up the one stands that comes again above it at the head of a page; zero for none
}

// breakPages returns which pieces are the first of a page, for pages with room for so much. A piece that is held to others goes
// with them to the next page; what is higher than a page begins one and is not broken.
func breakPages(pieces []piece, room float64) (first []int) {
	used := 0.0
	for at := 0; at < len(pieces); {
		above := 0.0 // what comes again at the head of a page that begins here
		if again := pieces[at].again; again > 0 {
			above = pieces[at-again].height
		}
		end, height := at+1, pieces[at].height
		for pieces[end-1].hold && end < len(pieces) && above+height+pieces[end].gap+pieces[end].height <= room {
			height += pieces[end].gap + pieces[end].height
			end++
		}
		if at == 0 || used+pieces[at].gap+height > room {
			first, used = append(first, at), above
		} else {
			used += pieces[at].gap
		}
		used += height
		at = end
	}
	return first
}

// holdTogether keeps pieces that come to no more than so much on one page.
func holdTogether(pieces []piece, most float64) {
	height := 0.0
	for _, p := range pieces {
		height += p.gap + p.height
	}
	if height > most {
		return
	}
	for i := range len(pieces) - 1 {
		pieces[i].hold = true
	}
}
