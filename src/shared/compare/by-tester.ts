/** One take that two recognisers answered. */
export interface AnsweredTwice {
  tester: string
  first: boolean
  second: boolean
}

/** Testers by what became of their takes from the first to the second. */
export interface TesterSigns {
  /** Testers with more takes right. */
  better: number
  worse: number
  equal: number
}

/**
 * A sign of each tester: takes of one tester resemble each other, and an interval over takes does not
 * see that a gain is one tester's alone.
 */
export function signsByTester(answers: readonly AnsweredTwice[]): TesterSigns {
  const gains = new Map<string, number>()
  for (const { tester, first, second } of answers) {
    gains.set(tester, (gains.get(tester) ?? 0) + Number(second) - Number(first))
  }
  const all = [...gains.values()]
  return {
    better: all.filter((gain) => gain > 0).length,
    worse: all.filter((gain) => gain < 0).length,
    equal: all.filter((gain) => gain === 0).length,
  }
}
