// Chape is a workbench for leather sheaths: a knife's measurements in, the flat
// pattern and the stitch plan out, and the steps of the work with their waiting
// times.
package main

import (
	"os"

	"chape/ui/command"
)

func main() { os.Exit(command.Main()) }
