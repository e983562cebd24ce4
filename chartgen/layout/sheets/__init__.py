"""Several cards on one sheet of printer paper, for scissors, laminator and duplex printer.

papers  the paper and its pouch
plan    what was asked of the sheets: paper, margins, flip, lamination, hole
places  where cards of one size stand on a sheet, and how many
leaves  a card's pages two by two: fronts and backs
impose  leaves on sheets: backs where the flip brings them behind their fronts
marks   where to cut and how to round
hole    where a hole to hang a card by touches none of its content
foot    check rule and words, outside all cards
"""
