/** Statuses of `mvw_init()` and `mvw_model_read()` in words, as `enum mvw_status` numbers them. */
const STATUS: Record<string, string> = {
  '0': 'accepted',
  '-1': 'a pointer or count out of range',
  '-2': 'a model of another version',
  '-3': 'a rate more than 5 % off',
  '-4': 'a sensitivity more than 1 % off',
  '-5': 'a field of the model out of its range',
  '-6': 'a buffer too small',
  '-7': 'damaged model bytes',
}

/** Fields of an `event` line, in order. */
const EVENT = [
  'word',
  'start',
  'end',
  'kind',
  'nearest',
  'reason',
  'roll',
  'distance',
  'threshold',
  'runnerUp',
  'runnerUpDistance',
] as const

/** What a first difference between two lines of an event log usually comes from, and what to do. */
export function causeOf(expected: string, found: string): string {
  const [wanted, had] = [expected.split(' '), found.split(' ')]
  if (found === '')
    return 'The log ends here: the board stopped or reset. Look at its stack and its watchdog.'
  if (isOfTeaching(wanted) || isOfTeaching(had)) return otherTeaching(wanted, had)
  if (wanted[0] !== had[0]) return otherLine(wanted[0] ?? '', had[0] ?? '')
  if (wanted[0] === 'end') return lostSamples(Number(wanted[1]), Number(had[1]))
  if (wanted[0] === 'init' || wanted[0] === 'read') return otherStatus(wanted, had)
  return otherEvent(wanted, had)
}

function otherLine(wanted: string, had: string): string {
  if (wanted === 'event')
    return 'The board saw no movement here: samples were lost or altered on the way to it, or the sums of the segmenter overflow: is int32_t 32 bits wide?'
  if (had === 'event')
    return 'The board saw a movement where there is none: samples were lost or altered on the way to it.'
  return 'The line is damaged: send or print more slowly and run it again.'
}

function lostSamples(wanted: number, had: number): string {
  return had < wanted
    ? `${wanted - had} of ${wanted} samples did not reach the recogniser: send more slowly, or wait for the ">" of the board.`
    : `The recogniser took ${had - wanted} samples too many: lines were sent twice.`
}

function otherStatus([word, wanted = '']: string[], [, had = '']: string[]): string {
  const said = (status: string) => STATUS[status] ?? `status ${status}`
  if (word === 'read' && wanted === '0') {
    return `The board found ${said(had)}. On AVR this vector needs a build with -DMVW_TABLES_IN_RAM.`
  }
  return `Expected was "${said(wanted)}", the board said "${said(had)}". Are core/ and model/ of one export, and compiled anew?`
}

function isOfTeaching([word = '']: string[]): boolean {
  return ['teach', 'forget', 'taught'].includes(word)
}

function otherTeaching(wanted: string[], had: string[]): string {
  return wanted[0] === had[0] && wanted[2] === had[2]
    ? 'Teaching computed otherwise: are all files of core/ of one export, and compiled anew?'
    : 'Teaching took another number of movements: samples were lost before, or the board lacks room for the segments.'
}

function otherEvent(wanted: string[], had: string[]): string {
  const first = EVENT[wanted.findIndex((field, index) => field !== had[index])]
  if (first === 'start' || first === 'end') {
    return 'The movement was cut elsewhere: samples were lost before it, or the segmenter computes otherwise. Does the sample count at the end agree?'
  }
  if (first === 'roll')
    return 'Gravity before the movement came out otherwise: samples were lost before it.'
  if (first === 'threshold')
    return 'The threshold is another: core/ and model/ are not of one export.'
  return 'The same samples were compared and came out otherwise: tables in flash are damaged or read from RAM (MVW_FLASH), or the compiler is at fault; try it without optimisation.'
}
