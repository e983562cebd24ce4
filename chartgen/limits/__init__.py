"""Where the described machine meets the formulas: floors, ceilings, the window, the choice.

reasons           why a window ends where it ends
allowances        what is assumed, resolved for one shop
grid              every cell asked for, as arrays that broadcast
force             the cutting force with reserve and band, and back
spindle           what the drive can give at a speed, for three durations
blade_strength    what force each blade bears
holding, friction how hard the chuck grips what
speed_caps        what no speed may exceed, one function a cap
force_capacities  what force each part bears, one file a limit
feed_ceilings     ceilings that are no matter of force, one file a limit
feed_floors       what feed may not fall below
trials, regimes   the speeds worth trying, each as a short and as a long cut
choice, dial      the two-stage choice over all trials, rounded as it can be set
tightness         how far a choice can be trusted
dig_in            what a sudden extra bite does
window            the result: one whole, frozen record of arrays
run               from a shop to windows
cut, cut_force    one cut at a given speed and feed: the same limits, one by one
way_in            from the outside to the centre, with changing_up
ways_out          what would make a window roomier, tried by running the limits again
sensitivity       which assumption moves an answer most
"""
