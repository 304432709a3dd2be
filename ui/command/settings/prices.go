package settings

import (
	"errors"
	"fmt"
	"path/filepath"

	"chape/project/config"
	"chape/project/file"
	"chape/project/money"
	"chape/project/shop"
)

// Shop is the shop as the settings have it; where they can't be read it says so.
func (s Chosen) Shop() shop.Shop {
	out := s.Config.Shop()
	var refused *file.Refused
	switch {
	case errors.As(s.Broken, &refused):
		out.Broken = fmt.Sprintf("your settings can't be read: %s, line %d: %v", filepath.Base(s.Path), refused.Problems[0].Line, refused.Problems)
	case s.Broken != nil:
		out.Broken = "your settings can't be read: " + s.Broken.Error()
	}
	return out
}

// keepPrice keeps a price, and gives the shop as the settings have it then.
func (s Chosen) keepPrice() func(key string, a money.Amount) (shop.Shop, error) {
	if s.Path == "" {
		return nil
	}
	return func(key string, a money.Amount) (shop.Shop, error) {
		return s.keepInShop(config.Price(key, a))
	}
}

// keepWeek is keepPrice for the hours at the bench.
func (s Chosen) keepWeek() func(text string) (shop.Shop, error) {
	if s.Path == "" {
		return nil
	}
	return func(text string) (shop.Shop, error) {
		return s.keepInShop(config.Change{Key: "shop.hours", Value: text})
	}
}

func (s Chosen) keepInShop(c config.Change) (shop.Shop, error) {
	if err := s.keep(c); err != nil {
		return shop.Shop{}, err
	}
	now := Load()
	return now.Shop(), now.Broken
}
