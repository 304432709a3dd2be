// Package config is what the user has chosen once for all projects: the file
// config.toml in their configuration folder.
//
// # Keys of a shop
//
// shop.hours, shop.name and shop.address (a list of lines), price.holds (days that a quote
// holds), the texts price.unit, snap, rivet, minimum, and the shares price.overhead (of the
// cost expected), price.margin (of the price). All keys there are, with what they mean:
// chape settings --sample.
package config
