package calc
func (p *Plan) makeChecks() {}
