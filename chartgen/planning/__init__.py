"""From a job and a shop to the plan of its making: which steps, in which order, with what.

machine      lathe, chuck and material resolved; the speeds on offer
loads        what a cut asks of motor and chuck
drill_loads  what a drill asks of them, and of the tailstock
bending      what the work bears before it bends away
feeding      by which wheel at what pace, or by the gearbox
passes       stock shared out among passes
turning, drilling, boring, parting   the steps that cut
bar_use      pieces per bar
set_up       how the bar stands, how hard the jaws close
wear         when to look at which edge
run          a job -> its plan
operations   what a step can be, what feeds it, what binds it
plan         the result: one whole, frozen record of a job's steps
"""
