"""Numbers -> text, once: every renderer shows these very strings.

numbers      rounding: ceilings down, floors up, pace inside the window
signs        the marks beside a cell and what the legend says of them
printed      a chart as strings
assumptions  what a card takes for granted, as sentences
measured     what was measured on this lathe, when and how well
learned      what readings gave, and which would help most
cautions     which cautions a card must carry
check_code   the short code that tells a stale card
explanation  one cell step by step: formula, values, result, source
steps        its steps: speed, feed, force, blade, work, grip, dig-in, centre
ceilings     a force that a part bears, as the ceiling of feed that follows
advice       what to change about a cut that is wrong
answers      the same facts for machines, as plain dictionaries
"""
