import { median } from '../statistics/summary'
import { TAKES_COMPARED } from '../words/en/takes-compared'
import type { ComparedTake, GroupRow, TakesCompared } from './takes-compared'

/** Phones give 50, 60, 100 or 200 readings a second and a little more or less. */
const RATE_STEP_HZ = 10

/** The same takes by phone, by rate and by hand, most takes first. */
export function groupTakes(takes: readonly ComparedTake[]): Omit<TakesCompared, 'takes'> {
  const rate = ({ rateHz }: ComparedTake) =>
    rateHz > 0
      ? TAKES_COMPARED.about(Math.round(rateHz / RATE_STEP_HZ) * RATE_STEP_HZ)
      : TAKES_COMPARED.rateNotKnown
  return {
    devices: groupBy(takes, ({ device }) => device || TAKES_COMPARED.notNamed),
    rates: groupBy(takes, rate),
    hands: groupBy(takes, ({ hand }) => TAKES_COMPARED.hands[hand]),
  }
}

function groupBy(
  takes: readonly ComparedTake[],
  nameOf: (take: ComparedTake) => string,
): GroupRow[] {
  const groups = new Map<string, ComparedTake[]>()
  for (const take of takes) {
    groups.set(nameOf(take), [...(groups.get(nameOf(take)) ?? []), take])
  }
  return [...groups]
    .map(([name, own]): GroupRow => {
      const ratios = own.flatMap(({ ratio }) => ratio ?? [])
      return {
        name,
        testers: new Set(own.map(({ testerCode }) => testerCode)).size,
        takes: own.length,
        compared: ratios.length,
        medianRatio: median(ratios),
        far: own.filter(({ far }) => far).length,
        notCutOnce: own.filter(({ cut }) => cut !== 'ok').length,
      }
    })
    .sort((a, b) => b.takes - a.takes || a.name.localeCompare(b.name))
}
