/** What went wrong with the board at the cable, or with its log. */
export const BOARD_LINK = {
  noLine:
    'No line that could be read came from the board. Check the baud rate and the columns, then log the step again.',
  noFreeLog:
    'There is no log of the board moved freely: log one, or open a file as "moved freely".',
  unplugged:
    'The board was unplugged, or reset its port. What was read is kept: plug it in and connect again.',
  whatItPrints: 'What the board prints',
}
