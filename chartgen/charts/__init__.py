"""A question answered over a grid, as numbers: no rounding for print, no words."""
