package model

import "borewalk/model/quantity"

// Ranges say between which ends entries of a section may turn out to lie; the plan's entry is what is likely.
type Ranges struct {
	WashoutLow, WashoutHigh     quantity.Value
	ExcessLow, ExcessHigh       quantity.Value
	LossesLow, LossesHigh       quantity.Value
	PoreLess, PoreMore          quantity.Value
	FractureLess, FractureMore  quantity.Value
	IntensityLow, IntensityHigh quantity.Value
}

func rangesGroup(section *Group) *Group {
	type d = declaration[Ranges]
	always := func(*Plan, Place) string { return "" }
	kicks := func(p *Plan, at Place) string {
		if p.Sections[at.Outer].Returns != ToRig {
			return "there is no stack while returns go to the seabed"
		}
		return ""
	}
	end := func(key, label, name string, kind quantity.Kind, within string, counts func(*Plan, Place) string, help string, at func(*Ranges) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicControl, Kind: kind, Range: within, Inside: counts, Help: help, At: at}
	}
	const (
		other   = " Blank beside a high end: the plan's."
		another = " Blank beside a low end: the plan's. Both blank: not varied."
		less    = " Blank beside the other: none. Both blank: not varied."
		emw     = "0 sg to 0.5 sg"
	)
	return part("ranges", "Ranges", "Between which ends entries may turn out to lie, each with the plan's as likely. U draws from them: the odds that limits are met.",
		TopicControl, section, func(s *Section) *Ranges { return &s.Ranges },
		end("washout_low", "Washout, low", "Low end of the washout", quantity.Ratio, "0 % to 400 %", always,
			"Of the hole as found, on the volume; 0 % is common practice. A caliper goes before it."+other, func(r *Ranges) any { return &r.WashoutLow }),
		end("washout_high", "Washout, high", "High end of the washout", quantity.Ratio, "0 % to 400 %", always,
			"As the worst offset shows; up to 50 % is common practice, from memory."+another, func(r *Ranges) any { return &r.WashoutHigh }),
		end("excess_low", "Excess, low", "Low end of the excess that the hole takes", quantity.Ratio, "0 % to 500 %", of(cementing),
			"What is pumped stays as planned; 0 % is a hole that takes none of the excess, common practice."+other, func(r *Ranges) any { return &r.ExcessLow }),
		end("excess_high", "Excess, high", "High end of the excess that the hole takes", quantity.Ratio, "0 % to 500 %", of(cementing),
			"Twice the plan's is common practice, from memory."+another, func(r *Ranges) any { return &r.ExcessHigh }),
		end("losses_low", "Losses, low", "Low end of the share of slurry lost", quantity.Ratio, "0 % to 95 %", of(cementing),
			"Of what is meant for the annulus; 0 % is common practice."+other, func(r *Ranges) any { return &r.LossesLow }),
		end("losses_high", "Losses, high", "High end of the share of slurry lost", quantity.Ratio, "0 % to 95 %", of(cementing),
			"20 % is common practice, from memory. Blank beside a low end: the plan's. Both blank: none is lost, as for the planned tops.", func(r *Ranges) any { return &r.LossesHigh }),
		end("pore_less", "Pore less by", "Pore less than the prognosis by", quantity.EMW, emw, always,
			"All of the prognosis moves as one; 0.02 sg to 0.05 sg is common practice, from memory."+less, func(r *Ranges) any { return &r.PoreLess }),
		end("pore_more", "Pore more by", "Pore more than the prognosis by", quantity.EMW, emw, always,
			"All of the prognosis moves as one; 0.02 sg to 0.05 sg is common practice, from memory."+less, func(r *Ranges) any { return &r.PoreMore }),
		end("fracture_less", "Fracture less by", "Fracture less than the prognosis by", quantity.EMW, emw, always,
			"All of the prognosis moves as one; 0.03 sg to 0.08 sg is common practice, from memory."+less, func(r *Ranges) any { return &r.FractureLess }),
		end("fracture_more", "Fracture more by", "Fracture more than the prognosis by", quantity.EMW, emw, always,
			"A planned shoe test still caps what the shoe stands, a measured one stays as it is."+less, func(r *Ranges) any { return &r.FractureMore }),
		end("intensity_low", "Intensity, low", "Low end of the kick intensity", quantity.EMW, emw, kicks,
			"Counted as the plan's intensity; 0 is common practice."+other, func(r *Ranges) any { return &r.IntensityLow }),
		end("intensity_high", "Intensity, high", "High end of the kick intensity", quantity.EMW, emw, kicks,
			"Twice the plan's is common practice, from memory."+another, func(r *Ranges) any { return &r.IntensityHigh }),
	)
}
