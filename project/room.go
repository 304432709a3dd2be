package project

import "chape/project/value"

// room stands after the sheath's own figures. The range of temperature is
// what a thermometer may show; what leather bears is said where it is used.
var room = []column[Project]{
	value.OptionalNumber(Spec{Key: "room.temperature", Group: "room", Name: "room temperature", In: "°C", Min: -30, Max: 60, Auto: "not known",
		Hint: "where the sheath dries, away from heat and sun"},
		func(p *Project) *float64 { return &p.Room.Temperature }, func(p *Project) *bool { return &p.Room.HasTemperature }),
	value.OptionalNumber(Spec{Key: "room.humidity", Group: "room", Name: "room humidity", In: "%", Max: 100, Auto: "not known",
		Hint: "relative humidity where the sheath dries, as a hygrometer shows it"},
		func(p *Project) *float64 { return &p.Room.Humidity }, func(p *Project) *bool { return &p.Room.HasHumidity }),
}
