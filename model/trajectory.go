package model

import "borewalk/model/quantity"

// Ways of giving the well path.
const (
	Vertical     = "vertical"
	BuildAndHold = "build and hold"
	SurveyList   = "survey list"
)

func trajectoryGroup() *Group {
	type d = declaration[Trajectory]
	build := func(_ *Plan, t *Trajectory) string {
		if t.Method != BuildAndHold {
			return "counts for a build-and-hold path only"
		}
		return ""
	}
	return table("trajectory", "Trajectory", func(p *Plan) *Trajectory { return &p.Trajectory },
		d{Key: "method", Label: "Path", Name: "Well path", Choices: []string{Vertical, BuildAndHold, SurveyList}, Default: Vertical,
			Help: "Vertical, a build to one inclination that is held, or a list of survey stations. Minimum curvature between stations.",
			At:   func(t *Trajectory) any { return &t.Method }},
		d{Key: "kick_off", Moves: WithWell, Label: "Kick-off", Name: "Kick-off depth, along hole", Kind: quantity.Length, Range: "0 m to 12000 m", When: build,
			Required: true, Help: "Depth from the rotary at which the build starts.", At: func(t *Trajectory) any { return &t.KickOff }},
		d{Key: "build_rate", Label: "Build rate", Name: "Build rate", Kind: quantity.Dogleg, Range: "0.1 deg/30m to 20 deg/30m", When: build,
			Required: true, Help: "Change of inclination along hole.", At: func(t *Trajectory) any { return &t.BuildRate }},
		d{Key: "inclination", Label: "Inclination", Name: "Inclination held", Kind: quantity.Angle, Range: "0 deg to 90 deg", When: build,
			Required: true, Help: "Held to total depth.", At: func(t *Trajectory) any { return &t.Inclination }},
		d{Key: "azimuth", Label: "Azimuth", Name: "Azimuth", Kind: quantity.Angle, Range: "0 deg to 360 deg", When: build,
			Help: "Direction of the build from grid north.", At: func(t *Trajectory) any { return &t.Azimuth }},
	)
}

func surveyGroup(trajectory *Group) *Group {
	type d = declaration[Survey]
	return list("survey", "Survey", "A survey station; the path is straight below the last.", TopicWell, trajectory,
		func(p *Plan, _ Place) *[]Survey { return &p.Surveys },
		d{Key: "depth", Moves: WithWell, Brief: true, Label: "Survey depth", Name: "Depth along hole", Kind: quantity.Length, Range: "0 m to 15000 m", Required: true,
			Help: "Along hole from the rotary; stations go down.", At: func(s *Survey) any { return &s.Depth }},
		d{Key: "inclination", Brief: true, Label: "Inclination", Name: "Inclination", Kind: quantity.Angle, Range: "0 deg to 180 deg", Required: true,
			Help: "From vertical.", At: func(s *Survey) any { return &s.Inclination }},
		d{Key: "azimuth", Brief: true, Label: "Azimuth", Name: "Azimuth", Kind: quantity.Angle, Range: "0 deg to 360 deg", Required: true,
			Help: "From grid north.", At: func(s *Survey) any { return &s.Azimuth }},
	)
}
