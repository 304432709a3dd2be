package settings

import (
	"chape/project/config"
	"chape/project/money"
	"chape/project/shop"
)

// keepPrice keeps a price, and gives the shop as the settings have it then.
func (s Chosen) keepPrice() func(key string, a money.Amount) (shop.Shop, error) {
	if s.Path == "" {
		return nil
	}
	return func(key string, a money.Amount) (shop.Shop, error) {
		if err := s.keep(config.Price(key, a)); err != nil {
			return shop.Shop{}, err
		}
		now := Load()
		return now.Shop(), now.Broken
	}
}
