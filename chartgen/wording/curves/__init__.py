"""Cards with curves as words: one file a kind of figure.

spindle  what the drive gives over its speeds, and what the cuts ask
window   the window of feed against diameter
width    the widest blade against diameter
speed    spindle speed against diameter
nomogram two products to be read with a ruler
scales   lengths and feeds in the units of the card
"""
