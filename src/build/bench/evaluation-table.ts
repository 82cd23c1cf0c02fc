import type { Evaluation, Rate } from '../../shared/model/evaluation'

/** An evaluation as plain text, every rate with its n and interval. */
export function evaluationTable(evaluation: Evaluation): string {
  const { gestures, scores, confusion, accuracy, rejected, testers, folds } = evaluation
  const names = gestures.map(({ name }) => name)
  const width = Math.max(8, ...names.map((name) => name.length)) + 2
  const lines = [
    `${accuracy.n} takes, ${gestures.length} gestures, ${count(testers.length, 'tester')}, ${
      evaluation.holdout === 'tester'
        ? 'testers held out'
        : 'takes held out (a tester may be in both training and test)'
    }, ${folds.length} rounds`,
    '',
    `right     ${rateText(accuracy)}`,
    `rejected  ${rateText(rejected)}`,
    backgroundText(evaluation),
    '',
    `${'gesture'.padEnd(width)}${'recall'.padEnd(32)}precision`,
    ...scores.map(
      ({ name, recall, precision }) =>
        `${name.padEnd(width)}${rateText(recall).padEnd(32)}${rateText(precision)}`,
    ),
    '',
    'rows performed, columns answered, last column rejected',
    ''.padEnd(width) + names.map((_, i) => letter(i).padStart(5)).join('') + 'rej'.padStart(5),
    ...confusion.map(
      (row, i) =>
        `${letter(i)} ${names[i]}`.padEnd(width) + row.map((n) => String(n).padStart(5)).join(''),
    ),
    '',
    cutText(evaluation),
  ]
  for (const { takeId, reason } of evaluation.skipped) lines.push(`left out ${takeId}: ${reason}`)
  return lines.join('\n')
}

/** `97.9 % of 384 (95.9 to 98.9)`, a Wilson 95 % interval. */
export function rateText({ value, n, low, high }: Rate): string {
  if (n === 0) return 'none of 0'
  return `${percent(value)} % of ${n} (${percent(low)} to ${percent(high)})`
}

function backgroundText({ background }: Evaluation): string {
  if (background === null) return 'no background was there to count false activations in'
  const { activations, hours, perHour, low, high, segments } = background
  return `false activations  ${perHour.toFixed(1)} an hour (${low.toFixed(1)} to ${high.toFixed(1)}): ${activations} of ${segments} movements in ${(hours * 60).toFixed(1)} min of background`
}

function cutText({ outcomes }: Evaluation): string {
  const of = (cut: string) => outcomes.filter((outcome) => outcome.cut === cut).length
  return `cutting: ${of('ok')} one movement, ${of('split')} split, ${of('missed')} missed, ${of('short')} too short, ${of('long')} too long`
}

function percent(share: number): string {
  return (100 * share).toFixed(1)
}

function letter(index: number): string {
  return index < 26 ? String.fromCharCode(65 + index) : String(index + 1)
}

function count(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`
}
