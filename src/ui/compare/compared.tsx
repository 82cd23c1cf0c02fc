import type { Comparison, Flip } from '../../shared/compare/compare-evaluations'
import type { KeptModel } from '../../shared/compare/kept-model'
import type { BackgroundScore, Holdout } from '../../shared/model/evaluation'
import {
  compareWords,
  flipText,
  gestureWords,
  notComparedWords,
} from '../../shared/words/en/compare-words'
import { shortNumber } from '../../shared/words/en/numbers'
import { compareModels } from '../../state/models'
import { RateAxis, RateBar, rateAxisStart } from '../charts'
import { Notice, route, Section, useApp } from '../common'
import { LongList } from '../common/long-list'

/** Height of a row before one was measured. */
const ROW_PX = 48

export interface ComparedProps {
  first: KeptModel
  second: KeptModel
  holdout: Holdout
}

export function Compared({ first, second, holdout }: ComparedProps) {
  const compared = compareModels(first, second, holdout)
  if (!compared.ok) {
    return (
      <Notice tone="trouble">
        <p>{compared.message}</p>
      </Notice>
    )
  }
  const { comparison, changes } = compared.value
  const words = compareWords(comparison, changes)
  const remarks = [gestureWords(comparison), notComparedWords(comparison)].filter(
    (text) => text !== '',
  )
  const from = rateAxisStart([comparison.first, comparison.second])
  return (
    <div class="compare-result">
      <div class="compare-words">
        <p>{words.changed}</p>
        <p class="compare-means">{words.means}</p>
        <p>{words.evidence}</p>
        <p>{words.todo}</p>
      </div>
      <Section title="Right, on the same takes">
        <RateAxis from={from} />
        <RateBar name="A" rate={comparison.first} from={from} />
        <RateBar name="B" rate={comparison.second} from={from} />
        <Backgrounds comparison={comparison} />
        {remarks.map((text) => (
          <p key={text} class="small quiet">
            {text}
          </p>
        ))}
        <p class="small quiet">
          Takes of one tester resemble each other, so p and the intervals say somewhat more than is
          sure.
        </p>
      </Section>
      <Flips title="Newly wrong" flips={comparison.flips.filter(({ better }) => !better)} />
      <Flips title="Put right" flips={comparison.flips.filter(({ better }) => better)} />
    </div>
  )
}

function Backgrounds({ comparison }: { comparison: Comparison }) {
  const [first, second] = comparison.backgrounds
  if (first === null || second === null) return null
  const text = ({ activations, hours, perHour, low, high }: BackgroundScore) =>
    `${activations} in ${shortNumber(hours * 60)} min (${shortNumber(perHour)} an hour, 95 % interval ${shortNumber(low)} to ${shortNumber(high)})`
  return (
    <p>
      False activations: A {text(first)}, B {text(second)}.
    </p>
  )
}

/** The takes of one way to flip; those still in the library lead to their replay. */
function Flips({ title, flips }: { title: string; flips: readonly Flip[] }) {
  const there = new Set(useApp().library.recordings.value.map(({ id }) => id))
  if (flips.length === 0) return null
  return (
    <Section title={title} aside={<span>{flips.length}</span>}>
      <LongList
        items={flips}
        keyOf={({ takeId }) => takeId}
        rowPx={ROW_PX}
        listClass="outcomes"
        row={(flip) => <FlipRow flip={flip} there={there.has(flip.takeId)} />}
      />
    </Section>
  )
}

function FlipRow({ flip, there }: { flip: Flip; there: boolean }) {
  const text = flipText(flip)
  if (!there) {
    return (
      <span class="outcome">
        <b>{flip.testerCode}</b>
        <span>{text}; no longer in the library</span>
      </span>
    )
  }
  return (
    <a class="outcome" href={route('replay', flip.takeId)}>
      <b>{flip.testerCode}</b>
      <span>{text}</span>
      <span class="quiet" aria-hidden="true">
        ›
      </span>
    </a>
  )
}
