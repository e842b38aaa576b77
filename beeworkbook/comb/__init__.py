"""The pure core of one comb: lattice, contents, drawing, outlines. No Qt, no SQL, no clock."""
