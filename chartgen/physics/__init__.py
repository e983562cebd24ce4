"""Pure formulas on floats and arrays, in handbook units, keyword arguments only.

Nothing here knows the model: a formula takes `feed` and `diameter`, not a blade or a
lathe, so that it can be held against the page of the book it came from.
"""
