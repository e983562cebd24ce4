"""From a job and a shop to the plan of its making: which steps, in which order, with what.

operations   what a step can be, what feeds it, what binds it
plan         the result: one whole, frozen record of a job's steps
"""
