package calc

type sampled struct{}
