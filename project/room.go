package project

// room stands after the sheath's own figures. The range of temperature is
// what a thermometer may show; what leather bears is said where it is used.
var room = []column[Project]{
	optionalNumber(Spec{Key: "room.temperature", Group: "room", Name: "room temperature", In: "°C", Min: -30, Max: 60, Auto: "not known",
		Hint: "where the sheath dries, away from heat and sun"},
		func(p *Project) *float64 { return &p.Room.Temperature }, func(p *Project) *bool { return &p.Room.HasTemperature }),
	optionalNumber(Spec{Key: "room.humidity", Group: "room", Name: "room humidity", In: "%", Max: 100, Auto: "not known",
		Hint: "relative humidity where the sheath dries, as a hygrometer shows it"},
		func(p *Project) *float64 { return &p.Room.Humidity }, func(p *Project) *bool { return &p.Room.HasHumidity }),
}

// optionalNumber makes a column for a figure that need not be given.
func optionalNumber[T any](s Spec, p func(*T) *float64, given func(*T) *bool) column[T] {
	s.Kind = Number
	return column[T]{
		Spec: s,
		get: func(t *T) any {
			if !*given(t) {
				return nil
			}
			return *p(t)
		},
		set: func(t *T, v any) {
			*p(t), *given(t) = 0, false
			if f, ok := v.(float64); ok {
				*p(t), *given(t) = f, true
			}
		},
		skip: func(t *T) bool { return !*given(t) },
	}
}
