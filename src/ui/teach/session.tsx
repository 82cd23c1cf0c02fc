import { Fragment } from 'preact'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { nearestOthers } from '../../shared/present/nearest-others'
import { TEACH_TAKES } from '../../shared/teach/teach-run'
import { groupDigits } from '../../shared/words/en/numbers'
import { TEACH_SCREENS } from '../../shared/words/en/teach-screens'
import { knownAsWords, teachWords } from '../../shared/words/en/teach-words'
import { verdict } from '../../shared/words/en/verdict'
import type { TeachState } from '../../state/teach'
import { Button, Progress, Section, useApp } from '../common'
import { SignStep } from '../record/sign-step'
import { SimulatedPhone } from '../record/simulated-phone'
import { Cost } from './cost'

/** A session as it goes, and what came of it. */
export function Session({ teach }: { teach: TeachState }) {
  const { motion } = useApp()
  const model = teach.model.value
  const wish = teach.wish.value
  if (model === null || wish === null) return null
  const last = teach.steps.value.at(-1)?.answer
  const words = last && teachWords(last, model, TEACH_TAKES, wish.name)
  const near = nearestOthers(teach.steps.value, model, wish.gestureId)
  const [farthest = 1] = near.map(({ distance }) => distance).reverse()
  return (
    <div class="teach-session">
      <SignStep />
      <Takes made={last?.count ?? 0} />
      <div class="teach-status" role="status">
        <p class="teach-seen">{words?.seen ?? TEACH_SCREENS.session.first(TEACH_TAKES)}</p>
        {words !== undefined && <p>{words.todo}</p>}
        {last?.status === 'done' && <KnownAs teach={teach} model={model} />}
        {words === undefined && <p class="quiet">{TEACH_SCREENS.session.restBetween}</p>}
      </div>
      <Cost teach={teach} />
      {near.length > 0 && (
        <Section title={TEACH_SCREENS.session.nearest}>
          <div class="teach-near">
            {near.map(({ name, distance }) => (
              <Fragment key={name}>
                <span>{name}</span>
                <i
                  class="teach-near-bar"
                  style={{ width: `${((100 * distance) / farthest).toFixed(1)}%` }}
                />
                <span>{groupDigits(distance)}</span>
              </Fragment>
            ))}
          </div>
        </Section>
      )}
      {teach.running.value && motion.kind.value === 'simulated' && (
        <SimulatedPhone gesture={null} way="hands-free" />
      )}
      <Tries teach={teach} />
    </div>
  )
}

function KnownAs({ teach, model }: { teach: TeachState; model: RecogniserModel }) {
  const text = knownAsWords(teach.steps.value, model, teach.wish.value?.gestureId ?? null)
  return text === '' ? null : <p>{text}</p>
}

function Takes({ made }: { made: number }) {
  return (
    <ol class="teach-takes" aria-label={TEACH_SCREENS.session.taken(made, TEACH_TAKES)}>
      {Array.from({ length: TEACH_TAKES }, (_, i) => (
        <li key={i} class={i < made ? 'teach-take teach-take-made' : 'teach-take'} />
      ))}
    </ol>
  )
}

/** What was recognised since it was taught. */
function Tries({ teach }: { teach: TeachState }) {
  const model = teach.model.value
  const answers = teach.answers.value
  if (model === null || answers.length === 0) return null
  const taught = { ...model.gestures[0]!, id: 'taught', name: teach.wish.value?.name ?? '' }
  const with_ = { ...model, gestures: [...model.gestures, taught] }
  return (
    <Section
      title={TEACH_SCREENS.session.since}
      aside={<span class="small quiet">{TEACH_SCREENS.session.newestFirst}</span>}
    >
      <ul class="outcomes">
        {answers.map((event) => {
          const { headline, reason } = verdict(event, with_)
          return (
            <li key={event.start}>
              <p>
                <b>{headline}</b> <span class="quiet">{reason}</span>
              </p>
            </li>
          )
        })}
      </ul>
    </Section>
  )
}

/** The one thing to do next, and the way out. */
export function SessionFoot({ teach, leave }: { teach: TeachState; leave: () => void }) {
  const status = teach.steps.value.at(-1)?.answer.status
  const cost = teach.cost.value
  if (cost.state === 'running') return <Progress progress={cost.progress} cancel={cost.cancel} />
  const refused = status === 'unlike' || status === 'near'
  const fresh = cost.state === 'done' && !cost.stale
  return (
    <div class="foot-stack">
      {status === 'done' && !fresh && (
        <Button tone="amber" big wide onClick={() => void teach.measureCost()}>
          {TEACH_SCREENS.session.seeCost}
        </Button>
      )}
      {refused && teach.running.value && (
        <Button tone="amber" big wide onClick={() => void teach.again()}>
          {TEACH_SCREENS.session.again}
        </Button>
      )}
      <Button wide onClick={leave}>
        {status === 'done' || !teach.running.value
          ? TEACH_SCREENS.session.another
          : TEACH_SCREENS.session.stop}
      </Button>
    </div>
  )
}
