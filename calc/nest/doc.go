// Package nest finds places for the parts of sheaths on pieces of leather.
package nest
