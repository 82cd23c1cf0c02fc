import type { Comparison, Flip } from '../../shared/compare/compare-evaluations'
import type { KeptModel } from '../../shared/compare/kept-model'
import type { Holdout } from '../../shared/model/evaluation'
import { COMPARE_SCREENS } from '../../shared/words/en/compare-screens'
import {
  compareWords,
  flipText,
  gestureWords,
  notComparedWords,
} from '../../shared/words/en/compare-words'
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
      <Section title={COMPARE_SCREENS.right}>
        <RateAxis from={from} />
        <RateBar name={COMPARE_SCREENS.first} rate={comparison.first} from={from} />
        <RateBar name={COMPARE_SCREENS.second} rate={comparison.second} from={from} />
        <Backgrounds comparison={comparison} />
        {remarks.map((text) => (
          <p key={text} class="small quiet">
            {text}
          </p>
        ))}
        <p class="small quiet">{COMPARE_SCREENS.resemble}</p>
      </Section>
      <Flips
        title={COMPARE_SCREENS.newlyWrong}
        flips={comparison.flips.filter(({ better }) => !better)}
      />
      <Flips
        title={COMPARE_SCREENS.putRight}
        flips={comparison.flips.filter(({ better }) => better)}
      />
    </div>
  )
}

function Backgrounds({ comparison }: { comparison: Comparison }) {
  const [first, second] = comparison.backgrounds
  if (first === null || second === null) return null
  const { activations, falseActivations } = COMPARE_SCREENS
  return <p>{falseActivations(activations(first), activations(second))}</p>
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
        <span>{COMPARE_SCREENS.notHere(text)}</span>
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
