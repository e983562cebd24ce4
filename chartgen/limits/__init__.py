"""Where the described machine meets the formulas: floors, ceilings, the window, the choice.

reasons     why a window ends where it ends
allowances  what is assumed, resolved for one shop
grid        every cell asked for, as arrays that broadcast
force       the cutting force with reserve and band, and back
spindle     what the drive can give at a speed, for three durations
speed_caps  what no speed may exceed, one function a cap
feed_limits the ceilings and floors of feed, one file a limit, one line each in its catalogue
trials      the speeds worth trying for each cell
choice      the two-stage choice over all trials
window      the result: one whole, frozen record of arrays
cut         one cut at a given speed and feed: the same limits, one by one
"""
