"""The owner's readings -> measured values of this lathe, each with its doubt, or why not yet.

unlearned     the shop as it would be assumed without what earlier readings gave
unknowns      what the readings can tell of, with what is assumed of it and how firmly
equations     a reading in a cut as one line of a linear system in logarithms
refusals      readings that say nothing on this lathe
estimate      weighted least squares with priors and bounds; which reading does not fit
scatter       values read directly: mean and slope with Student's t
findings      the rules of concluding, and what was concluded
next_reading  which further reading would help most
decisions     what becomes of the shop file
"""
