const WAYS = { up: 'up', down: 'down' }

/** The steps at the bench: what each is called, and what to do. */
export const BOARD_ROUTINE = {
  free: {
    name: 'Moved freely',
    instruction: 'Move the board in any way, or as a recording of the phone beside it asks.',
  },
  still: {
    name: 'Lie still',
    instruction: 'Lay the board on the table and touch neither. Nothing else may move the table.',
  },
  face: (axis: string, way: 'up' | 'down') => ({
    name: `${axis} ${WAYS[way]}`,
    instruction: `Set the board so that its ${axis} axis, as the data sheet draws it, points ${WAYS[way]}. Let go of it.`,
  }),
  turn: (axis: string) => ({
    name: `Turn about ${axis}`,
    instruction: `Hold the board with its ${axis} axis level. Turn it once all the way round that axis in about five seconds, either way, and rest.`,
  }),
  shake: {
    name: 'One firm shake',
    instruction:
      'Hold the board firmly and shake it to and fro along all its axes, as hard as the prop will be moved.',
  },
}
